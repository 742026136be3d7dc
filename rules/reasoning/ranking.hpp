// The causes in order, the heaviest sets of faults, and what speaks for and against each cause.
// Numbers from fault_network; decides nothing.
#pragma once

#include <string>
#include <vector>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/fault_sets.hpp"

namespace hardover {

// What is still wrong: after remedies that did not cure, without the causes they put right.
struct Hypothesis {
    std::vector<int> causes;  // ascending
    bool unlisted = false;
    double probability = 0;  // of all hypotheses, listed or not
};

struct Ranking {
    bool possible = true;
    std::vector<RankedCause> causes;  // most probable first
    double not_listed = 0;
    double several = 0;
    std::vector<Hypothesis> hypotheses;  // heaviest first
    double bound = 0;
    double log_evidence = 0;
};

inline constexpr std::size_t most_hypotheses = 96;
inline constexpr double negligible = 1e-5;  // sets less probable than this are not listed

// Without weights. Flags `proved` are not set here.
Ranking rank(const DiagnosisCase& diagnosis);

// The change of every cause's log-odds from "something is wrong" to all evidence, shared out over the items.
// Two chains are averaged, one in knowledge order and one in the reverse, so that the shares add up to the
// whole change and do not depend on the order of entry (I. J. Good's weight of evidence, in decibans). In a
// case too wide for many exact runs the steps between are approximate; the sum is as exact as the ranking.
void add_weights(const DiagnosisCase& diagnosis, Ranking& ranking);

// Items that together have probability 0, none of which can be left out. Empty when nothing is wrong with
// them.
std::vector<EvidenceItem> smallest_conflict(const DiagnosisCase& diagnosis);

}  // namespace hardover
