#include "app/rig/leak.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double gravity = 9.80665;  // m/s^2, standard
}  // namespace

double slot_leak(double width, double height, double length, double pressure, double viscosity) {
    if (!(width > 0 && height >= 0 && length > 0 && viscosity > 0)) return nan;
    return width * height * height * height * pressure / (12 * viscosity * length);
}

double annular_leak(const AnnularGap& gap, double pressure, double viscosity) {
    if (!(gap.eccentricity >= 0 && gap.eccentricity <= 1)) return nan;
    const double unrolled = std::numbers::pi * gap.diameter;
    return slot_leak(unrolled, gap.clearance, gap.length, pressure, viscosity) *
           (1 + 1.5 * gap.eccentricity * gap.eccentricity);
}

double leak_exponent(double flow_one, double pressure_one, double flow_two, double pressure_two) {
    const bool positive = flow_one > 0 && flow_two > 0 && pressure_one > 0 && pressure_two > 0;
    if (!positive || pressure_one == pressure_two) return nan;
    return std::log(flow_two / flow_one) / std::log(pressure_two / pressure_one);
}

double leak_of_drops(double drops_per_second, double drop_volume) {
    return drops_per_second >= 0 && drop_volume > 0 ? drops_per_second * drop_volume : nan;
}

double drop_volume(const HangingDrop& drop) {
    if (!(drop.tip_radius > 0 && drop.surface_tension > 0 && drop.density > 0 && drop.factor > 0)) return nan;
    return 2 * std::numbers::pi * drop.tip_radius * drop.surface_tension * drop.factor /
           (drop.density * gravity);
}

double time_to_lose(double volume, double leak) {
    return leak > 0 && volume >= 0 ? volume / leak : nan;
}

double leak_of_creep(double creep, double working_area) {
    return working_area > 0 ? std::abs(creep) * working_area : nan;
}

double leak_of_slip(double wheel_speed, double displacement) {
    return displacement > 0 ? std::abs(wheel_speed) * displacement : nan;
}

}  // namespace hardover::rig
