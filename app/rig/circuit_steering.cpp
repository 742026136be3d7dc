#include "app/rig/circuit_steering.hpp"

#include <algorithm>
#include <cmath>

#include "app/rig/cylinder.hpp"

namespace hardover::rig::circuit {

namespace {

using Helm = SteeringHydraulics::Helm;

Error refused(const char* what, const char* cure) {
    return {Error::Kind::bad_input, what, "steering circuit", cure};
}

Result<void> check_sizes(const SteeringHydraulics& h, const SteeringCommand& command) {
    if (h.rams != 1 && h.rams != 2) return refused("the number of rams is neither 1 nor 2", "1 or 2");
    if (!(h.bore > 0 && h.rod > 0 && h.rod < h.bore))
        return refused("ram bore and rod do not fit each other",
                       "a rod above 0 and thinner than the bore, in m");
    if (!(h.stroke > 0)) return refused("the ram's stroke is not above 0", "a length above 0, in m");
    if (!(std::abs(h.position) <= h.stroke / 2))
        return refused("the ram's position is beyond its stroke", "within half a stroke of the middle");
    if (!(std::abs(command.valve_position) <= 1))
        return refused("the valve's position is beyond its travel", "-1 to 1");
    for (const double share : {h.faults.hose_bore_factor.port, h.faults.hose_bore_factor.starboard,
                               h.faults.valve_travel.port, h.faults.valve_travel.starboard})
        if (!(share >= 0 && share <= 1))
            return refused("a hose's bore factor or a valve's travel is no share", "0 to 1");
    return {};
}

// One line from helm or valve to the rams, with what can be wrong with it.
void add_line(std::vector<Element>& to, const SteeringHydraulics& h, const std::string& side,
              double bore_factor, double external_leak, double trapped_air) {
    const bool two = h.rams == 2;
    const std::string end = side + (two ? " tee" : " side of ram 1");
    to.push_back(Hose{side + " hose", side + " line", end, h.hose_length, h.hose_bore * bore_factor});
    for (const char* ram : {"1", "2"})
        if (two)
            to.push_back(Hose{side + " hose of ram " + ram, end, side + " side of ram " + ram, h.tee_length,
                              h.hose_bore});
    to.push_back(Leak{side + " weep", end, "", external_leak});
    to.push_back(TrappedAir{side + " air", end, trapped_air});
}

void add_rams(std::vector<Element>& to, const SteeringHydraulics& h) {
    const double half = h.stroke / 2;
    to.push_back(Load{.name = "drive", .force = h.load_force, .friction = h.load_friction});
    for (int i = 0; i < h.rams; ++i) {
        const std::string number = std::to_string(i + 1);
        const bool turned = i == 1 && h.opposed;
        const bool swapped = i == 1 && h.faults.second_ram_swapped;
        std::string cap = "starboard side of ram " + number, annulus = "port side of ram " + number;
        if (turned != swapped) std::swap(cap, annulus);
        const double lever = turned ? -1 : 1;
        to.push_back(Ram{.name = "ram " + number,
                         .side_a = cap,
                         .side_b = annulus,
                         .load = "drive",
                         .area_a = ram_area(h.bore, h.balanced ? h.rod : 0),
                         .area_b = ram_area(h.bore, h.rod),
                         .lever = lever,
                         .friction = h.ram_friction,
                         .position = lever * h.position,
                         .least = -half,
                         .most = half});
        to.push_back(Leak{"piston seal of ram " + number, cap, annulus, h.faults.internal_leak[i]});
    }
}

// The helm draws what it lacks from the reservoir and gives back what it has too much of: the lower side's
// make-up valve is lifted by the side under pressure.
void add_manual_helm(std::vector<Element>& to, const SteeringHydraulics& h, const SteeringCommand& command) {
    to.push_back(Pump{.name = "helm",
                      .inlet = "helm port",
                      .outlet = "helm starboard",
                      .displacement = h.displacement,
                      .speed = command.turns_per_second,
                      .torque_limit = h.torque_limit,
                      .leak = h.faults.pump_leak});
    to.push_back(PilotCheckValve{.name = "port make-up valve",
                                 .from = "reservoir",
                                 .to = "helm port",
                                 .pilot = "helm starboard",
                                 .resistance = h.lock_resistance});
    to.push_back(PilotCheckValve{.name = "starboard make-up valve",
                                 .from = "reservoir",
                                 .to = "helm starboard",
                                 .pilot = "helm port",
                                 .resistance = h.lock_resistance});
    to.push_back(LockValve{.name = "lock valve",
                           .helm_a = "helm port",
                           .ram_a = "port line",
                           .helm_b = "helm starboard",
                           .ram_b = "starboard line",
                           .cracking_pressure = h.lock_cracking_pressure,
                           .resistance = h.lock_resistance,
                           .leak_a = h.faults.helm_check_leak.port,
                           .leak_b = h.faults.helm_check_leak.starboard});
    to.push_back(
        ReliefValve{"port relief valve", "port line", "reservoir", h.relief_pressure, h.relief_slope});
    to.push_back(ReliefValve{"starboard relief valve", "starboard line", "reservoir", h.relief_pressure,
                             h.relief_slope});
}

void add_power_assist(std::vector<Element>& to, const SteeringHydraulics& h, const SteeringCommand& command) {
    to.push_back(Pump{.name = "pump",
                      .inlet = "reservoir",
                      .outlet = "pump outlet",
                      .displacement = h.displacement,
                      .speed = command.turns_per_second,
                      .torque_limit = h.torque_limit,
                      .leak = h.faults.pump_leak});
    to.push_back(ReliefValve{"relief valve", "pump outlet", "reservoir", h.relief_pressure, h.relief_slope});
    to.push_back(Hose{"supply hose", "pump outlet", "valve supply", h.supply_length, h.supply_bore});
    to.push_back(Hose{"return hose", "valve return", "reservoir", h.supply_length, h.supply_bore});
    const double position =
        std::clamp(command.valve_position, -h.faults.valve_travel.port, h.faults.valve_travel.starboard);
    to.push_back(ControlValve{.name = "control valve",
                              .supply = "valve supply",
                              .tank = "valve return",
                              .port_a = "starboard line",
                              .port_b = "port line",
                              .position = position,
                              .underlap = h.valve_underlap,
                              .loss_coefficient = h.valve_loss});
}

bool manual(const SteeringHydraulics& h) {
    return h.helm == Helm::manual;
}

}  // namespace

Result<Circuit> steering_circuit(const SteeringHydraulics& h, const SteeringCommand& command) {
    if (auto checked = check_sizes(h, command); !checked.ok()) return checked.error();
    Circuit circuit{h.oil, {}};
    std::vector<Element>& elements = circuit.elements;
    elements.push_back(
        Reservoir{.name = "reservoir", .node = "reservoir", .empty = h.faults.reservoir_empty});
    if (manual(h))
        add_manual_helm(elements, h, command);
    else
        add_power_assist(elements, h, command);
    const SteeringFaults& f = h.faults;
    add_line(elements, h, "port", f.hose_bore_factor.port, f.external_leak.port, f.trapped_air.port);
    add_line(elements, h, "starboard", f.hose_bore_factor.starboard, f.external_leak.starboard,
             f.trapped_air.starboard);
    add_rams(elements, h);
    return circuit;
}

Result<SteeringMotion> steer(const SteeringHydraulics& h, const SteeringCommand& command) {
    const Result<Circuit> circuit = steering_circuit(h, command);
    if (!circuit.ok()) return circuit.error();
    Result<Solution> solved = solve(circuit.value());
    if (!solved.ok()) return solved.error();
    SteeringMotion motion;
    motion.solution = std::move(solved.value());
    const Solution& solution = motion.solution;
    const PumpState& pump = solution.pumps.at(manual(h) ? "helm" : "pump");
    motion.status = solution.status;
    motion.speed = solution.loads.at("drive").speed;
    motion.turns_per_second = pump.speed;
    motion.torque = command.turns_per_second < 0 ? -pump.torque : pump.torque;
    motion.pressure =
        manual(h) ? std::max(solution.pressures.at("helm port"), solution.pressures.at("helm starboard"))
                  : solution.pressures.at("pump outlet");
    motion.lost_volume =
        std::max({0.0, solution.air_squeezed.at("port air"), solution.air_squeezed.at("starboard air")});
    return motion;
}

Result<Passage> lock_to_lock(const SteeringHydraulics& h, const SteeringCommand& command) {
    SteeringHydraulics under_way = h;
    under_way.position = 0;
    const Result<SteeringMotion> solved = steer(under_way, command);
    if (!solved.ok()) return solved.error();
    const SteeringMotion& motion = solved.value();
    const double asked = manual(h) ? command.turns_per_second : command.valve_position;
    const bool gets_there = motion.status == Status::moves || motion.status == Status::starved;
    if (!gets_there || motion.speed * asked <= 0 || motion.turns_per_second == 0)
        return Error{Error::Kind::unsupported, std::string("the rams do not go over: ") + word(motion.status),
                     "steering circuit", "a command and a system that move them"};
    Passage passage;
    const double turning = std::abs(motion.turns_per_second);
    passage.seconds = h.stroke / std::abs(motion.speed) + motion.lost_volume / (h.displacement * turning);
    passage.turns = passage.seconds * turning;
    return passage;
}

}  // namespace hardover::rig::circuit
