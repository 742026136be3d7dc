// Cases in which some findings are tied: their common likelihood is a sum of products. Such a case is a sum
// of plain cases, one for each choice of terms, and so are the weights of its fault sets. Pure numbers.
#pragma once

#include <vector>

#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/fault_sets.hpp"

namespace hardover {

// The plain cases: every choice of one term from each tie.
std::vector<FaultCase> untied(const FaultCase& given);

// As posterior() and heaviest_sets(), which call these for cases with ties.
Posterior posterior_of_tied(const FaultNetwork& network, const FaultCase& given,
                            const PosteriorLimits& limits);
std::vector<WeighedSet> heaviest_sets_of_tied(const FaultNetwork& network, const FaultCase& given,
                                              std::size_t most);

// P(each level of a finding | exactly these faults).
std::vector<double> levels_shown(const FaultNetwork& network, int finding, const std::vector<int>& causes,
                                 bool unlisted);

// ln P(exactly these faults, answers), the requirements aside. With or without ties.
double log_weight_of_set(const FaultNetwork& network, const FaultCase& given, const std::vector<int>& causes,
                         bool unlisted);

}  // namespace hardover
