// What the water and the propeller do to a drive or rudder, and the ram pressure that answers it. SI
// throughout; speeds in m/s, angles in rad. An order of magnitude (factor 2) unless set by a measured
// pressure: no published steering-torque data of stern drives were found, and a drive leg at speed draws air.
#pragma once

namespace hardover::rig {

inline constexpr double sea_water_density = 1025;   // kg/m^3
inline constexpr double fresh_water_density = 998;  // kg/m^3

// Side force, N: density·A·V^2·C/2; A the wetted side area, m^2.
double side_force(double density, double area, double speed, double coefficient);

// Rudder normal force coefficient 6.13·L/(L + 2.25)·sin(angle) (Fujii and Tsuda); L the aspect ratio. Below
// the stall, about 20 to 25 deg.
double lift_gradient(double aspect_ratio);
double rudder_force_coefficient(double aspect_ratio, double angle);

// Centre of pressure behind the leading edge as a part of the chord: 0.195 + 0.305·sin(angle) (Joessel;
// constants from memory).
double centre_of_pressure(double angle);

// Class-rule rudder force, N: 132·K·A·V^2 with V in knots inside; `factor` K is K1·K2·K3 (IACS UR S10; from
// memory). Speed here in m/s.
double class_rudder_force(double factor, double area, double speed);
// Class-rule torque lever, m: chord·(alpha - balance); alpha 0.33 ahead, 0.66 astern, balance the part of the
// area before the axis. A negative lever means over-balanced.
double class_torque_lever(double chord, double alpha, double balance);

// A force or torque of the water at another speed: it grows with speed squared.
double at_speed(double measured, double measured_speed, double speed);

// Torque of a shaft from its power, N·m; speed in rad/s. And the part of a propeller's torque that steers a
// drive whose shaft is trimmed out of square to the steering axis by an angle.
double shaft_torque(double power, double speed);
double steering_part_of_shaft_torque(double torque, double trim);

// Ram force, N, and pressure, Pa, that hold a torque at a moment arm; NaN at a moment arm of zero.
double ram_force_for_torque(double torque, double moment_arm);
double ram_pressure_for_torque(double torque, double moment_arm, double working_area);

}  // namespace hardover::rig
