// A number with a unit as people in this trade write it: read it, convert it, show it, with its spread.
// Knows units and nothing of boats. Everything inside is SI (metre, kilogram, second, kelvin, radian).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover {

// Exponents of the base dimensions. Angle is kept as a dimension of its own, so that 12 deg is never taken
// for 12 mm and a helm pump's volume per turn times turns gives a volume.
struct Dimension {
    int length = 0;
    int mass = 0;
    int time = 0;
    int temperature = 0;
    int angle = 0;

    friend bool operator==(const Dimension&, const Dimension&) = default;
    bool is_number() const { return *this == Dimension{}; }
};

Dimension operator*(const Dimension& a, const Dimension& b);
Dimension operator/(const Dimension& a, const Dimension& b);
Dimension power(const Dimension& a, int exponent);

// "length", "pressure", "volume per turn"; dimensions without a trade name as "m^2·kg/s".
std::string name_of(const Dimension& dimension);

// A value in SI with its spread. `spread` is what the trade writes after ±: the half width in which the true
// value lies about 95 times in 100, taken as two standard deviations (GUM, JCGM 100:2008, coverage factor 2).
// 0 means the spread is not known or not stated.
struct Quantity {
    double value = 0;
    Dimension dimension;
    double spread = 0;

    double standard_deviation() const { return spread / 2; }
    friend bool operator==(const Quantity&, const Quantity&) = default;
};

// A unit by its written name: its dimension and `SI = number * factor + offset`.
struct Unit {
    std::string
        name;  // "in", "lbf·ft", "in^3/turn"; shown so but for "deg" (12°), "F" and "C" (68 °F), "count"
    Dimension dimension;
    double factor = 1;
    double offset = 0;  // only the plain temperatures F and C have one
};

// Finds a unit by any spelling it is written in ("in", "inch", "inches", "\"", "lbf*ft", "ft-lb",
// "in^3/turn"). Error: unknown unit, with the nearest known one.
Result<Unit> find_unit(std::string_view text);

// The names of all simple units, for messages and for the check against another program's factors.
std::vector<std::string> unit_names();

// A low and a high end, as in "20-25 lbf·ft". A single value has both ends equal.
struct QuantityRange {
    Quantity low;
    Quantity high;
};

// Reads "17 3/4 in", "17-3/4\"", "4.5in", "450 mm", "12°", "36 in ± 1/16 in" (also "+/-"), "2.5 turns", "68
// F", "3", "3 ft 4 in", "1 min 30 s", "100 psi ± 5%". A temperature is a point on the thermometer, its spread
// a difference. `fallback_unit`, if not empty, is taken when the text is a bare number. A decimal comma is
// refused with advice. Errors name the letter at which reading stopped and what was expected there.
Result<Quantity> read_quantity(std::string_view text, std::string_view fallback_unit = "");

// The same for a range ("20-25 lbf·ft", "20 to 25 lbf·ft"); a single value gives both ends equal.
// "17-3/4 in" is the mixed number seventeen and three quarters, never a range.
Result<QuantityRange> read_range(std::string_view text, std::string_view fallback_unit = "");

// As read_quantity, and refuses a wrong dimension naming what was expected ("expected a length such as 4 1/2
// in"). A bare number is refused too, unless a plain number is expected: no unit is guessed.
Result<Quantity> read_quantity_of(std::string_view text, const Unit& expected);

enum class UnitSystem { us, metric };

// Shows a quantity in `unit`: US lengths to the nearest 1/16 in ("4 1/2 in", "3 ft 4 in"), others with at
// most `digits` significant figures; the spread, if any, follows as " ± 1/16 in". A spread finer than 1/64 in
// turns inches into decimals ("0.512 in ± 0.002 in"). In the metric system the unit's metric partner is used
// (in -> mm, psi -> bar, lbf -> N, ...). "no value" for what is not finite. read_quantity() reads all else
// back.
std::string show(const Quantity& quantity, const Unit& unit, UnitSystem system = UnitSystem::us,
                 int digits = 3);

// The unit a quantity of `unit` is shown in.
Unit shown_unit(const Unit& unit, UnitSystem system);

// The number alone in `unit`, for JSON and for plots.
double in_unit(const Quantity& quantity, const Unit& unit);
Quantity quantity_in(double number, const Unit& unit);

}  // namespace hardover
