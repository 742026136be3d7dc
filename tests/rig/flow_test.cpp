// Flow in hoses and fittings: the laws where they meet, forward and back, and what is refused.
#include "app/rig/flow.hpp"

#include <cmath>
#include <numbers>

#include "support.hpp"

using namespace hardover::rig;

namespace {
const FlowingOil oil{870, 32e-6};
}

TEST_CASE("The friction factor is laminar below Re 2000 and within 3 percent of Colebrook above 5000") {
    for (double reynolds = 1e-3; reynolds < 1500; reynolds *= 1.7) {
        CHECK(friction_factor(reynolds, 0) == Approx(64 / reynolds).epsilon(1e-4));
    }
    for (double reynolds = 4000; reynolds < 1e7; reynolds *= 1.7) {
        for (const double roughness : {1e-5, 1e-3, 0.02}) {
            INFO("Re " << reynolds << ", roughness " << roughness);
            const double colebrook = colebrook_friction_factor(reynolds, roughness);
            // The equation itself, Colebrook 1939.
            const double s = 1 / std::sqrt(colebrook);
            CHECK(s == Approx(-2 * std::log10(roughness / 3.7 + 2.51 * s / reynolds)));
            if (reynolds >= 5000)
                CHECK(friction_factor(reynolds, roughness) == Approx(colebrook).epsilon(0.03));
        }
    }
    CHECK(std::isnan(friction_factor(0, 0)));
    CHECK(std::isnan(colebrook_friction_factor(1000, 0)));
}

TEST_CASE("More flow always loses more pressure, also through the transition to turbulence") {
    const Line line{0.008, 3, 0};
    double before = 0;
    for (double flow = 1e-9; flow < 3e-3; flow *= 1.05) {
        const double now = line_loss(line, oil, flow);
        INFO("flow " << flow);
        CHECK(now > before);
        before = now;
    }
}

TEST_CASE("The flow found from a pressure loses that pressure, either way round") {
    for (const double bore : {0.005, 0.01, 0.02}) {
        const Line line{bore, 5, 2e-6};
        for (double flow = 1e-8; flow < 5e-3; flow *= 3) {
            INFO("bore " << bore << ", flow " << flow);
            const double pressure = line_loss(line, oil, flow);
            CHECK(line_flow(line, oil, pressure) == Approx(flow));
            CHECK(line_flow(line, oil, -pressure) == Approx(-flow));
            CHECK(line_loss(line, oil, -flow) == Approx(-pressure));
        }
    }
    CHECK(line_flow({0.01, 5, 0}, oil, 0) == 0);
    CHECK(std::isnan(line_flow({0, 5, 0}, oil, 1e5)));
    CHECK(std::isnan(line_loss({0.01, 5, 0}, {0, 32e-6}, 1e-5)));
}

TEST_CASE("A steering hose a tenth narrower loses half as much again") {
    const double wide = line_loss({0.010, 5, 0}, oil, 1e-5);
    CHECK(line_loss({0.009, 5, 0}, oil, 1e-5) / wide == Approx(1 / std::pow(0.9, 4)));
}

TEST_CASE("Orifice, valve and fitting run backwards with the pressure turned round") {
    CHECK(orifice_flow(0.62, 1e-6, -1e5, 870) == -orifice_flow(0.62, 1e-6, 1e5, 870));
    const double kv = flow_coefficient(1e-4, 2e5, 870);
    CHECK(valve_flow(kv, 2e5, 870) == Approx(1e-4));
    CHECK(valve_flow(kv, -2e5, 870) == Approx(-1e-4));
    CHECK(valve_loss(kv, -1e-4, 870) == Approx(-2e5));
    // The same valve as a loss coefficient of a bore.
    const double bore = 0.01;
    const double k = loss_coefficient_of_valve(kv, bore);
    CHECK(fitting_loss(k, 870, flow_speed(1e-4, bore)) == Approx(2e5));
    CHECK(orifice_meter_flow(0.6, 1e-6, 0, 1e5, 870) == Approx(orifice_flow(0.6, 1e-6, 1e5, 870)));
    CHECK(std::isnan(orifice_meter_flow(0.6, 1e-6, 1, 1e5, 870)));
}

TEST_CASE("Fittings in cold oil lose far more than their turbulent constant says") {
    for (const Fitting& fitting : screwed_fittings()) {
        const double slow = two_k(fitting.k1, fitting.k_infinite, 50, 0.01);
        const double fast = two_k(fitting.k1, fitting.k_infinite, 1e6, 0.01);
        INFO(fitting.name);
        CHECK(slow > 3 * fast);
    }
    CHECK(std::isnan(two_k(800, 0.4, 0, 0.01)));
    CHECK(std::isnan(tee_branch_loss_coefficient(1.1)));
    // All from the branch, none from the run: no more suction (Crane TP-410: 0.55·2).
    CHECK(tee_branch_loss_coefficient(1) == Approx(1.1));
}
