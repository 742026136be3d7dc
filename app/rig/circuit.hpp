// A hydraulic circuit as a network: named nodes, the elements between them, rams and the loads they move; and
// its steady solution. SI throughout: Pa gauge, m^3/s, m/s, N, N·m, m. Knows oil and pistons, no boat and no
// linkage.
#pragma once

#include <limits>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "app/rig/flow.hpp"
#include "rules/result/result.hpp"

namespace hardover::rig::circuit {

// Oil tears apart when sucked below this: gauge pressure of a near-perfect vacuum. From memory.
inline constexpr double vapour_pressure = -95e3;
// A pump gets no oil at all at this inlet pressure, Pa gauge. From memory.
inline constexpr double pump_starves_at = -90e3;

// Every element has a name of its own (used in results and errors) and names the nodes it joins. A node
// exists by being named; a tee is simply a node that three elements name. Flow counts positive from the first
// node to the second.

// Holds its node at a pressure, 0 = open to the air. An empty one gives air: a pump that draws from it, or
// through lines from it, delivers nothing.
struct Reservoir {
    std::string name, node;
    double pressure = 0;  // a raised tank: its static head
    bool empty = false;
};

// A positive-displacement pump, turned by an engine or by a hand on the wheel: runs at `speed` (negative =
// the other way round) as long as the torque for that stays below `torque_limit`, slower beyond. A wheel
// turned with a known torque is one with that limit and a speed out of reach. Friction of the pump itself is
// not counted.
struct Pump {
    std::string name, inlet, outlet;
    double displacement = 0;       // m^3 per turn
    double speed = 0;              // turns/s
    double torque_limit = 0;       // N·m, of hand, belt or engine
    double leak = 0;               // m^3/(s·Pa) back from outlet to inlet: wear
    double suction_limit = -60e3;  // Pa at the inlet: below it the pump fills less and less, down to
                                   // nothing at pump_starves_at (the default is from memory)
};

// Opens at `cracking_pressure`; each m^3/s through it adds `slope`.
struct ReliefValve {
    std::string name, from, to;
    double cracking_pressure = 0;
    double slope = 0;  // Pa·s/m^3
};

struct CheckValve {
    std::string name, from, to;
    double cracking_pressure = 0;
    double resistance = 0;  // Pa·s/m^3 when open
    double leak = 0;        // m^3/(s·Pa) when shut
};

// A check valve that lets oil through backwards too when the pilot's pressure lifts it: pilot_ratio times
// (pilot - from) against (to - from) and the cracking pressure. From shut to wide open within
// `opening_range`. Its defaults are from memory.
struct PilotCheckValve {
    std::string name, from, to, pilot;
    double cracking_pressure = 0;
    double pilot_ratio = 3;
    double opening_range = 1e5;
    double resistance = 0;  // must be above 0
    double leak = 0;        // when shut
};

// Two pilot check valves back to back between helm and rams, each lifted by the other helm line: rams stay
// where the wheel left them. Its two halves are reported as "<name> a" and "<name> b".
struct LockValve {
    std::string name, helm_a, ram_a, helm_b, ram_b;
    double cracking_pressure = 0;
    double pilot_ratio = 3;
    double opening_range = 1e5;
    double resistance = 0;
    double leak_a = 0, leak_b = 0;
};

// Four-way valve. position +1 joins supply to port_a and port_b to tank, -1 the other way round. An edge is
// open by underlap ± position, as a share of wide open: an open-centre valve has all four open a little at 0.
// Loss of an edge: loss_coefficient·flow^2 / opening^2. Reported: "<name> supply-a", "supply-b", "a-tank",
// "b-tank".
struct ControlValve {
    std::string name, supply, tank, port_a, port_b;
    double position = 0;          // -1 to 1
    double underlap = 0;          // 0 = closed centre, to 1
    double loss_coefficient = 0;  // Pa·s^2/m^6, above 0
    double leak = 0;              // m^3/(s·Pa) over each edge
};

// Round hose or pipe; Churchill's friction factor. A bore of 0 is a blocked hose.
struct Hose {
    std::string name, from, to;
    double length = 0, bore = 0, roughness = 0;
};

// Loss of one fitting by Hooper's two constants (see two_k in flow.hpp).
struct PipeFitting {
    std::string name, from, to;
    double bore = 0;
    double k1 = 0, k_infinite = 0;
};

// Any other loss: linear·q + quadratic·q·|q|.
struct Restriction {
    std::string name, from, to;
    double linear = 0;     // Pa·s/m^3
    double quadratic = 0;  // Pa·s^2/m^6
};

// An orifice as a restriction: flow = Cd·A·sqrt(2·dp/density), area in m^2.
Restriction orifice(const std::string& name, const std::string& from, const std::string& to,
                    double discharge_coefficient, double area, double density);

// conductance·(difference of pressure). `to` left empty: to the outside, lost. With both: past a piston seal,
// say.
struct Leak {
    std::string name, from, to;
    double conductance = 0;  // m^3/(s·Pa)
};

// Air caught at a node; `volume` at atmospheric pressure. Carries no flow when steady: only its squeeze is
// reported.
struct TrappedAir {
    std::string name, node;
    double volume = 0;  // m^3
};

// What rams move: one coordinate, positive one way. `force` pushes in the positive direction. A coordinate in
// radians works too: force is then torque and a ram's `lever` its moment arm.
struct Load {
    std::string name;
    double force = 0;
    double friction = 0;  // Coulomb
    double damping = 0;   // N per m/s
    double position = 0;
    double least = -std::numeric_limits<double>::infinity();  // stops
    double most = std::numeric_limits<double>::infinity();
};

// side_a pushes the piston in its positive direction, side_b back; piston speed = lever · speed of the load.
struct Ram {
    std::string name, side_a, side_b, load;
    double area_a = 0, area_b = 0;
    double lever = 1;
    double friction = 0;  // seals, Coulomb
    double position = 0;
    double least = -std::numeric_limits<double>::infinity();
    double most = std::numeric_limits<double>::infinity();
};

using Element = std::variant<Reservoir, Pump, ReliefValve, CheckValve, PilotCheckValve, LockValve,
                             ControlValve, Hose, PipeFitting, Restriction, Leak, TrappedAir, Load, Ram>;

struct Circuit {
    FlowingOil oil;
    std::vector<Element> elements;
};

enum class Status {
    holds,                 // nothing is driven and nothing moves
    moves,                 // a load moves, driven or pushed by its own force
    at_stop,               // pressed against a stop
    stalled,               // the load or its friction is too much; without them it would move
    hydraulically_locked,  // cannot move even without load: lines shut, or rams that push against each other
    short_circuited,  // the pump's oil goes round without moving anything (an open-centre valve at rest does
                      // so)
    starved,          // a pump does not get the oil it should move
    not_asked         // of a Solver, which tells no status
};
const char* word(Status status);

struct PumpState {
    double speed = 0;    // turns/s
    double torque = 0;   // N·m to turn it
    double suction = 0;  // Pa at its inlet
    bool starved = false;
};

struct LoadState {
    double speed = 0;       // m/s
    double push = 0;        // N, from all its rams together
    double friction = 0;    // N, taken from the push
    double stop_force = 0;  // N, taken by a stop; positive at `most`
};

// Everything by the names given.
struct Solution {
    Status status = Status::holds;
    std::map<std::string, double> pressures;
    std::map<std::string, double> flows;  // a pump's is what it delivers; a reservoir's what leaves it
    std::map<std::string, PumpState> pumps;
    std::map<std::string, LoadState> loads;
    std::map<std::string, double>
        air_squeezed;                     // m^3 given up by trapped air (Boyle, slow), negative when sucked
    std::map<std::string, double> voids;  // nodes at vapour pressure: m^3/s of emptiness growing there
    double imbalance = 0;                 // largest |sum of flows| at a node over the largest flow
    int steps = 0;                        // Newton steps taken
};

// The steady state: all pressures, flows and speeds, so that flow is conserved at each node (to 1e-9 of the
// largest flow, or it is an error) and forces balance at each load. The same input gives the same bits.
// Errors name the element or node: sizes that cannot be, names given twice or not at all, no reservoir, a
// node that ends nowhere or hangs in the air, a load without rams, a circuit that does not settle. Method:
// damped Newton on smoothed laws, the smoothing taken away in steps.
Result<Solution> solve(const Circuit& circuit);

// Solves circuits one after the other, each from the solution of the last one of the same make: faster where
// they are much alike. Tells no status (which may cost a second solve). Errors and method as solve(); what it
// gives agrees with solve() to the solver's tolerance, and the same circuits in the same order give the same
// bits.
class Solver {
  public:
    Result<Solution> solve(const Circuit& circuit);

  private:
    std::map<std::string, std::vector<double>> last_;  // unknowns in SI, by the make of the network
};

}  // namespace hardover::rig::circuit
