#include "app/rig/square.hpp"

#include <cmath>
#include <limits>

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
}

double rectangle_diagonal(double length, double width) {
    return length >= 0 && width >= 0 ? std::hypot(length, width) : nan;
}

double skew(const Diagonals& d) {
    if (!(d.first > 0 && d.second > 0 && d.side_a > 0 && d.side_b > 0)) return nan;
    return std::asin((d.first * d.first - d.second * d.second) / (4 * d.side_a * d.side_b));
}

double skew_uncertainty(const Diagonals& d, const Diagonals& u) {
    const double angle = skew(d);
    const double per_diagonal = 2 * d.side_a * d.side_b * std::cos(angle);
    return root_sum_square({d.first * u.first / per_diagonal, d.second * u.second / per_diagonal,
                            std::tan(angle) * u.side_a / d.side_a, std::tan(angle) * u.side_b / d.side_b});
}

double standard_uncertainty_of_limits(double half_width) {
    return half_width >= 0 ? half_width / std::sqrt(3.0) : nan;
}

double standard_uncertainty_of_marks(double mark_spacing) {
    return standard_uncertainty_of_limits(mark_spacing / 2);
}

double worst_case(const std::vector<double>& contributions) {
    double sum = 0;
    for (const double contribution : contributions) sum += std::abs(contribution);
    return sum;
}

double root_sum_square(const std::vector<double>& contributions) {
    double sum = 0;
    for (const double contribution : contributions) sum += contribution * contribution;
    return std::sqrt(sum);
}

}  // namespace hardover::rig
