// The laws of single elements: their corners, and slopes that agree with differences.
#include "app/rig/circuit_laws.hpp"

#include <cmath>

#include "support.hpp"

using namespace hardover::rig::circuit;

TEST_CASE("Rounded corners are the sharp ones beyond their width") {
    CHECK(positive_part(0.3, 1e-9).value == Approx(0.3).epsilon(1e-12));
    CHECK(positive_part(-0.3, 1e-9).value == Approx(0).margin(1e-15));
    CHECK(positive_part(-0.3, 1e-9).value > 0);
    CHECK(kept_within(0.4, 0.5, 1e-9).value == Approx(0.4));
    CHECK(kept_within(4, 0.5, 1e-9).value == Approx(0.5));
    CHECK(kept_within(-4, 0.5, 1e-9).value == Approx(-0.5));
    CHECK(kept_within(0.3, 0, 0.1).value == Approx(0).margin(1e-15));
    CHECK(ramp(0.25, 1e-9).value == Approx(0.25));
    CHECK(ramp(-1, 1e-9).value == Approx(0).margin(1e-12));
    CHECK(ramp(2, 1e-9).value == Approx(1));
}

TEST_CASE("Laminar flow has no turbulence, and the passage to turbulent has no jump") {
    CHECK(turbulence(5, 0).value == 1);
    CHECK(turbulence(10, 0).value == Approx(1).epsilon(1e-12));
    CHECK(turbulence(1000, 0).value == Approx(1).epsilon(1e-3));
    // Pressure rises with flow everywhere: factor · Re.
    double before = 0;
    for (double reynolds = 100; reynolds < 20000; reynolds *= 1.01) {
        const double loss = turbulence(reynolds, 0).value * reynolds;
        CHECK(loss > before);
        if (before > 0) CHECK(loss / before < 1.2);
        before = loss;
    }
    // Churchill at Re 100000 and roughness 0.0001: f = 0.01846262 (tests of the open library `fluids`); over
    // 64/Re.
    CHECK(turbulence(100000, 0.0001).value == Approx(0.018462624566280075 * 100000 / 64).epsilon(1e-9));
}

TEST_CASE("The slopes of every law agree with central differences") {
    using Kind = Branch::Kind;
    Branch branch;
    branch.linear = 0.7;
    branch.quadratic = 1.3;
    branch.reynolds_per_flow = 3000;
    branch.roughness = 1e-4;
    branch.cracking = 0.05;
    branch.pilot_ratio = 3;
    branch.opening_range = 0.2;
    branch.command = 0.6;
    branch.limit = 0.4;
    branch.suction_limit = -0.1;
    branch.no_filling = -0.9;
    branch.pressure = 0.2;
    for (const Kind kind : {Kind::path, Kind::one_way, Kind::pilot, Kind::pump, Kind::held})
        for (const double width : {1e-1, 1e-3})
            for (const double command : {0.6, -0.6})
                for (const BranchEnds& at :
                     {BranchEnds{0.3, 0.1, 0.2, 0.15}, BranchEnds{-0.5, 0.4, 0.6, -0.3},
                      BranchEnds{0.2, 0.25, 0.1, 1.2}, BranchEnds{0.02, 0.6, 0.31, 0.9}}) {
                    branch.kind = kind;
                    branch.command = command;
                    const Rounding rounding{width, 1e-6};
                    const BranchResidual r = residual(branch, at, rounding);
                    const double step = 1e-7;
                    const auto difference = [&](double BranchEnds::*end) {
                        BranchEnds up = at, down = at;
                        up.*end += step;
                        down.*end -= step;
                        return (residual(branch, up, rounding).value -
                                residual(branch, down, rounding).value) /
                               (2 * step);
                    };
                    CAPTURE(static_cast<int>(kind), width, command, at.from, at.flow);
                    CHECK(r.by_from == Approx(difference(&BranchEnds::from)).margin(2e-5));
                    CHECK(r.by_to == Approx(difference(&BranchEnds::to)).margin(2e-5));
                    CHECK(r.by_pilot == Approx(difference(&BranchEnds::pilot)).margin(2e-5));
                    CHECK(r.by_flow == Approx(difference(&BranchEnds::flow)).margin(2e-5));
                }
}

TEST_CASE("A pump fills wholly above its suction limit, not at all at the bottom") {
    Branch pump;
    pump.suction_limit = -0.6;
    pump.no_filling = -0.9;
    CHECK(pump_filling(pump, -0.1, 0).value == 1);
    CHECK(pump_filling(pump, -0.75, 0).value == Approx(0.5));
    CHECK(pump_filling(pump, -0.95, 0).value == 0);
}
