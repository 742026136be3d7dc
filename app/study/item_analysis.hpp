// Which items of a set teach and which do not: how many had each right, how well each tells strong from weak
// learners, how reliable the whole is. Pure numbers; knows no items.
#pragma once

#include <optional>
#include <vector>

namespace hardover::study {

// Learners by items, 1 right or 0 wrong; every learner answered every item.
using AnswerTable = std::vector<std::vector<int>>;

struct ItemFigures {
    double share_right = 0;
    // Correlation of the item with the rest of the set. Not set where either does not vary.
    std::optional<double> with_rest;
    // Share right among the best 27 % less that among the worst; learners tied at the edge count in part.
    double discrimination = 0;
};

std::vector<ItemFigures> item_figures(const AnswerTable& answers);

// G. F. Kuder and M. W. Richardson's formula 20 (1937), variance with divisor N. Not set with fewer than two
// items or when all learners have the same total.
std::optional<double> kuder_richardson_20(const AnswerTable& answers);

// E. B. Wilson's (1927) 95 % interval of a share; `of` is above 0.
struct Interval {
    double low = 0;
    double high = 0;
};
Interval wilson_95(int right, int of);

}  // namespace hardover::study
