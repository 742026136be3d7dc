// Can the causes be proved, and is there a rig on which each question, cause, rule and deferral comes into
// play.
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

#include "rules/reading/rigs.hpp"
#include "rules/reading/sense.hpp"

namespace hardover::reading_detail {
namespace {

bool shows_its_proof(const Knowledge& knowledge, const Cause& cause) {
    const auto& names = cause.proved_when.names();
    return std::any_of(cause.shows.begin(), cause.shows.end(), [&](const Shows& shows) {
        return std::find(names.begin(), names.end(), knowledge.findings[shows.finding].id) != names.end();
    });
}

// A proof that the cause is not said to show does nothing for its rank.
void check_proof_is_shown(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        if (shows_its_proof(knowledge, cause)) continue;
        faults.push_back({cause.place, "'" + cause.id + "' is proved by a finding that it does not show",
                          "add the finding to its 'shows'", true});
    }
}

// A proof is a sign at least so many times as frequent on boats with the cause as on boats without any listed
// one: "strong" evidence begins there (R. E. Kass and A. E. Raftery, "Bayes factors", Journal of the American
// Statistical Association 90, 1995). A reading that sound boats show oftener proves nothing.
constexpr double strong_evidence = 20;

// Shares of boats per reading of a finding, with a cause and with none.
struct ProofSign {
    const Finding* finding = nullptr;
    std::vector<double> with;
    std::vector<double> without;
};

// The worse of what the cause and what stray chance gives shows.
std::vector<double> worse_of(const std::vector<double>& cause, const std::vector<double>& stray) {
    std::vector<double> shown;
    double cause_left = 1;
    double stray_left = 1;
    for (std::size_t k = 0; k < stray.size(); ++k) {
        const double before = cause_left * stray_left;
        cause_left -= cause[k];
        stray_left -= stray[k];
        shown.push_back(before - cause_left * stray_left);
    }
    return shown;
}

std::vector<ProofSign> proof_signs(const Knowledge& knowledge, const Cause& cause) {
    std::vector<ProofSign> signs;
    for (const std::string& name : cause.proved_when.names()) {
        const Index finding = find(knowledge.findings, name);
        if (finding == none || knowledge.findings[finding].readings.empty()) continue;
        const std::vector<double>& stray = knowledge.findings[finding].stray;
        ProofSign sign{&knowledge.findings[finding], stray, stray};
        for (const Shows& shows : cause.shows) {
            if (shows.finding == finding) sign.with = worse_of(shows.how_often, stray);
        }
        signs.push_back(std::move(sign));
    }
    return signs;
}

// Shares of boats on which the proof holds, whatever is not among the signs left unknown.
struct ProofShares {
    double with = 0;
    double without = 0;
};

ProofShares shares_proved(const Cause& cause, const std::vector<ProofSign>& signs) {
    ProofShares shares;
    std::map<std::string, Value> values;
    const auto lookup = [&](const std::string& name) {
        const auto value = values.find(name);
        return value == values.end() ? Value{Unknown{}} : value->second;
    };
    const std::function<void(std::size_t, ProofShares)> go_through = [&](std::size_t n, ProofShares now) {
        if (n == signs.size()) {
            if (cause.proved_when.condition(lookup) != Truth::yes) return;
            shares.with += now.with;
            shares.without += now.without;
            return;
        }
        const Finding& finding = *signs[n].finding;
        for (std::size_t k = 0; k < finding.readings.size(); ++k) {
            values[finding.id] = Choice{{finding.readings[k].id}};
            go_through(n + 1, {now.with * signs[n].with[k], now.without * signs[n].without[k]});
        }
    };
    go_through(0, {1, 1});
    return shares;
}

// Work that needs no parts and no more time than this may be done on a likely sign, and showing a customer
// that nothing is wrong rests on what sound boats show. From memory.
constexpr double small_work = 15;

bool is_small_work(const Knowledge& knowledge, const Cause& cause) {
    const Remedy& remedy = knowledge.remedies[static_cast<std::size_t>(cause.remedy)];
    return remedy.parts.empty() && remedy.minutes <= small_work;
}

std::string of_1000(double share) {
    return std::to_string(std::lround(1000 * share)) + " of 1,000 boats";
}

void check_proof_is_strong(const Knowledge& knowledge, std::vector<Fault>& faults) {
    for (const Cause& cause : knowledge.causes) {
        if (!shows_its_proof(knowledge, cause) || is_small_work(knowledge, cause)) continue;
        const ProofShares shares = shares_proved(cause, proof_signs(knowledge, cause));
        if (!(shares.without > 0) || shares.with >= strong_evidence * shares.without) continue;
        faults.push_back({cause.place,
                          "the proof of '" + cause.id + "' does not prove it: it is met on " +
                              of_1000(shares.with) + " with it and on " + of_1000(shares.without) +
                              " without",
                          "ask more of 'proved_when', or give sound boats a reading of their own", true});
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
    check_proof_is_strong(knowledge, faults);
    check_reachable(knowledge.causes, "cause", knowledge, faults);
    check_reachable(knowledge.findings, "finding", knowledge, faults);
    check_reachable(knowledge.needs, "need", knowledge, faults);
    check_origins_matter(knowledge, faults);
    check_also_cured(knowledge, faults);
    check_odds(knowledge, faults);
    check_ever_raised(knowledge, faults);
}

}  // namespace hardover::reading_detail
