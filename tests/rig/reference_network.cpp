// Published hydraulic networks, solved by the circuit solver from the data of the rows.
#include <cmath>

#include "reference_checks.hpp"
#include "rig/circuit_support.hpp"

namespace hardover_tests {

namespace {

using Check = ReferenceCheck;

// Three reservoirs and their junction; levels are heads of water, loss K·Q^2.
Solution three_reservoirs(const Check& c) {
    const double head = 1000 * gravity;
    Circuit circuit{{1000, 1e-6}, {}};
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string number = std::to_string(i + 1);
        circuit.elements.push_back(Reservoir{"r" + number, number, head * c.list("EL")[i]});
        circuit.elements.push_back(
            Restriction{.name = "p" + number, .from = number, .to = "j", .quadratic = head * c.list("K")[i]});
    }
    return solved(circuit);
}

// Pipes with one friction factor: loss L/D^5·Q^2. What the whole loses at unit flow squared.
double loss_of_pipes(const Check& c, bool in_series) {
    Circuit circuit{oil, {Reservoir{"up", "0", 10 * bar}, Reservoir{"down", "d"}}};
    for (std::size_t i = 0; i < 3; ++i) {
        const std::string from = in_series ? std::to_string(i) : "0";
        const std::string to = in_series && i < 2 ? std::to_string(i + 1) : "d";
        circuit.elements.push_back(Restriction{.name = "pipe " + std::to_string(i),
                                               .from = from,
                                               .to = to,
                                               .quadratic = c.list("L")[i] / std::pow(c.list("D")[i], 5)});
    }
    const double flow = solved(circuit).flows.at("up");
    return 10 * bar / (flow * flow);
}

// A pump of known power feeds two pipes from a lower to a higher reservoir. Friction by Churchill, not by the
// book's Colebrook: within 1 % here.
Solution two_parallel_pipes(const Check& c) {
    const auto at_flow = [&](double flow) {
        return solved({{c("rho"), c("mu") / c("rho")},
                       {Reservoir{"A", "a", c("rho") * gravity * c.list("z")[0]},
                        Reservoir{"B", "b", c("rho") * gravity * c.list("z")[1]},
                        Pump{.name = "pump",
                             .inlet = "a",
                             .outlet = "p",
                             .displacement = 1e-3,
                             .speed = flow / 1e-3,
                             .torque_limit = 1e4},
                        Hose{"first", "p", "b", c.list("L")[0], c.list("D")[0], c("eps")},
                        Hose{"second", "p", "b", c.list("L")[1], c.list("D")[1], c("eps")}}});
    };
    double least = 0.001, most = 0.1;
    for (int halving = 0; halving < 40; ++halving) {
        const double middle = (least + most) / 2;
        const Solution s = at_flow(middle);
        const double power = middle * (s.pressures.at("p") - s.pressures.at("a"));
        (power < c("P_electric") * c("eta") ? least : most) = middle;
    }
    return at_flow(least);
}

Solution nodal_network(const Check& c) {
    return solved({oil,
                   {Reservoir{"tank", "0"}, source("in", "0", "1", c("q_in_node1")),
                    source("out", "3", "0", c("q_out_node3")), linear("12", "1", "2", c("g12")),
                    linear("23", "2", "3", c("g23")), linear("2t", "2", "0", c("g2_tank")),
                    linear("3t", "3", "0", c("g3_tank"))}});
}

constexpr double bridge_unit = cm3 / bar;  // the bridge's conductances are plain numbers

Solution bridge(const Check& c) {
    const auto edge = [&](const char* name, const char* from, const char* to) {
        return linear(name, from, to, bridge_unit * c(std::string("g_") + name));
    };
    return solved({oil,
                   {Reservoir{"supply", "P", c("p_supply")}, Reservoir{"tank", "T"}, edge("PX", "P", "X"),
                    edge("PY", "P", "Y"), edge("XT", "X", "T"), edge("YT", "Y", "T"), edge("XY", "X", "Y")}});
}

double resistance(std::vector<Element> between_p_and_tank, const hardover::rig::FlowingOil& flowing) {
    const double flow = 10 * cm3;
    Circuit circuit{flowing, std::move(between_p_and_tank)};
    circuit.elements.push_back(Reservoir{"tank", "t"});
    circuit.elements.push_back(source("pump", "t", "p", flow));
    return solved(circuit).pressures.at("p") / flow;
}

}  // namespace

ReferenceFormulas network_formulas() {
    return {
        {"NET-001", [](const Check& c) { return three_reservoirs(c).pressures.at("j") / (1000 * gravity); }},
        {"NET-002", [](const Check& c) { return three_reservoirs(c).flows.at("p1"); }},
        {"NET-003", [](const Check& c) { return -three_reservoirs(c).flows.at("p2"); }},
        {"NET-004", [](const Check& c) { return -three_reservoirs(c).flows.at("p3"); }},
        {"NET-005", [](const Check& c) { return loss_of_pipes(c, true) * std::pow(c("De"), 5); }},
        {"NET-006", [](const Check& c) { return std::pow(c("Le") / loss_of_pipes(c, true), 0.2); }},
        {"NET-007", [](const Check& c) { return loss_of_pipes(c, false) * std::pow(c("De"), 5); }},
        {"NET-008", [](const Check& c) { return two_parallel_pipes(c).flows.at("pump"); }},
        {"NET-009", [](const Check& c) { return two_parallel_pipes(c).flows.at("first"); }},
        {"NET-010", [](const Check& c) { return two_parallel_pipes(c).flows.at("second"); }},
        {"NET-011", [](const Check& c) { return nodal_network(c).pressures.at("1"); }},
        {"NET-012", [](const Check& c) { return nodal_network(c).pressures.at("2"); }},
        {"NET-013", [](const Check& c) { return nodal_network(c).pressures.at("3"); }},
        {"NET-014", [](const Check& c) { return bridge(c).pressures.at("X"); }},
        {"NET-015", [](const Check& c) { return bridge(c).pressures.at("Y"); }},
        {"NET-016", [](const Check& c) { return bridge(c).flows.at("XY") / bridge_unit; }},
        {"NET-018",
         [](const Check& c) {
             return resistance({Restriction{.name = "1", .from = "p", .to = "x", .linear = c("R1")},
                                Restriction{.name = "2", .from = "x", .to = "t", .linear = c("R2")},
                                Restriction{.name = "3", .from = "x", .to = "t", .linear = c("R3")}},
                               oil);
         }},
    };
}

}  // namespace hardover_tests
