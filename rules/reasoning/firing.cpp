#include "rules/reasoning/firing.hpp"

#include <algorithm>

namespace hardover {

namespace {

void add_once(std::vector<Index>& list, Index index) {
    if (index != none && std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

void act(const Action& action, RuleEvidence& evidence, Fired& fired) {
    switch (action.kind) {
        case Action::Kind::favour:
            evidence.favours.push_back({action.target, action.by});
            break;
        case Action::Kind::rule_out:
            evidence.rules_out.push_back(action.target);
            break;
        case Action::Kind::derive:
            fired.derived[action.fact] = true;
            break;
        case Action::Kind::run:
            add_once(fired.runs, action.target);
            break;
        case Action::Kind::ask:
            fired.asks.push_back({action.target, evidence.rule});
            break;
        case Action::Kind::caution:
            add_once(fired.cautions, action.target);
            break;
        case Action::Kind::defer:
            add_once(fired.deferrals, action.target);
            break;
        case Action::Kind::stop:
            add_once(fired.stops, action.target);
            break;
    }
}

}  // namespace

Fired fire(const Knowledge& knowledge, Situation& situation) {
    Fired fired;
    const PreparedKnowledge& prepared = situation.prepared();
    for (std::size_t r = 0; r < knowledge.rules.size(); ++r) {
        const auto index = static_cast<Index>(r);
        if (!situation.rule_fires(index)) continue;
        fired.rules.push_back({index, situation.known_names(prepared.rule_when(index))});
        RuleEvidence evidence;
        evidence.rule = index;
        for (const Action& action : knowledge.rules[r].then) act(action, evidence, fired);
        if (!evidence.favours.empty() || !evidence.rules_out.empty()) {
            fired.evidence.push_back(std::move(evidence));
        }
    }
    for (const Index rule : prepared.deriving_rules()) {
        for (const Action& action : knowledge.rules[static_cast<std::size_t>(rule)].then) {
            if (action.kind == Action::Kind::derive && situation.derived(action.fact) == Truth::no) {
                fired.derived[action.fact] = false;
            }
        }
    }
    for (std::size_t d = 0; d < knowledge.deferrals.size(); ++d) {
        if (situation.holds(prepared.deferral_when(static_cast<Index>(d))) == Truth::yes) {
            add_once(fired.deferrals, static_cast<Index>(d));
        }
    }
    std::sort(fired.deferrals.begin(), fired.deferrals.end());
    for (const Index stop : fired.stops) {
        const std::vector<Index>& bars = knowledge.stops[static_cast<std::size_t>(stop)].bars;
        fired.barred.insert(bars.begin(), bars.end());
    }
    for (std::size_t n = 0; n < knowledge.needs.size(); ++n) {
        if (situation.holds(prepared.need_possible_when(static_cast<Index>(n))) == Truth::no) {
            fired.barred.insert(static_cast<Index>(n));
        }
    }
    return fired;
}

}  // namespace hardover
