// Hydraulic oil by itself: viscosity against temperature, viscosity index, grades, density and expansion.
// SI throughout: m^2/s (1 cSt = 1e-6), Pa·s, K, kg/m^3. Knows no boat and no flow.
#pragma once

#include <string>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::rig {

struct ViscosityPoint {
    double temperature = 0;          // K
    double kinematic_viscosity = 0;  // m^2/s
};

// Walther's line, ASTM D341: log10 log10 Z = a - b·log10(T), T in K, Z = nu + 0.7 with nu in cSt; below 2 cSt
// Z = nu + 0.7 + exp(-1.47 - 1.84·nu - 0.51·nu^2).
struct WaltherLine {
    double a = 0;
    double b = 0;
};

// The line through two measured points. Error when the temperatures are equal or not above zero, a viscosity
// is not above 0.3 cSt, or the hotter oil would be the thicker.
Result<WaltherLine> walther_line(const ViscosityPoint& one, const ViscosityPoint& two);

// Kinematic viscosity on that line, m^2/s. Trusted for mineral oil from about 0 C to 150 C: in the cold a
// multigrade oil departs from the line, so below `coldest_on_the_line` the number is a guess.
double viscosity_at(const WaltherLine& line, double temperature);
inline constexpr double coldest_on_the_line = 273.15;  // K
inline constexpr double hottest_on_the_line = 423.15;  // K

// The same in one go from an oil's data sheet (its viscosities at 40 C and 100 C), refusing with NaN whatever
// walther_line refuses and every temperature off the trusted part of the line.
double oil_viscosity(double at_40, double at_100, double temperature);

// Dynamic viscosity, Pa·s.
double dynamic_viscosity(double kinematic_viscosity, double density);

// Viscosity index from the viscosities at 40 C and 100 C, ASTM D2270 procedures A and B. The reference oils
// L and H come from the standard's equations for each range of viscosity (coefficients from memory, checked
// against published worked examples; within 0.15 of its table). NaN below 2 cSt at 100 C.
double viscosity_index(double at_40, double at_100);

// Saybolt Universal seconds to m^2/s: 0.226 t - 195/t up to 100 s, 0.220 t - 135/t above; within 1 % of the
// Hydraulic Institute's table from 60 to 500 s (A. Esposito, ch. 2). NaN below 32 s.
double viscosity_of_saybolt(double seconds);
double saybolt_of_viscosity(double kinematic_viscosity);

// ISO 3448 grade: middle viscosity at 40 C, limits 10 % either side.
struct OilGrade {
    std::string name;   // "VG 32"
    double middle = 0;  // m^2/s
    double least = 0;
    double greatest = 0;
};
const std::vector<OilGrade>& oil_grades();
// The grade an oil belongs to; nullptr between grades or outside VG 10 to VG 68.
const OilGrade* grade_of(double viscosity_at_40);

// API MPMS 11.1 (ASTM D1250) for lubricating oils, from the density at 15 C.
double expansion_at_15(double density_at_15);                        // 1/K
double volume_correction(double density_at_15, double temperature);  // volume at 15 C over volume now
double density_at(double density_at_15, double temperature);         // kg/m^3
// What a volume of oil becomes from one temperature to another, m^3.
double expanded_volume(double volume, double density_at_15, double from_temperature, double to_temperature);

}  // namespace hardover::rig
