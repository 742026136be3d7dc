#include "app/rig/linkage.hpp"

#include <algorithm>
#include <cmath>
#include <Eigen/Geometry>
#include <limits>
#include <optional>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

std::string millimetres(double length) {
    return std::to_string(std::lround(length * 1000)) + " mm";
}

Eigen::Vector3d turned(const Eigen::Vector3d& vector, const Eigen::Vector3d& axis, double angle) {
    return Eigen::AngleAxisd(angle, axis.normalized()) * vector;
}

Eigen::Vector3d trimmed_point(const Linkage& linkage, const Eigen::Vector3d& point, double trim) {
    return linkage.trim_point + turned(point - linkage.trim_point, linkage.trim_direction, trim);
}

// L^2 = mean + swing * cos(steer - phase): the ram's length while the pin runs round the steering axis.
struct Swing {
    double mean = 0;
    double swing = 0;
    double phase = 0;
};

Swing swing_of(const Linkage& linkage, double trim) {
    const Eigen::Vector3d axis = turned(linkage.steer_direction.normalized(), linkage.trim_direction, trim);
    const Eigen::Vector3d centre = trimmed_point(linkage, linkage.steer_point, trim);
    const Eigen::Vector3d arm = pin_at(linkage, 0, trim) - centre;
    const Eigen::Vector3d along = axis * axis.dot(arm);  // the part that turning leaves as it is
    const Eigen::Vector3d across = arm - along;
    const Eigen::Vector3d offset = centre + along - linkage.anchor;
    const double with_cosine = 2 * offset.dot(across);
    const double with_sine = 2 * offset.dot(axis.cross(across));
    return {offset.squaredNorm() + across.squaredNorm(), std::hypot(with_cosine, with_sine),
            std::atan2(with_sine, with_cosine)};
}

Error bad_geometry(std::string what, std::string cure) {
    return {Error::Kind::bad_input, std::move(what), "", std::move(cure)};
}

bool near_dead_centre(const Linkage& linkage, double steer, double trim) {
    return !(std::abs(moment_arm(linkage, steer, trim)) >= dead_centre_share * arm_radius(linkage));
}

Error dead_centre(const std::string& where) {
    return bad_geometry(where + " is too near dead centre: the ram pulls almost through the steering axis",
                        "move the anchor so that the ram stands squarer to the arm");
}

}  // namespace

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

double arm_radius(const Linkage& linkage) {
    const Eigen::Vector3d axis = linkage.steer_direction.normalized();
    return axis.cross(linkage.pin - linkage.steer_point).norm();
}

Eigen::Vector3d pin_at(const Linkage& linkage, double steer, double trim) {
    const Eigen::Vector3d steered =
        linkage.steer_point + turned(linkage.pin - linkage.steer_point, linkage.steer_direction, steer);
    return trimmed_point(linkage, steered, trim);
}

double ram_length(const Linkage& linkage, double steer, double trim) {
    return (pin_at(linkage, steer, trim) - linkage.anchor).norm();
}

double moment_arm(const Linkage& linkage, double steer, double trim) {
    const Eigen::Vector3d pin = pin_at(linkage, steer, trim);
    const Eigen::Vector3d along = (pin - linkage.anchor).normalized();
    const Eigen::Vector3d axis = turned(linkage.steer_direction.normalized(), linkage.trim_direction, trim);
    return axis.dot((pin - trimmed_point(linkage, linkage.steer_point, trim)).cross(along));
}

double length_per_trim(const Linkage& linkage, double steer, double trim) {
    const Eigen::Vector3d pin = pin_at(linkage, steer, trim);
    const Eigen::Vector3d along = (pin - linkage.anchor).normalized();
    return linkage.trim_direction.normalized().dot((pin - linkage.trim_point).cross(along));
}

double steer_per_trim(const Linkage& linkage, double steer, double trim) {
    if (near_dead_centre(linkage, steer, trim)) return nan;
    return -length_per_trim(linkage, steer, trim) / moment_arm(linkage, steer, trim);
}

Result<double> steer_at_length(const Linkage& linkage, double length, double trim) {
    const Swing swing = swing_of(linkage, trim);
    if (near_dead_centre(linkage, 0, trim)) return dead_centre("straight ahead");
    const double cosine = (length * length - swing.mean) / swing.swing;
    if (!(length > 0 && std::abs(cosine) <= 1)) {
        return bad_geometry("a ram length of " + millimetres(length) + " cannot be reached",
                            "between " + millimetres(std::sqrt(swing.mean - swing.swing)) + " and " +
                                millimetres(std::sqrt(swing.mean + swing.swing)));
    }
    // Dead centres lie at phase and phase ± half a turn; straight ahead picks the side between them.
    const double side = std::sin(-swing.phase) >= 0 ? 1 : -1;
    const double steer = swing.phase + side * std::acos(cosine);
    return std::remainder(steer, 2 * EIGEN_PI);
}

Result<LockAngles> lock_angles(const Linkage& linkage, const RamTravel& travel, double trim) {
    if (!(travel.closed > 0 && travel.stroke > 0)) {
        return bad_geometry("a ram needs a closed length and a stroke above zero", "");
    }
    const double ahead = ram_length(linkage, 0, trim);
    const double open = travel.closed + travel.stroke;
    if (!(ahead > travel.closed && ahead < open)) {
        return bad_geometry("straight ahead needs a ram of " + millimetres(ahead) + ", outside its travel",
                            "between " + millimetres(travel.closed) + " and " + millimetres(open));
    }
    const Result<double> at_closed = steer_at_length(linkage, travel.closed, trim);
    if (!at_closed) return at_closed.error();
    const Result<double> at_open = steer_at_length(linkage, open, trim);
    if (!at_open) return at_open.error();
    if (near_dead_centre(linkage, at_closed.value(), trim)) return dead_centre("the closed lock");
    if (near_dead_centre(linkage, at_open.value(), trim)) return dead_centre("the open lock");
    // Between two dead centres the moment arm rises once and falls once, so the smaller end is the smallest.
    const double least = std::min(std::abs(moment_arm(linkage, at_closed.value(), trim)),
                                  std::abs(moment_arm(linkage, at_open.value(), trim)));
    return LockAngles{at_closed.value(), at_open.value(), least};
}

Result<DriveLocks> drive_locks(const std::vector<MountedRam>& rams, double trim) {
    if (rams.empty()) return bad_geometry("a drive without a ram has no locks", "at least one ram");
    DriveLocks locks;
    locks.lowest = -std::numeric_limits<double>::infinity();
    locks.highest = std::numeric_limits<double>::infinity();
    for (std::size_t index = 0; index < rams.size(); ++index) {
        const Result<LockAngles> own = lock_angles(rams[index].linkage, rams[index].travel, trim);
        if (!own) {
            Error error = own.error();
            error.where = "ram " + std::to_string(index + 1);
            return error;
        }
        const auto [low, high] = std::minmax({own.value().closed, own.value().open});
        if (low > locks.lowest) {
            locks.lowest = low;
            locks.lowest_by = index;
        }
        if (high < locks.highest) {
            locks.highest = high;
            locks.highest_by = index;
        }
    }
    for (const MountedRam& ram : rams) {
        const double used = std::abs(ram_length(ram.linkage, locks.highest, trim) -
                                     ram_length(ram.linkage, locks.lowest, trim));
        locks.unused_stroke.push_back(std::max(0.0, ram.travel.stroke - used));
    }
    return locks;
}

Result<Eigen::Vector3d> mount_sensitivity(const Linkage& linkage, double steer, double trim) {
    if (near_dead_centre(linkage, steer, trim)) return dead_centre("this angle");
    // At a fixed length dL = m·d(steer) - u·d(anchor) = 0, u pointing from the anchor to the pin.
    const Eigen::Vector3d along = (pin_at(linkage, steer, trim) - linkage.anchor).normalized();
    return Eigen::Vector3d(along / moment_arm(linkage, steer, trim));
}

Result<double> anchor_shift_for_equal_locks(const Linkage& linkage, const RamTravel& travel,
                                            const Eigen::Vector3d& direction, double reach, double trim) {
    if (!(direction.norm() > 0 && reach > 0)) {
        return bad_geometry("the anchor needs a direction and a reach to move in", "");
    }
    const auto unequal = [&](double shift) -> std::optional<double> {
        Linkage moved = linkage;
        moved.anchor += direction.normalized() * shift;
        const Result<LockAngles> locks = lock_angles(moved, travel, trim);
        if (!locks) return std::nullopt;
        return locks.value().closed + locks.value().open;
    };
    // Look outward from where the anchor is now for a change of sign, then halve.
    constexpr int steps = 100;
    std::optional<double> best;
    for (int step = -steps; step < steps; ++step) {
        double low = reach * step / steps;
        double high = reach * (step + 1) / steps;
        const std::optional<double> at_low = unequal(low);
        const std::optional<double> at_high = unequal(high);
        if (!at_low || !at_high || (*at_low > 0) == (*at_high > 0)) continue;
        const bool rising = *at_high > 0;
        for (int halving = 0; halving < 60; ++halving) {
            const double middle = (low + high) / 2;
            const std::optional<double> value = unequal(middle);
            if (!value) break;
            ((*value > 0) == rising ? high : low) = middle;
        }
        const double found = (low + high) / 2;
        if (!best || std::abs(found) < std::abs(*best)) best = found;
    }
    if (!best) {
        return bad_geometry("no place within " + millimetres(reach) + " gives equal locks",
                            "another direction, a longer reach, or a ram of another length");
    }
    return *best;
}

}  // namespace hardover::rig
