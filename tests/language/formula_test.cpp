// Formulas: arithmetic, units, built-in functions and functions added by others.
#include <cmath>
#include <functional>
#include <numbers>
#include <random>

#include "scope.hpp"

using namespace hardover_tests;

TEST_CASE("Arithmetic follows the usual precedence") {
    CHECK(number_of("1 + 2 * 3") == 7);
    CHECK(number_of("(1 + 2) * 3") == 9);
    CHECK(number_of("10 - 4 - 3") == 3);
    CHECK(number_of("24 / 4 / 3") == 2);
    CHECK(number_of("2 ^ 3 ^ 2") == 512);
    CHECK(number_of("-2 ^ 2") == -4);
    CHECK(number_of("2 ^ -1") == 0.5);
    CHECK(number_of("2 * -3") == -6);
    CHECK(number_of("2^1/2") == 1);
    CHECK(number_of("- - 3 + +1") == 4);
    CHECK(number_of(".5 + 1.5e1") == 15.5);
}

TEST_CASE("Numbers in formulas carry units as on a tape") {
    CHECK(number_of("2 in", {}, "mm") == Approx(50.8));
    CHECK(number_of("17 3/4 in", {}, "in") == Approx(17.75));
    CHECK(number_of("3/4 in", {}, "in") == Approx(0.75));
    CHECK(number_of("2 * 3/4 in", {}, "in") == Approx(1.5));
    CHECK(number_of("3 / 4", {}) == 0.75);
    CHECK(number_of("1.2 deg", {}, "deg") == Approx(1.2));
    CHECK(number_of("17¾″", {}, "in") == Approx(17.75));
    CHECK(number_of("1.7 in^3/turn * 2 turns", {}, "in^3") == Approx(3.4));
    CHECK(number_of("50 psi * 2 in^2", {}, "lbf") == Approx(100));
    CHECK(number_of("20 lbf*ft / 2 ft", {}, "lbf") == Approx(10));
    CHECK(number_of("5 % * 200") == Approx(10));
    CHECK(number_of("2 min + 30 s", {}, "s") == Approx(150));
}

TEST_CASE("A unit is taken only behind a number, and a name behind an operator") {
    const Values values = {
        {"rig.rams", amount("2")}, {"bore", amount("2 in")}, {"rate", amount("1.7 in^3/turn")}};
    CHECK(number_of("rig.rams * 3", values) == 6);
    CHECK(number_of("2 * bore", values, "in") == Approx(4));
    CHECK(number_of("34 in^3/rate", values, "turns") == Approx(20));
    CHECK(number_of("34 in^3 / rate", values, "turns") == Approx(20));
}

TEST_CASE("The turns of a helm come from the volumes") {
    // J. Sullivan, Fluid Power: Theory and Applications, 4th ed., example 4.1, p. 64: 12.56 in^2 and 3.14
    // in^2 of rod over 24 in out and back sweep 527.52 in^3.
    CHECK(number_of("(2 * 12.56 in^2 - 3.14 in^2) * 24 in", {}, "in^3") == Approx(527.52));
    Functions functions;
    functions.add({"ram_volume",
                   {{.length = 1}, {.length = 1}, {.length = 1}},
                   {.length = 3},
                   [](const std::vector<double>& x) {
                       return std::numbers::pi / 4 * (x[0] * x[0] - x[1] * x[1]) * x[2];
                   },
                   "geometry"});
    const Values values = {{"rig.rams", amount("2")},
                           {"bore", amount("1.5 in")},
                           {"rod", amount("0.5 in")},
                           {"stroke", amount("9 in")},
                           {"rate", amount("1.7 in^3/turn")}};
    const Quantity turns =
        value_of("rig.rams * ram_volume(bore, rod, stroke) / rate", values, "turns", job_scope(), functions);
    // 2 x pi/4 x (2.25 - 0.25) x 9 / 1.7
    CHECK(in_unit(turns, find_unit("turns").value()) == Approx(16.632).epsilon(1e-4));
}

TEST_CASE("Built-in functions keep, halve or turn dimensions") {
    const Values values = {{"bore", amount("2 in")}, {"rod", amount("-1 in")}};
    CHECK(number_of("abs(rod)", values, "in") == Approx(1));
    CHECK(number_of("min(bore, rod, 3 in)", values, "in") == Approx(-1));
    CHECK(number_of("max(bore, rod)", values, "in") == Approx(2));
    CHECK(number_of("sqrt(bore ^ 2)", values, "in") == Approx(2));
    CHECK(number_of("sin(30 deg)") == Approx(0.5));
    CHECK(number_of("cos(60 deg)") == Approx(0.5));
    CHECK(number_of("tan(45 deg)") == Approx(1));
    CHECK(number_of("atan(1)", {}, "deg") == Approx(45));
    CHECK(number_of("in_radians(180 deg)") == Approx(std::numbers::pi));
    CHECK(number_of("in_radians(90 deg) * bore", values, "in") == Approx(std::numbers::pi));  // an arc
    CHECK(number_of("round(2.6)") == 3);
    CHECK(number_of("round(2.3 in, 1/4 in)", {}, "in") == Approx(2.25));
}

TEST_CASE("Temperatures are points on the thermometer, and their difference is not") {
    const Values values = {{"oil_temperature", amount("104 F")}, {"air_temperature", amount("68 F")}};
    CHECK(number_of("oil_temperature - air_temperature", values, "K") == Approx(20));
    CHECK(number_of("air_temperature + 20 K", values, "F") == Approx(104));
    CHECK(number_of("oil_temperature", values, "C") == Approx(40));
    CHECK(truth_of("oil_temperature > 40 F", values) == Truth::yes);
    CHECK(truth_of("oil_temperature - air_temperature > 25 K", values) == Truth::no);
    CHECK(truth_of("oil_temperature > -5 F", {{"oil_temperature", amount("-4 F")}}) == Truth::yes);
    CHECK(truth_of("oil_temperature > -5 F", {{"oil_temperature", amount("-6 F")}}) == Truth::no);
}

TEST_CASE("A formula with an unknown input, or without a finite result, is unknown") {
    const auto unknown = [](const std::string& text, const Values& values) {
        const Result<Expression> formula = read_formula(text, job_scope(), Functions(), {}, {});
        REQUIRE_OK(formula);
        return std::holds_alternative<Unknown>(formula.value().quantity(from(values)));
    };
    CHECK(unknown("rig.rams * 2", {}));
    CHECK(unknown("rig.rams * 0", {}));
    CHECK(unknown("rig.rams ^ 0", {}));
    CHECK(unknown("max(rig.rams, 5)", {}));
    CHECK(unknown("rig.rams * 2", {{"rig.rams", word("two")}}));
    CHECK(unknown("1 / rig.rams", {{"rig.rams", amount("0")}}));
    CHECK(unknown("sqrt(rig.rams)", {{"rig.rams", amount("-1")}}));
    CHECK(unknown("round(rig.rams, 0)", {{"rig.rams", amount("2")}}));
    CHECK_FALSE(unknown("rig.rams", {{"rig.rams", amount("2")}}));
}

TEST_CASE("A function that has no value leaves the formula unknown") {
    Functions functions;
    functions.add({"never", {{}}, {}, [](const std::vector<double>&) { return std::nan(""); }, "made up"});
    const Result<Expression> formula = read_formula("never(1) + 1", job_scope(), functions, {}, {});
    REQUIRE_OK(formula);
    CHECK(std::holds_alternative<Unknown>(formula.value().quantity({})));
    const Result<Expression> condition = read_condition("never(1) < 1 or 1 < 2", job_scope(), functions, {});
    REQUIRE_OK(condition);
    CHECK(condition.value().condition({}) == Truth::yes);
}

TEST_CASE("A function added again replaces the one before") {
    Functions functions;
    functions.add({"twice", {{}}, {}, [](const std::vector<double>& x) { return x[0]; }, "made up"});
    functions.add({"twice", {{}}, {}, [](const std::vector<double>& x) { return 2 * x[0]; }, "made up"});
    CHECK(functions.all().size() == 1);
    CHECK(functions.find("thrice") == nullptr);
    CHECK(value_of("twice(3)", {}, "count", job_scope(), functions).value == 6);
}

TEST_CASE("Names are listed once, in the order in which they appear") {
    const Result<Expression> formula =
        read_formula("stroke + bore - stroke + rod", job_scope(), Functions(), {.length = 1}, {});
    REQUIRE_OK(formula);
    CHECK(formula.value().names() == std::vector<std::string>{"stroke", "bore", "rod"});
    CHECK(formula.value().text() == "stroke + bore - stroke + rod");
}

namespace {

// A random formula with as few brackets as precedence allows, and its value calculated beside it.
struct Sample {
    std::string text;
    double value = 0;
    int binding = 0;  // 1 sum, 2 product, 3 negation, 4 number
};

Sample random_formula(std::mt19937& random, int depth) {
    if (depth == 0 || random() % 6 == 0) {
        const double value = static_cast<double>(random() % 90 + 10) / 10;
        return {std::to_string(value), value, 4};
    }
    const auto within = [](const Sample& part, int binding) {
        return part.binding < binding ? "(" + part.text + ")" : part.text;
    };
    const Sample left = random_formula(random, depth - 1);
    const Sample right = random_formula(random, depth - 1);
    switch (random() % 5) {
        case 0:
            return {within(left, 1) + " + " + within(right, 2), left.value + right.value, 1};
        case 1:
            return {within(left, 1) + "-" + within(right, 2), left.value - right.value, 1};
        case 2:
            return {within(left, 2) + " * " + within(right, 3), left.value * right.value, 2};
        case 3:
            return {within(left, 2) + " / " + within(right, 3), left.value / right.value, 2};
        default:
            return {"-" + within(left, 4), -left.value, 3};
    }
}

}  // namespace

TEST_CASE("Random formulas give what they give when calculated step by step") {
    std::mt19937 random(7);
    int compared = 0;
    for (int i = 0; i < 2000; ++i) {
        const Sample sample = random_formula(random, 5);
        if (!std::isfinite(sample.value)) continue;
        CHECK(number_of(sample.text) == Approx(sample.value));
        ++compared;
    }
    CHECK(compared > 1900);
}
