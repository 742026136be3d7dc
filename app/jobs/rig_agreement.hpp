// Holds the table of causes and findings against the numeric boat: does each cause show there what the table
// says it shows? Pure: knowledge and a seed in, a list out.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// More than this many steps of the how_often scale apart is a disagreement.
inline constexpr double agreed_steps = 1;

struct Disagreement {
    Index cause = none;
    Index finding = none;
    int reading = -1;    // this reading or a worse one
    double table = 0;    // how often by the table, stray included
    double boats = 0;    // share of the sampled boats, stray included
    int sampled = 0;     // boats on which the finding can be told
    std::string reason;  // as the cause explains it; empty: not explained
};

// A reason in `differs` for a finding on which table and boat agree.
struct IdleReason {
    Index cause = none;
    Index finding = none;
};

struct Agreement {
    int causes = 0;  // that say how they are on the rig
    int pairs = 0;   // cause and finding that were compared
    int surveys = 0;
    int unsettled = 0;  // surveys that came to no steady state, left out
    std::vector<Disagreement> disagreements;
    std::vector<IdleReason> idle;

    int unexplained() const;
};

struct AgreementSample {
    int boats = 40;  // for each cause, those on which it is possible
    std::uint64_t seed = 1;
};

// Error: the how_often scale has no words to count steps by; a fault the numeric boat refuses; a cause whose
// surveys settle on fewer than half of its boats.
Result<Agreement> compare_with_rig(const Knowledge& knowledge, const AgreementSample& sample);

// Where a share stands on the scale: 0 at its smallest word, one more at each next, in between in proportion.
double scale_position(const std::vector<double>& ascending_words, double share);

}  // namespace hardover
