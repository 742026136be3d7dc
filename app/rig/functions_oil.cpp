// The formulas of oil, stiffness, flow, leaks and bleeding, under their names.
#include "app/rig/bleed.hpp"
#include "app/rig/flow.hpp"
#include "app/rig/function_table.hpp"
#include "app/rig/leak.hpp"
#include "app/rig/oil.hpp"
#include "app/rig/stiffness.hpp"

namespace hardover::rig::function_table {

namespace {

double mixture_bulk_modulus(double liquid, double air_share, double exponent, double pressure) {
    return bulk_modulus_with_air({liquid, air_share, exponent}, pressure);
}

double soft_line_bulk_modulus(double liquid, double gas, double share, double bore_over_wall, double wall) {
    return line_bulk_modulus({liquid, gas, share, bore_over_wall, wall});
}

double loss_along_line(double bore, double length, double roughness, double density, double viscosity,
                       double flow) {
    return line_loss({bore, length, roughness}, {density, viscosity}, flow);
}

double flow_along_line(double bore, double length, double roughness, double density, double viscosity,
                       double pressure) {
    return line_flow({bore, length, roughness}, {density, viscosity}, pressure);
}

double accumulator(double delivered, double pre_charge, double greatest, double least, double exponent) {
    return accumulator_volume({delivered, pre_charge, greatest, least, exponent});
}

double hanging_drop(double tip_radius, double surface_tension, double density, double factor) {
    return drop_volume({tip_radius, surface_tension, density, factor});
}

double gap_leak(double diameter, double clearance, double length, double eccentricity, double pressure,
                double viscosity) {
    return annular_leak({diameter, clearance, length, eccentricity}, pressure, viscosity);
}

void add_fluid_functions(Functions& functions) {
    add(functions, "oil_viscosity", oil_viscosity, {kinematic_viscosity, kinematic_viscosity, temperature},
        kinematic_viscosity, "ASTM D341");
    add(functions, "dynamic_viscosity", dynamic_viscosity, {kinematic_viscosity, density}, viscosity,
        "definition");
    add(functions, "viscosity_index", viscosity_index, {kinematic_viscosity, kinematic_viscosity}, number,
        "ASTM D2270; coefficients from memory");
    const std::string saybolt = "A. Esposito, Fluid Power with Applications, ch. 2";
    add(functions, "viscosity_of_saybolt", viscosity_of_saybolt, {time_}, kinematic_viscosity, saybolt);
    add(functions, "saybolt_of_viscosity", saybolt_of_viscosity, {kinematic_viscosity}, time_, saybolt);
    const std::string api = "API MPMS 11.1 (ASTM D1250), lubricating oils";
    add(functions, "expansion_at_15", expansion_at_15, {density}, expansion, api);
    add(functions, "volume_correction", volume_correction, {density, temperature}, number, api);
    add(functions, "density_at", density_at, {density, temperature}, density, api);
    add(functions, "expanded_volume", expanded_volume, {volume, density, temperature, temperature}, volume,
        api);

    const std::string bulk = "A. Esposito, Fluid Power with Applications, ch. 2 (bulk modulus)";
    const std::string gas = "ideal gas; J. Sullivan, Fluid Power, ch. 12 and 15";
    add(functions, "compression", compression, {volume, pressure, pressure}, volume, bulk);
    add(functions, "thermal_pressure_rise", thermal_pressure_rise, {pressure, expansion, temperature},
        pressure, bulk);
    add(functions, "gas_volume", gas_volume, {volume, pressure, pressure, number}, volume, gas);
    add(functions, "gas_pressure", gas_pressure, {pressure, volume, volume, number}, pressure, gas);
    add(functions, "gas_bulk_modulus", gas_bulk_modulus, {pressure, number}, pressure, gas);
    add(functions, "bulk_modulus_with_air", mixture_bulk_modulus, {pressure, number, number, pressure},
        pressure, "liquid and ideal gas in series");
    add(functions, "line_bulk_modulus", soft_line_bulk_modulus,
        {pressure, pressure, number, number, pressure}, pressure, "E. O. Doebelin, System Dynamics, ch. 4");
    add(functions, "trapped_air_volume", trapped_air_volume, {volume, pressure}, volume, gas);
    add(functions, "wheel_lost_to_air", wheel_lost_to_air, {volume, pressure, displacement}, angle, gas);
    add(functions, "air_from_lost_wheel", air_from_lost_wheel, {angle, pressure, displacement}, volume, gas);
    add(functions, "accumulator_volume", accumulator, {volume, pressure, pressure, pressure, number}, volume,
        gas);
    add(functions, "brake_hose_expansion_limit", brake_hose_expansion_limit, {length}, area,
        "49 CFR 571.106 table I; figures from memory");
    add(functions, "hose_swelling", hose_swelling, {hose_compliance, length, pressure}, volume, "definition");
}

void add_flow_functions(Functions& functions) {
    const std::string pipes = "A. Esposito, Fluid Power with Applications, ch. 3, 4 and 10";
    add(functions, "flow_speed", flow_speed, {flow, length}, speed, pipes);
    add(functions, "bore_for_flow", bore_for_flow, {flow, speed}, length, pipes);
    add(functions, "reynolds_number", reynolds_number, {speed, length, kinematic_viscosity}, number, pipes);
    add(functions, "laminar_resistance", laminar_resistance, {viscosity, length, length}, flow_resistance,
        "Hagen and Poiseuille; A. Esposito, Fluid Power with Applications, ch. 4");
    const std::string churchill = "S. Churchill, Chemical Engineering 84 (1977) 24, p. 91";
    add(functions, "friction_factor", friction_factor, {number, number}, number, churchill);
    add(functions, "colebrook_friction_factor", colebrook_friction_factor, {number, number}, number,
        "C. Colebrook, J. Inst. Civ. Eng. 11 (1939), p. 133");
    add(functions, "darcy_loss", darcy_loss, {number, length, length, density, speed}, pressure, pipes);
    add(functions, "line_loss", loss_along_line, {length, length, length, density, kinematic_viscosity, flow},
        pressure, churchill);
    add(functions, "line_flow", flow_along_line,
        {length, length, length, density, kinematic_viscosity, pressure}, flow, churchill);
    add(functions, "fitting_loss", fitting_loss, {number, density, speed}, pressure, pipes);
    add(functions, "equivalent_length", equivalent_length, {number, length, number}, length, pipes);
    add(functions, "two_k", two_k, {number, number, number, length}, number,
        "W. Hooper, Chemical Engineering 88 (1981) 17, p. 96");
    add(functions, "three_k", three_k, {number, number, number, number, length}, number,
        "R. Darby, Chemical Engineering 106 (1999) 7, p. 101");
    const std::string crane = "Crane TP-410 (2009), ch. 2";
    add(functions, "tee_branch_loss_coefficient", tee_branch_loss_coefficient, {number}, number, crane);
    add(functions, "tee_run_loss_coefficient", tee_run_loss_coefficient, {number}, number, crane);
    const std::string orifice = "Y. A. Cengel, Fluid Mechanics, ch. 8";
    add(functions, "orifice_flow", orifice_flow, {number, area, pressure, density}, flow, orifice);
    add(functions, "orifice_meter_flow", orifice_meter_flow, {number, area, number, pressure, density}, flow,
        orifice);
    const std::string valve = "IEC 60534-1";
    add(functions, "flow_coefficient", flow_coefficient, {flow, pressure, density}, flow, valve);
    add(functions, "valve_flow", valve_flow, {flow, pressure, density}, flow, valve);
    add(functions, "valve_loss", valve_loss, {flow, flow, density}, pressure, valve);
    add(functions, "loss_coefficient_of_valve", loss_coefficient_of_valve, {flow, length}, number, valve);
}

void add_leak_and_bleed_functions(Functions& functions) {
    const std::string gap = "R. W. Fox, Introduction to Fluid Mechanics, ch. 8";
    add(functions, "annular_leak", gap_leak, {length, length, length, number, pressure, viscosity}, flow,
        gap);
    add(functions, "slot_leak", slot_leak, {length, length, length, pressure, viscosity}, flow, gap);
    add(functions, "leak_exponent", leak_exponent, {flow, pressure, flow, pressure}, number,
        "power law through two tests");
    add(functions, "leak_of_drops", leak_of_drops, {frequency, volume}, flow, "definition");
    add(functions, "drop_volume", hanging_drop, {length, spring_rate, density, number}, volume,
        "T. Tate 1864; factor of W. Harkins and F. Brown 1919");
    add(functions, "time_to_lose", time_to_lose, {volume, flow}, time_, "definition");
    add(functions, "leak_of_creep", leak_of_creep, {speed, area}, flow, "definition");
    add(functions, "leak_of_slip", leak_of_slip, {turning_speed, displacement}, flow, "definition");

    const std::string plug = "plug flow, derived here";
    const std::string laminar = "residence times of laminar pipe flow, derived here";
    add(functions, "hose_volume", hose_volume, {length, length}, volume, "solid geometry");
    add(functions, "sweep_share", sweep_share, {volume, volume}, number, plug);
    add(functions, "bleed_cycles", bleed_cycles, {volume, volume}, number, plug);
    add(functions, "turning_to_flush", turning_to_flush, {volume, displacement, number}, angle, plug);
    add(functions, "old_oil_left", old_oil_left, {number}, number, laminar);
    add(functions, "new_oil_arriving", new_oil_arriving, {number}, number, laminar);
    add(functions, "line_volumes_to_flush", line_volumes_to_flush, {number}, number, laminar);
    add(functions, "bubble_climb", bubble_climb, {length}, speed,
        "R. Davies and G. Taylor 1950; from memory");
}

}  // namespace

void add_oil_functions(Functions& functions) {
    add_fluid_functions(functions);
    add_flow_functions(functions);
    add_leak_and_bleed_functions(functions);
}

}  // namespace hardover::rig::function_table
