// Can the causes be proved, and is there a rig on which each question, cause, rule and deferral comes into
// play.
#include <algorithm>

#include "rules/reading/rigs.hpp"
#include "rules/reading/sense.hpp"

namespace hardover::reading_detail {
namespace {

// A proof that the cause is not said to show does nothing for its rank.
void check_proof_is_shown(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        const auto& names = cause.proved_when.names();
        const bool shown = std::any_of(cause.shows.begin(), cause.shows.end(), [&](const Shows& shows) {
            return std::find(names.begin(), names.end(), knowledge.findings[shows.finding].id) != names.end();
        });
        if (shown) continue;
        faults.push_back({cause.place, "'" + cause.id + "' is proved by a finding that it does not show",
                          "add the finding to its 'shows'", true});
    }
}

template <typename E>
void check_reachable(const std::vector<E>& entries, const char* kind, const Knowledge& knowledge,
                     std::vector<Fault>& faults) {
    for (const E& entry : entries) {
        if (!never_hold_together({&entry.possible_when}, knowledge)) continue;
        faults.push_back(
            {entry.place,
             std::string("there is no rig on which the ") + kind + " '" + entry.id + "' is possible",
             "look at its 'possible_when'", true});
    }
}

// One remedy for both leaves no order to keep.
void check_origins_matter(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        for (const Index origin : cause.comes_from) {
            const Cause& before = knowledge.causes[static_cast<std::size_t>(origin)];
            if (before.remedy != cause.remedy) continue;
            faults.push_back({cause.place,
                              "'" + cause.id + "' comes from '" + before.id + "' and has the same remedy",
                              "leave it out of 'comes_from', or give it a remedy of its own", true});
        }
    }
}

// What a remedy is the remedy of needs no further word.
void check_also_cured(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (std::size_t i = 0; i < knowledge.remedies.size(); ++i) {
        for (const Index also : knowledge.remedies[i].also_cures) {
            const Cause& cause = knowledge.causes[static_cast<std::size_t>(also)];
            if (cause.remedy != static_cast<Index>(i)) continue;
            faults.push_back({knowledge.remedies[i].place,
                              "'" + knowledge.remedies[i].id + "' is the remedy of '" + cause.id + "' anyway",
                              "leave it out of 'also_cures'", true});
        }
    }
}

void check_odds(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        const bool ever =
            std::any_of(cause.odds.begin(), cause.odds.end(), [](double odds) { return odds > 0; });
        if (ever || cause.odds.empty()) continue;
        faults.push_back({cause.place, "'" + cause.id + "' is impossible: its odds are 0 in every history",
                          "give odds above 0 where it turns up at all", true});
    }
}

// Rules and deferrals whose condition no rig and history can meet.
void check_ever_raised(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Rule& rule : knowledge.rules) {
        if (!never_hold_together({&rule.when}, knowledge)) continue;
        faults.push_back(
            {rule.place, "the rule '" + rule.id + "' can never fire", "look at its 'when'", true});
    }
    for (const Deferral& deferral : knowledge.deferrals) {
        if (!never_hold_together({&deferral.when}, knowledge)) continue;
        faults.push_back({deferral.place, "nothing can raise the deferral '" + deferral.id + "'",
                          "look at its 'when'", true});
    }
}

}  // namespace

void check_causes(const Knowledge& knowledge, std::vector<Fault>& faults) {
    check_proof_is_shown(knowledge, faults);
    check_reachable(knowledge.causes, "cause", knowledge, faults);
    check_reachable(knowledge.findings, "finding", knowledge, faults);
    check_origins_matter(knowledge, faults);
    check_also_cured(knowledge, faults);
    check_odds(knowledge, faults);
    check_ever_raised(knowledge, faults);
}

}  // namespace hardover::reading_detail
