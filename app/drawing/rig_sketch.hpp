// The steering rig drawn to scale from behind and from above at a steering angle: brackets, pins and rams at
// their true points, everything else as a symbol. Port is marked P and hatched, starboard is marked S and
// plain. Knows the numeric boat's sizes, no job and no page. Metres; steering counts positive to starboard.
#pragma once

#include <optional>
#include <vector>

#include "app/drawing/drawing.hpp"
#include "app/rig/boat.hpp"
#include "app/rig/tie_bar.hpp"
#include "rules/quantity/quantity.hpp"

namespace hardover::drawing {

struct PlannedRam {
    rig::MountedRam mount;  // in the axes of its drive, as rig::Boat has them
    bool port = true;       // which side of the boat it is on
};

struct PlannedDrive {
    double offset = 0;  // m, its steering axis to starboard of the boat's centre line
    std::vector<PlannedRam> rams;
};

struct RigPlan {
    rig::Boat::Helm helm = rig::Boat::Helm::manual_pump;
    double bore = 0;  // m, of each ram
    double rod = 0;
    bool balanced = false;
    std::vector<PlannedDrive> drives;    // port to starboard; one or two
    std::optional<rig::TieBar> tie_bar;  // couples two drives; drive one is the port one
};

// The boat's drives, rams and tie bar. Error: as steered_drives, or a mount other than rams beside a stern
// drive, which is not drawn.
Result<RigPlan> plan_of(const rig::Boat& boat);

struct RigSketch {
    Drawing behind;
    Drawing above;
};

// Error: no drive, a ram that would be beyond its travel at this angle (rad), a tie bar that cannot reach.
Result<RigSketch> rig_sketch(const RigPlan& plan, double steer, UnitSystem units = UnitSystem::us);

}  // namespace hardover::drawing
