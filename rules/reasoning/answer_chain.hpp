// One finding told several times while remedies were tried: what the answers say together. What was not
// touched goes on giving the reading it gave; what a remedy put right no longer gives one. Pure numbers.
//
// The causes of the finding fall into groups by the last answer they could still show in; t[n] is the worst
// level that group n gives (the last group with stray and the unlisted). Answer n then showed the worst of
// t[n], t[n+1], ..., and the answers together have the likelihood
//     product over n of likelihood[n][worst of t[n] ... t[last]].
#pragma once

#include <vector>

namespace hardover {

// That likelihood as a sum of products: per term, per group, per level. One term when every answer but the
// first leaves one level possible. Empty when the answers cannot all be right.
std::vector<std::vector<std::vector<double>>> chain_terms(const std::vector<std::vector<double>>& likelihood);

// The two answers can both be right without either being a misreading: some levels, the earlier at least as
// bad as the later (or equal, when nothing between them was touched), are more likely than that.
bool both_may_be_right(const std::vector<double>& earlier, const std::vector<double>& later, bool touched,
                       double misreading);

}  // namespace hardover
