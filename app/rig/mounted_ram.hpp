// A ram as it is mounted: pinned at both ends beside a drive or at a tiller, or an outboard's centre-mounted
// cylinder; its rod travel against steering and trim angle, which end it meets first, and the angles there.
// Lengths in m, angles in rad, as in linkage.hpp. Knows no oil, no load and no tie bar.
#pragma once

#include <string>
#include <vector>

#include "app/rig/linkage.hpp"

namespace hardover::rig {

struct RamTravel {
    double closed = 0;  // pin to pin when bottomed in; of a sliding one the length of its body
    double stroke = 0;
};

// A sliding ram's rod is fixed in the boat along `slides_along` (a unit vector; zero for a pinned ram). Its
// body slides on it and takes the pin along; what the pin's arc departs from the rod, the body takes up by
// swinging round it. The anchor is then the place on the rod that the pin stands abreast of at half travel.
struct MountedRam {
    Linkage linkage;
    RamTravel travel;
    Eigen::Vector3d slides_along = Eigen::Vector3d::Zero();
};
bool slides(const MountedRam& ram);

// Rod out of the gland: 0 bottomed in, the stroke bottomed out; beyond either where the ram does not reach.
double rod_out(const MountedRam& ram, double steer, double trim);
// d(rod out)/d(steer), and /d(trim); m/rad.
double moment_arm(const MountedRam& ram, double steer, double trim);
double rod_per_trim(const MountedRam& ram, double steer, double trim);
// Steer angle for a rod travel, on the side of dead centre where straight ahead lies. Error when it cannot be
// reached, or straight ahead itself is at dead centre.
Result<double> steer_at_rod_out(const MountedRam& ram, double out, double trim);

// Moves the anchor so that the rod stands out further by `by` with the drive straight.
void shift_anchor(MountedRam& ram, double by);

struct LockAngles {
    double closed = 0;     // steer angle with the ram bottomed in
    double open = 0;       // and bottomed out
    double least_arm = 0;  // smallest moment arm, as a length above zero, between them
};

// Both locks of one ram at a trim angle. Error when a lock cannot be reached, the ram is not within its
// travel straight ahead, or a lock is too near dead centre.
Result<LockAngles> lock_angles(const MountedRam& ram, double trim);

// Below this share of the largest arm the ram is weak and small errors of length are large errors of angle:
// worth a warning. From memory.
inline constexpr double weak_arm_share = 0.3;
// A sentence for the fitter when the ram comes near dead centre, or cannot do its travel at all, anywhere
// from trim `down` to `up`; empty when it stays well clear.
std::string over_centre_warning(const MountedRam& ram, double down, double up);

// Which ram of one drive bottoms first each way. With one ram both indexes are 0.
struct DriveLocks {
    double lowest = 0;          // most negative steer angle
    double highest = 0;         // most positive
    std::size_t lowest_by = 0;  // index of the ram that bottoms there
    std::size_t highest_by = 0;
    std::vector<double> unused_stroke;  // per ram, m: what is never used because another bottoms first
};
// Error as lock_angles, naming the ram; also when there is no ram.
Result<DriveLocks> drive_locks(const std::vector<MountedRam>& rams, double trim);

// The locks over a whole range of trim: the least swing each way, the trim where it is, and the greatest
// difference between both ways at one trim. Error as drive_locks, with the trim angle.
struct LocksOverTrim {
    double lowest = 0, lowest_at = 0;
    double highest = 0, highest_at = 0;
    double asymmetry = 0, asymmetry_at = 0;
};
Result<LocksOverTrim> locks_over_trim(const std::vector<MountedRam>& rams, double down, double up);

// How the steer angle at a fixed rod travel answers to a misplaced anchor, rad per m along each boat axis.
// First order, for misplacements small beside the arm. Error at dead centre.
Result<Eigen::Vector3d> mount_sensitivity(const MountedRam& ram, double steer, double trim);

// How far to move the anchor along `direction` (any length), at most `reach` either way, so that both locks
// have the same angle. Error when no such place lies within reach.
Result<double> anchor_shift_for_equal_locks(const MountedRam& ram, const Eigen::Vector3d& direction,
                                            double reach, double trim);

}  // namespace hardover::rig
