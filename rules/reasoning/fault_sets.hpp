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

// ln P(exactly this one fault, answers) of every cause and, last, of the unlisted; -inf where impossible or
// where it does not meet the requirements alone.
std::vector<double> log_weights_of_singles(const FaultNetwork& network, const FaultCase& given);

}  // namespace hardover
