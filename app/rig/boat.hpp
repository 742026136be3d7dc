// One boat's steering as plain sizes, sound and without any fault. SI throughout (m, rad, Pa, N, N·m, K,
// m^3). Knows no knowledge base: who reads rigs from one sets these fields by name.
//
// Axes: x to starboard, y forward, z up, origin on the steering axis. Steering counts positive to starboard:
// seen from above the drive turns anticlockwise and its tail swings to starboard. The port ram pushes the
// drive to starboard, the starboard ram to port.
#pragma once

#include <cstdint>

#include "app/rig/circuit_steering.hpp"
#include "app/rig/steered_drives.hpp"

namespace hardover::rig {

// Sizes that a rig need not tell have defaults of the order of a small craft's; all defaults are from memory.
struct Boat {
    enum class Helm {
        manual_pump,  // the wheel moves the oil
        cable_valve   // the wheel's cable moves a power-assist valve, and the drive itself when that is not
                      // enough
    };
    Helm helm = Helm::manual_pump;
    enum class Assist { none, engine_pump, electric_pump };
    Assist assist = Assist::none;  // with a manual pump: what helps the hand
    int helms = 1;                 // wheels, 1 or 2; the survey is made at the first
    bool autopilot = false;        // its pump teed into both lines

    // Drives, outboards or rudders
    enum class Mount {
        sterndrive_external,  // rams beside the drive, from the transom aft
        outboard_centre,      // a balanced cylinder across each outboard's tiller, its rod on the tilt tube
        inboard_tiller        // rams athwart, at the tiller of a rudder, which points aft here
    };
    Mount mount = Mount::sterndrive_external;
    int drives = 1;               // 1 or 2; with two the second stands to starboard
    bool tied = true;             // two drives: joined by a tie bar; else the oil alone leads the second
    double drive_spacing = 0.76;  // between the steering axes
    double tie_arm = 0.2;         // from the steering axis aft to the tie bar's pin
    double trim_down = -0.07;     // of drives that trim; positive raises the propeller
    double trim_up = 0.26;

    // Rams. One ram is the port drive's, on its port side; two are one on each side of one drive, or one on
    // each of two drives.
    int rams = 2;
    bool balanced = false;  // rod out of both ends, as every centre-mounted cylinder's
    double bore = 0.032;
    double rod = 0.016;
    double stroke = 0.2286;
    double ram_friction = 30;  // N, seals of each

    // Linkage. Pins and anchors of the two rams lie alike on both sides.
    double stop_angle = 0.52;    // where the drive meets its own stop, each way
    double ram_reserve = 0.010;  // rod travel left there
    double lead_in = 0.1;        // the ram's slant towards the middle, from its anchor aft
    double pin_set_back =
        0.2;  // how far aft of the steering axis the pin lies, as a share of its side distance
    double dead_length = 0.15;     // what a closed ram is longer than its stroke
    double mark_distance = 0.9;    // from the steering axis aft to the drive's mark for the diagonals
    double marks_apart = 1.0;      // of the two transom marks
    double push_lever = 0.6;       // from the steering axis to where the tail of the drive is pushed
    double hose_slack = 0.04;      // spare length of hose at full lock
    double foul_clearance = 0.02;  // clearance of ram and hose at full lock

    // Wheel and helm
    double wheel_radius = 0.19;
    double helm_displacement = 60e-6;  // m^3 per turn
    double helm_friction = 1.0;        // N·m at the wheel
    double assist_help = 0.7;          // share of the hand's work that a sound assist takes over
    double hand_push = 100;            // N at the rim: a firm push with one hand
    double hand_most = 250;            // N at the rim: nobody pulls more
    double turning = 0.25;             // turns/s of a steady, slow turn
    double sound_play = 0.1e-3;        // m, all joints of a sound boat together, in the ram's line
    double sound_slip = 1.5e-8;        // m^3/s at 1000 psi: slip of a sound helm or engine pump

    // Hoses, oil
    double hose_length = 5;  // helm or valve to the rams
    double hose_bore = 0.0064;
    double hose_compliance = 0.1e-6;  // m^3 per m at 1000 psi
    double oil_at_40 = 22e-6;         // m^2/s
    double oil_at_100 = 4.5e-6;
    double oil_density = 870;  // kg/m^3
    double oil_bulk_modulus = 1.5e9;
    double temperature = 293.15;
    double relief_pressure = 69e5;

    // Power assist
    double pump_displacement = 8e-6;  // m^3 per turn
    double pump_idle = 10;            // turns/s
    double belt_reserve = 1.6;        // torque the belt carries over the torque at the relief pressure
    double supply_length = 3;
    double supply_bore = 0.0095;
    double valve_spring = 60;    // N to move the valve by its cable
    double valve_stick = 400;    // N to drag a stuck spool off the end of its travel
    double cable_friction = 60;  // N of a sound cable
    double cable_turns = 3.5;    // of the wheel from lock to lock

    // Load
    double dock_friction = 90;   // N·m about the steering axis, drive in the water, boat not moving
    double hard_turn = 250;      // N·m of the water against the drive in a hard turn at cruising speed
    double cruising_speed = 12;  // m/s
    double tab_area = 0.004;     // m^2, the trim tab's
    double tab_lever = 0.22;     // m from the steering axis
    double list_torque = 250;    // N·m per rad that the boat lists at cruising speed
};

// The port ram and, with two, the starboard ram, on their drives. Error when no linkage has these sizes.
Result<SteeredDrives> steered_drives(const Boat& boat);

// Kinematic viscosity of the boat's oil, m^2/s; oil in the cold below 0 C is taken as at 0 C.
double oil_viscosity_of(const Boat& boat, double temperature);

// A plausible boat of either helm, any mount, one or two drives and rams, single-rod or balanced. Ranges and
// shares are from memory.
Boat sample_boat(std::uint64_t seed);

}  // namespace hardover::rig
