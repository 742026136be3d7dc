// A circuit made ready for solving: nodes by number, elements as branches, rams and loads as bodies,
// everything dimensionless. Knows no solving.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "app/rig/circuit.hpp"
#include "app/rig/circuit_laws.hpp"

namespace hardover::rig::circuit {

// What 1 means in the dimensionless numbers.
struct Scales {
    double pressure = 1e6;  // Pa
    double flow = 1e-5;     // m^3/s
};

// A ram as its load feels it; the same number carries pressure to force and speed to flow.
struct Piston {
    int side_a = 0, side_b = 0;
    double pull_a = 0, pull_b = 0;  // lever · area over the body's area
};

struct Body {
    std::string name;
    double area = 1;  // m^2 (or m^3 per rad): scale of force is pressure · area, of speed flow / area
    std::vector<Piston> pistons;
    double force = 0, friction = 0, damping = 0;
    bool at_least = false, at_most = false;
};

struct Network {
    Scales scales;
    double vapour = 0;
    std::vector<std::string> nodes;
    std::vector<Branch> branches;
    std::vector<std::string> shut;  // elements that let no oil through
    std::vector<Body> bodies;

    int pressure_at(int node) const { return node; }
    int flow_at(int branch) const { return static_cast<int>(nodes.size()) + branch; }
    // Speed; friction and stop force follow it.
    int speed_at(int body) const { return static_cast<int>(nodes.size() + branches.size()) + 3 * body; }
    int unknowns() const { return speed_at(static_cast<int>(bodies.size())); }
};

// The first thing wrong with a circuit, with the name of the element or node.
Result<void> check(const Circuit& circuit);

// Pressure and flow of the size that the circuit's own pumps, valves and loads call for.
Scales natural_scales(const Circuit& circuit);

// A circuit that passed check().
Network network(const Circuit& circuit, const Scales& scales);

// Nodes that an empty reservoir fills with air: its own, and those joined to it by lines only.
std::set<std::string> nodes_full_of_air(const Circuit& circuit);

// The node a pump draws from.
const std::string& suction_node(const Pump& pump);

// The most pressure, Pa, that a pump's torque gives.
double stall_pressure(const Pump& pump);

// A visitor from one lambda per kind of element.
template <class... Ts>
struct By : Ts... {
    using Ts::operator()...;
};

}  // namespace hardover::rig::circuit
