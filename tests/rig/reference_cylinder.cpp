// How the published cylinder, pump and squareness examples are computed with the rig's formulas.
#include <cmath>

#include "app/rig/cylinder.hpp"
#include "app/rig/load.hpp"
#include "app/rig/square.hpp"
#include "reference_checks.hpp"

namespace hardover_tests {

using namespace hardover::rig;
using Check = ReferenceCheck;

namespace {

double jack_force(const Check& c) {
    const double pressure = ram_pressure(c("F1"), circle_diameter(c("A1")), 0);
    return ram_force(pressure, circle_diameter(c("A2")), 0);
}

double jack_travel(const Check& c) {
    return ram_volume(circle_diameter(c("A1")), 0, c("s1")) / ram_area(circle_diameter(c("A2")), 0);
}

double bore_for_load(const Check& c) {
    return circle_diameter(c("force") / c("pressure"));
}

double pump_flow_of_pistons(const Check& c) {
    return pump_flow(piston_pump_displacement(c("pistons"), c("bore"), c("stroke")), c("speed"));
}

double swash_pump_flow(const Check& c) {
    const double stroke = swash_plate_stroke(c("piston_circle"), c("angle"));
    const double displacement = piston_pump_displacement(c("pistons"), c("piston_bore"), stroke);
    return c("eta_v") * pump_flow(displacement, c("speed"));
}

double turns(const Check& c) {
    const bool rod_side = c.word("type") == "balanced" || c.titled("retract");
    const double volume = ram_volume(c("bore"), rod_side ? c("rod") : 0, c("stroke"));
    return pump_turning(volume, c("helm_displacement"), c("eta_v"));
}

// Power of a force at a speed is pressure times flow in a ram of any size.
double ram_power(const Check& c) {
    const double bore = 0.05;
    return hydraulic_power(ram_pressure(c("load"), bore, 0), c("speed") * ram_area(bore, 0));
}

double strokes_to_fill(const Check& c) {
    return ram_volume(c("ram_bore"), 0, c("ram_stroke")) / ram_volume(c("pump_bore"), 0, c("pump_stroke"));
}

double both_strokes(const Check& c) {
    const double bore = circle_diameter(c("cap_area"));
    const double rod = circle_diameter(c("rod_area"));
    return ram_volume(bore, 0, c("stroke")) + ram_volume(bore, rod, c("stroke"));
}

Diagonals diagonals(const Check& c) {
    return {c("d1"), c("d2"), c("a"), c("b")};
}

std::vector<double> gauge_contributions(const Check& c) {
    return {c("u_ls"), c("u_d0"), c("u_d1"), c("u_d2"), c("u_dalpha"), c("u_dtheta")};
}

// Power of a brake: force · lever · angular speed; each part of the error is power times its relative error.
std::vector<double> brake_errors(const Check& c) {
    const double power = c("F") * c("L") * c("R") / c("t");
    return {power * c("uF") / c("F"), power * c("uL") / c("L"), power * c("uR") / c("R"),
            power * c("ut") / c("t")};
}

std::vector<double> ten_tolerances(const Check& c) {
    return std::vector<double>(static_cast<std::size_t>(c("n")), c("tol_each"));
}

double parallel_resistance_uncertainty(const Check& c) {
    const double sum = c("R1") + c("R2");
    return root_sum_square({std::pow(c("R2") / sum, 2) * c("u1"), std::pow(c("R1") / sum, 2) * c("u2")});
}

ReferenceFormulas square_formulas() {
    return {
        {"SQR-001", [](const Check& c) { return rectangle_diagonal(c("L"), c("W")); }},
        {"SQR-002", [](const Check& c) { return rectangle_diagonal(c("a"), c("b")); }},
        {"skew of a parallelogram", [](const Check& c) { return skew(diagonals(c)); }},
        {"SQR-006",
         [](const Check& c) {
             const double u = c("u_each");
             return skew_uncertainty(diagonals(c), {u, u, u, u});
         }},
        {"SQR-010", [](const Check& c) { return root_sum_square(gauge_contributions(c)); }},
        {"SQR-012",
         [](const Check& c) {
             return c("ls") * c("alpha") * standard_uncertainty_of_limits(c("half_width"));
         }},
        {"SQR-013",
         [](const Check& c) {
             return c("ls") * std::abs(c("theta")) * standard_uncertainty_of_limits(c("half_width"));
         }},
        {"SQR-017",
         [](const Check& c) {
             return root_sum_square({c("uV") / c("V"), c("uI") / c("I")});
         }},
        {"SQR-018",
         [](const Check& c) {
             return root_sum_square({c("u1"), c("u2")});
         }},
        {"SQR-019", parallel_resistance_uncertainty},
        {"SQR-020",
         [](const Check& c) {
             return root_sum_square({2 * c("dE"), c("dR")});
         }},
        {"SQR-021", [](const Check& c) { return worst_case(brake_errors(c)); }},
        {"SQR-022", [](const Check& c) { return root_sum_square(brake_errors(c)); }},
        {"SQR-030", [](const Check& c) { return worst_case(ten_tolerances(c)); }},
        {"SQR-031", [](const Check& c) { return root_sum_square(ten_tolerances(c)); }},
        {"SQR-032", [](const Check& c) { return worst_case(c.list("tols")); }},
        {"SQR-033", [](const Check& c) { return root_sum_square(c.list("tols")); }},
    };
}

ReferenceFormulas pump_formulas() {
    return {
        {"CYL-056", [](const Check& c) { return pump_flow(c("displacement"), c("speed")); }},
        {"CYL-057",
         [](const Check& c) { return volumetric_efficiency(c("flow"), c("displacement"), c("speed")); }},
        {"CYL-058", pump_flow_of_pistons},
        {"CYL-059", swash_pump_flow},
        {"CYL-060",
         [](const Check& c) { return relief_pressure(c("rate"), c("precompression"), c("poppet_area")); }},
        {"CYL-061",
         [](const Check& c) {
             return relief_pressure(c("rate"), c("precompression") + c("lift"), c("poppet_area"));
         }},
        {"CYL-062",
         [](const Check& c) {
             return ram_force_for_torque(c("load") * c("L2"), c("L1") * std::cos(c("phi")));
         }},
        {"CYL-063",
         [](const Check& c) {
             return ram_force_for_torque(c("load") * c("L2"), (c("L1") + c("L2")) * std::cos(c("phi")));
         }},
        {"CYL-064",
         [](const Check& c) {
             return ram_force_for_torque(c("load") * (c("L1") + c("L2")), c("L2") * std::cos(c("phi")));
         }},
        {"motor torque from power", [](const Check& c) { return shaft_torque(c("power"), c("speed")); }},
        {"shaft torque from power", [](const Check& c) { return shaft_torque(c("power"), c("speed")); }},
        {"hydraulic power", [](const Check& c) { return hydraulic_power(c("pressure"), c("flow")); }},
        {"wheel turns lock to lock", turns},
    };
}

}  // namespace

ReferenceFormulas cylinder_formulas() {
    ReferenceFormulas formulas = {
        {"CYL-001", [](const Check& c) { return ram_pressure(c("load"), c("bore"), 0); }},
        {"CYL-002", [](const Check& c) { return ram_speed(c("flow"), c("bore"), 0); }},
        {"CYL-003", [](const Check& c) { return ram_pressure(c("load"), c("bore"), c("rod")); }},
        {"CYL-004", [](const Check& c) { return ram_speed(c("flow"), c("bore"), c("rod")); }},
        {"CYL-005", ram_power},
        {"CYL-006", ram_power},
        {"CYL-007", [](const Check& c) { return unbalanced_ratio(c("bore"), c("rod")); }},
        {"Pascal jack output force", jack_force},
        {"Pascal jack output travel", jack_travel},
        {"CYL-012", strokes_to_fill},
        {"CYL-013", [](const Check& c) { return ram_pressure(c("rod_force"), c("pump_bore"), 0); }},
        {"CYL-014", [](const Check& c) { return ram_force(c("pressure"), c("ram_bore"), 0); }},
        {"bore for a load", bore_for_load},
        {"CYL-017", [](const Check& c) { return ram_force(c("pressure"), c("bore"), 0); }},
        {"CYL-018", [](const Check& c) { return ram_pressure(c("force"), c("bore"), c("rod")); }},
        {"CYL-019", [](const Check& c) { return ram_speed(c("flow"), circle_diameter(c("area")), 0); }},
        {"CYL-020", both_strokes},
        {"CYL-021", [](const Check& c) { return ram_volume(c("bore"), 0, c("stroke")); }},
        {"two-piston force ratio", jack_force},
        {"CYL-023", [](const Check& c) { return circle_area(bore_for_load(c)); }},
        {"CYL-024",
         [](const Check& c) { return ram_volume(circle_diameter(c("area")), 0, c("stroke")) / c("time"); }},
    };
    for (ReferenceFormulas more : {pump_formulas(), square_formulas()}) {
        formulas.insert(formulas.end(), more.begin(), more.end());
    }
    return formulas;
}

}  // namespace hardover_tests
