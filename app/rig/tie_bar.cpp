#include "app/rig/tie_bar.hpp"

#include <cmath>
#include <Eigen/Geometry>
#include <limits>
#include <numbers>

namespace hardover::rig {

namespace {

// Drive two's arm seen with drive one's pin as the anchor of a ram that has the bar's length.
Linkage seen_from_drive_two(const TieBar& tie, double steer) {
    const auto on_circle = [](double radius, double angle) {
        return Eigen::Vector3d(radius * std::cos(angle), radius * std::sin(angle), 0);
    };
    Linkage linkage;
    linkage.anchor = on_circle(tie.arm_one, tie.angle_one + steer);
    linkage.steer_point = Eigen::Vector3d(tie.spacing, 0, 0);
    linkage.pin = linkage.steer_point + on_circle(tie.arm_two, tie.angle_two);
    linkage.steer_direction = Eigen::Vector3d::UnitZ();
    linkage.trim_point = linkage.steer_point;
    linkage.trim_direction = Eigen::Vector3d::UnitY();
    return linkage;
}

// In space: drive two's arm turned along with drive one first, so that the side of dead centre is that of
// straight ahead of both; what is solved for is the rest.
Linkage seen_from_drive_two(const TieBarInSpace& tie, double steer, double trim_one) {
    Linkage linkage;
    static_cast<SteeringArm&>(linkage) = tie.two;
    linkage.pin = tie.two.steer_point + Eigen::AngleAxisd(steer, tie.two.steer_direction.normalized()) *
                                            (tie.two.pin - tie.two.steer_point);
    linkage.anchor = pin_at(tie.one, steer, trim_one);
    return linkage;
}

Error cannot_reach() {
    return {Error::Kind::bad_input, "the tie bar cannot set drive two at this angle", "",
            "check bar length, spacing and both arms: the bar must stand well clear of the line through arm "
            "and axis"};
}

}  // namespace

double bar_for_toe(const TieBar& tie, double toe) {
    return ram_length(seen_from_drive_two(tie, 0), toe, 0);
}

Result<double> tied_steer(const TieBar& tie, double steer) {
    // The side of dead centre must be that of straight ahead of both drives, so drive two's arm is first
    // turned along with drive one and the rest is solved from there.
    TieBar turned = tie;
    turned.angle_two += steer;
    const Result<double> rest = steer_at_length(seen_from_drive_two(turned, steer), tie.bar, 0);
    if (!rest) return cannot_reach();
    return steer + rest.value();
}

double bar_for_toe(const TieBarInSpace& tie, double toe) {
    return (pin_at(tie.two, toe, 0) - tie.one.pin).norm();
}

Result<double> tied_steer(const TieBarInSpace& tie, double steer, const BothTrims& trims) {
    const Result<double> rest =
        steer_at_length(seen_from_drive_two(tie, steer, trims.one), tie.bar, trims.two);
    if (!rest) return cannot_reach();
    return steer + rest.value();
}

Result<double> leading_steer(const TieBarInSpace& tie, double steer_two, const BothTrims& trims) {
    return tied_steer({tie.two, tie.one, tie.bar}, steer_two, {trims.two, trims.one});
}

double tied_ratio(const TieBarInSpace& tie, double steer, double steer_two, const BothTrims& trims) {
    // The bar keeps its length: both pins move alike along it.
    const Eigen::Vector3d bar =
        (pin_at(tie.two, steer_two, trims.two) - pin_at(tie.one, steer, trims.one)).normalized();
    return turning_arm(tie.one, bar, steer, trims.one) / turning_arm(tie.two, bar, steer_two, trims.two);
}

double toe_from_spans(double forward, double aft, double distance) {
    if (!(distance > 0)) return std::numeric_limits<double>::quiet_NaN();
    return 2 * std::atan((aft - forward) / (2 * distance));
}

}  // namespace hardover::rig
