// The steering rig drawn to scale from behind, from above and from the side, at a steering angle and a trim:
// brackets, pins and rams at their true points, everything else as a symbol. Port is marked P and hatched,
// starboard is marked S and plain. Knows the numeric boat, no job and no page. Metres and rad; steering
// counts positive to starboard, trim upward.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/drawing/drawing.hpp"
#include "app/rig/at_work.hpp"
#include "rules/quantity/quantity.hpp"

namespace hardover::drawing {

// A boat's steering gear as it stands, with or without faults.
struct RigPlan {
    rig::Boat boat;
    rig::SteeredDrives steered;
    double port_lock = 0;  // below 0
    double starboard_lock = 0;
    bool second_ram_crossed = false;  // its two hoses sit on each other's ports
    double reservoir_level = 1;       // 1 full mark, 0 low mark, -1 no oil to be seen
};

// Of a sound boat. Error as rig::BoatAtWork::of.
Result<RigPlan> plan_of(const rig::Boat& boat);
RigPlan plan_of(const rig::BoatAtWork& at_work);

struct LinePressures {
    rig::Way way = rig::Way::held;
    rig::Sides lines;  // Pa
};

// How everything stands at one moment.
struct Pose {
    double steer = 0;
    double trim = 0;
    double wheel = 0;                                      // turned from straight, positive to starboard
    std::optional<LinePressures> pressure = std::nullopt;  // drawn when it is known
};

struct RigSketch {
    Drawing behind;
    Drawing above;
    Drawing side;
};

// Error: no ram, a ram that would be beyond its travel at this angle, a tie bar that cannot reach.
Result<RigSketch> rig_sketch(const RigPlan& plan, const Pose& pose, UnitSystem units = UnitSystem::us);

// "20° to starboard", "straight ahead"; "3° up", "level".
std::string steer_text(double radians);
std::string trim_text(double radians);
bool trims(const rig::Boat& boat);

}  // namespace hardover::drawing
