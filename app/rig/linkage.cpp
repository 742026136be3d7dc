#include "app/rig/linkage.hpp"

#include <algorithm>
#include <cmath>
#include <Eigen/Geometry>
#include <limits>

#include "app/rig/geometry_error.hpp"

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

Eigen::Vector3d turned(const Eigen::Vector3d& vector, const Eigen::Vector3d& axis, double angle) {
    return Eigen::AngleAxisd(angle, axis.normalized()) * vector;
}

Eigen::Vector3d trimmed_point(const SteeringArm& arm, const Eigen::Vector3d& point, double trim) {
    return arm.trim_point + turned(point - arm.trim_point, arm.trim_direction, trim);
}

// The ram's length squared while the pin runs round the steering axis.
Swing squared_length(const Linkage& linkage, double trim) {
    const PinCircle circle = pin_circle(linkage, trim);
    const Eigen::Vector3d offset = circle.centre - linkage.anchor;
    const double with_cosine = 2 * offset.dot(circle.across);
    const double with_sine = 2 * offset.dot(circle.beyond);
    return {offset.squaredNorm() + circle.across.squaredNorm(), std::hypot(with_cosine, with_sine),
            std::atan2(with_sine, with_cosine)};
}

bool dead_at(const Linkage& linkage, double steer, double trim) {
    return near_dead_centre(moment_arm(linkage, steer, trim), arm_radius(linkage));
}

}  // namespace

bool near_dead_centre(double moment_arm, double arm_radius) {
    return !(std::abs(moment_arm) >= dead_centre_share * arm_radius);
}

double ram_length(const PlanarLinkage& linkage, double steer) {
    if (!(linkage.anchor > 0 && linkage.arm > 0)) return nan;
    const double square = linkage.anchor * linkage.anchor + linkage.arm * linkage.arm -
                          2 * linkage.anchor * linkage.arm * std::cos(linkage.angle_ahead + steer);
    return std::sqrt(std::max(square, 0.0));
}

double moment_arm(const PlanarLinkage& linkage, double steer) {
    return linkage.anchor * linkage.arm * std::sin(linkage.angle_ahead + steer) / ram_length(linkage, steer);
}

double moment_arm_slope(const PlanarLinkage& linkage, double steer) {
    const double arm = moment_arm(linkage, steer);
    const double across = linkage.anchor * linkage.arm * std::cos(linkage.angle_ahead + steer);
    return (across - arm * arm) / ram_length(linkage, steer);
}

Result<double> angle_at_length(double anchor, double arm, double length) {
    const double cosine = (anchor * anchor + arm * arm - length * length) / (2 * anchor * arm);
    if (!(anchor > 0 && arm > 0 && length > 0 && std::abs(cosine) <= 1)) {
        return bad_geometry(
            "no ram of " + millimetres(length) + " reaches from an anchor at " + millimetres(anchor) +
                " to an arm of " + millimetres(arm),
            "a length between " + millimetres(std::abs(anchor - arm)) + " and " + millimetres(anchor + arm));
    }
    return std::acos(cosine);
}

double arm_radius(const SteeringArm& arm) {
    return arm.steer_direction.normalized().cross(arm.pin - arm.steer_point).norm();
}

Eigen::Vector3d carried_by_drive(const SteeringArm& arm, const Eigen::Vector3d& point, double steer,
                                 double trim) {
    return trimmed_point(arm, arm.steer_point + turned(point - arm.steer_point, arm.steer_direction, steer),
                         trim);
}

Eigen::Vector3d pin_at(const SteeringArm& arm, double steer, double trim) {
    return carried_by_drive(arm, arm.pin, steer, trim);
}

double turning_arm(const SteeringArm& arm, const Eigen::Vector3d& along, double steer, double trim) {
    const Eigen::Vector3d axis = turned(arm.steer_direction.normalized(), arm.trim_direction, trim);
    return axis.dot((pin_at(arm, steer, trim) - trimmed_point(arm, arm.steer_point, trim)).cross(along));
}

double trimming_arm(const SteeringArm& arm, const Eigen::Vector3d& along, double steer, double trim) {
    return arm.trim_direction.normalized().dot((pin_at(arm, steer, trim) - arm.trim_point).cross(along));
}

double ram_length(const Linkage& linkage, double steer, double trim) {
    return (pin_at(linkage, steer, trim) - linkage.anchor).norm();
}

double moment_arm(const Linkage& linkage, double steer, double trim) {
    return turning_arm(linkage, (pin_at(linkage, steer, trim) - linkage.anchor).normalized(), steer, trim);
}

double length_per_trim(const Linkage& linkage, double steer, double trim) {
    return trimming_arm(linkage, (pin_at(linkage, steer, trim) - linkage.anchor).normalized(), steer, trim);
}

double steer_per_trim(const Linkage& linkage, double steer, double trim) {
    if (dead_at(linkage, steer, trim)) return nan;
    return -length_per_trim(linkage, steer, trim) / moment_arm(linkage, steer, trim);
}

PinCircle pin_circle(const SteeringArm& arm, double trim) {
    const Eigen::Vector3d axis = turned(arm.steer_direction.normalized(), arm.trim_direction, trim);
    const Eigen::Vector3d point = trimmed_point(arm, arm.steer_point, trim);
    const Eigen::Vector3d to_pin = pin_at(arm, 0, trim) - point;
    const Eigen::Vector3d along = axis * axis.dot(to_pin);  // the part that turning leaves as it is
    const Eigen::Vector3d across = to_pin - along;
    return {point + along, across, axis.cross(across)};
}

std::optional<double> steer_at_value(const Swing& swing, double value) {
    const double cosine = (value - swing.mean) / swing.swing;
    if (!(std::abs(cosine) <= 1)) return std::nullopt;
    // The turning points lie at phase and phase ± half a turn; straight ahead picks the side between them.
    const double side = std::sin(-swing.phase) >= 0 ? 1 : -1;
    return std::remainder(swing.phase + side * std::acos(cosine), 2 * EIGEN_PI);
}

Result<double> steer_at_length(const Linkage& linkage, double length, double trim) {
    if (dead_at(linkage, 0, trim)) return dead_centre("straight ahead");
    const Swing square = squared_length(linkage, trim);
    const std::optional<double> steer = length > 0 ? steer_at_value(square, length * length) : std::nullopt;
    if (steer) return *steer;
    return bad_geometry("a ram length of " + millimetres(length) + " cannot be reached",
                        "between " + millimetres(std::sqrt(square.mean - square.swing)) + " and " +
                            millimetres(std::sqrt(square.mean + square.swing)));
}

}  // namespace hardover::rig
