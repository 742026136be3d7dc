#include "app/rig/circuit.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/rig/circuit_network.hpp"
#include "app/rig/circuit_newton.hpp"
#include "app/rig/stiffness.hpp"

namespace hardover::rig::circuit {

namespace {

using Eigen::VectorXd;

constexpr double conserved = 1e-9;  // of the largest flow
constexpr double motion = 1e-6;     // of the speed that the circuit's flow scale would give
constexpr double runaway = 1e6;     // of that speed
constexpr double starving = 0.999;  // a pump that fills less than this is starved
constexpr double at_rest = 1e-8;    // of the flow that the circuit is made for: seepage

struct Solved {
    Network network;
    VectorXd x;
    double largest_flow = 0;  // dimensionless
    double imbalance = 0;
    int steps = 0;
};

double largest_flow(const Network& network, const VectorXd& x) {
    double largest = 0;
    for (int i = 0; i < static_cast<int>(network.branches.size()); ++i)
        largest = std::max(largest, std::abs(x[network.flow_at(i)]));
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i)
        for (const Piston& piston : network.bodies[i].pistons)
            largest = std::max(largest, std::abs(x[network.speed_at(i)]) *
                                            std::max(std::abs(piston.pull_a), std::abs(piston.pull_b)));
    return largest;
}

bool torn(const Network& network, const VectorXd& x, int node) {
    return x[node] - network.vapour < 1e-6;
}

// Largest flow that is lost or made at a node, over the largest flow. At the vapour pressure more may flow
// out.
double imbalance(const Network& network, const VectorXd& x, double largest) {
    const VectorXd inflow = net_inflow(network, x);
    double worst = 0;
    for (int node = 0; node < inflow.size(); ++node)
        worst = std::max(worst, torn(network, x, node) ? inflow[node] : std::abs(inflow[node]));
    return largest > 0 ? worst / largest : worst;
}

std::string equation_name(const Network& network, int equation) {
    const int nodes = static_cast<int>(network.nodes.size());
    const int branches = static_cast<int>(network.branches.size());
    if (equation < nodes) return "node '" + network.nodes[equation] + "'";
    if (equation < nodes + branches) return "'" + network.branches[equation - nodes].name + "'";
    return "load '" + network.bodies[(equation - nodes - branches) / 3].name + "'";
}

Error unsettled(const Network& network, int equation) {
    return {Error::Kind::unsupported, "the circuit does not settle", equation_name(network, equation),
            "look there for sizes far from those of a steering system"};
}

VectorXd rescaled(const Network& network, VectorXd x, double ratio) {
    for (int i = 0; i < static_cast<int>(network.branches.size()); ++i) x[network.flow_at(i)] *= ratio;
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i) x[network.speed_at(i)] *= ratio;
    return x;
}

// A load that no oil and no damping holds back would fly off.
Result<void> check_speeds(const Network& network, const VectorXd& x) {
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i)
        if (!(std::abs(x[network.speed_at(i)]) < runaway))
            return Error{Error::Kind::bad_input, "nothing limits its speed",
                         "load '" + network.bodies[i].name + "'",
                         "a damping, or a hose that loses pressure in the way of its rams"};
    return {};
}

Result<Solved> solve_once(Network made, const VectorXd& start) {
    Solved solved;
    solved.network = std::move(made);
    const Settled settled = settle(solved.network, start);
    if (auto checked = check_speeds(solved.network, settled.unknowns); !checked.ok()) return checked.error();
    if (!settled.done) return unsettled(solved.network, settled.worst);
    solved.x = settled.unknowns;
    solved.steps = settled.steps;
    solved.largest_flow = largest_flow(solved.network, solved.x);
    // Where all stands still, the flow that the circuit is made for is the measure.
    const double yardstick = solved.largest_flow > at_rest ? solved.largest_flow : 1;
    solved.imbalance = imbalance(solved.network, solved.x, yardstick);
    return solved;
}

// Settled and conserving, or an error. `start`: empty, or unknowns to begin near.
Result<Solved> solve_scaled(const Circuit& circuit, Network made, const VectorXd& start) {
    const Scales scales = made.scales;
    Result<Solved> solved = solve_once(std::move(made), start);
    if (!solved.ok()) return solved;
    const double flow = solved.value().largest_flow;
    if (flow > at_rest && (flow < 1e-2 || flow > 1e2)) {
        // A drift or a weep is far smaller than the flow that the circuit is made for: once more at its own
        // size.
        const VectorXd near = rescaled(solved.value().network, solved.value().x, 1 / flow);
        Result<Solved> second = solve_once(network(circuit, {scales.pressure, scales.flow * flow}), near);
        if (second.ok() && second.value().imbalance < solved.value().imbalance) {
            second.value().steps += solved.value().steps;
            solved = second;
        }
    }
    const Solved& found = solved.value();
    if (found.imbalance <= conserved) return solved;
    int node = 0;
    net_inflow(found.network, found.x).cwiseAbs().maxCoeff(&node);
    return unsettled(found.network, node);
}

Result<Solved> solve_scaled(const Circuit& circuit) {
    return solve_scaled(circuit, network(circuit, natural_scales(circuit)), {});
}

// What 1 means of each unknown, SI.
VectorXd sizes_of_unknowns(const Network& network) {
    VectorXd sizes(network.unknowns());
    const int nodes = static_cast<int>(network.nodes.size());
    const int branches = static_cast<int>(network.branches.size());
    sizes.head(nodes).setConstant(network.scales.pressure);
    sizes.segment(nodes, branches).setConstant(network.scales.flow);
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i) {
        const Body& body = network.bodies[i];
        const double force = network.scales.pressure * body.area;
        sizes.segment<3>(network.speed_at(i)) << network.scales.flow / body.area, force, force;
    }
    return sizes;
}

// Circuits of one make have the same unknowns and are driven the same way.
std::string make_of(const Network& network) {
    std::string make;
    for (const std::string& node : network.nodes) make += node + ';';
    for (const Branch& branch : network.branches)
        make += branch.name + (branch.command > 0 ? '>' : branch.command < 0 ? '<' : ';');
    for (const Body& body : network.bodies) make += body.name + ';';
    return make;
}

void tell_flows(const Solved& solved, Solution& solution) {
    const Network& network = solved.network;
    for (std::size_t i = 0; i < network.nodes.size(); ++i)
        solution.pressures[network.nodes[i]] = solved.x[i] * network.scales.pressure;
    // A leak inside an element has the element's name: together they are its flow.
    for (int i = 0; i < static_cast<int>(network.branches.size()); ++i)
        solution.flows[network.branches[i].name] += solved.x[network.flow_at(i)] * network.scales.flow;
    for (const std::string& name : network.shut) solution.flows[name] += 0;
    const VectorXd inflow = net_inflow(network, solved.x);
    for (int node = 0; node < inflow.size(); ++node)
        if (torn(network, solved.x, node))
            solution.voids[network.nodes[node]] = std::max(0.0, -inflow[node]) * network.scales.flow;
}

void tell_loads(const Solved& solved, Solution& solution) {
    const Network& network = solved.network;
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i) {
        const Body& body = network.bodies[i];
        const int v = network.speed_at(i);
        const double force = network.scales.pressure * body.area;
        LoadState& state = solution.loads[body.name];
        state.speed = solved.x[v] * network.scales.flow / body.area;
        state.friction = solved.x[v + 1] * force;
        state.stop_force = solved.x[v + 2] * force;
        for (const Piston& piston : body.pistons)
            state.push +=
                force * (piston.pull_a * solved.x[piston.side_a] - piston.pull_b * solved.x[piston.side_b]);
    }
}

void tell_pumps(const Circuit& circuit, const Solved& solved, Solution& solution) {
    const Network& network = solved.network;
    for (const Element& element : circuit.elements) {
        const auto* pump = std::get_if<Pump>(&element);
        if (!pump) continue;
        PumpState& state = solution.pumps[pump->name];
        const double inlet = solution.pressures[pump->inlet], outlet = solution.pressures[pump->outlet];
        state.suction = solution.pressures[suction_node(*pump)];
        if (pump->displacement <= 0) continue;
        const bool driven = pump->speed != 0 && pump->torque_limit > 0;
        state.torque = (outlet - inlet) * pump->displacement / (2 * std::numbers::pi);
        const auto branch = std::find_if(
            network.branches.begin(), network.branches.end(),
            [&](const Branch& b) { return b.kind == Branch::Kind::pump && b.name == pump->name; });
        // Without one it has nothing but air to move.
        state.starved = driven;
        if (branch == network.branches.end()) continue;
        const int row = network.flow_at(static_cast<int>(branch - network.branches.begin()));
        state.speed = solved.x[row] * network.scales.flow / pump->displacement;
        const double filled = pump_filling(*branch, state.suction / network.scales.pressure, 0).value;
        state.starved = driven && filled < starving;
    }
}

void tell_air(const Circuit& circuit, Solution& solution) {
    for (const Element& element : circuit.elements)
        if (const auto* air = std::get_if<TrappedAir>(&element)) {
            const double pressure = std::max(solution.pressures[air->node], vapour_pressure);
            solution.air_squeezed[air->name] = air->volume - trapped_air_volume(air->volume, pressure);
        }
}

struct Motion {
    bool moving = false, pressed = false;
    double commanded = 0, turned = 0, relieved = 0;  // m^3/s
};

Motion motion_of(const Circuit& circuit, const Solution& solution) {
    Motion found;
    const double flow = natural_scales(circuit).flow;
    for (const Element& element : circuit.elements) {
        if (const auto* pump = std::get_if<Pump>(&element); pump && pump->torque_limit > 0) {
            found.commanded += std::abs(pump->speed) * pump->displacement;
            found.turned += std::abs(solution.pumps.at(pump->name).speed) * pump->displacement;
        }
        if (const auto* relief = std::get_if<ReliefValve>(&element))
            found.relieved += solution.flows.at(relief->name);
        if (const auto* ram = std::get_if<Ram>(&element)) {
            const double swept = std::abs(ram->lever * solution.loads.at(ram->load).speed) *
                                 std::max(ram->area_a, ram->area_b);
            found.moving = found.moving || swept > motion * flow;
        }
    }
    for (const auto& [name, load] : solution.loads)
        found.pressed = found.pressed || std::abs(load.stop_force) > 0.01 * std::abs(load.push);
    return found;
}

// Would anything move without load and friction?
bool moves_unloaded(Circuit circuit) {
    for (Element& element : circuit.elements) {
        if (auto* load = std::get_if<Load>(&element)) load->force = load->friction = 0;
        if (auto* ram = std::get_if<Ram>(&element)) ram->friction = 0;
    }
    const Result<Solved> unloaded = solve_scaled(circuit);
    // Nothing limits its speed: it surely moves.
    if (!unloaded.ok()) return unloaded.error().kind == Error::Kind::bad_input;
    Solution solution;
    tell_flows(unloaded.value(), solution);
    tell_loads(unloaded.value(), solution);
    tell_pumps(circuit, unloaded.value(), solution);
    return motion_of(circuit, solution).moving;
}

bool starved(const Solution& solution) {
    return std::any_of(solution.pumps.begin(), solution.pumps.end(),
                       [](const auto& pump) { return pump.second.starved; });
}

Status status_of(const Circuit& circuit, const Solution& solution) {
    const Motion found = motion_of(circuit, solution);
    if (starved(solution)) return Status::starved;
    if (found.moving) return Status::moves;
    if (found.commanded == 0) return Status::holds;
    if (found.pressed) return Status::at_stop;
    // The pump turns freely and not over its relief.
    if (found.turned > 0.5 * found.commanded && found.relieved < 0.5 * found.turned)
        return Status::short_circuited;
    return moves_unloaded(circuit) ? Status::stalled : Status::hydraulically_locked;
}

Solution told(const Circuit& circuit, const Solved& solved) {
    Solution solution;
    solution.imbalance = solved.imbalance;
    solution.steps = solved.steps;
    tell_flows(solved, solution);
    tell_loads(solved, solution);
    tell_pumps(circuit, solved, solution);
    tell_air(circuit, solution);
    return solution;
}

}  // namespace

const char* word(Status status) {
    switch (status) {
        case Status::holds:
            return "holds";
        case Status::moves:
            return "moves";
        case Status::at_stop:
            return "at stop";
        case Status::stalled:
            return "stalled";
        case Status::hydraulically_locked:
            return "hydraulically locked";
        case Status::short_circuited:
            return "short-circuited";
        case Status::starved:
            return "starved";
        case Status::not_asked:
            return "not asked";
    }
    return "unknown";
}

Restriction orifice(const std::string& name, const std::string& from, const std::string& to,
                    double discharge_coefficient, double area, double density) {
    const double effective = discharge_coefficient * area;
    return {.name = name, .from = from, .to = to, .quadratic = density / (2 * effective * effective)};
}

Result<Solution> solve(const Circuit& circuit) {
    if (auto checked = check(circuit); !checked.ok()) return checked.error();
    const Result<Solved> solved = solve_scaled(circuit);
    if (!solved.ok()) return solved.error();
    Solution solution = told(circuit, solved.value());
    solution.status = status_of(circuit, solution);
    return solution;
}

Result<Solution> Solver::solve(const Circuit& circuit) {
    if (auto checked = check(circuit); !checked.ok()) return checked.error();
    Network made = network(circuit, natural_scales(circuit));
    std::vector<double>& last = last_[make_of(made)];
    VectorXd start;
    if (!last.empty())
        start =
            Eigen::Map<const VectorXd>(last.data(), made.unknowns()).cwiseQuotient(sizes_of_unknowns(made));
    const Result<Solved> solved = solve_scaled(circuit, std::move(made), start);
    if (!solved.ok()) return solved.error();
    const Solved& found = solved.value();
    const VectorXd left = found.x.cwiseProduct(sizes_of_unknowns(found.network));
    last.assign(left.begin(), left.end());
    Solution solution = told(circuit, found);
    solution.status = Status::not_asked;
    return solution;
}

}  // namespace hardover::rig::circuit
