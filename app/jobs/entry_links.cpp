// What refers to what, and names inside conditions.
#include "app/jobs/entry_page.hpp"

#include <algorithm>
#include <set>

#include "app/jobs/word_roots.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

bool in_name(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.';
}

// The entry a name of the rule language stands for; no kind when it is none.
EntryKey entry_of_name(const Knowledge& knowledge, const std::string& name) {
    if (name.rfind("rig.", 0) == 0) {
        return find(knowledge.rig_fields, name.substr(4)) == none ? EntryKey{}
                                                                  : EntryKey{"rig_field", name.substr(4)};
    }
    if (find(knowledge.findings, name) != none) return {"finding", name};
    const std::size_t dot = name.find('.');
    const std::string sheet = name.substr(0, dot);
    if (dot != std::string::npos && find(knowledge.worksheets, sheet) != none) return {"worksheet", sheet};
    return {};
}

}  // namespace

std::string EntryText::plain() const {
    std::string text;
    for (const EntryPiece& piece : pieces) text += piece.text;
    return text;
}

EntryText link_to(const std::string& kind, const Entry& entry) {
    return EntryText(EntryPiece{entry.name.empty() ? entry.id : entry.name, {kind, entry.id}});
}

EntryText condition_text(const Knowledge& knowledge, const Expression& expression) {
    const std::string& text = expression.text();
    EntryText shown;
    std::string between;
    const auto put = [&](const EntryKey& to, const std::string& word) {
        if (!between.empty()) shown += EntryText(EntryPiece{between, {}, true});
        between.clear();
        if (!word.empty()) shown += EntryText(EntryPiece{word, to, true});
    };
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && in_name(text[end])) ++end;
        if (end == at) end = at + 1;
        const std::string word = text.substr(at, end - at);
        const EntryKey to = entry_of_name(knowledge, word);
        if (to.kind.empty()) {
            between += word;
        } else {
            put(to, word);
        }
        at = end;
    }
    put({}, "");
    return shown;
}

EntryLinks::EntryLinks(const Knowledge& knowledge) {
    add_causes(knowledge);
    add_words(knowledge);
    add_work(knowledge);
    add_rules(knowledge);
    add_sources(knowledge);
}

const std::vector<EntryText>& EntryLinks::to(const std::string& kind, const std::string& relation,
                                             Index index) const {
    static const std::vector<EntryText> nothing;
    const auto relations = links_.find(kind + " " + relation);
    if (relations == links_.end()) return nothing;
    const auto found = relations->second.find(index);
    return found == relations->second.end() ? nothing : found->second;
}

void EntryLinks::add(const std::string& kind, const std::string& relation, Index index,
                     const EntryText& from) {
    if (index != none) links_[kind + " " + relation][index].push_back(from);
}

void EntryLinks::add_causes(const Knowledge& knowledge) {
    for (const Cause& cause : knowledge.causes) {
        const EntryText from = link_to("cause", cause);
        for (const Shows& shows : cause.shows) add("finding", "shown by", shows.finding, from);
        add("check", "proves", cause.proof, from);
        for (const Index origin : cause.comes_from) add("cause", "brings about", origin, from);
        add("remedy", "cures", cause.remedy, from);
        add("part", "causes", cause.part, from);
    }
    for (const Remedy& remedy : knowledge.remedies) {
        for (const Index cause : remedy.also_cures)
            add("cause", "also cured by", cause, link_to("remedy", remedy));
    }
    for (const Complaint& complaint : knowledge.complaints) {
        for (const auto& [finding, reading] : complaint.says) {
            add("finding", "told by", finding,
                link_to("complaint", complaint) + ": " +
                    EntryText(
                        at(knowledge.findings, finding).readings[static_cast<std::size_t>(reading)].text));
        }
    }
    for (const Finding& finding : knowledge.findings)
        add("part", "findings", finding.part, link_to("finding", finding));
}

// Each complaint once, with the first phrase of it that has one of the words.
void EntryLinks::add_words(const Knowledge& knowledge) {
    const WordRoots roots(knowledge.same_words);
    std::map<std::string, Index> of_root;
    for (std::size_t i = 0; i < knowledge.same_words.size(); ++i)
        of_root[WordRoots::root_of_entry(knowledge.same_words[i])] = static_cast<Index>(i);
    for (const Complaint& complaint : knowledge.complaints) {
        std::set<Index> said;
        for (const std::string& phrase : complaint.words) {
            for (const std::string& root : roots.of(phrase)) {
                const auto same = of_root.find(root);
                if (same == of_root.end() || !said.insert(same->second).second) continue;
                add("same_words", "said in", same->second,
                    link_to("complaint", complaint) + (": " + jobs_detail::quoted(phrase)));
            }
        }
    }
}

void EntryLinks::add_work(const Knowledge& knowledge) {
    for (const Check& check : knowledge.checks) {
        for (const Index caution : check.cautions)
            add("caution", "carried by", caution, link_to("check", check));
        for (const Index need : check.needs) add("need", "needed by", need, link_to("check", check));
    }
    for (const Finding& finding : knowledge.findings) {
        for (const Index need : finding.needs) add("need", "needed by", need, link_to("finding", finding));
    }
    for (const Need& need : knowledge.needs) {
        for (const Index taken : need.takes) add("need", "needed by", taken, link_to("need", need));
    }
    for (const Caution& caution : knowledge.cautions) {
        if (caution.comes_with != none) {
            add("need", "brings", caution.comes_with, link_to("caution", caution));
        }
    }
    for (const Stop& stop : knowledge.stops) {
        for (const Index need : stop.bars) add("need", "barred by", need, link_to("stop", stop));
    }
    for (const Remedy& remedy : knowledge.remedies) {
        for (const Index caution : remedy.cautions)
            add("caution", "carried by", caution, link_to("remedy", remedy));
        for (const Index sheet : remedy.worksheets)
            add("worksheet", "used by", sheet, link_to("remedy", remedy));
    }
    for (const Worksheet& sheet : knowledge.worksheets) {
        for (const WorksheetInput& input : sheet.inputs) {
            add("finding", "worked into", input.finding, link_to("worksheet", sheet));
            add("rig_field", "used by", input.rig_field, link_to("worksheet", sheet));
        }
    }
}

void EntryLinks::add_rules(const Knowledge& knowledge) {
    static const std::map<Action::Kind, std::string> kinds = {
        {Action::Kind::favour, "cause"},    {Action::Kind::rule_out, "cause"},
        {Action::Kind::run, "worksheet"},   {Action::Kind::ask, "finding"},
        {Action::Kind::caution, "caution"}, {Action::Kind::defer, "deferral"},
        {Action::Kind::stop, "stop"}};
    for (const Rule& rule : knowledge.rules) {
        const EntryText from = link_to("rule", rule);
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

void EntryLinks::add_sources(const Knowledge& knowledge) {
    const auto take = [&](const std::string& kind, const auto& entries) {
        for (const auto& entry : entries) {
            for (const Index source : entry.sources) add("source", "cited by", source, link_to(kind, entry));
        }
    };
    take("complaint", knowledge.complaints);
    take("same_words", knowledge.same_words);
    take("finding", knowledge.findings);
    take("check", knowledge.checks);
    take("cause", knowledge.causes);
    for (const Cause& cause : knowledge.causes) {
        for (const OriginSource& origin : cause.origin_sources) {
            for (const Index source : origin.sources) {
                if (std::find(cause.sources.begin(), cause.sources.end(), source) == cause.sources.end())
                    add("source", "cited by", source, link_to("cause", cause));
            }
        }
    }
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
            add("source", "cited by", source, link_to("rule", rule));
        }
    }
}

}  // namespace hardover
