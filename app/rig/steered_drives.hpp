// One or two drives, outboards or rudders as they steer together: rams on either, joined by a tie bar. All by
// the steer angle of drive one. Lengths in m, angles in rad. Knows geometry only.
#pragma once

#include <optional>
#include <vector>

#include "app/rig/mounted_ram.hpp"
#include "app/rig/tie_bar.hpp"

namespace hardover::rig {

struct SteeredDrives {
    std::vector<MountedRam> rams;      // each in the axes of its own drive
    std::vector<bool> on_second;       // for each ram: whether it stands on drive two
    std::optional<TieBarInSpace> tie;  // without one all rams see the same angle
};

// Angle of drive two; NaN where the tie bar cannot set it. Both drives trimmed alike.
double second_steer(const SteeredDrives& drives, double steer, double trim);
// Angle of the drive that a ram stands on.
double steer_of_ram(const SteeredDrives& drives, std::size_t ram, double steer, double trim);

double rod_out(const SteeredDrives& drives, std::size_t ram, double steer, double trim);
// d(rod out)/d(steer of drive one).
double moment_arm(const SteeredDrives& drives, std::size_t ram, double steer, double trim);

// As drive_locks of one drive. Error also when the tie bar does not reach.
Result<DriveLocks> drive_locks(const SteeredDrives& drives, double trim);

// The angle to which the drives steer themselves when trimmed from `from` to `to` with the oil shut in, from
// `steer`: where the rams, equally springy, are in balance. With one ram: where its rod travel is unchanged.
// Error when they find no balance.
Result<double> steer_after_trim(const SteeredDrives& drives, double steer, double from, double to);

}  // namespace hardover::rig
