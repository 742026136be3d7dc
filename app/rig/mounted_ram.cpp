#include "app/rig/mounted_ram.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "app/rig/geometry_error.hpp"

namespace hardover::rig {

namespace {

constexpr double trim_step = std::numbers::pi / 180;

// The direction in which the pin's movement counts as rod travel.
Eigen::Vector3d along(const MountedRam& ram, double steer, double trim) {
    if (slides(ram)) return ram.slides_along;
    return (pin_at(ram.linkage, steer, trim) - ram.linkage.anchor).normalized();
}

bool dead_at(const MountedRam& ram, double steer, double trim) {
    return near_dead_centre(moment_arm(ram, steer, trim), arm_radius(ram.linkage));
}

std::string degrees(double angle) {
    return std::to_string(std::lround(angle * 180 / std::numbers::pi)) + " deg";
}

// The trims to look at, both ends among them.
std::vector<double> trims(double down, double up) {
    const int steps = std::max(1, static_cast<int>(std::ceil((up - down) / trim_step - 1e-9)));
    std::vector<double> all;
    for (int i = 0; i <= steps; ++i) all.push_back(down + (up - down) * i / steps);
    return all;
}

}  // namespace

bool slides(const MountedRam& ram) {
    return !ram.slides_along.isZero();
}

double rod_out(const MountedRam& ram, double steer, double trim) {
    if (!slides(ram)) return ram_length(ram.linkage, steer, trim) - ram.travel.closed;
    return ram.travel.stroke / 2 +
           ram.slides_along.dot(pin_at(ram.linkage, steer, trim) - ram.linkage.anchor);
}

double moment_arm(const MountedRam& ram, double steer, double trim) {
    return turning_arm(ram.linkage, along(ram, steer, trim), steer, trim);
}

double rod_per_trim(const MountedRam& ram, double steer, double trim) {
    return trimming_arm(ram.linkage, along(ram, steer, trim), steer, trim);
}

Result<double> steer_at_rod_out(const MountedRam& ram, double out, double trim) {
    if (!slides(ram)) return steer_at_length(ram.linkage, ram.travel.closed + out, trim);
    if (dead_at(ram, 0, trim)) return dead_centre("straight ahead");
    const PinCircle circle = pin_circle(ram.linkage, trim);
    const double with_cosine = ram.slides_along.dot(circle.across);
    const double with_sine = ram.slides_along.dot(circle.beyond);
    const Swing swing{ram.travel.stroke / 2 + ram.slides_along.dot(circle.centre - ram.linkage.anchor),
                      std::hypot(with_cosine, with_sine), std::atan2(with_sine, with_cosine)};
    const std::optional<double> steer = steer_at_value(swing, out);
    if (steer) return *steer;
    return bad_geometry(
        "a rod travel of " + millimetres(out) + " cannot be reached",
        "between " + millimetres(swing.mean - swing.swing) + " and " + millimetres(swing.mean + swing.swing));
}

void shift_anchor(MountedRam& ram, double by) {
    ram.linkage.anchor -= along(ram, 0, 0) * by;
}

Result<LockAngles> lock_angles(const MountedRam& ram, double trim) {
    if (!(ram.travel.closed > 0 && ram.travel.stroke > 0)) {
        return bad_geometry("a ram needs a closed length and a stroke above zero", "");
    }
    const double ahead = rod_out(ram, 0, trim);
    if (!(ahead > 0 && ahead < ram.travel.stroke)) {
        const double closed = slides(ram) ? 0 : ram.travel.closed;
        return bad_geometry(
            "straight ahead needs a ram of " + millimetres(closed + ahead) + ", outside its travel",
            "between " + millimetres(closed) + " and " + millimetres(closed + ram.travel.stroke));
    }
    const Result<double> at_closed = steer_at_rod_out(ram, 0, trim);
    if (!at_closed) return at_closed.error();
    const Result<double> at_open = steer_at_rod_out(ram, ram.travel.stroke, trim);
    if (!at_open) return at_open.error();
    if (dead_at(ram, at_closed.value(), trim)) return dead_centre("the closed lock");
    if (dead_at(ram, at_open.value(), trim)) return dead_centre("the open lock");
    // Between two dead centres the moment arm rises once and falls once, so the smaller end is the smallest.
    const double least = std::min(std::abs(moment_arm(ram, at_closed.value(), trim)),
                                  std::abs(moment_arm(ram, at_open.value(), trim)));
    return LockAngles{at_closed.value(), at_open.value(), least};
}

std::string over_centre_warning(const MountedRam& ram, double down, double up) {
    double least = 1, at = 0;
    for (const double trim : trims(down, up)) {
        const Result<LockAngles> locks = lock_angles(ram, trim);
        if (!locks) return "At a trim of " + degrees(trim) + ": " + locks.error().what + ".";
        const double share = locks.value().least_arm / arm_radius(ram.linkage);
        if (share < least) {
            least = share;
            at = trim;
        }
    }
    if (least >= weak_arm_share) return "";
    return "At a lock the ram has only " + std::to_string(std::lround(least * 100)) +
           " % of its full arm (trim " + degrees(at) + "): it comes near over-centre there.";
}

Result<DriveLocks> drive_locks(const std::vector<MountedRam>& rams, double trim) {
    if (rams.empty()) return bad_geometry("a drive without a ram has no locks", "at least one ram");
    DriveLocks locks;
    locks.lowest = -std::numeric_limits<double>::infinity();
    locks.highest = std::numeric_limits<double>::infinity();
    for (std::size_t index = 0; index < rams.size(); ++index) {
        const Result<LockAngles> own = lock_angles(rams[index], trim);
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
        const double used = std::abs(rod_out(ram, locks.highest, trim) - rod_out(ram, locks.lowest, trim));
        locks.unused_stroke.push_back(std::max(0.0, ram.travel.stroke - used));
    }
    return locks;
}

Result<LocksOverTrim> locks_over_trim(const std::vector<MountedRam>& rams, double down, double up) {
    if (!(down <= up)) return bad_geometry("the trim range runs backwards", "from trim down to trim up");
    LocksOverTrim range{
        -std::numeric_limits<double>::infinity(), 0, std::numeric_limits<double>::infinity(), 0, 0, down};
    for (const double trim : trims(down, up)) {
        const Result<DriveLocks> locks = drive_locks(rams, trim);
        if (!locks) {
            Error error = locks.error();
            error.where += " at a trim of " + degrees(trim);
            return error;
        }
        const double lowest = locks.value().lowest, highest = locks.value().highest;
        if (lowest > range.lowest) range.lowest = lowest, range.lowest_at = trim;
        if (highest < range.highest) range.highest = highest, range.highest_at = trim;
        const double asymmetry = std::abs(highest + lowest);
        if (asymmetry > range.asymmetry) range.asymmetry = asymmetry, range.asymmetry_at = trim;
    }
    return range;
}

Result<Eigen::Vector3d> mount_sensitivity(const MountedRam& ram, double steer, double trim) {
    if (dead_at(ram, steer, trim)) return dead_centre("this angle");
    // At a fixed travel m·d(steer) - u·d(anchor) = 0, u the direction that counts as travel.
    return Eigen::Vector3d(along(ram, steer, trim) / moment_arm(ram, steer, trim));
}

Result<double> anchor_shift_for_equal_locks(const MountedRam& ram, const Eigen::Vector3d& direction,
                                            double reach, double trim) {
    if (!(direction.norm() > 0 && reach > 0)) {
        return bad_geometry("the anchor needs a direction and a reach to move in", "");
    }
    const auto unequal = [&](double shift) -> std::optional<double> {
        MountedRam moved = ram;
        moved.linkage.anchor += direction.normalized() * shift;
        const Result<LockAngles> locks = lock_angles(moved, trim);
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
