// Before anything is put right or help is called: is it, after all, none of the causes that come first? The
// plan of least minutes leaves rare causes to the remedy that fails. A technician who has the boat before him
// rather looks once more while a look is cheap. Pure numbers; knows nothing of remedies.
#pragma once

#include <optional>
#include <vector>

#include "rules/reasoning/outlook.hpp"
#include "rules/reasoning/ranking.hpp"

namespace hardover {

// Causes that come first: as many as a technician keeps in mind.
inline constexpr std::size_t kept_in_mind = 3;

// What the look is taken before: help called without anything tried, or whatever else ends the asking.
enum class Before { remedy, help };

// The question that tells most a minute on whether what is wrong is beyond the first causes of the ranking;
// nothing where none tells enough. `hypotheses` are those of the decision. Something wrong that is not on the
// list is left out: no question finds it.
std::optional<int> narrowing_question(const Decision& decision, const std::vector<Hypothesis>& hypotheses,
                                      const std::vector<RankedCause>& ranked, Before before);

// What an answer tells of a doubt, as a share of all there is to tell: the mutual information of the two over
// the entropy of the doubt (Shannon 1948). `doubt` is its probability, between 0 and 1; the chances of the
// readings, where it is not so and where it is, add to 1.
double share_told(double doubt, const std::vector<double>& if_not, const std::vector<double>& if_so);

}  // namespace hardover
