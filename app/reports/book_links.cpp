#include "app/reports/book_links.hpp"

#include <fmt/format.h>

#include "app/reports/html.hpp"

namespace hardover::book {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

bool in_name(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
}

// The page a name of the rule language leads to; "" when it is none of an entry.
std::string address_of_name(const Knowledge& knowledge, const std::string& name) {
    if (name.rfind("rig.", 0) == 0) {
        const Index field = find(knowledge.rig_fields, name.substr(4));
        return field == none ? "" : address("rig_field", at(knowledge.rig_fields, field));
    }
    if (const Index finding = find(knowledge.findings, name); finding != none) {
        return address("finding", at(knowledge.findings, finding));
    }
    const Index sheet = find(knowledge.worksheets, name.substr(0, name.find('.')));
    if (name.find('.') != std::string::npos && sheet != none)
        return address("worksheet", at(knowledge.worksheets, sheet));
    return "";
}

}  // namespace

std::string address(const std::string& kind, const Entry& entry) {
    return fmt::format("{}#{}-{}", page_of(kind), kind, entry.id);
}

std::string link(const std::string& kind, const Entry& entry) {
    return html::link(address(kind, entry), entry.name.empty() ? entry.id : entry.name);
}

std::string condition(const Knowledge& knowledge, const Expression& expression) {
    const std::string& text = expression.text();
    std::string shown;
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && in_name(text[end])) ++end;
        if (end == at) end = at + 1;
        const std::string word = text.substr(at, end - at);
        const std::string to = address_of_name(knowledge, word);
        shown += to.empty() ? html::text(word) : html::link(to, word);
        at = end;
    }
    return shown.empty() ? "" : "<code>" + shown + "</code>";
}

Backward::Backward(const Knowledge& knowledge) {
    add_causes(knowledge);
    add_work(knowledge);
    add_rules(knowledge);
    add_sources(knowledge);
}

const std::vector<std::string>& Backward::to(const std::string& kind, const std::string& relation,
                                             Index index) const {
    static const std::vector<std::string> nothing;
    const auto relations = links_.find(kind + " " + relation);
    if (relations == links_.end()) return nothing;
    const auto found = relations->second.find(index);
    return found == relations->second.end() ? nothing : found->second;
}

void Backward::add(const std::string& kind, const std::string& relation, Index index,
                   const std::string& html) {
    if (index != none) links_[kind + " " + relation][index].push_back(html);
}

void Backward::add_causes(const Knowledge& knowledge) {
    for (const Cause& cause : knowledge.causes) {
        const std::string from = link("cause", cause);
        for (const Shows& shows : cause.shows) add("finding", "shown by", shows.finding, from);
        add("check", "proves", cause.proof, from);
        add("remedy", "cures", cause.remedy, from);
        add("part", "causes", cause.part, from);
    }
    for (const Complaint& complaint : knowledge.complaints) {
        for (const auto& [finding, reading] : complaint.says) {
            add("finding", "told by", finding,
                link("complaint", complaint) + ": " +
                    html::text(
                        at(knowledge.findings, finding).readings[static_cast<std::size_t>(reading)].text));
        }
    }
    for (const Finding& finding : knowledge.findings)
        add("part", "findings", finding.part, link("finding", finding));
}

void Backward::add_work(const Knowledge& knowledge) {
    for (const Check& check : knowledge.checks) {
        for (const Index caution : check.cautions)
            add("caution", "carried by", caution, link("check", check));
        for (const Index need : check.needs) add("need", "needed by", need, link("check", check));
    }
    for (const Remedy& remedy : knowledge.remedies) {
        for (const Index caution : remedy.cautions)
            add("caution", "carried by", caution, link("remedy", remedy));
        for (const Index sheet : remedy.worksheets)
            add("worksheet", "used by", sheet, link("remedy", remedy));
    }
    for (const Worksheet& sheet : knowledge.worksheets) {
        for (const WorksheetInput& input : sheet.inputs) {
            add("finding", "worked into", input.finding, link("worksheet", sheet));
            add("rig_field", "used by", input.rig_field, link("worksheet", sheet));
        }
    }
}

void Backward::add_rules(const Knowledge& knowledge) {
    static const std::map<Action::Kind, std::string> kinds = {
        {Action::Kind::favour, "cause"},    {Action::Kind::rule_out, "cause"},
        {Action::Kind::run, "worksheet"},   {Action::Kind::ask, "finding"},
        {Action::Kind::caution, "caution"}, {Action::Kind::defer, "deferral"},
        {Action::Kind::stop, "stop"}};
    for (const Rule& rule : knowledge.rules) {
        const std::string from = html::link(address("rule", rule), rule.id);
        for (const Action& action : rule.then) {
            const auto kind = kinds.find(action.kind);
            if (kind != kinds.end()) add(kind->second, "in rules", action.target, from);
        }
        for (const std::string& name : rule.when.names()) {
            add("finding", "in rules", find(knowledge.findings, name), from);
            if (name.rfind("rig.", 0) == 0) {
                add("rig_field", "in rules", find(knowledge.rig_fields, name.substr(4)), from);
            }
        }
    }
}

void Backward::add_sources(const Knowledge& knowledge) {
    const auto take = [&](const std::string& kind, const auto& entries) {
        for (const auto& entry : entries) {
            for (const Index source : entry.sources) add("source", "cited by", source, link(kind, entry));
        }
    };
    take("complaint", knowledge.complaints);
    take("finding", knowledge.findings);
    take("check", knowledge.checks);
    take("cause", knowledge.causes);
    take("same_cure", knowledge.same_cures);
    take("remedy", knowledge.remedies);
    take("worksheet", knowledge.worksheets);
    take("caution", knowledge.cautions);
    take("deferral", knowledge.deferrals);
    take("stop", knowledge.stops);
    take("rig_field", knowledge.rig_fields);
    take("history", knowledge.histories);
    for (const Rule& rule : knowledge.rules) {
        for (const Index source : rule.sources) {
            add("source", "cited by", source, html::link(address("rule", rule), rule.id));
        }
    }
}

}  // namespace hardover::book
