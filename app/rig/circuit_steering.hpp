// The circuits of a steering system from a plain list of its sizes and faults: manual helm or power-assist
// valve, one or two rams. SI throughout. Knows plumbing; what the rams do to a drive is told by the linkage.
//
// Two lines run to the rams. Oil in the starboard line steers to starboard; speeds, positions and forces
// count positive to starboard, in the ram's own line.
#pragma once

#include <array>

#include "app/rig/circuit.hpp"

namespace hardover::rig::circuit {

struct BothLines {
    double port = 0, starboard = 0;
};

// What can be wrong; the default is a sound system.
struct SteeringFaults {
    std::array<double, 2> internal_leak{};  // past each ram's piston, m^3/(s·Pa)
    BothLines hose_bore_factor{1, 1};       // of the bore that is left: kinked or swollen, 0 = blocked
    BothLines external_leak{};              // of each line to the outside, m^3/(s·Pa)
    BothLines trapped_air{};                // m^3 at atmospheric pressure
    double pump_leak = 0;                   // slip of helm or engine pump, m^3/(s·Pa)
    BothLines helm_check_leak{};            // lock valve of a manual helm, m^3/(s·Pa)
    BothLines valve_travel{1, 1};           // share of the control valve's travel that the cable reaches
    bool second_ram_swapped = false;        // its two hoses exchanged
    bool reservoir_empty = false;
};

struct SteeringHydraulics {
    enum class Helm {
        manual,       // the wheel moves the oil
        power_assist  // the wheel's cable moves a control valve, an engine-driven pump moves the oil
    };
    Helm helm = Helm::manual;
    FlowingOil oil;

    int rams = 1;                          // 1 or 2, on one drive or on drives tied together
    double bore = 0, rod = 0, stroke = 0;  // m, of each
    bool balanced = false;                 // rod out of both ends
    bool opposed = true;                   // the second ram pulls while the first pushes
    double ram_friction = 0;               // N, seals of each

    double hose_length = 0, hose_bore = 0;  // each line from helm or valve to the ram or to its tee
    double tee_length = 0;                  // from a tee to each of two rams
    double supply_length = 0;               // power assist: from pump to valve, and back
    double supply_bore = 0;

    double displacement = 0;  // m^3 per turn of helm or engine pump
    double torque_limit = 0;  // N·m, of hand or belt
    double relief_pressure = 0;
    double relief_slope = 0;  // Pa·s/m^3

    double lock_cracking_pressure = 0.5e5;  // Pa; this and the next are from memory
    double lock_resistance = 2e9;           // Pa·s/m^3 through each of the helm's check valves
    double valve_loss = 0;      // power assist: loss coefficient of the control valve, Pa·s^2/m^6
    double valve_underlap = 0;  // 0 = closed centre

    double position = 0;       // m from midstroke
    double load_force = 0;     // N, pushes to starboard
    double load_friction = 0;  // N

    SteeringFaults faults;
};

// What the helmsman and the engine do. turns_per_second: of the wheel, or of the engine pump.
struct SteeringCommand {
    double turns_per_second = 0;
    double valve_position = 0;  // power assist only: -1 to 1
};

// The circuit, or an error that names the size that cannot be.
Result<Circuit> steering_circuit(const SteeringHydraulics& hydraulics, const SteeringCommand& command);

struct SteeringMotion {
    Status status = Status::holds;
    double speed = 0;             // m/s
    double turns_per_second = 0;  // of the wheel, which may turn slower than asked; of the engine pump
    double torque = 0;            // N·m to turn it the way asked
    double pressure = 0;          // Pa, the higher of the helm's two sides, or at the engine pump
    double lost_volume = 0;       // m^3 of trapped air squeezed away in the line under pressure
    Solution solution;
};
Result<SteeringMotion> steer(const SteeringHydraulics& hydraulics, const SteeringCommand& command);

struct Passage {
    double turns = 0;  // of wheel or pump, with those that squeeze trapped air
    double seconds = 0;
};
// From one end of the stroke to the other, towards the side that the command steers to, under the same load
// all the way. An error when the rams do not get there.
Result<Passage> lock_to_lock(const SteeringHydraulics& hydraulics, const SteeringCommand& command);

}  // namespace hardover::rig::circuit
