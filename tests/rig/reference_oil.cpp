// How the published values on oil, stiffness, leaks and bleeding are computed with the rig's formulas.
#include <cmath>

#include "app/rig/bleed.hpp"
#include "app/rig/cylinder.hpp"
#include "app/rig/flow.hpp"
#include "app/rig/leak.hpp"
#include "app/rig/oil.hpp"
#include "app/rig/stiffness.hpp"
#include "reference_checks.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover::rig;
using Check = ReferenceCheck;

namespace {

constexpr double water = 1000;
constexpr double gravity = 9.80665;
// The textbooks' atmosphere, 14.7 psi; the program's own is the standard one.
double book_atmosphere() {
    return to_si(14.7, "psi");
}

// The worked sheet counts its temperatures from 273 K, the standard from 273.15 K.
WaltherLine line_from(const Check& c, double zero) {
    const auto line = walther_line({zero + 40, c("nu40")}, {zero + 100, c("nu100")});
    REQUIRE_OK(line);
    return line.value();
}

double walther_viscosity(const Check& c) {
    return viscosity_at(line_from(c, 273.15), c("t"));
}

double saybolt(const Check& c) {
    return viscosity_of_saybolt(c("t"));
}

double squeezed_air_pressure(const Check& c) {
    const double left = c("V1") - ram_volume(c("bore"), 0, c("travel"));
    return gas_pressure(c("p1") + book_atmosphere(), c("V1"), left, 1) - book_atmosphere();
}

Accumulator accumulator(const Check& c, double exponent) {
    return {c("delivered"), c("precharge") + book_atmosphere(), c("p_max") + book_atmosphere(),
            c("p_min") + book_atmosphere(), exponent};
}

double accumulator_for_ram(const Check& c) {
    const double volume = ram_volume(c("bore"), 0, c("stroke"));
    return accumulator_volume({volume, c("p1"), c("p2"), c("p3"), 1});
}

double mixture(const Check& c) {
    CHECK(c("pa") == atmosphere);
    return bulk_modulus_with_air({c("El"), c("alpha"), c("n")}, c("p"));
}

// The piston of a dashpot moves by what leaks past it, over the bore's area.
double dashpot_speed(const Check& c) {
    const AnnularGap gap{c("d_cyl"), (c("d_cyl") - c("d_piston")) / 2, c("l"), 0};
    return annular_leak(gap, c("dp"), c("nu") * c("rho")) / circle_area(c("d_cyl"));
}

double gap_leak(const Check& c) {
    return annular_leak({c("D"), c("c"), c("L"), c("e/c")}, c("dp"), c("mu"));
}

double needle_valve(const Check& c) {
    const double rod_side = c("A1") - c("Ar");
    const double pressure = (c("p1") * c("A1") - c("load")) / rod_side;
    return flow_coefficient(c("v") * rod_side, pressure, c("SG") * water) / to_si(1, "gpm/psi^0.5");
}

double discharge_coefficient(const Check& c) {
    return c("Q") / orifice_flow(1, c("A"), c("dp"), c("SG") * water);
}

ReferenceFormulas viscosity_formulas() {
    return {
        {"VIS-001", [](const Check& c) { return line_from(c, 273).b; }},
        {"VIS-002", [](const Check& c) { return line_from(c, 273).a; }},
        {"VIS-003", [](const Check& c) { return viscosity_at(line_from(c, 273), c("t") - 0.15); }},
        {"Walther viscosity (T = t + 273.15)", walther_viscosity},
        {"viscosity index", [](const Check& c) { return viscosity_index(c("nu40"), c("nu100")); }},
        {"SUS to cSt above 100 SUS", saybolt},
        {"Saybolt Universal to cSt", saybolt},
        {"VIS-023", [](const Check& c) { return dynamic_viscosity(c("nu"), c("SG") * water); }},
        {"VIS-025", [](const Check& c) { return dynamic_viscosity(c("nu"), c("rho")); }},
        {"lube-oil volume correction factor",
         [](const Check& c) { return volume_correction(c("rho15"), c("t")); }},
    };
}

ReferenceFormulas stiffness_formulas() {
    return {
        {"BLK-001", [](const Check& c) { return compression(c("V"), c("p2") - c("p1"), c("beta")); }},
        {"BLK-002", [](const Check& c) { return compression(1, c("p2") - c("p1"), c("beta")); }},
        {"BLK-003", [](const Check& c) { return -compression(1, c("dp"), c("K")); }},
        {"BLK-007", [](const Check& c) { return gas_bulk_modulus(c("p"), 1); }},
        {"BLK-008", [](const Check& c) { return gas_bulk_modulus(c("p"), c("k")); }},
        {"BLK-009", [](const Check& c) { return gas_bulk_modulus(c("p"), c("k")); }},
        {"BLK-010",
         [](const Check& c) {
             return line_bulk_modulus({c("Bl"), c("Bg"), c("air_fraction"), c("D/t"), c("E")});
         }},
        {"BLK-011", squeezed_air_pressure},
        {"BLK-012",
         [](const Check& c) {
             return gas_pressure(c("p1") + book_atmosphere(), 1, c("ratio"), 1) - book_atmosphere();
         }},
        {"BLK-013", [](const Check& c) { return accumulator_volume(accumulator(c, 1)); }},
        {"BLK-014", [](const Check& c) { return accumulator_volume(accumulator(c, c("n"))); }},
        {"BLK-015", accumulator_for_ram},
        {"BLK-016", [](const Check& c) { return -compression(1, c("dp"), c("beta")); }},
        // The bulk modulus of a gas changes with its pressure: taken in the middle of the rise.
        {"BLK-017",
         [](const Check& c) {
             return compression(c("V"), c("dp"), gas_bulk_modulus(c("p") + c("dp") / 2, 1));
         }},
        {"mixture bulk modulus", mixture},
        {"BLK-040", [](const Check& c) { return trapped_air_volume(c("V0"), c("p")); }},
        {"BLK-041",
         [](const Check& c) { return wheel_lost_to_air(c("V0"), c("p"), c("helm_displacement")); }},
        {"BLK-042", [](const Check&) { return brake_hose_expansion_limit(to_si(1.0 / 8, "in")); }},
        {"BLK-043", [](const Check&) { return brake_hose_expansion_limit(to_si(3.0 / 16, "in")); }},
        {"BLK-044", [](const Check&) { return brake_hose_expansion_limit(to_si(1.0 / 4, "in")); }},
    };
}

ReferenceFormulas leak_formulas() {
    return {
        {"LEK-001",
         [](const Check& c) {
             return annular_leak({c("D"), c("a"), c("L"), 0}, c("dp"), c("mu"));
         }},
        {"LEK-003", dashpot_speed},
        {"LEK-004", [](const Check& c) { return slot_leak(1, c("B"), c("L"), c("h_f"), c("mu")); }},
        {"LEK-005",
         [](const Check& c) {
             return slot_leak(1, c("B"), c("l"), water * gravity * c("h"), c("mu")) / c("B");
         }},
        {"LEK-006",
         [](const Check& c) { return orifice_flow(c("Cd"), circle_area(c("D")), c("dp"), c("SG") * water); }},
        {"LEK-007", discharge_coefficient},
        {"LEK-008",
         [](const Check& c) {
             return orifice_meter_flow(c("Cd"), circle_area(c("d")), c("d") / c("D"), c("dp"), c("rho"));
         }},
        {"valve capacity coefficient",
         [](const Check& c) { return flow_coefficient(c("Q"), c("dp"), c("SG") * water); }},
        {"LEK-011",
         [](const Check& c) {
             return valve_loss(c("Cv") * to_si(1, "gpm/psi^0.5"), c("Q"), c("SG") * water);
         }},
        {"LEK-012", needle_valve},
        {"LEK-013", [](const Check& c) { return orifice_flow(1, 1, water * gravity * c("h"), water); }},
        {"LEK-014",
         [](const Check& c) {
             return orifice_flow(c("Cd"), circle_area(c("D")), water * gravity * c("H"), water);
         }},
        {"LEK-020", [](const Check& c) { return c("drops") * usual_drop; }},
        {"LEK-023", [](const Check& c) { return leak_of_drops(c("drops_per_min"), c("drop")); }},
        {"LEK-024",
         [](const Check& c) {
             return time_to_lose(c("volume"), leak_of_drops(c("drops_per_min"), c("drop")));
         }},
        // Computed with g = 9.81 m/s^2; the program takes the standard one.
        {"LEK-025",
         [](const Check& c) {
             return drop_volume({c("r"), c("sigma"), c("rho"), c("F")}) * gravity / 9.81;
         }},
        {"annular leakage with eccentricity", gap_leak},
    };
}

ReferenceFormulas bleed_formulas() {
    return {
        {"hose volume", [](const Check& c) { return hose_volume(c("Di"), c("L")); }},
        {"can one sweep carry a slug",
         [](const Check& c) { return air_reaches_reservoir(c("V_sweep"), c("V_line")) ? 1.0 : 0.0; }},
        {"BLD-008", [](const Check& c) { return turning_to_flush(c("V_line"), c("helm_displacement"), 1); }},
        {"laminar flush", [](const Check& c) { return old_oil_left(c("theta")); }},
        {"laminar step response", [](const Check& c) { return new_oil_arriving(c("theta")); }},
    };
}

}  // namespace

ReferenceFormulas oil_formulas() {
    ReferenceFormulas formulas;
    for (ReferenceFormulas more :
         {viscosity_formulas(), stiffness_formulas(), leak_formulas(), bleed_formulas()}) {
        formulas.insert(formulas.end(), more.begin(), more.end());
    }
    return formulas;
}

}  // namespace hardover_tests
