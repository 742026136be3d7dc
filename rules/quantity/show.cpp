// Shows quantities the way the trade writes them: inches in sixteenths, the rest in a few figures.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

#include "rules/quantity/quantity.hpp"
#include "rules/quantity/units.hpp"

namespace hardover {
namespace {

constexpr double inch = 0.0254;
constexpr double most_inches_in_sixteenths = 1e6;

std::string decimals(double number, int places) {
    std::array<char, 64> text{};
    const auto [end, problem] =
        std::to_chars(text.data(), text.data() + text.size(), number, std::chars_format::fixed, places);
    if (problem != std::errc()) return "";
    std::string shown(text.data(), end);
    if (shown.find('.') != std::string::npos) {
        shown.erase(shown.find_last_not_of('0') + 1);
        if (shown.back() == '.') shown.pop_back();
    }
    return shown == "-0" ? "0" : shown;
}

// At most `digits` significant figures, without zeros at the end of a decimal fraction. Powers of ten only
// where a number is beyond anything measured on a boat.
std::string figures(double number, int digits) {
    if (number == 0) return "0";
    digits = std::clamp(digits, 1, 15);
    std::array<char, 64> text{};
    const auto [end, problem] = std::to_chars(text.data(), text.data() + text.size(), number,
                                              std::chars_format::scientific, digits - 1);
    if (problem != std::errc()) return "";
    double rounded = 0;
    std::from_chars(text.data(), end, rounded);
    const int magnitude = static_cast<int>(std::floor(std::log10(std::abs(rounded)) + 1e-12));
    if (magnitude < -6 || magnitude > 12) return std::string(text.data(), end);
    return decimals(rounded, std::max(0, digits - 1 - magnitude));
}

// "4 1/2", "1/4", "12", "0" of a count of 1/`parts`, not negative.
std::string mixed_number(long long count, long long parts) {
    const long long whole = count / parts;
    const long long rest = count % parts;
    if (rest == 0) return std::to_string(whole);
    const long long common = std::gcd(rest, parts);
    const std::string fraction = std::to_string(rest / common) + "/" + std::to_string(parts / common);
    return whole == 0 ? fraction : std::to_string(whole) + " " + fraction;
}

// A spread that sixteenths can carry: from half of a thirty-second on.
bool fits_sixteenths(double value, double spread) {
    return std::abs(value) < most_inches_in_sixteenths * inch && spread < most_inches_in_sixteenths * inch &&
           (spread == 0 || spread >= inch / 64 * (1 - 1e-9));
}

// Not less than 1/32 in, so that a stated spread is never shown as none.
std::string inch_spread(double spread) {
    const double inches = spread / inch;
    const bool fine = inches < 3.0 / 64;
    return mixed_number(fine ? 1 : std::llround(inches * 16), fine ? 32 : 16) + " in";
}

std::string inches_and_feet(double value, bool in_feet) {
    long long sixteenths = std::llround(value / inch * 16);
    const std::string sign = sixteenths < 0 ? "-" : "";
    sixteenths = std::llabs(sixteenths);
    if (!in_feet) return sign + mixed_number(sixteenths, 16) + " in";
    const long long feet = sixteenths / (12 * 16);
    const long long rest = sixteenths % (12 * 16);
    if (rest == 0) return sign + std::to_string(feet) + " ft";
    return sign + (feet == 0 ? "" : std::to_string(feet) + " ft ") + mixed_number(rest, 16) + " in";
}

// The number with its unit: "12°", "68 °F", "5%", "1 turn", "2 turns", "3" for a count.
std::string with_unit(const std::string& number, const std::string& unit) {
    if (unit == "count") return number;
    if (unit == "%") return number + "%";
    if (unit == "deg") return number + "°";
    if (unit == "F" || unit == "C") return number + " °" + unit;
    std::string name = unit;
    for (const std::string_view several : {"turns", "drops"}) {
        if (number == "1" && name.starts_with(several)) name.erase(several.size() - 1, 1);
    }
    return number + " " + name;
}

std::string in_figures(const Quantity& quantity, const Unit& unit, int digits) {
    double number = in_unit(quantity, unit);
    // Taking the offset of a temperature off leaves a trace of rounding where nothing should be.
    if (unit.offset != 0 && std::abs(number) < 1e-9) number = 0;
    const std::string value = with_unit(figures(number, digits), unit.name);
    if (quantity.spread == 0) return value;
    return value + " ± " + with_unit(figures(quantity.spread / unit.factor, 2), unit.name);
}

// An inch length with a spread finer than sixteenths can carry: as many places as the spread has.
std::string in_decimal_inches(const Quantity& quantity) {
    const double spread = quantity.spread / inch;
    const int places = std::clamp(static_cast<int>(std::ceil(-std::log10(spread))) + 1, 0, 9);
    return decimals(quantity.value / inch, places) + " in ± " + figures(spread, 2) + " in";
}

}  // namespace

std::string show(const Quantity& quantity, const Unit& unit, UnitSystem system, int digits) {
    if (!std::isfinite(quantity.value) || !std::isfinite(quantity.spread)) return "no value";
    if (system == UnitSystem::metric) return in_figures(quantity, shown_unit(unit, system), digits);
    const bool in_feet = unit.name == "ft";
    if (unit.name != "in" && !in_feet) return in_figures(quantity, unit, digits);
    if (fits_sixteenths(quantity.value, quantity.spread)) {
        const std::string value = inches_and_feet(quantity.value, in_feet);
        return quantity.spread == 0 ? value : value + " ± " + inch_spread(quantity.spread);
    }
    if (std::abs(quantity.value) < most_inches_in_sixteenths * inch && quantity.spread < inch) {
        return in_decimal_inches(quantity);
    }
    return in_figures(quantity, unit, digits);
}

Unit shown_unit(const Unit& unit, UnitSystem system) {
    return system == UnitSystem::metric ? quantity_detail::metric_partner(unit) : unit;
}

double in_unit(const Quantity& quantity, const Unit& unit) {
    return (quantity.value - unit.offset) / unit.factor;
}

Quantity quantity_in(double number, const Unit& unit) {
    return {number * unit.factor + unit.offset, unit.dimension, 0};
}

}  // namespace hardover
