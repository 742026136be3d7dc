// Two drives coupled by a tie bar: the second drive's angle, and toe from spans or bar length.
// Lengths in m, angles in rad. Geometry of a four-bar linkage, in the plane and in space; knows nothing of
// rams and oil.
#pragma once

#include "app/rig/linkage.hpp"

namespace hardover::rig {

// Steering axes of both drives stand `spacing` apart. Each arm has a radius and an angle straight ahead, as
// seen from above, measured from the line that joins the axes, drive one's towards drive two; both arms on
// the same side of that line count the same way round.
struct TieBar {
    double spacing = 0;
    double arm_one = 0;
    double angle_one = 0;
    double arm_two = 0;
    double angle_two = 0;
    double bar = 0;  // pin to pin
};

// Bar length that couples both drives with a given toe (rad, positive when drive two is turned further).
double bar_for_toe(const TieBar& tie, double toe);

// Angle of drive two when drive one is steered by `steer`. Error when the bar cannot reach, or comes too near
// dead centre with drive two's arm.
Result<double> tied_steer(const TieBar& tie, double steer);

// The same in space: the arms whose pins the bar joins, both in the same boat axes.
struct TieBarInSpace {
    SteeringArm one, two;
    double bar = 0;  // pin to pin
};
// Both drives' trim angles; drives may be trimmed apart.
struct BothTrims {
    double one = 0, two = 0;
};

double bar_for_toe(const TieBarInSpace& tie, double toe);
// Error as above.
Result<double> tied_steer(const TieBarInSpace& tie, double steer, const BothTrims& trims);
// Angle of drive one when drive two stands at an angle. Error as above.
Result<double> leading_steer(const TieBarInSpace& tie, double steer_two, const BothTrims& trims);
// d(angle of drive two)/d(angle of drive one) where both stand at these angles.
double tied_ratio(const TieBarInSpace& tie, double steer, double steer_two, const BothTrims& trims);

// Included toe angle of two drives from the spans between their shafts, measured forward and aft, `distance`
// apart along the shafts; positive: closer together forward (toe-in). NaN when distance is not above zero.
double toe_from_spans(double forward, double aft, double distance);

}  // namespace hardover::rig
