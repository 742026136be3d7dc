// Is it square? Skew from two diagonals with its uncertainty, and how single tolerances add up.
// Lengths in m, angles in rad. Knows measuring, nothing of boats.
#pragma once

#include <vector>

namespace hardover::rig {

// Diagonal of a true rectangle.
double rectangle_diagonal(double length, double width);

// Two diagonals measured across a four-sided layout whose opposite sides are equal (measure those first:
// equal diagonals alone also fit a layout that narrows at one end).
struct Diagonals {
    double first = 0;
    double second = 0;
    double side_a = 0;
    double side_b = 0;
};

// How far the corners lean from square: asin((d1^2 - d2^2)/(4ab)), positive when the first is longer.
// NaN when a length is not above zero or no such four-sided shape exists.
double skew(const Diagonals& diagonals);

// Standard uncertainty of that skew when each length has its own, to first order (GUM, JCGM 100:2008, 5.1.2).
double skew_uncertainty(const Diagonals& measured, const Diagonals& standard_uncertainties);

// Standard uncertainty of a value that lies anywhere within ± half_width with equal chance:
// half_width/sqrt(3) (GUM 4.3.7).
double standard_uncertainty_of_limits(double half_width);

// The same of a scale read to its nearest mark, R/sqrt(12).
double standard_uncertainty_of_marks(double mark_spacing);

// Stack-up of independent contributions: all at their worst the same way; and the root of the sum of squares.
double worst_case(const std::vector<double>& contributions);
double root_sum_square(const std::vector<double>& contributions);

}  // namespace hardover::rig
