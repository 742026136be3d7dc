// The circuit solver against published network problems and circuits that a pencil can solve.
#include "app/rig/circuit.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "support.hpp"

using namespace hardover::rig::circuit;
using hardover::rig::ram_area;

namespace {

constexpr double bar = 1e5;   // Pa
constexpr double cm3 = 1e-6;  // m^3
constexpr double mm = 1e-3;   // m
constexpr double gravity = 9.80665;

// Invented oil of an ordinary steering system.
const hardover::rig::FlowingOil oil{870, 32e-6};

Solution solved(const Circuit& circuit) {
    const auto result = solve(circuit);
    REQUIRE_OK(result);
    CHECK(result.value().imbalance <= 1e-9);
    return result.value();
}

// A source that gives `flow` against whatever stands in its way.
Pump source(const std::string& name, const std::string& inlet, const std::string& outlet, double flow) {
    return {.name = name,
            .inlet = inlet,
            .outlet = outlet,
            .displacement = cm3,
            .speed = flow / cm3,
            .torque_limit = 1e3};
}

Restriction linear(const std::string& name, const std::string& from, const std::string& to,
                   double conductance) {
    return {.name = name, .from = from, .to = to, .linear = 1 / conductance};
}

}  // namespace

TEST_CASE("A net of conductances fed by two pumps has the pressures of its exact solution") {
    // Exact rational solution of the four linear node balances: 524/25, 424/25 and 352/25 bar.
    const double unit = cm3 / bar;
    const Solution s =
        solved({oil,
                {Reservoir{"tank", "0"}, source("in", "0", "1", 20 * cm3), source("out", "3", "0", 8 * cm3),
                 linear("12", "1", "2", 5 * unit), linear("23", "2", "3", 4 * unit),
                 linear("2t", "2", "0", 0.5 * unit), linear("3t", "3", "0", 0.25 * unit)}});
    CHECK(s.pressures.at("1") / bar == Approx(524.0 / 25).epsilon(1e-9));
    CHECK(s.pressures.at("2") / bar == Approx(424.0 / 25).epsilon(1e-9));
    CHECK(s.pressures.at("3") / bar == Approx(352.0 / 25).epsilon(1e-9));
    // Energy: what the pumps put in is what the conductances take: sum of q·p.
    double lost = 0;
    for (const auto& [name, from, to] :
         {std::tuple{"12", "1", "2"}, {"23", "2", "3"}, {"2t", "2", "0"}, {"3t", "3", "0"}})
        lost += s.flows.at(name) * (s.pressures.at(from) - s.pressures.at(to));
    const double given = s.flows.at("in") * s.pressures.at("1") - s.flows.at("out") * s.pressures.at("3");
    CHECK(lost == Approx(given).epsilon(1e-9));
}

TEST_CASE("A bridge of conductances has the pressures of its exact solution") {
    // Exact rational solution: 215/37 and 165/37 bar, bridge flow 250/37.
    const double unit = cm3 / bar;
    const Solution s =
        solved({oil,
                {Reservoir{"supply", "P", 10 * bar}, Reservoir{"tank", "T"}, linear("PX", "P", "X", 3 * unit),
                 linear("PY", "P", "Y", 2 * unit), linear("XT", "X", "T", 1 * unit),
                 linear("YT", "Y", "T", 4 * unit), linear("XY", "X", "Y", 5 * unit)}});
    CHECK(s.pressures.at("X") / bar == Approx(215.0 / 37).epsilon(1e-9));
    CHECK(s.pressures.at("Y") / bar == Approx(165.0 / 37).epsilon(1e-9));
    CHECK(s.flows.at("XY") / cm3 == Approx(250.0 / 37).epsilon(1e-9));
}

TEST_CASE("Three reservoirs joined by pipes settle at a level of 131.6 m at the junction") {
    // Hydraulics textbook, open companion (FOSSEE Scilab id 1962), example 9.12, p. 340: levels 135, 120, 112
    // m, h = K·Q^2. Flows evaluated from the printed level.
    const double head = 1000 * gravity;
    const auto pipe = [&](const std::string& name, const std::string& from, const std::string& to, double k) {
        return Restriction{.name = name, .from = from, .to = to, .quadratic = head * k};
    };
    const Solution s = solved({{1000, 1e-6},
                               {Reservoir{"r1", "1", 135 * head}, Reservoir{"r2", "2", 120 * head},
                                Reservoir{"r3", "3", 112 * head}, pipe("p1", "1", "j", 0.7594),
                                pipe("p2", "j", "2", 36.33), pipe("p3", "j", "3", 8.168)}});
    CHECK(s.pressures.at("j") / head == Approx(131.6).margin(0.05));
    CHECK(s.flows.at("p1") == Approx(2.1159).epsilon(0.003));
    CHECK(s.flows.at("p2") == Approx(0.5651).epsilon(0.003));
    CHECK(s.flows.at("p3") == Approx(1.5491).epsilon(0.003));
}

TEST_CASE("A pump of 5.6 kW feeds two parallel pipes with 0.0300 m^3/s, 0.00415 and 0.0259 each") {
    // Y. Cengel, J. Cimbala, Fluid Mechanics, example 8-7 (data read in an open companion, answers from
    // memory, confirmed by an independent solution). The book takes Colebrook's friction factor; Churchill's,
    // which serves laminar hoses too, is within 1 % of it here, hence 0.5 % on the flows.
    const double density = 998;
    const auto at_flow = [&](double flow) {
        return solved(
            {{density, 0.001002 / density},
             {Reservoir{"A", "a", density * gravity * 5}, Reservoir{"B", "b", density * gravity * 13},
              Pump{.name = "pump",
                   .inlet = "a",
                   .outlet = "p",
                   .displacement = 1e-3,
                   .speed = flow / 1e-3,
                   .torque_limit = 1e4},
              Hose{"4 cm", "p", "b", 36, 0.04, 0.045 * mm}, Hose{"8 cm", "p", "b", 36, 0.08, 0.045 * mm}}});
    };
    const auto power = [&](double flow) {
        const Solution s = at_flow(flow);
        return flow * (s.pressures.at("p") - s.pressures.at("a"));
    };
    double least = 0.001, most = 0.1;
    while (most - least > 1e-9) (power((least + most) / 2) < 5600 ? least : most) = (least + most) / 2;
    const Solution s = at_flow(least);
    CHECK(s.flows.at("pump") == Approx(0.0300).margin(1e-4));
    CHECK(s.flows.at("4 cm") == Approx(0.00415).margin(1e-5));
    CHECK(s.flows.at("8 cm") == Approx(0.0259).margin(1e-4));
}

TEST_CASE("Pipes in series and in parallel equal the single pipe that a textbook gives for them") {
    // K. Subramanya, 1000 Solved Problems in Fluid Mechanics, example 11.4, p. 239: with one friction factor
    // (L/D^5), 1800, 1200 and 600 m of 50, 40 and 30 cm equal 4318.2 m of 40 cm in series, 377.37 m of 50 cm
    // in parallel.
    const auto pipe = [](const std::string& name, const std::string& from, const std::string& to,
                         double length, double bore) {
        return Restriction{.name = name, .from = from, .to = to, .quadratic = length / std::pow(bore, 5)};
    };
    const Solution series = solved({oil,
                                    {Reservoir{"up", "u", 10 * bar}, Reservoir{"down", "d"},
                                     pipe("1", "u", "x", 1800, 0.5), pipe("2", "x", "y", 1200, 0.4),
                                     pipe("3", "y", "d", 600, 0.3), pipe("one", "u", "d", 4318.2, 0.4)}});
    CHECK(series.flows.at("1") == Approx(series.flows.at("one")).epsilon(2e-5));
    const Solution parallel = solved({oil,
                                      {Reservoir{"up", "u", 10 * bar}, Reservoir{"down", "d"},
                                       pipe("1", "u", "d", 1800, 0.5), pipe("2", "u", "d", 1200, 0.4),
                                       pipe("3", "u", "d", 600, 0.3), pipe("one", "u", "d", 377.37, 0.5)}});
    CHECK(parallel.flows.at("1") + parallel.flows.at("2") + parallel.flows.at("3") ==
          Approx(parallel.flows.at("one")).epsilon(2e-4));
}

TEST_CASE("A laminar hose resists as Hagen and Poiseuille say, alone and with two others") {
    // 128·mu·L/(pi·D^4): 1.747319055e9 Pa·s/m^3 for 6 m of 7.9 mm at 32 cSt and 870 kg/m^3.
    const Solution alone = solved(
        {oil,
         {Reservoir{"tank", "t"}, source("pump", "t", "p", 10 * cm3), Hose{"hose", "p", "t", 6, 7.9 * mm}}});
    CHECK(alone.pressures.at("p") / (10 * cm3) == Approx(1.747319055e9).epsilon(1e-8));
    // R1 + R2 || R3 = 1.993727328e9 with R2 and R3 of 3.494638111e8 and 8.355763844e8.
    const Solution three = solved(
        {oil,
         {Reservoir{"tank", "t"}, source("pump", "t", "p", 10 * cm3), Hose{"hose", "p", "x", 6, 7.9 * mm},
          Restriction{.name = "2", .from = "x", .to = "t", .linear = 3.494638111e8},
          Restriction{.name = "3", .from = "x", .to = "t", .linear = 8.355763844e8}}});
    CHECK(three.pressures.at("p") / (10 * cm3) == Approx(1.993727328e9).epsilon(1e-8));
}

TEST_CASE("An orifice passes what its discharge coefficient says") {
    // A. Esposito, Fluid Power with Applications, example 8.4, p. 302: 1 in, Cd 0.8, specific gravity 0.9:
    // 252 gal/min at 100 psi.
    const double area = hardover::rig::circle_area(0.0254), density = 900, psi = 6894.757;
    const double flow = 252 * 3.785412e-3 / 60;
    const Solution s = solved({oil,
                               {Reservoir{"tank", "t"}, source("pump", "t", "p", flow),
                                orifice("orifice", "p", "t", 0.8, area, density)}});
    CHECK(std::sqrt(s.pressures.at("p") / (100 * psi)) == Approx(1).epsilon(0.005));
}

TEST_CASE("A fitting loses pressure by Hooper's two constants") {
    // Documentation of the open library `fluids`, Hooper2K: globe valve in 2 in pipe at Re 10000: K = 6.15.
    const double bore = 0.0508, area = std::numbers::pi / 4 * bore * bore;
    const double speed = 10000 * oil.kinematic_viscosity / bore;
    const Solution s = solved({oil,
                               {Reservoir{"tank", "t"}, source("pump", "t", "p", speed * area),
                                PipeFitting{"globe valve", "p", "t", bore, 1500, 4}}});
    CHECK(s.pressures.at("p") / (oil.density * speed * speed / 2) == Approx(6.15).epsilon(1e-8));
}

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
        return Ram{.name = name, .side_a = "p", .side_b = "b", .load = name, .area_a = 5e-4, .area_b = 5e-4};
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
    CHECK(blocked.loads.at("light").stop_force == Approx(900 - 200));
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
