// Sums of probabilities kept as natural logarithms. Pure numbers.
#pragma once

#include <cmath>
#include <limits>
#include <utility>

namespace hardover {

// ln 0: what cannot be.
inline constexpr double never = -std::numeric_limits<double>::infinity();

// ln(e^a + e^b), without leaving the range of a double.
inline double log_add(double a, double b) {
    if (a < b) std::swap(a, b);
    return b == never ? a : a + std::log1p(std::exp(b - a));
}

}  // namespace hardover
