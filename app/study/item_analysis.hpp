// Which items of a set teach and which do not: how many had each right, how well each tells strong from weak
// learners, how reliable the whole is. Pure numbers; knows no items.
#pragma once

#include <optional>
#include <vector>

namespace hardover::study {

// Learners by items: 1 right, 0 wrong, -1 not answered. All rows equally long.
using AnswerTable = std::vector<std::vector<int>>;

struct Interval {
    double low = 0;
    double high = 0;
};

// How each learner stands: the mean over the answered items of the answer less the item's share right, so
// that a learner who met the harder items is not put lower for it. Without gaps it goes up and down with the
// total.
std::vector<double> standing(const AnswerTable& answers);

inline constexpr double edge_share = 0.27;

// Weights, adding to 1, of the best and the worst 27 % (T. L. Kelley 1939) of those learners who answered the
// item, by `standing`; learners tied at the edge count in part. All 0 when nobody answered.
struct EdgeGroups {
    std::vector<double> strong;
    std::vector<double> weak;
};
EdgeGroups edge_groups(const AnswerTable& answers, const std::vector<double>& standing, std::size_t item);

struct ItemFigures {
    int answers = 0;
    double share_right = 0;  // 0 without answers
    // Correlation of the item with the rest of the answers. Not set where either does not vary.
    std::optional<double> with_rest;
    // Share right among the best 27 % less that among the worst.
    double discrimination = 0;
};

std::vector<ItemFigures> item_figures(const AnswerTable& answers);

// G. F. Kuder and M. W. Richardson's formula 20 (1937), variance with divisor N; the table has no gaps. Not
// set with fewer than two items or when all learners have the same total.
std::optional<double> kuder_richardson_20(const AnswerTable& answers);
// The same without each item in turn.
std::vector<std::optional<double>> kuder_richardson_20_without(const AnswerTable& answers);

// Mean and standard deviation (divisor N - 1) of the items right; the table has no gaps and two learners.
struct Totals {
    double mean = 0;
    double deviation = 0;
};
Totals totals(const AnswerTable& answers);

struct Reliability {
    double value = 0;  // KR-20
    double error = 0;  // standard error
    Interval within_95;
    double measurement_error = 0;  // of one learner's total: deviation * sqrt(1 - KR-20)
    // Two totals closer than this are not shown to differ: 1.96 * sqrt(2) * measurement error.
    double apart = 0;
};
// KR-20 with its error: ln(1 - KR-20) is taken as normal with variance 2 k / ((k - 1) (N - 2)) for k items
// and N learners (D. G. Bonett, "Sample size requirements for testing and estimating coefficient alpha", J.
// Educ. Behav. Stat. 27, 2002; formula from memory). Not set where KR-20 is not, nor with fewer than three
// learners.
std::optional<Reliability> reliability(const AnswerTable& answers);

// E. B. Wilson's (1927) 95 % interval of a share; `of` is above 0.
Interval wilson_95(int right, int of);

// R. A. Fisher's (1921) 95 % interval of a correlation over `of` pairs; -1 to 1 with three pairs or fewer.
Interval correlation_95(double correlation, int of);

}  // namespace hardover::study
