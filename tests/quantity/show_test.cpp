// How quantities are shown, and that what is shown can be read back.
#include <cmath>
#include <random>

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

constexpr double inch = 0.0254;  // NIST SP 811 (exact)

std::string shown(const std::string& text, const std::string& unit, UnitSystem system = UnitSystem::us,
                  int digits = 3) {
    const Result<Quantity> quantity = read_quantity(text);
    REQUIRE_OK(quantity);
    const Result<Unit> found = find_unit(unit);
    REQUIRE_OK(found);
    return show(quantity.value(), found.value(), system, digits);
}

}  // namespace

TEST_CASE("Inches are shown as on a tape, to the nearest sixteenth") {
    CHECK(shown("4.5 in", "in") == "4 1/2 in");
    CHECK(shown("-0.25 in", "in") == "-1/4 in");
    CHECK(shown("0.3 in", "in") == "5/16 in");
    CHECK(shown("12 in", "in") == "12 in");
    CHECK(shown("450 mm", "in") == "17 11/16 in");  // 17.717 in
    CHECK(shown("0 in", "in") == "0 in");
    CHECK(shown("-0.01 in", "in") == "0 in");
    CHECK(shown("11.99 in", "in") == "12 in");
}

TEST_CASE("Feet are shown with their inches") {
    CHECK(shown("40.5 in", "ft") == "3 ft 4 1/2 in");
    CHECK(shown("-40 in", "ft") == "-3 ft 4 in");
    CHECK(shown("36 in", "ft") == "3 ft");
    CHECK(shown("4.5 in", "ft") == "4 1/2 in");
    CHECK(shown("11.99 in", "ft") == "1 ft");
    CHECK(shown("0 in", "ft") == "0 ft");
}

TEST_CASE("The spread follows the value, and a stated one is never shown as none") {
    CHECK(shown("36 in ± 1/16 in", "in") == "36 in ± 1/16 in");
    CHECK(shown("36 in ± 0.1 in", "in") == "36 in ± 1/8 in");
    CHECK(shown("36 in ± 1/32 in", "in") == "36 in ± 1/32 in");
    CHECK(shown("36 in ± 0.02 in", "in") == "36 in ± 1/32 in");
    CHECK(shown("0.512 in ± 0.002 in", "in") == "0.512 in ± 0.002 in");
    CHECK(shown("5.5 turns ± 0.1 turns", "turns") == "5.5 turns ± 0.1 turns");
    CHECK(shown("68 F ± 2 F", "F") == "68 °F ± 2 °F");
    CHECK(shown("2 in ± 1/8 in", "in", UnitSystem::metric) == "50.8 mm ± 3.2 mm");
}

TEST_CASE("Other quantities are shown with a few figures") {
    CHECK(shown("1234 psi", "psi") == "1230 psi");
    CHECK(shown("1234 psi", "psi", UnitSystem::us, 4) == "1234 psi");
    CHECK(shown("0.05 psi", "psi") == "0.05 psi");
    CHECK(shown("12 deg", "deg") == "12°");
    CHECK(shown("1.25 deg", "deg") == "1.25°");
    CHECK(shown("5 %", "%") == "5%");
    CHECK(shown("2", "count") == "2");
    CHECK(shown("20 lbf*ft", "lbf*ft") == "20 lbf·ft");
    CHECK(shown("1.7 in^3/turn", "in^3/turn") == "1.7 in^3/turn");
    CHECK(shown("0 psi", "psi") == "0 psi");
    CHECK(shown("32 F", "C") == "0 °C");
}

TEST_CASE("One turn, two turns") {
    CHECK(shown("1 turn", "turn") == "1 turn");
    CHECK(shown("2 turns", "turn") == "2 turns");
    CHECK(shown("1 drop/min", "drop/min") == "1 drop/min");
    CHECK(shown("3 drops/min", "drop/min") == "3 drops/min");
}

TEST_CASE("In the metric system each unit has its partner") {
    const std::vector<std::vector<std::string>> partners = {
        {"1 in", "in", "25.4 mm"},
        {"10 ft", "ft", "3.05 m"},
        {"100 psi", "psi", "6.89 bar"},
        {"10 lbf", "lbf", "44.5 N"},
        {"20 lbf*ft", "lbf*ft", "27.1 N·m"},
        {"10 lbf*in", "lbf*in", "1.13 N·m"},
        {"1 gal", "gal", "3.79 L"},
        {"1 qt", "qt", "0.946 L"},
        {"8 floz", "floz", "237 mL"},
        {"1.7 in^3/turn", "in^3/turn", "27.9 mL/turn"},
        {"10 in^3", "in^3", "164 mL"},
        {"2 in^2", "in^2", "12.9 cm^2"},
        {"5 gal/min", "gal/min", "18.9 L/min"},
        {"68 F", "F", "20 °C"},
        {"20 mph", "mph", "32.2 km/h"},
        {"20 kn", "kn", "20 kn"},
        {"10 lbf/in", "lbf/in", "1.75 N/mm"},
        {"10 hp", "hp", "7.46 kW"},
        {"3 drops/min", "drop/min", "3 drops/min"},
        {"10 in/s", "in/s", "254 mm/s"},
        {"12 deg", "deg", "12°"},
        {"5 lb", "lb", "2.27 kg"},
    };
    for (const auto& line : partners) {
        INFO(line[0]);
        CHECK(shown(line[0], line[1], UnitSystem::metric) == line[2]);
    }
}

TEST_CASE("What is no finite number is not shown as one") {
    const Unit psi = find_unit("psi").value();
    CHECK(show({std::nan(""), psi.dimension, 0}, psi) == "no value");
    CHECK(show({HUGE_VAL, psi.dimension, 0}, psi) == "no value");
}

TEST_CASE("What is shown in any unit reads back within its rounding") {
    std::mt19937_64 random(811);
    std::uniform_real_distribution<double> magnitude(-3, 4);
    std::vector<std::string> names = unit_names();
    for (const char* compound : {"lbf·ft", "lbf·in", "N·m", "in^3", "in^2", "in^3/turn", "mL/turn", "gal/min",
                                 "L/min", "mL/min", "drops/min", "lbf/in", "m/s", "ft/s", "cm^3"}) {
        names.emplace_back(compound);
    }
    for (const std::string& name : names) {
        const Unit unit = find_unit(name).value();
        for (int i = 0; i < 200; ++i) {
            const double sign = random() % 2 ? 1 : -1;
            Quantity quantity = quantity_in(sign * std::pow(10, magnitude(random)), unit);
            if (i % 3 == 0) quantity.spread = std::pow(10, magnitude(random) / 2) * unit.factor;
            const UnitSystem system = i % 2 ? UnitSystem::us : UnitSystem::metric;
            const std::string text = show(quantity, unit, system);
            INFO(name << " shown as " << text);
            CHECK(text.find("-0 ") != 0);
            const Result<Quantity> back = read_quantity(text);
            REQUIRE_OK(back);
            CHECK(back.value().dimension == quantity.dimension);
            // Half a sixteenth for inches and feet; else half of the third figure of a number up to 1.00,
            // which is 0.5 % of it, in the metric system too. A thermometer's zero is not the zero of K.
            double rounding = 0.005 * std::abs(quantity.value - unit.offset);
            if (unit.offset != 0) rounding = 0.005 * (std::abs(quantity.value - unit.offset) + 18);
            if (unit.name == "in" || unit.name == "ft") rounding = std::max(rounding, inch / 32);
            CHECK(std::abs(back.value().value - quantity.value) <= rounding * (1 + 1e-9));
            // Two figures of the spread, or up to a sixty-fourth of an inch.
            CHECK((back.value().spread > 0) == (quantity.spread > 0));
            double spread_rounding = 0.05 * quantity.spread;
            if (unit.name == "in" || unit.name == "ft")
                spread_rounding = std::max(spread_rounding, inch / 32);
            CHECK(std::abs(back.value().spread - quantity.spread) <= spread_rounding * (1 + 1e-9));
        }
    }
}
