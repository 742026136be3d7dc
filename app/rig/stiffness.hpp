// How much oil, trapped air and hoses give under pressure, and what heat does to oil that is shut in.
// SI throughout. Pressures are gauge unless called absolute: mixing the two is the usual mistake here.
#pragma once

namespace hardover::rig {

inline constexpr double atmosphere = 101325;  // Pa absolute, standard

// Change of a liquid's volume, m^3, under a rise in pressure: -V·dp/bulk modulus.
double compression(double volume, double pressure_rise, double bulk_modulus);

// Pressure rise of shut-in oil that is warmed: bulk modulus · expansion · temperature rise, Pa. About 11 bar
// per K for mineral oil: why a trapped volume needs a thermal relief.
double thermal_pressure_rise(double bulk_modulus, double expansion, double temperature_rise);

// Ideal gas: volume after the absolute pressure went from one to another; `exponent` n = 1 slow (Boyle), 1.4
// fast. And the absolute pressure after the volume changed.
double gas_volume(double volume, double from_absolute, double to_absolute, double exponent);
double gas_pressure(double absolute, double from_volume, double to_volume, double exponent);
// Bulk modulus of a gas, Pa: n times its absolute pressure.
double gas_bulk_modulus(double absolute, double exponent);

// Gas volume, m^3 at the pre-charge, that an accumulator needs to deliver a volume between two pressures
// (J. Sullivan, Fluid Power, ch. 12). All pressures absolute. NaN unless greatest > least > 0.
struct Accumulator {
    double delivered = 0;
    double pre_charge = 0;
    double greatest = 0;
    double least = 0;
    double exponent = 1;
};
double accumulator_volume(const Accumulator& accumulator);

// Oil with bubbles in it. `air_share` is the air's volume at one atmosphere over the liquid's volume.
struct BubblyOil {
    double liquid_bulk_modulus = 0;  // Pa, 1.4e9 to 1.7e9 for mineral oil
    double air_share = 0;
    double exponent = 1;  // 1 slow, 1.4 fast
};
// Bulk modulus of the mixture at a gauge pressure, Pa: liquid and gas in series, no air dissolving. Good
// below about a tenth of air at atmospheric pressure.
double bulk_modulus_with_air(const BubblyOil& oil, double pressure);

// A line full of such oil, in the older static form (E. O. Doebelin, System Dynamics, ch. 4):
// 1/B = 1/liquid + D/(t·E) + share/gas. Here the share of air is of the whole volume AT the working pressure.
struct SoftLine {
    double liquid_bulk_modulus = 0;
    double gas_bulk_modulus = 0;
    double air_share_at_pressure = 0;
    double bore_over_wall = 0;   // D/t
    double wall_elasticity = 0;  // Pa, Young's modulus of the wall
};
double line_bulk_modulus(const SoftLine& line);

// What is left of an air pocket of `free_volume` at one atmosphere under a gauge pressure, m^3, slowly.
double trapped_air_volume(double free_volume, double pressure);
// How far a wheel turns for nothing, rad, to squeeze that pocket; displacement of the helm in m^3/rad.
double wheel_lost_to_air(double free_volume, double pressure, double displacement);
// The other way round: the free air that a lost wheel angle at a pressure speaks of, m^3. NaN unless the
// pressure is above zero.
double air_from_lost_wheel(double lost_angle, double pressure, double displacement);

// Oil taken up by a swelling hose, m^3: compliance (m^3 per m of hose and Pa) · length · pressure.
double hose_swelling(double compliance, double length, double pressure);

// Yardstick for a hose's compliance, m^3 per m at 1000 psi: greatest expansion allowed of a brake hose, 49
// CFR 571.106 table I, by bore; a hose wider than 1/4 in counts as 1/4 in. The figures are from memory:
// verify before use. NaN for a bore not above zero.
double brake_hose_expansion_limit(double bore);

}  // namespace hardover::rig
