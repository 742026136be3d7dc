// Where a steering ram stands and what it does to the drive: length, moment arm, angles at both locks.
// Lengths in m, angles in rad, positive by the right hand about the steering axis. Knows no oil and no load.
// The geometry is textbook vector mechanics: law of cosines in the plane, Rodrigues' rotation in space.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::rig {

// A ram in one plane: `anchor` from the steering axis to the ram's anchor, `arm` from the axis to the ram
// pin, and the angle between the two with the drive straight ahead.
struct PlanarLinkage {
    double anchor = 0;
    double arm = 0;
    double angle_ahead = 0;
};

// Ram length pin to pin; NaN when anchor or arm is not above zero.
double ram_length(const PlanarLinkage& linkage, double steer);
// Moment arm dL/d(steer): ram force times this is the torque on the drive. Negative when the ram shortens.
double moment_arm(const PlanarLinkage& linkage, double steer);
// How fast the moment arm itself changes, m/rad^2.
double moment_arm_slope(const PlanarLinkage& linkage, double steer);
// Angle between anchor and arm at a ram length, 0 to pi. Error when no triangle has these sides: the length
// cannot be reached.
Result<double> angle_at_length(double anchor, double arm, double length);

// The same in space, with trim. All points in boat axes with the drive straight ahead and at zero trim.
struct Linkage {
    Eigen::Vector3d anchor;           // ram's fixed end on the transom
    Eigen::Vector3d pin;              // ram's end on the steering arm
    Eigen::Vector3d steer_point;      // any point of the steering axis
    Eigen::Vector3d steer_direction;  // along it, any length
    Eigen::Vector3d trim_point;       // any point of the trim axis
    Eigen::Vector3d trim_direction;
};

// Distance of the ram pin from the steering axis: the largest moment arm there can be.
double arm_radius(const Linkage& linkage);
Eigen::Vector3d pin_at(const Linkage& linkage, double steer, double trim);
double ram_length(const Linkage& linkage, double steer, double trim);
double moment_arm(const Linkage& linkage, double steer, double trim);
// dL/d(trim), m/rad.
double length_per_trim(const Linkage& linkage, double steer, double trim);
// How far the drive steers itself per radian of trim while the ram is locked. NaN at dead centre.
double steer_per_trim(const Linkage& linkage, double steer, double trim);

// A ram closer to dead centre than this part of the arm radius has no useful force left, and small errors of
// length become large errors of angle. Limit from common practice in linkage design.
inline constexpr double dead_centre_share = 0.15;

// Steer angle at which the ram has a given length, on the side of dead centre where straight ahead lies.
// Error when the length cannot be reached, or straight ahead itself is at dead centre.
Result<double> steer_at_length(const Linkage& linkage, double length, double trim);

struct RamTravel {
    double closed = 0;  // pin to pin when bottomed in
    double stroke = 0;
};

struct LockAngles {
    double closed = 0;     // steer angle with the ram bottomed in
    double open = 0;       // and bottomed out
    double least_arm = 0;  // smallest moment arm, as a length above zero, between them
};

// Both locks of one ram at a trim angle. Error when a lock cannot be reached, the ram is not within its
// travel straight ahead, or a lock is too near dead centre.
Result<LockAngles> lock_angles(const Linkage& linkage, const RamTravel& travel, double trim);

struct MountedRam {
    Linkage linkage;
    RamTravel travel;
};

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

// How the steer angle at a fixed ram length answers to a misplaced anchor, rad per m along each boat axis.
// First order, for misplacements small beside the arm. Error at dead centre.
Result<Eigen::Vector3d> mount_sensitivity(const Linkage& linkage, double steer, double trim);

// How far to move the anchor along `direction` (any length), at most `reach` either way, so that both locks
// have the same angle. Error when no such place lies within reach.
Result<double> anchor_shift_for_equal_locks(const Linkage& linkage, const RamTravel& travel,
                                            const Eigen::Vector3d& direction, double reach, double trim);

}  // namespace hardover::rig
