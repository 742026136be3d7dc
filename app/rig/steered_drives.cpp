#include "app/rig/steered_drives.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "app/rig/geometry_error.hpp"

namespace hardover::rig {

double second_steer(const SteeredDrives& drives, double steer, double trim) {
    if (!drives.tie) return steer;
    const Result<double> second = tied_steer(*drives.tie, steer, {trim, trim});
    return second ? second.value() : std::numeric_limits<double>::quiet_NaN();
}

double steer_of_ram(const SteeredDrives& drives, std::size_t ram, double steer, double trim) {
    return drives.on_second[ram] ? second_steer(drives, steer, trim) : steer;
}

double rod_out(const SteeredDrives& drives, std::size_t ram, double steer, double trim) {
    return rod_out(drives.rams[ram], steer_of_ram(drives, ram, steer, trim), trim);
}

double moment_arm(const SteeredDrives& drives, std::size_t ram, double steer, double trim) {
    if (!drives.on_second[ram] || !drives.tie) return moment_arm(drives.rams[ram], steer, trim);
    const double second = second_steer(drives, steer, trim);
    return moment_arm(drives.rams[ram], second, trim) * tied_ratio(*drives.tie, steer, second, {trim, trim});
}

Result<DriveLocks> drive_locks(const SteeredDrives& drives, double trim) {
    if (drives.rams.empty()) return bad_geometry("a drive without a ram has no locks", "at least one ram");
    DriveLocks locks;
    locks.lowest = -std::numeric_limits<double>::infinity();
    locks.highest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < drives.rams.size(); ++i) {
        const auto refused = [&](Error error) {
            error.where = "ram " + std::to_string(i + 1);
            return error;
        };
        const Result<LockAngles> own = lock_angles(drives.rams[i], trim);
        if (!own) return refused(own.error());
        auto [low, high] = std::minmax({own.value().closed, own.value().open});
        if (drives.on_second[i] && drives.tie) {
            const Result<double> leading_low = leading_steer(*drives.tie, low, {trim, trim});
            if (!leading_low) return refused(leading_low.error());
            const Result<double> leading_high = leading_steer(*drives.tie, high, {trim, trim});
            if (!leading_high) return refused(leading_high.error());
            low = leading_low.value();
            high = leading_high.value();
        }
        if (low > locks.lowest) locks.lowest = low, locks.lowest_by = i;
        if (high < locks.highest) locks.highest = high, locks.highest_by = i;
    }
    for (std::size_t i = 0; i < drives.rams.size(); ++i) {
        const double used =
            std::abs(rod_out(drives, i, locks.highest, trim) - rod_out(drives, i, locks.lowest, trim));
        locks.unused_stroke.push_back(std::max(0.0, drives.rams[i].travel.stroke - used));
    }
    return locks;
}

Result<double> steer_after_trim(const SteeredDrives& drives, double steer, double from, double to) {
    // Gauss-Newton on the squares of what each rod would have to give.
    double settled = steer;
    for (int step = 0; step < 50; ++step) {
        double torque = 0, stiffness = 0;
        for (std::size_t i = 0; i < drives.rams.size(); ++i) {
            const double arm = moment_arm(drives, i, settled, to);
            torque -= arm * (rod_out(drives, i, settled, to) - rod_out(drives, i, steer, from));
            stiffness += arm * arm;
        }
        const double change = torque / stiffness;
        if (!std::isfinite(change)) break;
        settled += change;
        if (std::abs(change) < 1e-12) return settled;
    }
    return bad_geometry("the rams find no balance when the drive is trimmed",
                        "a mount that keeps them clear of dead centre");
}

}  // namespace hardover::rig
