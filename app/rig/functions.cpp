#include "app/rig/functions.hpp"

#include "app/rig/cylinder.hpp"
#include "app/rig/function_table.hpp"
#include "app/rig/load.hpp"
#include "app/rig/survey.hpp"

namespace hardover::rig {

namespace {

using namespace function_table;

void add_cylinder_functions(Functions& functions) {
    const std::string geometry =
        "A. Esposito, Fluid Power with Applications, ch. 6 (geometry of the cylinder)";
    add(functions, "circle_area", circle_area, {length}, area, geometry);
    add(functions, "circle_diameter", circle_diameter, {area}, length, geometry);
    add(functions, "ram_area", ram_area, {length, length}, area, geometry);
    add(functions, "ram_volume", ram_volume, {length, length, length}, volume, geometry);
    add(functions, "ram_force", ram_force, {pressure, length, length}, force, geometry);
    add(functions, "ram_pressure", ram_pressure, {force, length, length}, pressure, geometry);
    add(functions, "ram_speed", ram_speed, {flow, length, length}, speed, geometry);
    add(functions, "unbalanced_ratio", unbalanced_ratio, {length, length}, number, geometry);

    const std::string pump = "A. Esposito, Fluid Power with Applications, ch. 5 (pumps)";
    add(functions, "pump_turning", pump_turning, {volume, displacement, number}, angle, pump);
    add(functions, "pump_flow", pump_flow, {displacement, turning_speed}, flow, pump);
    add(functions, "volumetric_efficiency", volumetric_efficiency, {flow, displacement, turning_speed},
        number, pump);
    add(functions, "piston_pump_displacement", piston_pump_displacement, {number, length, length},
        displacement, pump);
    add(functions, "swash_plate_stroke", swash_plate_stroke, {length, angle}, length, pump);
    add(functions, "pump_torque", pump_torque, {pressure, displacement, number}, torque, pump);
    add(functions, "wheel_rim_force", wheel_rim_force, {pressure, displacement, length, number}, force, pump);
    add(functions, "hydraulic_power", hydraulic_power, {pressure, flow}, power, pump);

    const std::string relief = "A. Esposito, Fluid Power with Applications, ch. 8 (relief valve)";
    const std::string class_rule = "class rules for special service craft, Pt 14 Ch 1 5.2.4";
    add(functions, "relief_pressure", relief_pressure, {spring_rate, length, area}, pressure, relief);
    add(functions, "least_relief_setting", least_relief_setting, {pressure}, pressure, class_rule);
    add(functions, "least_relief_flow", least_relief_flow, {flow}, flow, class_rule);
}

void add_load_functions(Functions& functions) {
    const std::string mechanics = "textbook mechanics";
    add(functions, "side_force", side_force, {density, area, speed, number}, force, mechanics);
    add(functions, "at_speed", at_speed, {force, speed, speed}, force, mechanics);
    add(functions, "shaft_torque", shaft_torque, {power, turning_speed}, torque, mechanics);
    add(functions, "steering_part_of_shaft_torque", steering_part_of_shaft_torque, {torque, angle}, torque,
        mechanics);
    add(functions, "ram_force_for_torque", ram_force_for_torque, {torque, length}, force, mechanics);
    add(functions, "ram_pressure_for_torque", ram_pressure_for_torque, {torque, length, area}, pressure,
        mechanics);

    const std::string fujii = "Fujii and Tsuda, as used in open ship-manoeuvring models";
    add(functions, "lift_gradient", lift_gradient, {number}, number, fujii);
    add(functions, "rudder_force_coefficient", rudder_force_coefficient, {number, angle}, number, fujii);
    add(functions, "centre_of_pressure", centre_of_pressure, {angle}, number,
        "Joessel; constants from memory");
    add(functions, "class_rudder_force", class_rudder_force, {number, area, speed}, force,
        "IACS UR S10; from memory");
    add(functions, "class_torque_lever", class_torque_lever, {length, number, number}, length,
        "class guidance for large yachts, table 4.1.4");
}

// The sizes a fault changes and the gauges of the survey. Their units are fixed here and known to be units.
void add_model_names(Functions& functions) {
    for (const Parameter& parameter : parameters())
        functions.parameters.push_back({parameter.name, find_unit(parameter.unit).value()});
    for (const Gauge& gauge : gauges())
        functions.gauges.push_back({gauge.name, find_unit(gauge.unit).value()});
}

}  // namespace

Functions rig_functions() {
    Functions functions;
    add_cylinder_functions(functions);
    add_geometry_functions(functions);
    add_linkage_functions(functions);
    add_oil_functions(functions);
    add_load_functions(functions);
    add_model_names(functions);
    return functions;
}

}  // namespace hardover::rig
