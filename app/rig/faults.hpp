// What can be wrong with a boat's steering, as changes of sizes; each with the name by which a knowledge base
// puts it in. SI throughout. Knows no causes: a cause is one or several of these.
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "rules/quantity/quantity.hpp"
#include "rules/result/result.hpp"

namespace hardover::rig {

struct Sides {
    double port = 0, starboard = 0;
};

// The default is a sound boat. Leaks are flows at 1000 psi and laminar: half the pressure, half the leak.
struct Faults {
    Sides bracket_offset;       // m the rod stands too far out with the drive straight: anchor misplaced
    Sides rod_end_offset;       // m the rod end is screwed too far out
    Sides bracket_height;       // m the anchor stands too high
    Sides wing_plate_height;    // m the ram pin stands above the trim axis
    double tie_bar_length = 0;  // m too long
    double tie_bar_play = 0;    // m at its ends
    double tiller_slip = 0;     // rad the rudder stands to starboard of where its tiller says
    double tiller_play = 0;     // m at the ram pin
    double mark_offset = 0;     // rad the mark for straight lies to starboard of straight
    double bracket_play = 0;    // m in the port ram's line, and so the next two
    double pin_play = 0;
    double wing_plate_play = 0;
    double gimbal_play = 0;        // m at the ram pins
    double bracket_tightness = 1;  // share of the bolts' torque figure
    double wing_plate_tightness = 1;
    Sides foul;                         // rad before the drive's stop at which ram or hose meets something
    Sides hose_kink{1, 1};              // bore left of the hose under pressure at full lock that way
    Sides hose_short;                   // m of hose that lack at full lock that way
    Sides hose_bore{1, 1};              // bore left everywhere, of a line
    Sides feed_bore{1, 1};              // bore left of what feeds a line; oil comes back freely
    double hose_swelling = 1;           // give of the hoses over that of sound ones
    double trapped_air = 0;             // m^3 at atmospheric pressure, half of it on each side
    double air_share = 0;               // bubbles drawn in, of the oil's volume
    double reservoir_level = 1;         // 1 at the full mark, 0 at the low mark, -1 no oil to be seen
    double oil_viscosity = 1;           // over that of the right oil
    double oil_strangeness = 0;         // 0 the right family of oil, 1 clearly another
    double strainer_bore = 1;           // of the suction side
    Sides ram_leak;                     // m^3/s past the piston of each ram
    double helm_wear = 0;               // m^3/s past a hand helm's pump
    double pump_wear = 0;               // m^3/s past the driven pump, a hand helm's assist included
    Sides helm_leak;                    // m^3/s back from a line to the reservoir inside the helm
    Sides second_helm_leak;             // m^3/s back from a line through the second helm
    double autopilot_bypass = 0;        // m^3/s from line to line through the autopilot's pump
    double assist_strength = 1;         // help of a manual helm's assist, of a sound one
    double belt_grip = 1;               // torque the belt still carries, of a sound one
    double relief_factor = 1;           // of the relief pressure
    Sides valve_travel{1, 1};           // share of the control valve's travel that the cable reaches
    double valve_stuck = 0;             // where the let-go valve stays, -1 (full to port) to 1
    double cable_friction = 0;          // N more than a sound cable's
    double cable_play = 0;              // m
    double helm_play = 0;               // m at the rim
    double drive_friction = 0;          // N·m more about the steering axis
    double bind_torque = 0;             // N·m more within the binding range
    double ram_bind_force = 0;          // N more in the port ram within the binding range: a bent rod
    double bind_from = 0, bind_to = 0;  // rad
    double rod_bend = 0;                // m over the rod's length
    double tab_angle = 0;               // rad the trim tab is off, positive pulls to starboard
    double list_angle = 0;              // rad the boat lists, positive pulls to starboard
    double rams_swapped = 0;            // 1: the second ram's two hoses exchanged
    // Oil lost to the outside while the wheel is worked, m^3/s, at each place.
    double weep_seat = 0, weep_thread = 0, weep_crimp = 0, weep_block_joint = 0, weep_cap = 0, weep_rod = 0,
           weep_bulkhead = 0;
};

// One of them by name.
struct Parameter {
    std::string name;  // "circuit.trapped_air"
    std::string unit;  // "mL"
    std::string meaning;
    double least = 0;  // what can be, in that unit
    double most = 0;
    double& (*of)(Faults&);
};

const std::vector<Parameter>& parameters();

// Sets one, held within what can be. Error: unknown name (with the nearest), wrong kind of quantity.
Result<void> set_parameter(Faults& faults, std::string_view name, const Quantity& value);

}  // namespace hardover::rig
