// The heaviest sets of faults of a case, with exact weights. Pure numbers; says nothing about sets it did not
// list except through the mass they leave.
#pragma once

#include <vector>

#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/log_sum.hpp"

namespace hardover {

struct WeighedSet {
    std::vector<int> causes;  // ascending
    bool unlisted = false;
    double log_weight = 0;  // ln P(exactly these faults, answers); compare with Posterior::log_evidence

    std::size_t size() const { return causes.size() + (unlisted ? 1 : 0); }
};

// Sets meeting all requirements, heaviest first, at most `most`, none below `log_least`. Grown one fault at a
// time from the heaviest `most` sets of each size: complete when there are at most 8 causes and `most` is
// 256.
std::vector<WeighedSet> heaviest_sets(const FaultNetwork& network, const FaultCase& given, std::size_t most,
                                      double log_least = never);

// Up to so many causes that do not count every set of them is gone through, twice as many sets for each; with
// more, the answers' probability is worked out anew for each weight asked for.
inline constexpr std::size_t most_aside = 10;

// ln P(this cause, none of the other counted ones, not the unlisted, answers and requirements) of every
// counted cause, whatever there is of those not counted (ln 0 of those), and last ln P(the unlisted, none of
// the counted,
// ...).
std::vector<double> log_weights_alone(const FaultNetwork& network, const FaultCase& given,
                                      const std::vector<bool>& counted, std::size_t aside = most_aside);

// ln P(exactly these faults among the counted ones, answers and requirements), whatever there is of the
// others, for each of `sets` (which name counted causes only).
std::vector<double> log_weights_among(const FaultNetwork& network, const FaultCase& given,
                                      const std::vector<bool>& counted, const std::vector<WeighedSet>& sets,
                                      std::size_t aside = most_aside);

}  // namespace hardover
