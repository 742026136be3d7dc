#include "app/rig/cylinder.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

bool is_efficiency(double share) {
    return share > 0 && share <= 1;
}

}  // namespace

double circle_area(double diameter) {
    if (diameter < 0) return nan;
    return std::numbers::pi / 4 * diameter * diameter;
}

double ram_area(double bore, double rod) {
    if (bore <= 0 || rod < 0 || rod >= bore) return nan;
    return circle_area(bore) - circle_area(rod);
}

double ram_volume(double bore, double rod, double stroke) {
    return ram_area(bore, rod) * stroke;
}

double ram_force(double pressure, double bore, double rod) {
    return pressure * ram_area(bore, rod);
}

double ram_speed(double flow, double bore, double rod) {
    return flow / ram_area(bore, rod);
}

double ram_pressure(double force, double bore, double rod) {
    return force / ram_area(bore, rod);
}

double circle_diameter(double area) {
    return area >= 0 ? std::sqrt(4 * area / std::numbers::pi) : nan;
}

double unbalanced_ratio(double bore, double rod) {
    return circle_area(bore) / ram_area(bore, rod);
}

double pump_turning(double volume, double displacement, double efficiency) {
    if (!(displacement > 0) || !is_efficiency(efficiency)) return nan;
    return volume / (displacement * efficiency);
}

double pump_flow(double displacement, double speed) {
    return displacement > 0 ? displacement * speed : nan;
}

double volumetric_efficiency(double delivered, double displacement, double speed) {
    return speed == 0 ? nan : delivered / pump_flow(displacement, speed);
}

double piston_pump_displacement(double pistons, double piston_bore, double piston_stroke) {
    if (!(pistons >= 1 && piston_stroke > 0)) return nan;
    return pistons * piston_stroke * circle_area(piston_bore) / (2 * std::numbers::pi);
}

double swash_plate_stroke(double circle, double angle) {
    return circle * std::tan(angle);
}

double pump_torque(double pressure, double displacement, double efficiency) {
    if (!(displacement > 0) || !is_efficiency(efficiency)) return nan;
    return pressure * displacement / efficiency;
}

double wheel_rim_force(double pressure, double displacement, double wheel_diameter, double efficiency) {
    if (!(wheel_diameter > 0)) return nan;
    return pump_torque(pressure, displacement, efficiency) / (wheel_diameter / 2);
}

double hydraulic_power(double pressure, double flow) {
    return pressure * flow;
}

double relief_pressure(double spring_rate, double compression, double poppet_area) {
    return poppet_area > 0 ? spring_rate * compression / poppet_area : nan;
}

double least_relief_setting(double working_pressure) {
    return 1.25 * working_pressure;
}

double least_relief_flow(double pump_flow) {
    return 1.1 * pump_flow;
}

}  // namespace hardover::rig
