// The formulas of linkage, squareness, drilling, fasteners, hoses and sealing, under their names.
#include <limits>

#include "app/rig/drill.hpp"
#include "app/rig/fastener.hpp"
#include "app/rig/function_table.hpp"
#include "app/rig/hose.hpp"
#include "app/rig/linkage.hpp"
#include "app/rig/seal_volume.hpp"
#include "app/rig/square.hpp"
#include "app/rig/tie_bar.hpp"

namespace hardover::rig::function_table {

namespace {

double planar_ram_length(double anchor, double arm, double angle_ahead, double steer) {
    return ram_length(PlanarLinkage{anchor, arm, angle_ahead}, steer);
}

double planar_moment_arm(double anchor, double arm, double angle_ahead, double steer) {
    return moment_arm(PlanarLinkage{anchor, arm, angle_ahead}, steer);
}

double planar_steer_at_length(double anchor, double arm, double angle_ahead, double length) {
    const Result<double> angle = angle_at_length(anchor, arm, length);
    return angle ? angle.value() - angle_ahead : std::numeric_limits<double>::quiet_NaN();
}

double skew_of_diagonals(double first, double second, double side_a, double side_b) {
    return skew({first, second, side_a, side_b});
}

double skew_uncertainty_of_tape(double first, double second, double side_a, double side_b, double tape) {
    return skew_uncertainty({first, second, side_a, side_b}, {tape, tape, tape, tape});
}

double inch_stress_area(double diameter, double pitch) {
    return stress_area(diameter, pitch, ThreadForm::inch);
}

double metric_stress_area(double diameter, double pitch) {
    return stress_area(diameter, pitch, ThreadForm::metric);
}

double nut_factor_of_friction(double diameter, double mean_diameter, double pitch, double thread,
                              double collar) {
    return nut_factor({diameter, mean_diameter, pitch, thread, collar});
}

double nut_turn(double clamp, double length, double stress_area, double elasticity, double pitch) {
    return nut_turn_for_stretch({clamp, length, stress_area, elasticity, pitch});
}

void add_layout_functions(Functions& functions) {
    const std::string cosines =
        "law of cosines; worked in R. C. Hibbeler, Engineering Mechanics: Dynamics, ch. 16";
    add(functions, "planar_ram_length", planar_ram_length, {length, length, angle, angle}, length, cosines);
    add(functions, "planar_moment_arm", planar_moment_arm, {length, length, angle, angle}, length, cosines);
    add(functions, "planar_steer_at_length", planar_steer_at_length, {length, length, angle, length}, angle,
        cosines);
    const std::string plane = "plane trigonometry";
    add(functions, "toe_from_spans", toe_from_spans, {length, length, length}, angle, plane);

    add(functions, "rectangle_diagonal", rectangle_diagonal, {length, length}, length, plane);
    add(functions, "skew", skew_of_diagonals, {length, length, length, length}, angle, plane);
    const std::string gum = "GUM, JCGM 100:2008, 4.3.7 and 5.1.2";
    add(functions, "skew_uncertainty", skew_uncertainty_of_tape, {length, length, length, length, length},
        angle, gum);
    add(functions, "standard_uncertainty_of_limits", standard_uncertainty_of_limits, {length}, length, gum);
    add(functions, "standard_uncertainty_of_marks", standard_uncertainty_of_marks, {length}, length, gum);

    add(functions, "exit_offset", exit_offset, {length, angle}, length, plane);
    add(functions, "exit_offset_along_path", exit_offset_along_path, {length, angle}, length, plane);
    add(functions, "drilled_path", drilled_path, {length, angle}, length, plane);
    add(functions, "entry_ellipse", entry_ellipse, {length, angle}, length, plane);
    add(functions, "error_of_offset", error_of_offset, {length, length}, angle, plane);
    add(functions, "compound_error", compound_error, {angle, angle}, angle, plane);
    add(functions, "guide_wedge", guide_wedge, {length, angle}, length, plane);

    const std::string solid = "solid geometry";
    add(functions, "bead_volume", bead_volume, {length, length}, volume, solid);
    add(functions, "squeezed_width", squeezed_width, {length, length}, length, solid);
    add(functions, "bead_for_joint", bead_for_joint, {length, length}, length, solid);
    add(functions, "annulus_volume", annulus_volume, {length, length, length}, volume, solid);
    add(functions, "cartridges", cartridges, {volume, volume, number}, number, solid);
}

void add_joint_functions(Functions& functions) {
    add(functions, "inch_stress_area", inch_stress_area, {length, length}, area, "ASME B1.1");
    add(functions, "metric_stress_area", metric_stress_area, {length, length}, area, "ISO 898-1");
    const std::string shigley = "J. Shigley, Mechanical Engineering Design, ch. 8";
    add(functions, "clamp_load", clamp_load, {number, pressure, area}, force, shigley);
    add(functions, "torque_for_clamp", torque_for_clamp, {number, length, force}, torque, shigley);
    add(functions, "clamp_of_torque", clamp_of_torque, {number, length, torque}, force, shigley);
    add(functions, "nut_factor", nut_factor_of_friction, {length, length, length, number, number}, number,
        shigley);
    add(functions, "nut_turn_for_stretch", nut_turn, {force, length, area, pressure, length}, angle,
        "T. H. Wentzell, Machine Design, ex. 6.2");

    add(functions, "size_of_dash", size_of_dash, {number}, length, "SAE J517");
    add(functions, "dash_of_size", dash_of_size, {length}, number, "SAE J517");
    add(functions, "least_bend_radius", least_bend_radius, {length}, length, "SAE J517; from memory");
    const std::string plane = "plane geometry";
    add(functions, "bend_radius", bend_radius, {length, length}, length, plane);
    add(functions, "bend_length", bend_length, {length, length, angle}, length, plane);
    add(functions, "hose_to_cut", hose_to_cut, {length, number, length}, length, plane);
    add(functions, "hose_slack", hose_slack, {length, number, length}, length, plane);
    add(functions, "tube_working_pressure", tube_working_pressure, {length, length, pressure, number},
        pressure, "Barlow; A. Esposito, Fluid Power with Applications, ch. 10");
    add(functions, "npt_pitch_diameter", npt_pitch_diameter, {length, length}, length, "ASME B1.20.1");
}

}  // namespace

void add_geometry_functions(Functions& functions) {
    add_layout_functions(functions);
    add_joint_functions(functions);
}

}  // namespace hardover::rig::function_table
