// The circuit solver against published network problems and circuits that a pencil can solve.
#include "rig/circuit_support.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"

using namespace hardover_tests;

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
    // which serves laminar hoses too, is within 1 % of it here.
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
