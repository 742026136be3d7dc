#include "rules/reasoning/prepared_knowledge.hpp"

#include <algorithm>

#include "rules/reasoning/usable_shares.hpp"

namespace hardover {

namespace {

const std::string fact_prefix = "fact.";

bool in_range(Index index, std::size_t count) {
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

std::shared_ptr<const FaultNetwork> network_of(const Knowledge& knowledge,
                                               const std::set<Index>& complaints) {
    auto network = std::make_shared<FaultNetwork>();
    for (const Cause& cause : knowledge.causes) {
        std::vector<FaultLink>& links = network->causes.emplace_back();
        for (const Shows& shows : cause.shows) {
            if (!in_range(shows.finding, knowledge.findings.size())) continue;
            const auto f = static_cast<std::size_t>(shows.finding);
            const std::size_t readings = knowledge.findings[f].readings.size();
            if (shows.how_often.empty() || shows.how_often.size() != readings) continue;
            links.push_back({shows.finding, usable_link(shows.how_often)});
        }
    }
    const Settings& settings = knowledge.settings;
    const std::vector<std::vector<double>> typical = typical_shares(knowledge, complaints);
    for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
        const std::vector<double> stray = usable_stray(knowledge.findings[f], settings.stray);
        const double least = typical[f].empty() ? 0 : usable_not_listed_shows(settings.not_listed_shows);
        network->findings.push_back({stray, unlisted_share(stray, typical[f], least)});
    }
    return network;
}

}  // namespace

PreparedKnowledge::PreparedKnowledge(const Knowledge& knowledge) {
    auto all = std::make_shared<All>();
    all->knowledge = &knowledge;
    all->find_names();
    all->find_conditions();
    all->find_told();
    all->networks = std::make_unique<All::Network[]>(knowledge.complaints.size() + 1);
    all_ = std::move(all);
}

std::shared_ptr<const FaultNetwork> PreparedKnowledge::network(const std::set<Index>& complaints) const {
    const std::size_t count = knowledge().complaints.size();
    if (complaints.size() > 1) return network_of(knowledge(), complaints);
    const bool one = complaints.size() == 1 && in_range(*complaints.begin(), count);
    All::Network& kept = all_->networks[one ? at(*complaints.begin()) : count];
    std::call_once(kept.made, [&] { kept.network = network_of(knowledge(), complaints); });
    return kept.network;
}

int PreparedKnowledge::place_of(const std::string& name) const {
    const auto found = all_->place_of.find(name);
    return found == all_->place_of.end() ? -1 : found->second;
}

void PreparedKnowledge::All::add_name(const std::string& name, KnownName known) {
    place_of[name] = static_cast<int>(names.size());
    names.push_back(std::move(known));
}

void PreparedKnowledge::All::find_names() {
    add_name("history", {KnownName::Kind::history, none, -1, {}});
    add_name("complaint", {KnownName::Kind::complaint, none, -1, {}});
    first_rig_field = static_cast<int>(names.size());
    for (std::size_t i = 0; i < knowledge->rig_fields.size(); ++i) {
        add_name("rig." + knowledge->rig_fields[i].id, {KnownName::Kind::rig, static_cast<Index>(i), -1, {}});
    }
    first_finding = static_cast<int>(names.size());
    for (std::size_t i = 0; i < knowledge->findings.size(); ++i) {
        add_name(knowledge->findings[i].id, {KnownName::Kind::finding, static_cast<Index>(i), -1, {}});
    }
    for (std::size_t w = 0; w < knowledge->worksheets.size(); ++w) {
        const Worksheet& sheet = knowledge->worksheets[w];
        for (std::size_t r = 0; r < sheet.results.size(); ++r) {
            add_name(sheet.id + "." + sheet.results[r].id,
                     {KnownName::Kind::result, static_cast<Index>(w), static_cast<int>(r), {}});
        }
    }
    for (std::size_t r = 0; r < knowledge->rules.size(); ++r) {
        for (const Action& action : knowledge->rules[r].then) {
            if (action.kind != Action::Kind::derive) continue;
            const std::string name = fact_prefix + action.fact;
            if (!place_of.contains(name)) add_name(name, {KnownName::Kind::fact, none, -1, {}});
            names[static_cast<std::size_t>(place_of[name])].rules.push_back(static_cast<Index>(r));
        }
    }
}

// A name that nothing stands behind gets a place too: a fact no rule derives is no, anything else unknown.
PreparedCondition PreparedKnowledge::All::prepared(const Expression& condition) {
    PreparedCondition ready{&condition, {}};
    std::string text = condition.text();
    for (const std::string& name : condition.names()) {
        text += '\n' + name;
        if (!place_of.contains(name)) {
            const bool fact = name.starts_with(fact_prefix);
            add_name(name, {fact ? KnownName::Kind::fact : KnownName::Kind::nothing, none, -1, {}});
        }
        ready.names.push_back(place_of[name]);
        ready.by_fact =
            ready.by_fact || names[static_cast<std::size_t>(place_of[name])].kind == KnownName::Kind::fact;
    }
    if (!condition.empty()) {
        ready.when_nothing_known = condition.condition([](const std::string&) -> Value { return Unknown{}; });
    }
    ready.needed = most_telling(ready);
    ready.text = text_of.emplace(text, static_cast<int>(text_of.size())).first->second;
    return ready;
}

// Of the names without which the condition is not yes.
int PreparedKnowledge::All::most_telling(const PreparedCondition& condition) const {
    int most_telling = -1;
    for (int at : condition.condition->needed_names()) {
        const int name = condition.names[static_cast<std::size_t>(at)];
        if (names[static_cast<std::size_t>(name)].kind == KnownName::Kind::finding) return name;
        most_telling = name;
    }
    return most_telling;
}

void PreparedKnowledge::All::find_conditions() {
    for (std::size_t r = 0; r < knowledge->rules.size(); ++r) {
        const Rule& rule = knowledge->rules[r];
        rule_when.push_back(prepared(rule.when));
        const bool derives = std::any_of(rule.then.begin(), rule.then.end(), [](const Action& action) {
            return action.kind == Action::Kind::derive;
        });
        if (derives) deriving_rules.push_back(static_cast<Index>(r));
    }
    for (const Cause& cause : knowledge->causes) {
        cause_possible_when.push_back(prepared(cause.possible_when));
        cause_proved_when.push_back(prepared(cause.proved_when));
        std::vector<Index>& proving = proving_findings.emplace_back();
        for (int place : cause_proved_when.back().names) {
            const KnownName& name = names[static_cast<std::size_t>(place)];
            if (name.kind == KnownName::Kind::finding) proving.push_back(name.index);
        }
    }
    for (const Finding& finding : knowledge->findings) {
        finding_possible_when.push_back(prepared(finding.possible_when));
    }
    for (const Deferral& deferral : knowledge->deferrals) deferral_when.push_back(prepared(deferral.when));
    for (const Need& need : knowledge->needs) {
        need_possible_when.push_back(prepared(need.possible_when));
        need_takes_when.push_back(prepared(need.takes_when));
    }
}

void PreparedKnowledge::All::find_told() {
    told_by_complaints.resize(knowledge->findings.size());
    for (std::size_t c = 0; c < knowledge->complaints.size(); ++c) {
        for (const auto& [finding, reading] : knowledge->complaints[c].says) {
            if (!in_range(finding, told_by_complaints.size())) continue;
            told_by_complaints[static_cast<std::size_t>(finding)].push_back({static_cast<Index>(c), reading});
        }
    }
}

}  // namespace hardover
