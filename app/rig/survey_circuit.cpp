#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "app/rig/oil.hpp"
#include "app/rig/stiffness.hpp"
#include "app/rig/survey_parts.hpp"

namespace hardover::rig {

namespace {

using circuit::SteeringCommand;
using circuit::SteeringHydraulics;

constexpr double turn = 2 * std::numbers::pi;
constexpr double out_of_reach = 4;      // turns/s: no hand turns a wheel so fast against pressure
constexpr double reservoir_dry = -1;    // level from which the pump gets nothing but air
constexpr double suction_length = 0.4;  // m
constexpr double suction_bore = 0.012;  // m; with the next, of the order of a small craft's, from memory
constexpr double valve_flow = 1e-4;     // m^3/s that lose valve_drop through an open control valve
constexpr double valve_drop = 2e5;      // Pa
constexpr double valve_underlap = 0.4;
constexpr double stiff_dashpot = 1e7;        // N per m/s
constexpr double way_back_resistance = 2e9;  // Pa·s/m^3, as of an open check valve
constexpr double relief_rise = 0.04;  // a relief valve at full flow stands this share above its setting

bool manual(const Rigged& rigged) {
    return rigged.boat.helm == Boat::Helm::manual_pump;
}

double per_pressure(double flow_at_test) {
    return flow_at_test / leak_test_pressure;
}

// A hose that folds up as the drive swings over: sound up to 60 % of the way, as given at the lock.
double kinked_bore(double left_at_lock, double steer, double lock) {
    const double way = lock == 0 ? 0 : steer / lock;
    const double folded = std::clamp((way - 0.6) / 0.4, 0.0, 1.0);
    return 1 - (1 - left_at_lock) * folded;
}

bool in_binding_range(const Rigged& rigged, double steer) {
    const Faults& f = rigged.faults;
    return f.bind_to > f.bind_from && steer >= f.bind_from && steer <= f.bind_to;
}

// What resists in the rams' own line, N, beside their seals.
double drag(const Rigged& rigged, double steer) {
    const Faults& f = rigged.faults;
    const bool binds = in_binding_range(rigged, steer);
    const double torque = rigged.boat.dock_friction + f.drive_friction + (binds ? f.bind_torque : 0);
    return torque / mean_moment_arm(rigged, steer) + (binds ? f.ram_bind_force : 0);
}

circuit::SteeringFaults circuit_faults(const Rigged& rigged, double steer) {
    const Faults& f = rigged.faults;
    circuit::SteeringFaults faults;
    faults.internal_leak = {per_pressure(f.ram_leak.port), per_pressure(f.ram_leak.starboard)};
    faults.hose_bore_factor = {
        f.hose_bore.port * f.feed_bore.port * kinked_bore(f.hose_kink.port, steer, rigged.port_lock),
        f.hose_bore.starboard * f.feed_bore.starboard *
            kinked_bore(f.hose_kink.starboard, steer, rigged.starboard_lock)};
    const double air = (f.trapped_air + f.air_share * 2 * oil_of_one_side(rigged)) / 2;
    faults.trapped_air = {air, air};
    const double wear = manual(rigged) ? f.helm_wear : f.pump_wear;
    faults.pump_leak = per_pressure(wear + rigged.boat.sound_slip);
    faults.valve_travel = {f.valve_travel.port, f.valve_travel.starboard};
    faults.second_ram_swapped = f.rams_swapped >= 0.5;
    faults.reservoir_empty = f.reservoir_level <= reservoir_dry;
    return faults;
}

SteeringHydraulics hydraulics(const Rigged& rigged, const Conditions& conditions) {
    const Boat& boat = rigged.boat;
    SteeringHydraulics h;
    h.helm = manual(rigged) ? SteeringHydraulics::Helm::manual : SteeringHydraulics::Helm::power_assist;
    h.oil = {boat.oil_density, oil_viscosity_of(boat, conditions.temperature) * rigged.faults.oil_viscosity};
    h.rams = boat.rams;
    h.bore = boat.bore;
    h.rod = boat.rod;
    h.stroke = working_travel(rigged);
    h.balanced = boat.balanced;
    h.opposed = boat.mount != Boat::Mount::outboard_centre;
    h.ram_friction = boat.ram_friction;
    h.hose_length = boat.hose_length;
    h.hose_bore = boat.hose_bore;
    h.tee_length = 0.5;
    h.supply_length = boat.supply_length;
    h.supply_bore = boat.supply_bore;
    h.displacement = manual(rigged) ? boat.helm_displacement : boat.pump_displacement;
    h.relief_pressure = boat.relief_pressure * rigged.faults.relief_factor;
    const double most_flow =
        manual(rigged) ? boat.helm_displacement : boat.pump_displacement * boat.pump_idle;
    h.relief_slope = relief_rise * boat.relief_pressure / most_flow;
    h.torque_limit =
        boat.belt_reserve * rigged.faults.belt_grip * boat.relief_pressure * boat.pump_displacement / turn;
    h.valve_loss = valve_drop / (valve_flow * valve_flow);
    h.valve_underlap = valve_underlap;
    h.position = ram_position(rigged, conditions.steer);
    h.load_friction = drag(rigged, conditions.steer);
    h.load_force = conditions.torque / mean_moment_arm(rigged, conditions.steer);
    h.faults = circuit_faults(rigged, conditions.steer);
    return h;
}

// Past a narrow feed oil still comes back freely.
void add_way_back(circuit::Circuit& circuit, const Rigged& rigged, const std::string& side,
                  double feed_bore) {
    if (feed_bore >= 1) return;
    const std::string end = side + (rigged.boat.rams == 2 ? " tee" : " side of ram 1");
    circuit.elements.push_back(
        circuit::CheckValve{side + " way back", end, side + " line", 0, way_back_resistance, 0});
}

void add_leak(circuit::Circuit& circuit, const circuit::Leak& leak) {
    if (leak.conductance > 0) circuit.elements.push_back(leak);
}

// What the plain steering circuit has not: narrow feeds, oil back to the reservoir inside the helm, and the
// suction side.
void add_the_rest(circuit::Circuit& circuit, const Rigged& rigged) {
    const Faults& f = rigged.faults;
    add_way_back(circuit, rigged, "port", f.feed_bore.port);
    add_way_back(circuit, rigged, "starboard", f.feed_bore.starboard);
    if (manual(rigged)) {
        const Sides back = leaks_at_helms(rigged);
        add_leak(circuit, {"helm leak port", "port line", "reservoir", per_pressure(back.port)});
        add_leak(circuit,
                 {"helm leak starboard", "starboard line", "reservoir", per_pressure(back.starboard)});
        if (rigged.boat.autopilot)
            add_leak(circuit,
                     {"autopilot bypass", "port line", "starboard line", per_pressure(f.autopilot_bypass)});
        return;
    }
    for (circuit::Element& element : circuit.elements) {
        if (auto* pump = std::get_if<circuit::Pump>(&element)) pump->inlet = "pump inlet";
    }
    circuit.elements.push_back(circuit::Hose{"suction hose", "reservoir", "pump inlet", suction_length,
                                             suction_bore * f.strainer_bore});
}

struct Ran {
    circuit::Solution solution;
    circuit::PumpState pump;
    double speed = 0;  // m/s to starboard
};

Result<Ran> run(const Rigged& rigged, const SteeringHydraulics& h, const SteeringCommand& command) {
    Result<circuit::Circuit> built = steering_circuit(h, command);
    if (!built) return built.error();
    add_the_rest(built.value(), rigged);
    Result<circuit::Solution> solved = rigged.solver->solve(built.value());
    if (!solved) return solved.error();
    Ran ran{std::move(solved.value()), {}, 0};
    ran.pump = ran.solution.pumps.at(manual(rigged) ? "helm" : "pump");
    ran.speed = ran.solution.loads.at("drive").speed;
    return ran;
}

double greater_squeezed(const circuit::Solution& solution) {
    return std::max({0.0, solution.air_squeezed.at("port air"), solution.air_squeezed.at("starboard air")});
}

Sides line_pressures(const circuit::Solution& solution) {
    return {solution.pressures.at("port line"), solution.pressures.at("starboard line")};
}

double line_pressure(const circuit::Solution& solution) {
    const Sides lines = line_pressures(solution);
    return std::max(lines.port, lines.starboard);
}

// The hand's part of the work at a manual helm; the assist does the rest, but gives no more pressure than a
// strong hand does by itself.
double share_of_hand(const Rigged& rigged, bool engine) {
    const Boat& boat = rigged.boat;
    if (boat.assist == Boat::Assist::none || !engine) return 1;
    // A sound assist just keeps its pressure with all of its flow. What slips past a worn pump grows with the
    // pressure too, so the pressure falls as the flow is shared out between the two.
    const double flow = boat.pump_displacement * boat.pump_idle;
    const double left = flow / (flow + rigged.faults.pump_wear);
    return 1 - boat.assist_help * rigged.faults.assist_strength * left;
}

double hand_torque(const Boat& boat, double force) {
    return std::max(0.0, force * boat.wheel_radius - boat.helm_friction);
}

Result<Turning> turn_by_hand(const Rigged& rigged, const Conditions& conditions, double way) {
    const Boat& boat = rigged.boat;
    SteeringHydraulics h = hydraulics(rigged, conditions);
    h.torque_limit = hand_torque(boat, boat.hand_most);
    const Result<Ran> ran = run(rigged, h, {.turns_per_second = way * boat.turning});
    if (!ran) return ran.error();
    Turning turning;
    turning.speed = ran.value().speed * way;
    turning.expected = boat.turning * boat.helm_displacement / oil_area(rigged);
    turning.goes = std::abs(ran.value().pump.speed) > 0.5 * boat.turning && turning.speed > 0;
    const double torque = std::abs(ran.value().pump.torque) * share_of_hand(rigged, conditions.engine);
    turning.force = turning.goes ? (torque + boat.helm_friction) / boat.wheel_radius : boat.hand_most;
    turning.lost_volume = greater_squeezed(ran.value().solution);
    turning.pressure = line_pressure(ran.value().solution);
    turning.lines = line_pressures(ran.value().solution);
    return turning;
}

// What the oil pushes with, N in the way asked, while the rams are led at `speed`: the load is made so stiff
// a dashpot that it hardly departs from that speed.
Result<double> push_at_speed(const Rigged& rigged, const SteeringHydraulics& h, double way, double speed) {
    Result<circuit::Circuit> built =
        steering_circuit(h, {.turns_per_second = rigged.boat.pump_idle, .valve_position = way});
    if (!built) return built.error();
    add_the_rest(built.value(), rigged);
    for (circuit::Element& element : built.value().elements) {
        if (auto* load = std::get_if<circuit::Load>(&element)) {
            load->damping = stiff_dashpot;
            load->friction = 0;
            load->force = stiff_dashpot * speed * way;
        }
    }
    const Result<circuit::Solution> solved = rigged.solver->solve(built.value());
    if (!solved) return solved.error();
    return solved.value().loads.at("drive").push * way;
}

double cable_travel_per_turn(const Rigged& rigged) {
    return working_travel(rigged) / rigged.boat.cable_turns;
}

Result<Turning> turn_with_cable(const Rigged& rigged, const Conditions& conditions, double way) {
    const Boat& boat = rigged.boat;
    const Faults& f = rigged.faults;
    const SteeringHydraulics h = hydraulics(rigged, conditions);
    Turning turning;
    turning.expected = boat.turning * cable_travel_per_turn(rigged);
    double cable = boat.cable_friction + f.cable_friction + boat.valve_spring;
    if (f.valve_stuck * way < 0) cable += boat.valve_stick * std::abs(f.valve_stuck);
    const double resistance = std::max(0.0, h.load_friction - h.load_force * way);
    if (conditions.engine) {
        const Result<Ran> unaided =
            run(rigged, h, {.turns_per_second = boat.pump_idle, .valve_position = way});
        if (!unaided) return unaided.error();
        if (unaided.value().speed * way < turning.expected) {
            const Result<double> push = push_at_speed(rigged, h, way, turning.expected);
            if (!push) return push.error();
            cable += std::max(0.0, resistance - push.value());
        }
        turning.speed = std::min(turning.expected, unaided.value().speed * way);
        turning.lost_volume = greater_squeezed(unaided.value().solution);
        turning.pressure = line_pressure(unaided.value().solution);
        turning.lines = line_pressures(unaided.value().solution);
        turning.suction = unaided.value().pump.suction;
    } else {
        cable += resistance + h.rams * h.ram_friction;
        turning.speed = turning.expected;
    }
    const double torque = cable * cable_travel_per_turn(rigged) / turn + boat.helm_friction;
    turning.force = std::min(boat.hand_most, torque / boat.wheel_radius);
    turning.goes = turning.force < boat.hand_most;
    return turning;
}

}  // namespace

Sides leaks_at_helms(const Rigged& rigged) {
    const Faults& f = rigged.faults;
    const bool second = rigged.boat.helms > 1;
    return {f.helm_leak.port + (second ? f.second_helm_leak.port : 0),
            f.helm_leak.starboard + (second ? f.second_helm_leak.starboard : 0)};
}

double oil_area(const Rigged& rigged) {
    const Boat& boat = rigged.boat;
    return boat.rams * (ram_area(boat.bore, boat.balanced ? boat.rod : 0) + ram_area(boat.bore, boat.rod)) /
           2;
}

double rim_per_travel(const Rigged& rigged) {
    const Boat& boat = rigged.boat;
    const double per_turn =
        manual(rigged) ? boat.helm_displacement / oil_area(rigged) : cable_travel_per_turn(rigged);
    return turn * boat.wheel_radius / per_turn;
}

double oil_of_one_side(const Rigged& rigged) {
    const Boat& boat = rigged.boat;
    return ram_area(boat.hose_bore, 0) * boat.hose_length + oil_area(rigged) * boat.stroke / 2;
}

Result<Turning> turn_steadily(const Rigged& rigged, const Conditions& conditions, double way) {
    return manual(rigged) ? turn_by_hand(rigged, conditions, way) : turn_with_cable(rigged, conditions, way);
}

Result<Sides> lines_at_rest(const Rigged& rigged, const Conditions& conditions) {
    SteeringHydraulics h = hydraulics(rigged, conditions);
    SteeringCommand command;
    if (manual(rigged)) {
        h.torque_limit = hand_torque(rigged.boat, rigged.boat.hand_push);
    } else {
        command.turns_per_second = rigged.boat.pump_idle;
    }
    const Result<Ran> ran = run(rigged, h, command);
    if (!ran) return ran.error();
    return line_pressures(ran.value().solution);
}

Result<Held> hold_on_stop(const Rigged& rigged, double way) {
    const Boat& boat = rigged.boat;
    const double steer = way > 0 ? rigged.starboard_lock : rigged.port_lock;
    SteeringHydraulics h = hydraulics(rigged, {.steer = steer, .temperature = boat.temperature});
    SteeringCommand command{.turns_per_second = boat.pump_idle, .valve_position = way};
    if (manual(rigged)) {
        h.torque_limit = hand_torque(boat, boat.hand_push);
        command = {.turns_per_second = way * out_of_reach};
    }
    const Result<Ran> ran = run(rigged, h, command);
    if (!ran) return ran.error();
    const circuit::Solution& solution = ran.value().solution;
    Held held;
    held.lost_volume = greater_squeezed(solution);
    if (!manual(rigged)) {
        held.pressure = solution.pressures.at("pump outlet");
        return held;
    }
    held.wheel_speed = std::abs(ran.value().pump.speed);
    // Oil shut in behind the helm's check valves may stand at any higher pressure that came before; told is
    // what the hand puts on it.
    const double at_helm =
        std::max(solution.pressures.at("helm port"), solution.pressures.at("helm starboard"));
    held.pressure = std::min(line_pressure(solution), std::max(0.0, at_helm - h.lock_cracking_pressure));
    const double air = std::max(h.faults.trapped_air.port, h.faults.trapped_air.starboard);
    held.lost_volume = std::min(held.lost_volume, air - trapped_air_volume(air, held.pressure));
    return held;
}

Result<double> give_way(const Rigged& rigged, double torque) {
    if (!manual(rigged)) return 0.0;  // with the engine stopped the held cable holds the drive
    SteeringHydraulics h =
        hydraulics(rigged, {.steer = 0, .torque = torque, .temperature = rigged.boat.temperature});
    h.torque_limit = hand_torque(rigged.boat, rigged.boat.hand_push);
    const Result<Ran> ran = run(rigged, h, {});
    if (!ran) return ran.error();
    return std::abs(ran.value().speed);
}

}  // namespace hardover::rig
