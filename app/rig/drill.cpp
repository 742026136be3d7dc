#include "app/rig/drill.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double steepest = 80 * std::numbers::pi / 180;

bool drillable(double error) {
    return std::abs(error) < steepest;
}

}  // namespace

double exit_offset(double thickness, double error) {
    return thickness >= 0 && drillable(error) ? thickness * std::tan(error) : nan;
}

double exit_offset_along_path(double path, double error) {
    return path >= 0 && drillable(error) ? path * std::sin(error) : nan;
}

double drilled_path(double thickness, double error) {
    return thickness >= 0 && drillable(error) ? thickness / std::cos(error) : nan;
}

double entry_ellipse(double drill_diameter, double error) {
    return drilled_path(drill_diameter, error);
}

double error_of_offset(double offset, double thickness) {
    return thickness > 0 ? std::atan(offset / thickness) : nan;
}

double compound_error(double error_one, double error_two) {
    if (!drillable(error_one) || !drillable(error_two)) return nan;
    return std::atan(std::hypot(std::tan(error_one), std::tan(error_two)));
}

double guide_wedge(double base, double angle) {
    return exit_offset(base, angle);
}

}  // namespace hardover::rig
