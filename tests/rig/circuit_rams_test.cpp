// Rams, valves, pumps and stops in small circuits that a pencil can solve.
#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "rig/circuit_support.hpp"

using namespace hardover_tests;
using hardover::rig::ram_area;

TEST_CASE("A single-rod ram goes back faster than out by bore^2/(bore^2 - rod^2)") {
    // A. Esposito, Fluid Power with Applications, example 6.1, p. 219: 2 in bore, 1 in rod, 20 gal/min, 1000
    // lbf: prints 2.05 and 2.73 ft/s, 318 and 425 psi; ratio 4/3.
    const double inch = 0.0254, foot = 0.3048, psi = 6894.757, flow = 20 * 3.785412e-3 / 60;
    const double cap = ram_area(2 * inch, 0), annulus = ram_area(2 * inch, inch), load = 1000 * 4.4482216;
    const auto with_position = [&](double position) {
        return solved({oil,
                       {Reservoir{"tank", "t"}, source("pump", "t", "p", flow),
                        // Lossless ports, as in the example.
                        ControlValve{.name = "valve",
                                     .supply = "p",
                                     .tank = "t",
                                     .port_a = "a",
                                     .port_b = "b",
                                     .position = position,
                                     .loss_coefficient = 1},
                        Load{.name = "load", .force = position > 0 ? -load : load},
                        Ram{.name = "ram",
                            .side_a = "a",
                            .side_b = "b",
                            .load = "load",
                            .area_a = cap,
                            .area_b = annulus}}});
    };
    const Solution out = with_position(1), back = with_position(-1);
    CHECK(out.status == Status::moves);
    CHECK(out.loads.at("load").speed / foot == Approx(2.05).epsilon(0.005));
    CHECK(back.loads.at("load").speed / foot == Approx(-2.73).epsilon(0.005));
    CHECK(-back.loads.at("load").speed / out.loads.at("load").speed == Approx(4.0 / 3).epsilon(1e-9));
    CHECK(out.pressures.at("a") / psi == Approx(318).margin(0.5));
    CHECK(back.pressures.at("b") / psi == Approx(425).margin(1));
}

TEST_CASE("A rod side that is shut holds the cap's pressure times the ratio of the areas") {
    // Intensification: p2 = p1·A1/A2.
    const Solution s = solved(
        {oil,
         {Reservoir{"tank", "t"}, source("pump", "t", "p", 10 * cm3),
          ReliefValve{"relief", "p", "t", 70 * bar, 0}, Hose{"hose", "p", "a", 1, 8 * mm},
          Hose{"blocked return", "b", "t", 1, 0}, Load{.name = "load"},
          Ram{.name = "ram", .side_a = "a", .side_b = "b", .load = "load", .area_a = 4e-4, .area_b = 3e-4}}});
    CHECK(s.pressures.at("a") == Approx(70 * bar));
    CHECK(s.pressures.at("b") == Approx(70 * bar * 4 / 3));
    CHECK(s.status == Status::hydraulically_locked);
}

TEST_CASE("At a stop the relief takes the pump's flow and holds its pressure") {
    const Solution s = solved({oil,
                               {Reservoir{"tank", "t"}, source("pump", "t", "p", 100 * cm3),
                                ReliefValve{"relief", "p", "t", 70 * bar, 1e9},
                                Hose{"out", "p", "a", 2, 8 * mm}, Hose{"back", "b", "t", 2, 8 * mm},
                                Load{.name = "load", .position = 0.1, .least = -0.1, .most = 0.1},
                                Ram{.name = "ram",
                                    .side_a = "a",
                                    .side_b = "b",
                                    .load = "load",
                                    .area_a = 4e-4,
                                    .area_b = 4e-4,
                                    .friction = 20}}});
    CHECK(s.status == Status::at_stop);
    CHECK(s.flows.at("relief") == Approx(100 * cm3));
    // 70 bar and 100 cm^3/s over the slope of 1e9 Pa·s/m^3: 1 bar.
    CHECK(s.pressures.at("p") == Approx(71 * bar));
    CHECK(std::abs(s.loads.at("load").speed) < 1e-9);
    const LoadState& load = s.loads.at("load");
    CHECK(load.push == Approx(71 * bar * 4e-4));
    CHECK(load.stop_force + load.friction == Approx(load.push));
}

TEST_CASE("Dry friction holds a ram up to its limit and then takes just that force") {
    const auto at_pressure = [](double pressure) {
        return solved(
            {oil,
             {Reservoir{"supply", "p", pressure}, Reservoir{"tank", "t"}, Hose{"out", "p", "a", 2, 8 * mm},
              Hose{"back", "b", "t", 2, 8 * mm}, Load{.name = "load", .friction = 100},
              Ram{.name = "ram",
                  .side_a = "a",
                  .side_b = "b",
                  .load = "load",
                  .area_a = 1e-3,
                  .area_b = 1e-3}}});
    };
    // 100 N over 10 cm^2: 1 bar.
    CHECK(at_pressure(0.99 * bar).status == Status::holds);
    const Solution s = at_pressure(1.5 * bar);
    CHECK(s.status == Status::moves);
    CHECK(s.loads.at("load").friction == Approx(100));
    // What is left, 0.5 bar, goes through both hoses.
    const double resistance = 2 * 128 * 870 * 32e-6 * 2 / (std::numbers::pi * std::pow(8e-3, 4));
    CHECK(s.loads.at("load").speed == Approx(0.5 * bar / resistance / 1e-3));
}

TEST_CASE("A lock valve keeps the ram where it is until the wheel lifts it") {
    const auto with_wheel = [](double turns) {
        return solved({oil,
                       {Reservoir{"tank", "t"},
                        Pump{.name = "helm",
                             .inlet = "a",
                             .outlet = "b",
                             .displacement = 28 * cm3,
                             .speed = turns,
                             .torque_limit = 60,
                             .leak = 1e-14},
                        CheckValve{.name = "make-up a", .from = "t", .to = "a", .resistance = 1e8},
                        CheckValve{.name = "make-up b", .from = "t", .to = "b", .resistance = 1e8},
                        LockValve{.name = "lock",
                                  .helm_a = "a",
                                  .ram_a = "ra",
                                  .helm_b = "b",
                                  .ram_b = "rb",
                                  .cracking_pressure = 1 * bar,
                                  .resistance = 1e9},
                        Load{.name = "load", .force = 500},
                        Ram{.name = "ram",
                            .side_a = "ra",
                            .side_b = "rb",
                            .load = "load",
                            .area_a = 6e-4,
                            .area_b = 6e-4}}});
    };
    const Solution still = with_wheel(0);
    CHECK(still.status == Status::holds);
    CHECK(std::abs(still.loads.at("load").speed) < 1e-9);
    // The load presses on side b; side a sucks, but no deeper than oil tears.
    CHECK(still.pressures.at("rb") - still.pressures.at("ra") == Approx(500 / 6e-4));
    CHECK(still.pressures.at("ra") >= Approx(vapour_pressure));
    for (const double turns : {1.0, -1.0}) {
        const Solution turned = with_wheel(turns);
        CHECK(turned.status == Status::moves);
        CHECK(turned.loads.at("load").speed == Approx(-turns * 28 * cm3 / 6e-4).epsilon(1e-3));
    }
}

TEST_CASE(
    "A wheel pressed with a known torque makes the pressure of that torque, as fast as the hoses allow") {
    // p = 2·pi·T/D: 9 N·m on 28 cm^3 a turn: 20.2 bar.
    const double pressure = 2 * std::numbers::pi * 9 / (28 * cm3);
    const Solution s = solved(
        {oil,
         {Reservoir{"tank", "t"},
          Pump{.name = "helm",
               .inlet = "t",
               .outlet = "p",
               .displacement = 28 * cm3,
               .speed = 100,
               .torque_limit = 9},
          Hose{"out", "p", "a", 3, 5 * mm}, Hose{"back", "b", "t", 3, 5 * mm},
          Load{.name = "load", .force = -1000},
          Ram{.name = "ram", .side_a = "a", .side_b = "b", .load = "load", .area_a = 6e-4, .area_b = 6e-4}}});
    CHECK(s.pressures.at("p") == Approx(pressure));
    const double resistance = 2 * 128 * 870 * 32e-6 * 3 / (std::numbers::pi * std::pow(5e-3, 4));
    CHECK(s.loads.at("load").speed == Approx((pressure - 1000 / 6e-4) / resistance / 6e-4));
    CHECK(s.pumps.at("helm").speed == Approx(s.flows.at("helm") / (28 * cm3)));
}

TEST_CASE("Two rams on one line with loads of their own: the lighter goes, the heavier waits") {
    const auto ram = [](const std::string& name) {
        return Ram{.name = "ram of " + name,
                   .side_a = "p",
                   .side_b = "b",
                   .load = name,
                   .area_a = 5e-4,
                   .area_b = 5e-4};
    };
    std::vector<Element> elements{Reservoir{"tank", "t"},
                                  source("pump", "t", "p", 50 * cm3),
                                  Hose{"back", "b", "t", 0.1, 12 * mm},
                                  Load{.name = "light", .friction = 200},
                                  Load{.name = "heavy", .friction = 900},
                                  ram("light"),
                                  ram("heavy")};
    const Solution apart = solved({oil, elements});
    CHECK(apart.loads.at("light").speed == Approx(50 * cm3 / 5e-4));
    CHECK(apart.loads.at("heavy").speed == Approx(0).margin(1e-9));
    // With the light one's way blocked the heavy one gets all the oil.
    std::get<Load>(elements[3]).most = 0;
    const Solution blocked = solved({oil, elements});
    CHECK(blocked.loads.at("light").speed == Approx(0).margin(1e-9));
    CHECK(blocked.loads.at("heavy").speed == Approx(50 * cm3 / 5e-4));
    const LoadState& light = blocked.loads.at("light");
    CHECK(light.stop_force + light.friction == Approx(900).epsilon(0.01));
}

TEST_CASE("A pump on an empty reservoir or behind a shut suction line is starved") {
    const auto circuit = [](bool empty, double suction_bore) {
        return solved({oil,
                       {Reservoir{.name = "tank", .node = "t", .empty = empty},
                        Hose{"suction", "t", "s", 1, suction_bore}, source("pump", "s", "p", 50 * cm3),
                        ReliefValve{"relief", "p", "t", 50 * bar, 0}, Hose{"out", "p", "a", 2, 8 * mm},
                        Hose{"back", "b", "t", 2, 8 * mm}, Load{.name = "load", .force = -300},
                        Ram{.name = "ram",
                            .side_a = "a",
                            .side_b = "b",
                            .load = "load",
                            .area_a = 4e-4,
                            .area_b = 3e-4}}});
    };
    CHECK(circuit(false, 12 * mm).status == Status::moves);
    CHECK(circuit(true, 12 * mm).status == Status::starved);
    CHECK(circuit(true, 12 * mm).loads.at("load").speed <= 0);
    CHECK(circuit(false, 0).status == Status::starved);
    // A kinked suction hose: the pump runs, but fills partly.
    const Solution kinked = circuit(false, 2 * mm);
    CHECK(kinked.status == Status::starved);
    CHECK(kinked.flows.at("pump") > 0);
    CHECK(kinked.flows.at("pump") < 49 * cm3);
    CHECK(kinked.pumps.at("pump").suction < -60e3);
}

TEST_CASE("Trapped air is squeezed as Boyle says") {
    // A. Esposito, Fluid Power with Applications, example 13.1, p. 471: 20 in^3 at 20 psig squeezed by 4 in
    // of a 2 in bore reach 78.7 psig.
    const double inch3 = std::pow(0.0254, 3), psi = 6894.757, atmosphere = 101325;
    const double at_rest = 20 * inch3 * (20 * psi + atmosphere) / atmosphere;
    const auto squeezed = [&](double pressure) {
        return solved({oil, {Reservoir{"supply", "p", pressure}, TrappedAir{"air", "p", at_rest}}})
            .air_squeezed.at("air");
    };
    const double swept = std::numbers::pi / 4 * 4 * 4 * inch3;
    CHECK(squeezed(78.7 * psi) - squeezed(20 * psi) == Approx(swept).epsilon(0.002));
}
