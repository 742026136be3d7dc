// Unit factors against published tables, and the many ways a unit is written.
#include <cmath>

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

Unit unit(const std::string& name) {
    const Result<Unit> found = find_unit(name);
    REQUIRE_OK(found);
    return found.value();
}

struct Factor {
    std::string unit;
    double factor;  // SI, as printed
};

}  // namespace

TEST_CASE("Factors marked exact in NIST SP 811 are exact here") {
    // NIST Special Publication 811 (2008), Appendix B.8, factors in bold.
    const std::vector<Factor> printed = {
        {"in", 2.54e-2}, {"ft", 3.048e-1}, {"yd", 9.144e-1},   {"in^2", 6.4516e-4}, {"mph", 4.4704e-1},
        {"bar", 1.0e5},  {"kgf", 9.80665}, {"min", 6.0e1},     {"h", 3.6e3},        {"d", 8.64e4},
        {"cSt", 1.0e-6}, {"cP", 1.0e-3},   {"ft/s", 3.048e-1}, {"L", 1.0e-3},       {"in/s", 2.54e-2},
    };
    for (const Factor& line : printed) {
        INFO(line.unit);
        CHECK(unit(line.unit).factor == Approx(line.factor).epsilon(1e-15));
    }
}

TEST_CASE("Rounded factors of NIST SP 811 are met to all their seven figures") {
    // NIST Special Publication 811 (2008), Appendix B.8.
    const std::vector<Factor> printed = {
        {"deg", 1.745329e-2},  {"turn", 6.283185},      {"rpm", 1.047198e-1},     {"lbf", 4.448222},
        {"lbf·ft", 1.355818},  {"lbf·in", 1.129848e-1}, {"lbf/in", 1.751268e2},   {"psi", 6.894757e3},
        {"inHg", 3.386389e3},  {"gal", 3.785412e-3},    {"qt", 9.463529e-4},      {"pt", 4.731765e-4},
        {"floz", 2.957353e-5}, {"in^3", 1.638706e-5},   {"gal/min", 6.309020e-5}, {"lb", 4.535924e-1},
        {"oz", 2.834952e-2},   {"kn", 5.144444e-1},     {"hp", 7.456999e2},
    };
    for (const Factor& line : printed) {
        INFO(line.unit);
        CHECK(unit(line.unit).factor == Approx(line.factor).epsilon(5e-7));
    }
}

TEST_CASE("Temperatures convert by the formulas of NIST SP 811") {
    // NIST SP 811 (2008), Appendix B.8: t/C = (t/F - 32)/1.8; T/K = t/C + 273.15.
    const auto celsius = [](double fahrenheit) {
        return in_unit(quantity_in(fahrenheit, unit("F")), unit("C"));
    };
    CHECK(celsius(32) == Approx(0).margin(1e-9));
    CHECK(celsius(212) == Approx(100));
    CHECK(celsius(68) == Approx(20));
    // A. Esposito, Fluid Power with Applications, example 2.10, p. 56.
    CHECK(celsius(-40) == Approx(-40));
    CHECK(quantity_in(20, unit("C")).value == Approx(293.15));
}

TEST_CASE("A pressure in psi is a pressure in kPa") {
    // 46 CFR 130.140 prints 12,411 kPa (1,800 psi).
    CHECK(in_unit(quantity_in(1800, unit("psi")), unit("kPa")) == Approx(12411).margin(0.6));
}

TEST_CASE("A drop is a twentieth of a millilitre") {
    CHECK(in_unit(quantity_in(20, unit("drop")), unit("mL")) == Approx(1));  // common practice
}

TEST_CASE("A unit is found by every spelling the trade uses") {
    const std::vector<std::pair<std::string, std::vector<std::string>>> spellings = {
        {"in", {"in", "inch", "inches", "\"", "″", "IN", "Inches", " in "}},
        {"ft", {"ft", "foot", "feet", "'", "′"}},
        {"deg", {"deg", "°", "degrees"}},
        {"turns", {"turn", "turns", "rev", "revolutions"}},
        {"lbf·ft", {"lbf·ft", "lbf*ft", "lbf-ft", "lb-ft", "ft-lb", "ft·lbf", "ft lb", "lb·ft", "FT-LB"}},
        {"lbf·in", {"lbf·in", "in-lb", "in·lbf", "lb-in"}},
        {"N·m", {"N·m", "N*m", "N-m", "Nm", "m·N"}},
        {"psi", {"psi", "PSI", "lb/in²"}},
        {"in^3", {"in^3", "in³", "in3", "cu in", "cubic inches"}},
        {"cm^3", {"cm^3", "cm³", "cm3"}},
        {"mL", {"mL", "ml", "cc", "ML"}},
        {"L", {"L", "l", "litre", "liters"}},
        {"floz", {"floz", "fl oz", "fluid ounces", "FL OZ"}},
        {"gal/min", {"gal/min", "gpm", "GPM", "gallons per minute", "gal / min"}},
        {"drops/min", {"drop/min", "drops/min", "drops per minute"}},
        {"in^3/turn", {"in^3/turn", "in³/turn", "in^3/rev", "cu in per turn"}},
        {"F", {"F", "°F", "degF", "deg F"}},
        {"kn", {"kn", "knots", "kts"}},
        {"kN", {"kN"}},
        {"%", {"%", "percent"}},
        {"m/s", {"m/s"}},
    };
    for (const auto& [name, texts] : spellings) {
        for (const std::string& text : texts) {
            INFO(text);
            CHECK(unit(text).name == name);
        }
    }
}

TEST_CASE("Every unit is found again by the name it is shown with") {
    std::vector<std::string> names = unit_names();
    for (const char* compound : {"in^3/turn", "lbf·ft", "gal/min", "drops/min", "lbf/in", "in^2", "m/s^2"}) {
        names.emplace_back(compound);
    }
    CHECK(names.size() > 40);
    for (const std::string& name : names) {
        INFO(name);
        const Unit once = unit(name);
        const Unit again = unit(once.name);
        CHECK(again.name == once.name);
        CHECK(again.factor == once.factor);
        CHECK(again.dimension == once.dimension);
    }
}

TEST_CASE("An unknown unit is refused with the nearest one") {
    CHECK(find_unit("inc").error().text() == "unknown unit 'inc' (did you mean 'inch'?)");
    CHECK(find_unit("gallns").error().text() == "unknown unit 'gallns' (did you mean 'gallons'?)");
    CHECK(find_unit("KN").error().text() == "unknown unit 'KN' (did you mean 'kN' or 'kn'?)");
    CHECK(find_unit("").error().text() == "no unit given (write one such as in, psi or turns)");
    CHECK(find_unit("xyzzy").error().text() ==
          "unknown unit 'xyzzy' (units are written like in, ft, mm, deg, turns, lbf, lbf·ft, psi, bar, mL, "
          "floz, "
          "gal/min, in^3/turn, s, min, F, count)");
    for (const char* text :
         {"in^", "in^0", "in^12", "in/", "/in", "in in", "2 in", "kg/m·s", "in^2^2", "gpm^2"}) {
        INFO(text);
        CHECK_FALSE(find_unit(text).ok());
    }
}

TEST_CASE("Dimensions have the trade's names") {
    CHECK(name_of(unit("in").dimension) == "length");
    CHECK(name_of(unit("psi").dimension) == "pressure");
    CHECK(name_of(unit("in^3/turn").dimension) == "volume per turn");
    CHECK(name_of(unit("lbf·ft").dimension) == "torque");
    CHECK(name_of(unit("gal/min").dimension) == "flow");
    CHECK(name_of(unit("count").dimension) == "plain number");
    CHECK(name_of({.length = 2, .mass = 1, .time = -1}) == "m^2·kg/s");
    CHECK(name_of({.time = -4}) == "1/s^4");
}

TEST_CASE("A helm pump's volume per turn times turns is a volume") {
    CHECK(unit("in^3/turn").dimension * unit("turns").dimension == unit("in^3").dimension);
    CHECK(unit("lbf").dimension / unit("in^2").dimension == unit("psi").dimension);
    CHECK(power(unit("in").dimension, -2) == unit("count").dimension / unit("in^2").dimension);
}
