#include "app/rig/bleed.hpp"

#include <cmath>
#include <limits>

#include "app/rig/cylinder.hpp"

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double gravity = 9.80665;  // m/s^2, standard
}  // namespace

double hose_volume(double bore, double length) {
    return length >= 0 ? circle_area(bore) * length : nan;
}

double sweep_share(double sweep, double line) {
    return sweep > 0 && line > 0 ? sweep / line : nan;
}

bool air_reaches_reservoir(double sweep, double line) {
    return sweep_share(sweep, line) >= 1;
}

double bleed_cycles(double sweep, double line) {
    if (std::isnan(sweep_share(sweep, line))) return nan;
    return air_reaches_reservoir(sweep, line) ? 1 : std::numeric_limits<double>::infinity();
}

double turning_to_flush(double line, double displacement, double efficiency) {
    return pump_turning(line, displacement, efficiency);
}

double old_oil_left(double line_volumes) {
    if (!(line_volumes >= 0)) return nan;
    return line_volumes < 0.5 ? 1 - line_volumes : 1 / (4 * line_volumes);
}

double new_oil_arriving(double line_volumes) {
    if (!(line_volumes >= 0)) return nan;
    return line_volumes < 0.5 ? 0 : 1 - 1 / (4 * line_volumes * line_volumes);
}

double line_volumes_to_flush(double part_left) {
    if (!(part_left > 0 && part_left <= 1)) return nan;
    return part_left > 0.5 ? 1 - part_left : 1 / (4 * part_left);
}

double bubble_climb(double bore) {
    return bore > 0 ? 0.35 * std::sqrt(gravity * bore) : nan;
}

}  // namespace hardover::rig
