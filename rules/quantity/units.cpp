// The simple units. Factors: NIST Special Publication 811 (2008), Appendix B; those marked exact there are
// exact here, the others are built from exact ones so that no rounding of the printed factor enters.
#include "rules/quantity/units.hpp"

#include <numbers>

namespace hardover::quantity_detail {
namespace {

constexpr Dimension number{};
constexpr Dimension length{.length = 1};
constexpr Dimension volume{.length = 3};
constexpr Dimension mass{.mass = 1};
constexpr Dimension time{.time = 1};
constexpr Dimension temperature{.temperature = 1};
constexpr Dimension angle{.angle = 1};
constexpr Dimension speed{.length = 1, .time = -1};
constexpr Dimension force{.length = 1, .mass = 1, .time = -2};
constexpr Dimension pressure{.length = -1, .mass = 1, .time = -2};
constexpr Dimension power_{.length = 2, .mass = 1, .time = -3};
constexpr Dimension turning_speed{.time = -1, .angle = 1};
constexpr Dimension kinematic_viscosity{.length = 2, .time = -1};
constexpr Dimension dynamic_viscosity{.length = -1, .mass = 1, .time = -1};

// SP 811 B.8 and B.9, exact.
constexpr double inch = 0.0254;
constexpr double foot = 12 * inch;
constexpr double yard = 3 * foot;
constexpr double pound = 0.45359237;
constexpr double standard_gravity = 9.80665;
constexpr double nautical_mile = 1852;
constexpr double mile = 5280 * foot;
constexpr double gallon = 231 * inch * inch * inch;  // US gallon: 231 in^3, SP 811 B.8
constexpr double pound_force = pound * standard_gravity;
// Conventional mercury of 13 595.1 kg/m^3 under standard gravity: SP 811 B.8 "inch of mercury,
// conventional", printed as 3.386 389 E+03 Pa.
constexpr double inch_of_mercury = inch * 13595.1 * standard_gravity;
constexpr double turn = 2 * std::numbers::pi;
// Fahrenheit: K = (F + 459.67)/1.8, Celsius: K = C + 273.15, SP 811 B.8 (exact).
constexpr double fahrenheit = 5.0 / 9.0;

std::vector<SimpleUnit> table() {
    return {
        // Length: exact.
        {"in", "in", length, inch, 0, "mm", {"inch", "inches", "\"", "''"}},
        {"ft", "ft", length, foot, 0, "m", {"foot", "feet", "'"}},
        {"yd", "yd", length, yard, 0, "m", {"yard", "yards"}},
        {"mm", "mm", length, 1e-3, 0, "mm", {"millimeter", "millimeters", "millimetre", "millimetres"}},
        {"cm", "cm", length, 1e-2, 0, "cm", {"centimeter", "centimeters", "centimetre", "centimetres"}},
        {"m", "m", length, 1, 0, "m", {"meter", "meters", "metre", "metres"}},
        {"km", "km", length, 1e3, 0, "km", {}},
        // Angle: a turn is 2 pi rad, a degree pi/180 rad.
        {"deg", "deg", angle, std::numbers::pi / 180, 0, "deg", {"degree", "degrees"}},
        {"rad", "rad", angle, 1, 0, "rad", {"radian", "radians"}},
        {"turn", "turns", angle, turn, 0, "turn", {"rev", "revs", "revolution", "revolutions"}},
        // Force: pound-force and kilogram-force from the exact pound and standard gravity.
        {"lbf", "lbf", force, pound_force, 0, "N", {"lbsf", "pound-force", "pounds-force"}},
        {"N", "N", force, 1, 0, "N", {"newton", "newtons"}},
        {"kN", "kN", force, 1e3, 0, "kN", {}},
        {"kgf", "kgf", force, standard_gravity, 0, "N", {}},
        // Pressure: psi is pound-force per square inch.
        {"psi", "psi", pressure, pound_force / (inch * inch), 0, "bar", {"lb/in^2", "psig"}},
        {"bar", "bar", pressure, 1e5, 0, "bar", {"bars"}},
        {"Pa", "Pa", pressure, 1, 0, "Pa", {}},
        {"kPa", "kPa", pressure, 1e3, 0, "kPa", {}},
        {"MPa", "MPa", pressure, 1e6, 0, "MPa", {}},
        {"inHg", "inHg", pressure, inch_of_mercury, 0, "kPa", {"in Hg"}},
        // Volume: US liquid measure, parts of the gallon of 231 in^3. A drop is no standard unit: 0.05 mL
        // (twenty to the millilitre) is common practice.
        {"L", "L", volume, 1e-3, 0, "L", {"liter", "liters", "litre", "litres"}},
        {"mL", "mL", volume, 1e-6, 0, "mL", {"cc", "milliliter", "milliliters", "millilitre", "millilitres"}},
        {"gal", "gal", volume, gallon, 0, "L", {"gallon", "gallons", "US gal"}},
        {"qt", "qt", volume, gallon / 4, 0, "L", {"quart", "quarts", "US qt"}},
        {"pt", "pt", volume, gallon / 8, 0, "L", {"pint", "pints", "US pt"}},
        {"floz",
         "floz",
         volume,
         gallon / 128,
         0,
         "mL",
         {"fl oz", "fl. oz", "fl. oz.", "fluid ounce", "fluid ounces", "US fl oz"}},
        {"drop", "drops", volume, 0.05e-6, 0, "drop", {}},
        // Mass: the pound is exact.
        {"lb", "lb", mass, pound, 0, "kg", {"lbs", "pound", "pounds", "lbm"}},
        {"oz", "oz", mass, pound / 16, 0, "g", {"ounce", "ounces"}},
        {"g", "g", mass, 1e-3, 0, "g", {"gram", "grams"}},
        {"kg", "kg", mass, 1, 0, "kg", {"kilogram", "kilograms"}},
        // Time: exact.
        {"s", "s", time, 1, 0, "s", {"sec", "secs", "second", "seconds"}},
        {"min", "min", time, 60, 0, "min", {"mins", "minute", "minutes"}},
        {"h", "h", time, 3600, 0, "h", {"hr", "hrs", "hour", "hours"}},
        {"d", "d", time, 86400, 0, "d", {"day", "days"}},
        // Speed: exact. Knots stay knots in the metric system, as on every chart.
        {"mph", "mph", speed, mile / 3600, 0, "km/h", {}},
        {"kn", "kn", speed, nautical_mile / 3600, 0, "kn", {"kt", "kts", "knot", "knots"}},
        {"rpm", "rpm", turning_speed, turn / 60, 0, "rpm", {"r/min"}},
        // Temperature, as read off a thermometer. A difference of temperatures is given in K.
        {"F", "F", temperature, fahrenheit, 459.67 * fahrenheit, "C", {"degF", "deg F", "Fahrenheit"}},
        {"C", "C", temperature, 1, 273.15, "C", {"degC", "deg C", "Celsius"}},
        {"K", "K", temperature, 1, 0, "K", {"kelvin"}},
        // Viscosity: exact.
        {"cSt", "cSt", kinematic_viscosity, 1e-6, 0, "cSt", {"centistokes", "centistoke"}},
        {"cP", "cP", dynamic_viscosity, 1e-3, 0, "cP", {"centipoise", "mPa*s"}},
        // Power: the mechanical horsepower of 550 ft·lbf/s.
        {"W", "W", power_, 1, 0, "W", {"watt", "watts"}},
        {"kW", "kW", power_, 1e3, 0, "kW", {"kilowatt", "kilowatts"}},
        {"hp", "hp", power_, 550 * foot * pound_force, 0, "kW", {"horsepower"}},
        // Plain numbers.
        {"%", "%", number, 0.01, 0, "%", {"percent", "pct"}},
        {"count", "count", number, 1, 0, "count", {}},
    };
}

}  // namespace

const std::vector<SimpleUnit>& simple_units() {
    static const std::vector<SimpleUnit> units = table();
    return units;
}

}  // namespace hardover::quantity_detail
