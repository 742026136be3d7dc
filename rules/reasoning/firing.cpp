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

// By stops and by the rig; then, until nothing is added, what takes another need that is not to be had.
std::set<Index> barred_needs(const Knowledge& knowledge, Situation& situation,
                             const std::vector<Index>& stops) {
    const PreparedKnowledge& prepared = situation.prepared();
    std::set<Index> barred;
    for (const Index stop : stops) {
        const std::vector<Index>& bars = knowledge.stops[static_cast<std::size_t>(stop)].bars;
        barred.insert(bars.begin(), bars.end());
    }
    const auto count = static_cast<Index>(knowledge.needs.size());
    for (Index need = 0; need < count; ++need) {
        if (situation.holds(prepared.need_possible_when(need)) == Truth::no) barred.insert(need);
    }
    const auto missing = [&](Index need) {
        return barred.contains(need) || situation.facts().unavailable.contains(need);
    };
    for (std::size_t before = barred.size() + 1; before != barred.size();) {
        before = barred.size();
        for (Index need = 0; need < count; ++need) {
            const std::vector<Index>& takes = knowledge.needs[static_cast<std::size_t>(need)].takes;
            if (std::any_of(takes.begin(), takes.end(), missing) &&
                situation.holds(prepared.need_takes_when(need)) == Truth::yes) {
                barred.insert(need);
            }
        }
    }
    return barred;
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
    fired.barred = barred_needs(knowledge, situation, fired.stops);
    return fired;
}

}  // namespace hardover
