// Leaks: through clearances and damaged seats, counted in drops, or seen as creep. SI throughout.
// Knows single gaps, not the circuit they stand in.
#pragma once

namespace hardover::rig {

// A shaft or piston in its bore. `clearance` is RADIAL, half of what bore and shaft differ; twice the
// clearance leaks eight times as much.
struct AnnularGap {
    double diameter = 0;
    double clearance = 0;
    double length = 0;
    double eccentricity = 0;  // 0 concentric, 1 touching the wall (2.5 times the leak)
};
// Laminar flow through it, m^3/s: pi·D·c^3·dp/(12·mu·L)·(1 + 1.5·e^2); viscosity in Pa·s (R. W. Fox,
// Introduction to Fluid Mechanics, ch. 8). NaN for a size or viscosity not above zero.
double annular_leak(const AnnularGap& gap, double pressure, double viscosity);

// Laminar flow through a flat slot, m^3/s: w·h^3·dp/(12·mu·L).
double slot_leak(double width, double height, double length, double pressure, double viscosity);

// Exponent n in leak ~ pressure^n from two tests: about 1 for worn clearances, about 1/2 for a damaged seat
// or a hole. NaN unless all are above zero and the pressures differ.
double leak_exponent(double flow_one, double pressure_one, double flow_two, double pressure_two);

// A drop of oil by pharmaceutical convention: 20 to the mL; real drops have 0.02 to 0.07 mL.
inline constexpr double usual_drop = 0.05e-6;  // m^3

// Leak, m^3/s, from drops per second.
double leak_of_drops(double drops_per_second, double drop_volume);

// Volume of a drop that falls from a tip, m^3: 2·pi·r·sigma·F/(rho·g) (Tate, with the factor of Harkins and
// Brown, F about 0.6 to 0.75).
struct HangingDrop {
    double tip_radius = 0;
    double surface_tension = 0;  // N/m, oil about 0.032 (from memory)
    double density = 0;
    double factor = 0.65;
};
double drop_volume(const HangingDrop& drop);

// Time until a volume is lost at a leak, s. NaN unless the leak is above zero.
double time_to_lose(double volume, double leak);

// Leak past a ram's piston seen as creep of the rod under load, m^3/s; creep in m/s, area the working area.
double leak_of_creep(double creep, double working_area);
// Slip past a helm seen as wheel turning with the ram held, m^3/s; rad/s and m^3/rad.
double leak_of_slip(double wheel_speed, double displacement);

}  // namespace hardover::rig
