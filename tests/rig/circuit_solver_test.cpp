// Circuits solved one from the other: the same answers as each by itself, however they follow each other.
// The boat is invented.
#include <cmath>

#include "app/rig/chance.hpp"
#include "app/rig/circuit_steering.hpp"
#include "app/rig/flow.hpp"
#include "support.hpp"

using namespace hardover::rig::circuit;
using hardover::rig::Chance;

namespace {

SteeringHydraulics anything(Chance& chance) {
    SteeringHydraulics h;
    h.helm = chance.happens(0.5) ? SteeringHydraulics::Helm::manual : SteeringHydraulics::Helm::power_assist;
    h.oil = {870, chance.between(15e-6, 120e-6)};
    h.rams = chance.happens(0.5) ? 2 : 1;
    h.bore = 0.035;
    h.rod = 0.016;
    h.stroke = 0.2;
    h.balanced = chance.happens(0.3);
    h.ram_friction = 30;
    h.hose_length = 4;
    h.hose_bore = 0.0065;
    h.tee_length = 0.5;
    h.supply_length = 3;
    h.supply_bore = 0.0095;
    h.displacement = h.helm == SteeringHydraulics::Helm::manual ? 50e-6 : 8e-6;
    h.torque_limit = 30;
    h.relief_pressure = 70e5;
    h.relief_slope = 1e9;
    h.valve_loss = 1e13;
    h.valve_underlap = 0.4;
    h.load_friction = chance.between(100, 2000);
    h.load_force = chance.between(-1500, 1500);
    h.faults.hose_bore_factor.port = chance.happens(0.3) ? 0.3 : 1;
    h.faults.pump_leak = 1e-14;
    return h;
}

}  // namespace

TEST_CASE("A circuit solved from the one before it comes to what it comes to by itself") {
    Chance chance(21);
    Solver solver;
    int moving = 0;
    for (int i = 0; i < 150; ++i) {
        const SteeringHydraulics h = anything(chance);
        const double way = chance.happens(0.5) ? 1 : -1;
        const bool manual = h.helm == SteeringHydraulics::Helm::manual;
        const auto circuit =
            steering_circuit(h, {.turns_per_second = manual ? 0.25 * way : 10, .valve_position = way});
        REQUIRE_OK(circuit);
        const auto alone = solve(circuit.value());
        const auto after = solver.solve(circuit.value());
        INFO("circuit " << i);
        REQUIRE_OK(alone);
        REQUIRE_OK(after);
        CHECK(after.value().imbalance <= 1e-9);
        CHECK(after.value().status == Status::not_asked);
        // Where all stands still, oil shut in behind check valves may keep any pressure.
        if (alone.value().status != Status::moves) continue;
        ++moving;
        for (const auto& [name, pressure] : alone.value().pressures)
            CHECK(after.value().pressures.at(name) == Approx(pressure).epsilon(1e-6).margin(1));
        CHECK(after.value().loads.at("drive").speed ==
              Approx(alone.value().loads.at("drive").speed).epsilon(1e-6).margin(1e-12));
        CHECK(after.value().flows.size() == alone.value().flows.size());
    }
    CHECK(moving > 75);
}

TEST_CASE("A Solver refuses what cannot be, and goes on with the next circuit") {
    Solver solver;
    Chance chance(2);
    SteeringHydraulics h = anything(chance);
    const auto circuit = steering_circuit(h, {.turns_per_second = 0.1});
    REQUIRE_OK(circuit);
    Circuit broken = circuit.value();
    broken.elements.erase(broken.elements.begin());
    CHECK_FALSE(solver.solve(broken).ok());
    CHECK(solver.solve(circuit.value()).ok());
}

TEST_CASE("The slope of Churchill's friction factor is that of the factor itself") {
    // Finite differences.
    for (const double roughness : {0.0, 1e-4, 0.02})
        for (double reynolds = 700; reynolds < 1e6; reynolds *= 1.37) {
            const double step = 1e-5 * reynolds;
            const double slope = (hardover::rig::friction_factor(reynolds + step, roughness) -
                                  hardover::rig::friction_factor(reynolds - step, roughness)) /
                                 (2 * step);
            INFO("Re " << reynolds << ", roughness " << roughness);
            CHECK(hardover::rig::friction_factor_and_slope(reynolds, roughness).slope ==
                  Approx(slope).epsilon(1e-5).margin(1e-15));
        }
    // Where it stays laminar the formula itself gives 64/Re to the last digits.
    const double at = hardover::rig::stays_laminar_below;
    CHECK(hardover::rig::friction_factor(at * 1.0000001, 0) * at * 1.0000001 / 64 ==
          Approx(1).epsilon(1e-13));
}
