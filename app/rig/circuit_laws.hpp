// What each kind of two-ended element demands of the pressures at its ends and its flow, as a residual with
// slopes. Dimensionless throughout (see Scales in circuit_network.hpp); knows one element at a time.
//
// Checks, reliefs, friction and stops have corners. They are written as "the positive part of" so that a
// width rounds the corner: the solver starts wide and ends at a width that no gauge would show.
#pragma once

#include <string>

namespace hardover::rig::circuit {

struct Smooth {
    double value = 0;
    double slope = 0;
};

// max(x, 0), rounded: C. Chen, O. Mangasarian, Computational Optimization and Applications 5 (1996), p. 97.
Smooth positive_part(double x, double width);
// x kept within ±limit, rounded.
Smooth kept_within(double x, double limit, double width);
// 0 below 0, 1 above 1, straight between, rounded.
Smooth ramp(double x, double width);

// Pressure over that of laminar flow at a Reynolds number, 1 when laminar, and its slope by Reynolds number.
Smooth turbulence(double reynolds, double relative_roughness);

struct Rounding {
    double width = 0;
    // Share of a leak, a resistance and a slip too small to notice that every element is given, so that
    // pressures and flows which nothing determines (oil shut in between two valves) still have one value.
    double seepage = 0;
};

// One path for oil between two nodes, with dimensionless parameters. `to` = outside: the air, pressure 0.
struct Branch {
    enum class Kind { path, one_way, pilot, pump, held };
    static constexpr int outside = -1;

    std::string name;
    Kind kind = Kind::path;
    int from = outside, to = outside, pilot = outside;
    double linear = 0;             // path, one_way, pilot: pressure per flow
    double quadratic = 0;          // path
    double reynolds_per_flow = 0;  // path: 0 = stays laminar
    double roughness = 0;          // path: over bore
    double cracking = 0;           // one_way, pilot
    double pilot_ratio = 0;        // pilot
    double opening_range = 0;      // pilot
    double command = 0;            // pump: flow at its speed
    double limit = 0;              // pump: most pressure its torque gives
    double suction_limit = 0;      // pump
    double no_filling = 0;         // pump
    double pressure = 0;           // held: at `from`; flow is what the reservoir gives
};

struct BranchEnds {
    double from = 0, to = 0, pilot = 0, flow = 0;
};

struct BranchResidual {
    double value = 0;
    double by_from = 0, by_to = 0, by_pilot = 0, by_flow = 0;
};

BranchResidual residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding);

// Share of its command that a pump can fill at an inlet pressure, 1 to 0.
Smooth pump_filling(const Branch& pump, double inlet, double width);

}  // namespace hardover::rig::circuit
