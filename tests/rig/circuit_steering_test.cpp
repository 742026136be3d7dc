// Whole steering circuits: manual helm and power assist, one and two rams, sound and with faults.
// The boat is invented; its sizes are of the order of a small craft's.
#include "app/rig/circuit_steering.hpp"

#include <cmath>

#include "app/rig/cylinder.hpp"
#include "support.hpp"

using namespace hardover::rig::circuit;
using hardover::rig::ram_area;
using hardover::rig::ram_volume;

namespace {

constexpr double mm = 1e-3;   // m
constexpr double bar = 1e5;   // Pa
constexpr double cm3 = 1e-6;  // m^3
constexpr double both_ways[] = {1, -1};

// "Marsh Hen" (invented): one balanced ram on a manual helm.
SteeringHydraulics marsh_hen() {
    SteeringHydraulics h;
    h.oil = {870, 32e-6};
    h.bore = 32 * mm;
    h.rod = 16 * mm;
    h.stroke = 180 * mm;
    h.balanced = true;
    h.ram_friction = 30;
    h.hose_length = 5;
    h.hose_bore = 8 * mm;
    h.tee_length = 0.5;
    h.displacement = 28 * cm3;
    h.torque_limit = 40;
    h.relief_pressure = 70 * bar;
    h.relief_slope = 1e10;
    return h;
}

// "Second Wind" (invented): two single-rod rams, one pushing while the other pulls, on a power-assist valve.
SteeringHydraulics second_wind() {
    SteeringHydraulics h = marsh_hen();
    h.helm = SteeringHydraulics::Helm::power_assist;
    h.rams = 2;
    h.balanced = false;
    h.hose_length = 1;
    h.supply_length = 3;
    h.supply_bore = 10 * mm;
    h.displacement = 8 * cm3;
    h.torque_limit = 100;
    h.relief_slope = 1e9;
    h.valve_loss = 1e13;
    h.valve_underlap = 0.5;
    return h;
}

SteeringMotion steered(const SteeringHydraulics& h, const SteeringCommand& command) {
    const auto result = steer(h, command);
    REQUIRE_OK(result);
    CHECK(result.value().solution.imbalance <= 1e-9);
    return result.value();
}

SteeringMotion wheel(const SteeringHydraulics& h, double turns_per_second) {
    return steered(h, {.turns_per_second = turns_per_second});
}

SteeringMotion valve(const SteeringHydraulics& h, double position) {
    return steered(h, {.turns_per_second = 25, .valve_position = position});
}

double turns(const SteeringHydraulics& h, double direction) {
    const auto passage = lock_to_lock(h, {.turns_per_second = 0.5 * direction});
    REQUIRE_OK(passage);
    return passage.value().turns;
}

}  // namespace

TEST_CASE("A balanced ram takes swept volume over helm displacement in turns, the same both ways") {
    // V/D: 32 mm bore, 16 mm rod, 180 mm stroke, 28 cm^3 a turn: 3.877623 turns (arithmetic, no leak).
    for (const double direction : both_ways)
        CHECK(turns(marsh_hen(), direction) == Approx(3.877623).epsilon(1e-6));
}

TEST_CASE("A single-rod ram takes more turns out than in, in the ratio of its areas") {
    // 40 mm bore, 20 mm rod, 200 mm, 23 cm^3 a turn: 10.92728 and 8.195459 turns (arithmetic); ratio D^2/(D^2
    // - d^2).
    SteeringHydraulics h = marsh_hen();
    h.balanced = false;
    h.bore = 40 * mm;
    h.rod = 20 * mm;
    h.stroke = 200 * mm;
    h.displacement = 23 * cm3;
    CHECK(turns(h, 1) == Approx(10.92728).epsilon(1e-6));
    CHECK(turns(h, -1) == Approx(8.195459).epsilon(1e-6));
}

TEST_CASE("Two rams in parallel double the turns and halve the pressure") {
    SteeringHydraulics one = marsh_hen(), two = marsh_hen();
    one.load_force = two.load_force = -1500;
    one.ram_friction = two.ram_friction = 0;
    // Wide and short hoses, so that the load alone makes the pressure.
    one.hose_bore = two.hose_bore = 20 * mm;
    one.lock_resistance = two.lock_resistance = 1e6;
    two.rams = 2;
    CHECK(turns(two, 1) == Approx(2 * turns(one, 1)).epsilon(1e-6));
    const double area = ram_area(one.bore, one.rod);
    const auto ram_pressure = [](const SteeringMotion& m) {
        return m.solution.pressures.at("starboard side of ram 1") -
               m.solution.pressures.at("port side of ram 1");
    };
    CHECK(ram_pressure(wheel(one, 0.5)) == Approx(1500 / area).epsilon(1e-6));
    CHECK(ram_pressure(wheel(two, 0.5)) == Approx(1500 / area / 2).epsilon(0.01));
}

TEST_CASE("Two single-rod rams, one pushing and one pulling, steer alike both ways") {
    SteeringHydraulics h = marsh_hen();
    h.rams = 2;
    h.balanced = false;
    const SteeringMotion to_starboard = wheel(h, 0.5), to_port = wheel(h, -0.5);
    CHECK(to_starboard.status == Status::moves);
    CHECK(to_starboard.speed == Approx(-to_port.speed).epsilon(1e-9));
    CHECK(to_starboard.pressure == Approx(to_port.pressure).epsilon(1e-9));
    CHECK(to_starboard.speed ==
          Approx(0.5 * h.displacement / (ram_area(h.bore, 0) + ram_area(h.bore, h.rod))).epsilon(1e-6));
}

TEST_CASE("A sound circuit turned the other way under the opposite load answers with all signs turned") {
    for (const bool power : {false, true}) {
        SteeringHydraulics h = power ? second_wind() : marsh_hen();
        h.load_force = -700;
        h.load_friction = 40;
        const SteeringMotion there = steered(h, {power ? 25 : 0.7, power ? 0.6 : 0});
        h.load_force = 700;
        const SteeringMotion back = steered(h, {power ? 25 : -0.7, power ? -0.6 : 0});
        CHECK(there.speed > 0);
        CHECK(there.speed == Approx(-back.speed).epsilon(1e-9));
        CHECK(there.pressure == Approx(back.pressure).epsilon(1e-9));
        CHECK(there.torque == Approx(back.torque).epsilon(1e-9));
    }
}

TEST_CASE("With the hoses of one of two rams swapped neither wheel nor pump moves them") {
    for (const bool balanced : {true, false})
        for (const double direction : both_ways) {
            SteeringHydraulics h = marsh_hen();
            h.rams = 2;
            h.balanced = balanced;
            h.faults.second_ram_swapped = true;
            const SteeringMotion turned = wheel(h, 0.5 * direction);
            CHECK(std::abs(turned.speed) < 1e-9);
            CHECK(turned.status == Status::hydraulically_locked);
            SteeringHydraulics power = second_wind();
            power.balanced = balanced;
            power.faults.second_ram_swapped = true;
            const SteeringMotion assisted = valve(power, direction);
            CHECK(std::abs(assisted.speed) < 1e-6);
            CHECK(assisted.pressure >= power.relief_pressure);
            CHECK(assisted.status == Status::hydraulically_locked);
        }
}

TEST_CASE("Two rams that fight hold nothing: their oil just changes rams when the drive is pushed") {
    SteeringHydraulics h = marsh_hen();
    h.rams = 2;
    h.load_force = -800;
    CHECK(wheel(h, 0).status == Status::holds);
    h.faults.second_ram_swapped = true;
    for (const double turns_per_second : {0.5, 0.0, -0.5}) {
        const SteeringMotion pushed = wheel(h, turns_per_second);
        CHECK(pushed.speed < -0.01);
        CHECK(pushed.speed == Approx(wheel(h, 0).speed).epsilon(0.02));
    }
}

TEST_CASE("At the end of the stroke the relief takes what the hand can still press through") {
    SteeringHydraulics h = marsh_hen();
    h.position = h.stroke / 2;
    const SteeringMotion pressed = wheel(h, 0.5);
    CHECK(pressed.status == Status::at_stop);
    // 0.5 turn/s of 28 cm^3 over the slope: 1.4 bar more than the setting.
    CHECK(pressed.solution.pressures.at("starboard line") ==
          Approx(70 * bar + 14 * cm3 * 1e10).epsilon(1e-4));
    CHECK(wheel(h, -0.5).status == Status::moves);
    // Torque of the wheel: pressure · displacement / 2 pi.
    const double torque = pressed.pressure * h.displacement / (2 * 3.14159265358979);
    CHECK(pressed.torque == Approx(torque).epsilon(0.01));
    // A hand too weak for the relief stands still: the wheel goes solid.
    h.torque_limit = 20;
    const SteeringMotion weak = wheel(h, 0.5);
    CHECK(weak.status == Status::at_stop);
    CHECK(std::abs(weak.turns_per_second) < 1e-6);
}

TEST_CASE("Friction beyond what the relief lets through stalls the rams, a stronger load pushes them back") {
    SteeringHydraulics h = second_wind();
    const double area = ram_area(h.bore, 0) + ram_area(h.bore, h.rod);
    h.load_friction = area * 90 * bar;
    CHECK(valve(h, 1).status == Status::stalled);
    CHECK(valve(h, 1).speed == Approx(0).margin(1e-6));
    h.load_friction = 1000;
    CHECK(valve(h, 1).status == Status::moves);
    h.load_friction = 0;
    h.load_force = -area * 90 * bar;
    CHECK(valve(h, 1).speed < 0);
}

TEST_CASE("An open-centre valve at rest lets the pump's oil go round at low pressure") {
    const SteeringMotion motion = valve(second_wind(), 0);
    CHECK(motion.status == Status::short_circuited);
    CHECK(motion.pressure < 20 * bar);
    CHECK(motion.speed == Approx(0).margin(1e-6));
    SteeringHydraulics engine_off = second_wind();
    CHECK(steered(engine_off, {0, 0}).status == Status::holds);
}

TEST_CASE("A worn helm, a leaking piston seal and trapped air each make more turns") {
    SteeringHydraulics h = marsh_hen();
    h.load_force = -1000;
    const double sound = turns(h, 1);
    SteeringHydraulics worn = h, seal = h, air = h;
    worn.faults.pump_leak = 1e-12;
    CHECK(turns(worn, 1) > 1.05 * sound);
    seal.faults.internal_leak[0] = 1e-12;
    CHECK(turns(seal, 1) > 1.05 * sound);
    air.faults.trapped_air.starboard = 40 * cm3;
    CHECK(turns(air, 1) > sound + 1);
    // Boyle: no more than all of the air can be squeezed away.
    CHECK(turns(air, 1) < sound + 40.0 / 28);
    // The slip of a leaking seal is its conductance times the pressure across the piston.
    const SteeringMotion m = wheel(seal, 0.5);
    const double across =
        m.solution.pressures.at("starboard side of ram 1") - m.solution.pressures.at("port side of ram 1");
    CHECK(m.speed == Approx((14 * cm3 - 1e-12 * across) / ram_area(h.bore, h.rod)).epsilon(1e-6));
}

TEST_CASE("More wear never makes the rams faster") {
    double before = 1;
    for (const double leak : {0.0, 1e-14, 1e-13, 1e-12, 1e-11, 1e-10}) {
        SteeringHydraulics h = marsh_hen();
        h.load_force = -1000;
        h.faults.pump_leak = leak;
        const double speed = wheel(h, 0.5).speed;
        CHECK(speed < before);
        before = speed;
    }
}

TEST_CASE("A narrowed hose makes the wheel heavier, cold oil too, and a blocked hose stops it") {
    SteeringHydraulics h = marsh_hen();
    const double sound = wheel(h, 0.5).torque;
    SteeringHydraulics cold = h;
    cold.oil.kinematic_viscosity *= 10;
    CHECK(wheel(cold, 0.5).torque > 1.5 * sound);
    h.faults.hose_bore_factor.starboard = 0.4;
    CHECK(wheel(h, 0.5).torque > 1.5 * sound);
    h.faults.hose_bore_factor.starboard = 0;
    for (const double direction : both_ways) {
        const SteeringMotion blocked = wheel(h, 0.5 * direction);
        CHECK(blocked.status == Status::hydraulically_locked);
        CHECK(std::abs(blocked.speed) < 1e-9);
    }
}

TEST_CASE("A laminar hose of nine tenths of its bore loses half as much again") {
    // Hagen-Poiseuille: 1/0.9^4 = 1.524.
    const auto loss = [](double factor) {
        SteeringHydraulics h = marsh_hen();
        h.faults.hose_bore_factor.starboard = factor;
        const auto pressures = wheel(h, 0.5).solution.pressures;
        return pressures.at("starboard line") - pressures.at("starboard side of ram 1");
    };
    CHECK(loss(0.9) / loss(1) == Approx(1.524).margin(0.001));
}

TEST_CASE("The drive drifts with the wheel held only when something leaks") {
    SteeringHydraulics h = marsh_hen();
    h.load_force = 800;
    CHECK(wheel(h, 0).status == Status::holds);
    CHECK(std::abs(wheel(h, 0).speed) < 1e-10);
    SteeringHydraulics seal = h, check = h, weep = h;
    seal.faults.internal_leak[0] = 1e-14;
    // A balanced ram drifts through its seal at conductance · pressure / area; friction takes its part of the
    // load.
    const double area = ram_area(h.bore, h.rod), pressure = (800 - 30) / area;
    CHECK(wheel(seal, 0).speed == Approx(1e-14 * pressure / area).epsilon(1e-3));
    CHECK(wheel(seal, 0).status == Status::moves);
    // A leaking lock valve needs a way on through the helm: worn, or with the wheel let go.
    check.faults.helm_check_leak.port = 1e-13;
    CHECK(std::abs(wheel(check, 0).speed) < 1e-10);
    SteeringHydraulics let_go = check;
    let_go.torque_limit = 0;
    CHECK(wheel(let_go, 0).speed > 1e-7);
    CHECK(wheel(let_go, 0).turns_per_second > 0);
    check.faults.pump_leak = 1e-13;
    CHECK(wheel(check, 0).speed > 1e-7);
    weep.faults.external_leak.port = 1e-14;
    const SteeringMotion weeping = wheel(weep, 0);
    CHECK(weeping.speed > 1e-7);
    CHECK(weeping.solution.flows.at("port weep") > 0);
}

TEST_CASE("Oil that weeps out is lost to the outside and made up from the reservoir") {
    SteeringHydraulics h = second_wind();
    h.load_force = -500;
    h.faults.external_leak.starboard = 1e-12;
    const SteeringMotion m = valve(h, 1);
    const double lost = m.solution.flows.at("starboard weep");
    CHECK(lost == Approx(1e-12 * m.solution.pressures.at("starboard tee")));
    CHECK(m.solution.flows.at("reservoir") == Approx(lost).epsilon(1e-6));
}

TEST_CASE("A cable that reaches less of the valve's travel one way steers slower that way") {
    SteeringHydraulics h = second_wind();
    h.load_friction = 1000;
    CHECK(valve(h, -1).speed == Approx(-valve(h, 1).speed));
    h.faults.valve_travel.port = 0.3;
    CHECK(valve(h, -1).speed < 0);
    CHECK(std::abs(valve(h, -1).speed) < 0.9 * valve(h, 1).speed);
}

TEST_CASE("A relief set too low cannot move a load that the right setting moves") {
    SteeringHydraulics h = second_wind();
    h.load_friction = 5000;
    CHECK(valve(h, 1).status == Status::moves);
    h.relief_pressure = 15 * bar;
    CHECK(valve(h, 1).status == Status::stalled);
}

TEST_CASE("An empty reservoir starves the engine pump") {
    SteeringHydraulics h = second_wind();
    h.faults.reservoir_empty = true;
    CHECK(valve(h, 1).status == Status::starved);
}

TEST_CASE("A passage that the rams cannot make is refused with the reason") {
    SteeringHydraulics h = marsh_hen();
    h.rams = 2;
    h.faults.second_ram_swapped = true;
    const auto passage = lock_to_lock(h, {.turns_per_second = 0.5});
    REQUIRE_FALSE(passage.ok());
    CHECK(passage.error().what.find("hydraulically locked") != std::string::npos);
    h.rod = 40 * mm;
    CHECK_FALSE(steer(h, {}).ok());
    h = marsh_hen();
    h.rams = 3;
    CHECK_FALSE(steer(h, {}).ok());
    h = marsh_hen();
    h.hose_length = -5;
    const auto negative = steer(h, {});
    REQUIRE_FALSE(negative.ok());
    CHECK(negative.error().where == "hose 'port hose'");
}
