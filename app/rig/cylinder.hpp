// Areas, volumes, forces and speeds of a hydraulic cylinder and the pump that moves it. SI throughout; a
// pump's displacement is in m^3 per radian. Knows geometry and pressure only. Formulas: any fluid-power text,
// e.g. A. Esposito, Fluid Power with Applications, ch. 6.
#pragma once

namespace hardover::rig {

// Area of a full bore, m^2, from its diameter in m.
double circle_area(double diameter);

// Working area on a side that the rod passes through, m^2. `rod` = 0 gives the cap side of a single-rod ram.
// Diameters in m; NaN when a diameter is negative or the rod is not smaller than the bore.
double ram_area(double bore, double rod);

// Oil moved by a whole stroke on that side, m^3. Lengths in m.
double ram_volume(double bore, double rod, double stroke);

// Force of one side at a pressure, N; seal friction not taken off. Pressure in Pa.
double ram_force(double pressure, double bore, double rod);

// Piston speed at a flow, m/s. Flow in m^3/s.
double ram_speed(double flow, double bore, double rod);

// Pressure that a side needs for a force, Pa.
double ram_pressure(double force, double bore, double rod);

// Diameter of a circle of that area, m; NaN below zero. With force / pressure it is the bore for a load.
double circle_diameter(double area);

// Extending force over retracting force, and retracting speed over extending speed, of a single-rod ram:
// bore^2/(bore^2 - rod^2). A balanced ram (rod on both sides) has 1.
double unbalanced_ratio(double bore, double rod);

// How far a pump must be turned, rad, to move a volume. `displacement` in m^3/rad, `efficiency` volumetric,
// 0 to 1 (1: no slip). NaN outside. A wheel's turns are this over 2 pi.
double pump_turning(double volume, double displacement, double efficiency);

// Flow of a pump without slip, m^3/s; speed in rad/s. Delivered over that is its volumetric efficiency.
double pump_flow(double displacement, double speed);
double volumetric_efficiency(double delivered, double displacement, double speed);

// Displacement of an axial piston pump, m^3/rad: pistons · stroke · bore area / one turn (A. Esposito, ch.
// 5).
double piston_pump_displacement(double pistons, double piston_bore, double piston_stroke);
// Stroke of its pistons, m, on a circle of that diameter before a plate tilted by `angle` rad.
double swash_plate_stroke(double circle, double angle);

// Torque to turn a pump against a pressure, N·m, and the force at the rim of its wheel, N.
// `efficiency` mechanical, 0 to 1; NaN outside.
double pump_torque(double pressure, double displacement, double efficiency);
double wheel_rim_force(double pressure, double displacement, double wheel_diameter, double efficiency);

// Power in a flow under pressure, W.
double hydraulic_power(double pressure, double flow);

// Pressure, Pa, at which a spring pressed in by `compression` m lets a poppet go: rate · compression / area.
// With the spring's own pre-load: cracking; with the full lift added: full flow (A. Esposito, ch. 8).
double relief_pressure(double spring_rate, double compression, double poppet_area);

// Least relief setting, Pa, and least relief flow, m^3/s: 1.25 times the greatest working pressure and 1.1
// times the pump's flow (class rules for special service craft, Pt 14 Ch 1 5.2.4).
double least_relief_setting(double working_pressure);
double least_relief_flow(double pump_flow);

}  // namespace hardover::rig
