// What an answer is worth: sureness by proper rules, orders by pairs, several right ones by hits and misses.
// Pure numbers, all marks from 0 to 1 unless stated; knows no items.
#pragma once

#include <utility>
#include <vector>

namespace hardover::study {

// Penalty for having said `sure` (chance of being right), 0 best: G. W. Brier 1950, and the logarithmic rule
// (natural logarithm). Both are least when the honest chance is said.
double brier_penalty(double sure, bool right);
double log_penalty(double sure, bool right);

// The same for shares over several possibilities of which `truth` holds.
double brier_penalty(const std::vector<double>& shares, std::size_t truth);
double log_penalty(const std::vector<double>& shares, std::size_t truth);

// A. H. Murphy's (1973) partition over the answers given with the same sureness:
// brier = reliability - resolution + uncertainty.
struct Calibration {
    int answers = 0;
    double brier = 0;
    double reliability = 0;
    double resolution = 0;
    double uncertainty = 0;
    double mean_sureness = 0;
    double share_right = 0;
    double bias() const { return mean_sureness - share_right; }  // above 0: surer than right
};
struct SureAnswer {
    double sure = 0;
    bool right = false;
};
Calibration calibrate(const std::vector<SureAnswer>& answers);

// M. G. Kendall's tau (1938) of an order against 0, 1, 2, ...; from -1 to 1. `order` holds each once.
double kendall_tau(const std::vector<int>& order);

// The first must stand somewhere before the second. With `must`, breaking it leaves no mark.
struct Before {
    int first = 0;
    int second = 0;
    bool must = false;
};

// Kendall's tau over the pairs that matter, not below 0: 1 - 2 broken / pairs. Pairs that follow from others
// ("a before b before c") count too. An order without any pair is worth 1.
double order_mark(const std::vector<int>& order, const std::vector<Before>& rules);

// Several right ones: share of the right ones ticked less share of the wrong ones ticked, not below 0.
// Ticking all or none is worth 0. Empty groups count as nothing ticked.
double several_mark(const std::vector<bool>& right, const std::vector<bool>& ticked);

}  // namespace hardover::study
