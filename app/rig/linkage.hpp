// Where a steering ram pinned at both ends stands and what it does to the drive: length and moment arm.
// Lengths in m, angles in rad, positive by the right hand about the steering axis. Knows no oil and no load.
// The geometry is textbook vector mechanics: law of cosines in the plane, Rodrigues' rotation in space.
#pragma once

#include <Eigen/Core>
#include <optional>

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

// The same in space, with trim: a pin that turns about the steering axis, and that axis about the trim axis.
// All points in boat axes with the drive straight ahead and at zero trim.
struct SteeringArm {
    Eigen::Vector3d pin;
    Eigen::Vector3d steer_point;      // any point of the steering axis
    Eigen::Vector3d steer_direction;  // along it, any length
    Eigen::Vector3d trim_point;       // any point of the trim axis
    Eigen::Vector3d trim_direction;
};

// With a ram from its fixed end on the transom to the pin.
struct Linkage : SteeringArm {
    Eigen::Vector3d anchor;
};

// Distance of the pin from the steering axis: the largest moment arm there can be.
double arm_radius(const SteeringArm& arm);
Eigen::Vector3d pin_at(const SteeringArm& arm, double steer, double trim);
// Where the drive takes any of its points.
Eigen::Vector3d carried_by_drive(const SteeringArm& arm, const Eigen::Vector3d& point, double steer,
                                 double trim);
// How far the pin moves along a unit direction per radian of steering, and per radian of trim, m/rad.
double turning_arm(const SteeringArm& arm, const Eigen::Vector3d& along, double steer, double trim);
double trimming_arm(const SteeringArm& arm, const Eigen::Vector3d& along, double steer, double trim);

// The pin's way round the steering axis at a trim angle: centre + across·cos(steer) + beyond·sin(steer).
struct PinCircle {
    Eigen::Vector3d centre, across, beyond;
};
PinCircle pin_circle(const SteeringArm& arm, double trim);

double ram_length(const Linkage& linkage, double steer, double trim);
double moment_arm(const Linkage& linkage, double steer, double trim);
// dL/d(trim), m/rad.
double length_per_trim(const Linkage& linkage, double steer, double trim);
// How far the drive steers itself per radian of trim while the ram is locked. NaN at dead centre.
double steer_per_trim(const Linkage& linkage, double steer, double trim);

// A ram closer to dead centre than this part of the arm radius has no useful force left, and small errors of
// length become large errors of angle. Limit from common practice in linkage design.
inline constexpr double dead_centre_share = 0.15;
bool near_dead_centre(double moment_arm, double arm_radius);

// Steer angle at which mean + swing·cos(steer - phase) has a value, on the side of the turning points where
// straight ahead lies; nothing when it never has.
struct Swing {
    double mean = 0;
    double swing = 0;
    double phase = 0;
};
std::optional<double> steer_at_value(const Swing& swing, double value);

// Steer angle at which the ram has a given length, on the side of dead centre where straight ahead lies.
// Error when the length cannot be reached, or straight ahead itself is at dead centre.
Result<double> steer_at_length(const Linkage& linkage, double length, double trim);

}  // namespace hardover::rig
