// How the published values on threads, drilling, hoses, load and metals are computed with the rig's formulas.
#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "app/rig/drill.hpp"
#include "app/rig/fastener.hpp"
#include "app/rig/galvanic.hpp"
#include "app/rig/hose.hpp"
#include "app/rig/load.hpp"
#include "reference_checks.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover::rig;
using Check = ReferenceCheck;

namespace {

double area_of_thread(const Check& c) {
    const auto thread = find_thread(c.title.substr(std::string("tensile stress area ").size()));
    REQUIRE_OK(thread);
    CHECK(thread.value().diameter == Approx(c("d")));
    CHECK(thread.value().pitch == Approx(1 / c("tpi")));
    return thread.value().stress_area();
}

double torque_at_share_of_proof(const Check& c) {
    return torque_for_clamp(c("K"), c("D"), clamp_load(c("fraction"), c("Sp"), c("As")));
}

double torque_of_friction(const Check& c) {
    const double factor = nut_factor({c("d"), c("dm"), 1 / c("tpi"), c("mu"), c("mu")});
    return torque_for_clamp(factor, c("d"), c("F"));
}

BoltGrade grade(const char* name) {
    const auto found = find_bolt_grade(name);
    REQUIRE_OK(found);
    return found.value();
}

double flare_diameter(const Check& c) {
    for (const FlareThread& thread : flare_threads()) {
        if (thread.dash == c("dash")) return thread.diameter;
    }
    return std::nan("");
}

double torque_limit(const Check& c) {
    const FlareNut nut = c.titled("ALUMINIUM tube") ? FlareNut::aluminium_tube
                         : c.titled("STEEL tube")   ? FlareNut::steel_tube
                                                    : FlareNut::hose;
    const FlareTorque* torque = flare_torque(static_cast<int>(c("dash")), nut);
    REQUIRE(torque != nullptr);
    return c.titled("low") ? torque->least : torque->greatest;
}

double potential(const Check& c) {
    const Electrode electrode =
        c.word("reference") == "SCE" ? Electrode::calomel : Electrode::silver_chloride;
    const auto metal = find_metal(electrode, c.title.substr(c.title.find(", ") + 2));
    REQUIRE_OK(metal);
    return metal.value().potential;
}

double driving_voltage(const Check& c) {
    const auto full_name = [](const std::string& name) -> std::string {
        if (name == "316 passive") return "316 stainless, passive";
        if (name == "aluminium 3003") return "aluminium 3003-H";
        return name;
    };
    const auto pair = couple(Electrode::calomel, full_name(c.word("a")), full_name(c.word("b")));
    REQUIRE_OK(pair);
    CHECK(pair.value().eaten == full_name(c.word("b")));
    return pair.value().voltage;
}

// The examination question's F = 18·A·v^2·(angle in degrees) as a coefficient of the general formula.
double question_force(const Check& c) {
    const double degrees = c("alpha") * 180 / std::numbers::pi;
    return side_force(sea_water_density, c("A"), c("v"), 2 * 18 * degrees / sea_water_density);
}

ReferenceFormulas thread_and_drill_formulas() {
    return {
        {"tensile stress area", area_of_thread},
        {"BLT-141", torque_at_share_of_proof},
        {"BLT-142",
         [](const Check& c) {
             return nut_turn_for_stretch({c("Fi"), c("L"), c("As"), c("E"), c("pitch")});
         }},
        {"BLT-143", torque_at_share_of_proof},
        {"BLT-144", [](const Check& c) { return clamp_of_torque(c("K"), c("D"), c("T")); }},
        {"BLT-145", torque_of_friction},
        {"BLT-146", [](const Check& c) { return torque_for_clamp(0.2, c("d"), c("F")); }},
        {"BLT-170", [](const Check&) { return grade("SAE grade 8").tensile; }},
        {"BLT-177", [](const Check&) { return grade("304/316 CW1").proof; }},
        {"BLT-178", [](const Check&) { return grade("304/316 CW1").tensile; }},
        {"DRL-001", [](const Check& c) { return error_of_offset(c("taper") / 2, 1); }},
        {"DRL-002", [](const Check& c) { return exit_offset(1, c("angle")); }},
        {"exit-point offset", [](const Check& c) { return exit_offset(c("t"), c("error")); }},
        {"drilled path length", [](const Check& c) { return drilled_path(c("t"), c("error")); }},
    };
}

ReferenceFormulas hose_formulas() {
    return {
        {"NPT ", [](const Check& c) { return npt_pitch_diameter(c("D"), 1 / c("tpi")); }},
        {"dash size to nominal inch", [](const Check& c) { return size_of_dash(c("dash")); }},
        {"37 deg flare thread", flare_diameter},
        {"flared hose coupling nut", torque_limit},
        {"flared nut on", torque_limit},
        {"SAE 100R1/100R7 minimum bend radius", [](const Check& c) { return least_bend_radius(c("ID")); }},
        {"FIT-081", [](const Check&) { return least_relief_setting(1); }},
        {"FIT-082", [](const Check&) { return least_relief_flow(1); }},
        {"FIT-083",
         [](const Check& c) {
             return tube_working_pressure((c("OD") - c("ID")) / 2, c("ID"), c("S"), c("FS"));
         }},
        {"FIT-084",
         [](const Check& c) { return tube_working_pressure(c("wall"), c("ID"), c("S"), c("FS")); }},
    };
}

ReferenceFormulas load_formulas() {
    return {
        {"STR-001", question_force},
        {"STR-005", [](const Check& c) { return at_speed(1, c("v1"), c("v2")); }},
        {"STR-006", [](const Check& c) { return lift_gradient(c("aspect_ratio")); }},
        {"STR-007", [](const Check& c) { return lift_gradient(c("aspect_ratio")); }},
        {"STR-030", [](const Check& c) { return centre_of_pressure(c("alpha")); }},
        {"STR-031",
         [](const Check& c) { return class_rudder_force(c("K1") * c("K2") * c("K3"), c("A"), c("V")); }},
        {"STR-032", [](const Check& c) { return side_force(c("rho"), 1, to_si(1, "knot"), 1); }},
        {"STR-033", [](const Check& c) { return class_torque_lever(c("c"), c("alpha"), c("k")); }},
        {"side force on a drive leg",
         [](const Check& c) { return side_force(c("rho"), c("A"), c("V"), c("C")); }},
        {"ram pressure p = F x",
         [](const Check& c) {
             return ram_pressure_for_torque(c("F") * c("x"), c("moment_arm"), c("ram_area"));
         }},
    };
}

}  // namespace

ReferenceFormulas joint_formulas() {
    ReferenceFormulas formulas = {
        {"corrosion potential in flowing sea water", potential},
        {"potential vs Ag/AgCl", potential},
        {"difference ", driving_voltage},
        {"GAL-024", [](const Check&) { return concern_voltage; }},
    };
    for (ReferenceFormulas more : {thread_and_drill_formulas(), hose_formulas(), load_formulas()}) {
        formulas.insert(formulas.end(), more.begin(), more.end());
    }
    return formulas;
}

}  // namespace hardover_tests
