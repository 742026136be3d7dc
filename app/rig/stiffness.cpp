#include "app/rig/stiffness.hpp"

#include <cmath>
#include <limits>

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inch = 0.0254;  // m
}  // namespace

double compression(double volume, double pressure_rise, double bulk_modulus) {
    return bulk_modulus > 0 ? -volume * pressure_rise / bulk_modulus : nan;
}

double thermal_pressure_rise(double bulk_modulus, double expansion, double temperature_rise) {
    return bulk_modulus > 0 ? bulk_modulus * expansion * temperature_rise : nan;
}

double gas_volume(double volume, double from_absolute, double to_absolute, double exponent) {
    if (!(from_absolute > 0 && to_absolute > 0 && exponent > 0)) return nan;
    return volume * std::pow(from_absolute / to_absolute, 1 / exponent);
}

double gas_pressure(double absolute, double from_volume, double to_volume, double exponent) {
    if (!(absolute > 0 && from_volume > 0 && to_volume > 0)) return nan;
    return absolute * std::pow(from_volume / to_volume, exponent);
}

double gas_bulk_modulus(double absolute, double exponent) {
    return absolute > 0 ? exponent * absolute : nan;
}

double accumulator_volume(const Accumulator& a) {
    if (!(a.pre_charge > 0 && a.least > 0 && a.greatest > a.least)) return nan;
    const double at_least = gas_volume(1, a.pre_charge, a.least, a.exponent);
    const double at_greatest = gas_volume(1, a.pre_charge, a.greatest, a.exponent);
    return a.delivered / (at_least - at_greatest);
}

double bulk_modulus_with_air(const BubblyOil& oil, double pressure) {
    const double absolute = pressure + atmosphere;
    if (!(oil.liquid_bulk_modulus > 0 && oil.air_share >= 0 && oil.exponent > 0 && absolute > 0)) return nan;
    const double squeezed = oil.air_share * std::pow(atmosphere / absolute, 1 / oil.exponent);
    const double give = squeezed * oil.liquid_bulk_modulus / (oil.exponent * absolute);
    return oil.liquid_bulk_modulus * (1 + squeezed) / (1 + give);
}

double line_bulk_modulus(const SoftLine& line) {
    if (!(line.liquid_bulk_modulus > 0 && line.gas_bulk_modulus > 0 && line.wall_elasticity > 0 &&
          line.air_share_at_pressure >= 0 && line.bore_over_wall >= 0)) {
        return nan;
    }
    return 1 / (1 / line.liquid_bulk_modulus + line.bore_over_wall / line.wall_elasticity +
                line.air_share_at_pressure / line.gas_bulk_modulus);
}

double trapped_air_volume(double free_volume, double pressure) {
    return gas_volume(free_volume, atmosphere, atmosphere + pressure, 1);
}

double wheel_lost_to_air(double free_volume, double pressure, double displacement) {
    if (!(displacement > 0)) return nan;
    return (free_volume - trapped_air_volume(free_volume, pressure)) / displacement;
}

double air_from_lost_wheel(double lost_angle, double pressure, double displacement) {
    if (!(displacement > 0 && pressure > 0)) return nan;
    return lost_angle * displacement / (1 - trapped_air_volume(1, pressure));
}

double hose_swelling(double compliance, double length, double pressure) {
    return compliance >= 0 && length >= 0 ? compliance * length * pressure : nan;
}

double brake_hose_expansion_limit(double bore) {
    if (!(bore > 0)) return nan;
    const double per_foot = bore <= 0.13 * inch ? 0.66e-6 : bore <= 0.19 * inch ? 0.86e-6 : 1.04e-6;
    return per_foot / (12 * inch);
}

}  // namespace hardover::rig
