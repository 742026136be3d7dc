// The numeric core of the ranking: causes, the readings they give, and the exact probabilities of all sets of
// faults. Pure numbers: knows no texts, no rules, no boats.
//
// Model (noisy-MAX with a leak; "not on this list" is one more cause that every finding may show):
//   - cause i is present with prior[i], independently of the others;
//   - every present cause gives each finding it is linked to a level of its own, with probability
//     how_often[level]; `stray` does the same with no cause at all; level 0 is the worst;
//   - the worst of these levels shows.
#pragma once

#include <vector>

namespace hardover {

// What one cause alone does to one finding.
struct FaultLink {
    int finding = 0;
    std::vector<double> how_often;  // per level, worst first; adds to 1
};

// What does not change while answers come in.
struct FaultNetwork {
    struct Finding {
        std::vector<double> stray;     // per level; adds to 1
        std::vector<double> unlisted;  // what "not on this list" gives; adds to 1
    };
    std::vector<std::vector<FaultLink>> causes;
    std::vector<Finding> findings;
};

// At least one of these faults is present.
struct Requirement {
    std::vector<bool> causes;
    bool unlisted = false;
};

// Findings whose likelihood is a sum of products: one term or the other holds (tied.hpp).
struct Tied {
    std::vector<int> findings;
    std::vector<std::vector<std::vector<double>>> terms;  // per term, per finding: per level
};

// One job: priors, what the answers say, and what is known about the set of faults as a whole.
struct FaultCase {
    std::vector<double> prior;
    double unlisted_prior = 0;
    std::vector<std::vector<double>> likelihood;  // per finding: per level; empty: not answered, or tied
    std::vector<Requirement> requirements;
    std::vector<Tied> tied;
};

struct PosteriorLimits {
    double width_bits = 20;          // log2 of the largest table
    double table_entries = 1 << 24;  // of all tables kept for the way back (8 bytes each)
};

struct Posterior {
    bool possible = true;          // false: the answers have probability 0 and nothing below has a meaning
    double log_evidence = 0;       // ln P(answers and requirements); an upper bound when dissolved > 0
    std::vector<double> marginal;  // P(cause present | answers, requirements)
    std::vector<double> log_odds;  // ln of its odds, exact also near 0 and 1; -inf for prior 0
    double unlisted = 0;
    double unlisted_log_odds = 0;
    double width_bits = 0;  // log2 of the largest table used
    int dissolved = 0;  // findings replaced by their product bound because the tables would grow too large

    // Only when dissolved > 0: upper bounds of ln P(cause present, answers) and ln P(cause absent, answers).
    std::vector<double> log_present;
    std::vector<double> log_absent;
    double log_unlisted_present = 0;
    double log_unlisted_absent = 0;
};

// Exact over all sets of faults by elimination of causes, keeping for every finding that is still open the
// worst level given so far (the frontier). Every term is positive: no cancellation. When a table would pass
// the limits, the findings with the least to say are replaced by a product of factors that is never below
// their likelihood (`dissolved`), and the result is an approximation with bounds.
Posterior posterior(const FaultNetwork& network, const FaultCase& given, const PosteriorLimits& limits = {});

// Posterior::log_evidence alone, for a fraction of the work.
double log_evidence(const FaultNetwork& network, const FaultCase& given, const PosteriorLimits& limits = {});

// Probability that no worse level than each is given: out[k] = P(level >= k). Worst first, so out[0] = 1 for
// a distribution.
std::vector<double> no_worse_than(const std::vector<double>& distribution);

}  // namespace hardover
