#include "app/rig/load.hpp"

#include <cmath>
#include <limits>

namespace hardover::rig {

namespace {
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double knot = 1852.0 / 3600.0;  // m/s
}  // namespace

double side_force(double density, double area, double speed, double coefficient) {
    if (!(density > 0 && area >= 0)) return nan;
    return density * area * speed * speed * coefficient / 2;
}

double lift_gradient(double aspect_ratio) {
    return aspect_ratio > 0 ? 6.13 * aspect_ratio / (aspect_ratio + 2.25) : nan;
}

double rudder_force_coefficient(double aspect_ratio, double angle) {
    return lift_gradient(aspect_ratio) * std::sin(angle);
}

double centre_of_pressure(double angle) {
    return 0.195 + 0.305 * std::sin(std::abs(angle));
}

double class_rudder_force(double factor, double area, double speed) {
    if (!(factor > 0 && area >= 0)) return nan;
    const double knots = speed / knot;
    return 132 * factor * area * knots * knots;
}

double class_torque_lever(double chord, double alpha, double balance) {
    if (!(chord > 0 && balance >= 0 && balance < 1)) return nan;
    return chord * (alpha - balance);
}

double at_speed(double measured, double measured_speed, double speed) {
    if (measured_speed == 0) return nan;
    const double share = speed / measured_speed;
    return measured * share * share;
}

double shaft_torque(double power, double speed) {
    return speed > 0 ? power / speed : nan;
}

double steering_part_of_shaft_torque(double torque, double trim) {
    return torque * std::sin(trim);
}

double ram_force_for_torque(double torque, double moment_arm) {
    return moment_arm == 0 ? nan : torque / moment_arm;
}

double ram_pressure_for_torque(double torque, double moment_arm, double working_area) {
    return working_area > 0 ? ram_force_for_torque(torque, moment_arm) / working_area : nan;
}

}  // namespace hardover::rig
