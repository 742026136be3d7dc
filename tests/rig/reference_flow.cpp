// How the published flow examples are computed with the rig's formulas.
#include <cmath>

#include "app/rig/flow.hpp"
#include "reference_checks.hpp"

namespace hardover_tests {

using namespace hardover::rig;
using Check = ReferenceCheck;

namespace {

constexpr double water = 1000;       // kg/m^3, to which a specific gravity refers
constexpr double gravity = 9.80665;  // m/s^2

double bore_area(double bore) {
    return 1 / flow_speed(1, bore);
}

double colebrook(const Check& c) {
    return colebrook_friction_factor(c("Re"), c("eps/D"));
}

double churchill(const Check& c) {
    return friction_factor(c("Re"), c("eps/D"));
}

double colebrook_of_pipe(const Check& c) {
    const double speed = flow_speed(c("Q"), c("D"));
    return colebrook_friction_factor(reynolds_number(speed, c("D"), c("mu") / c("rho")), c("eps") / c("D"));
}

double laminar_loss(double viscosity, double length, double bore, double speed) {
    return laminar_resistance(viscosity, length, bore) * speed * bore_area(bore);
}

double laminar_loss_of_small_tube(const Check& c) {
    return laminar_loss(c("mu"), c("L"), c("D"), c("V"));
}

// A laminar line's resistance is proportional to the viscosity, so a measured loss gives the viscosity.
double viscosity_of_loss(const Check& c) {
    return c("dp") / (c("Q") * laminar_resistance(1, c("L"), c("D")));
}

// Pumping power is resistance times flow squared.
double flow_of_power(double power, double viscosity, const Check& c) {
    return std::sqrt(power / laminar_resistance(viscosity, c("L"), c("D")));
}

double uphill_flow(const Check& c) {
    const double driving = c("pB") - c("pA") + c("rho") * gravity * (c("zB") - c("zA"));
    return driving / laminar_resistance(c("mu"), c("L"), c("D"));
}

double laminar_equivalent_length(const Check& c) {
    const double reynolds = reynolds_number(flow_speed(c("Q"), c("D")), c("D"), c("nu"));
    return equivalent_length(c("K"), c("D"), friction_factor(reynolds, 0));
}

double level_with_losses(const Check& c) {
    const double speed = flow_speed(c("Q"), c("D"));
    const double loss =
        darcy_loss(c("f"), c("L"), c("D"), water, speed) + fitting_loss(c("sumK"), water, speed);
    return c("z2") + loss / (water * gravity);
}

double branch_share(const Check& c) {
    return c("Q_branch") / (c("Q_branch") + c("Q_run"));
}

double two_k_of(const Check& c) {
    return two_k(c("K1"), c("Kinf"), c("Re"), c("Di"));
}

double hose_loss(const Check& c) {
    return line_loss({c("Di"), c("L"), 0}, {c("rho"), c("nu")}, c("Q"));
}

double head_of_fitting(const Check& c) {
    return fitting_loss(c("K"), water, flow_speed(c("Q"), c("D"))) / (water * gravity);
}

ReferenceFormulas textbook_lines() {
    return {
        {"FLO-001", [](const Check& c) { return reynolds_number(c("v"), c("D"), c("nu")); }},
        {"FLO-002", [](const Check& c) { return reynolds_number(c("v"), c("D"), c("nu")); }},
        {"FLO-003",
         [](const Check& c) { return laminar_loss(c("nu") * c("SG") * water, c("L"), c("D"), c("v")); }},
        {"FLO-004",
         [](const Check& c) {
             return laminar_loss(c("nu") * water, c("L"), c("D"), c("v")) / (water * gravity);
         }},
        {"FLO-005", head_of_fitting},
        {"FLO-006", head_of_fitting},
        {"FLO-007", laminar_equivalent_length},
        {"FLO-008", [](const Check& c) { return bore_for_flow(c("Q"), c("v")); }},
        {"FLO-009", [](const Check& c) { return bore_for_flow(c("Q"), c("v")); }},
        {"FLO-010", [](const Check& c) { return flow_speed(c("Q"), c("D")); }},
        {"FLO-011",
         [](const Check& c) {
             return c("Q") * laminar_resistance(c("nu") * c("SG") * water, c("L"), c("D"));
         }},
        {"FLO-012",
         [](const Check& c) { return darcy_loss(c("f"), c("L"), c("D"), c("SG") * water, c("Q") / c("A")); }},
        {"FLO-013", [](const Check& c) { return reynolds_number(c("Q") / c("A"), c("D"), c("nu")); }},
        {"FLO-014", [](const Check& c) { return fitting_loss(c("sumK"), c("SG") * water, c("Q") / c("A")); }},
        {"FLO-015", [](const Check& c) { return equivalent_length(c("K"), c("D"), c("f")); }},
        // The fastest oil of a laminar flow runs twice as fast as the mean.
        {"FLO-016", [](const Check& c) { return laminar_loss(c("mu"), c("L"), c("D"), c("u_max") / 2); }},
        {"FLO-017",
         [](const Check& c) { return laminar_loss(c("mu"), c("L"), c("D"), c("V")) / (c("rho") * gravity); }},
        {"FLO-018", [](const Check& c) { return flow_of_power(c("P"), c("mu"), c); }},
        {"FLO-019", uphill_flow},
        {"FLO-020",
         [](const Check& c) {
             return reynolds_number(flow_speed(c("Q"), c("D")), c("D"), c("mu") / c("rho"));
         }},
        {"FLO-021", [](const Check& c) { return flow_of_power(c("P"), c("nu") * c("rho"), c); }},
        {"FLO-022", viscosity_of_loss},
        {"FLO-023", viscosity_of_loss},
        {"FLO-024", laminar_loss_of_small_tube},
        {"FLO-025", [](const Check& c) { return laminar_loss_of_small_tube(c) / (c("rho") * gravity); }},
        {"FLO-026",
         [](const Check& c) {
             return darcy_loss(c("f"), c("L"), c("D"), c("rho"), flow_speed(c("Q"), c("D")));
         }},
        {"FLO-027", colebrook_of_pipe},
        {"FLO-028", colebrook_of_pipe},
        {"FLO-029", level_with_losses},
        {"FLO-030", [](const Check& c) { return laminar_loss(c("mu"), c("L"), 2 * c("R"), c("u_max") / 2); }},
        {"FLO-031", [](const Check& c) { return loss_coefficient_of_valve(c("Kv"), c("D")); }},
        {"FLO-032",
         [](const Check& c) {
             return darcy_loss(c("f"), c("L"), c("D"), c("SG") * water, flow_speed(c("Q"), c("D")));
         }},
        {"FLO-036", [](const Check& c) { return flow_speed(c("Q"), c("D")); }},
        {"FLO-037",
         [](const Check& c) {
             return reynolds_number(flow_speed(c("Q"), c("D")), c("D"), c("mu") / c("rho"));
         }},
    };
}

}  // namespace

ReferenceFormulas flow_formulas() {
    ReferenceFormulas formulas = textbook_lines();
    const ReferenceFormulas factors = {
        {"tee, converging: branch",
         [](const Check& c) { return tee_branch_loss_coefficient(branch_share(c)); }},
        {"tee, converging: run", [](const Check& c) { return tee_run_loss_coefficient(branch_share(c)); }},
        {"FLO-035", churchill},
        {"Colebrook", colebrook},
        {"Churchill 1977", churchill},
        {"laminar 64/Re", [](const Check& c) { return friction_factor(c("Re"), 0); }},
        {"Darcy f of a companion point", colebrook},
        {"2-K", two_k_of},
        {"3-K method", [](const Check& c) { return three_k(c("K1"), c("Ki"), c("Kd"), c("Re"), c("NPS")); }},
        {"hose Hagen-Poiseuille drop", hose_loss},
        {"laminar hose resistance",
         [](const Check& c) { return laminar_resistance(c("nu") * c("rho"), c("L"), c("Di")); }},
    };
    formulas.insert(formulas.end(), factors.begin(), factors.end());
    return formulas;
}

}  // namespace hardover_tests
