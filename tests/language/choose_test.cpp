// Functions that pick among their arguments: the greatest or least that is known, and the one a condition
// names.
#include <cmath>

#include "scope.hpp"

using namespace hardover_tests;

namespace {

NamedScope marks_scope() {
    NamedScope scope;
    scope.quantity("port", "in").quantity("starboard", "in").quantity("stroke", "in");
    scope.words("kind", {"single_rod", "balanced"}).words("line", {"port_line", "starboard_line", "plugged"});
    scope.quantity("oil", "F").truth("fact.crossed");
    return scope;
}

Value outcome(const std::string& text, const Values& values, const std::string& unit = "in") {
    INFO(text);
    const Result<Expression> formula =
        read_formula(text, marks_scope(), Functions(), find_unit(unit).value().dimension, {});
    REQUIRE_OK(formula);
    return formula.value().quantity(from(values));
}

bool is_unknown(const std::string& text, const Values& values) {
    return std::holds_alternative<Unknown>(outcome(text, values));
}

double inches(const std::string& text, const Values& values) {
    const Value value = outcome(text, values);
    REQUIRE(std::holds_alternative<Quantity>(value));
    return std::get<Quantity>(value).value / 0.0254;
}

std::string refusal(const std::string& text) {
    const Result<Expression> formula = read_formula(text, marks_scope(), Functions(), {.length = 1}, {});
    return formula.ok() ? "was read" : formula.error().text();
}

}  // namespace

TEST_CASE("The greatest and the least known pass over what is not known") {
    const Values both = {{"port", amount("1/2 in")}, {"starboard", amount("1 in")}};
    CHECK(inches("greatest_known(port, starboard)", both) == Approx(1));
    CHECK(inches("least_known(port, starboard)", both) == Approx(0.5));
    const Values one_ram = {{"port", amount("1/2 in")}};
    CHECK(inches("greatest_known(port, starboard)", one_ram) == Approx(0.5));
    CHECK(inches("greatest_known(starboard, port)", one_ram) == Approx(0.5));
    CHECK(inches("least_known(starboard, port, stroke)", one_ram) == Approx(0.5));
    CHECK(is_unknown("greatest_known(port, starboard)", {}));
    CHECK(is_unknown("least_known(port, starboard)", {}));
    // Max keeps its meaning: one unknown leaves all unknown.
    CHECK(is_unknown("max(port, starboard)", one_ram));
}

TEST_CASE("An argument that has no value is passed over like one that is unknown") {
    const Values zero = {{"port", amount("0 in")}, {"starboard", amount("1 in")}};
    CHECK(inches("greatest_known(starboard * starboard / port, starboard)", zero) == Approx(1));
}

TEST_CASE("A choice takes the value of the first condition that holds") {
    const Values values = {
        {"port", amount("1 in")}, {"starboard", amount("2 in")}, {"kind", word("balanced")}};
    CHECK(inches("choose(kind is balanced, port, starboard)", values) == Approx(1));
    CHECK(inches("choose(kind is single_rod, port, starboard)", values) == Approx(2));
    CHECK(inches("choose(port > starboard, port, starboard)", values) == Approx(2));
    const std::string three = "choose(line is port_line, 1 in, line is plugged, 2 in, 3 in)";
    CHECK(inches(three, {{"line", word("port_line")}}) == Approx(1));
    CHECK(inches(three, {{"line", word("plugged")}}) == Approx(2));
    CHECK(inches(three, {{"line", word("starboard_line")}}) == Approx(3));
    CHECK(inches("choose(port > 0 in, 1 in, port < 5 in, 2 in, 3 in)", values) == Approx(1));
}

TEST_CASE("A choice whose condition is not known is unknown, whatever its values") {
    const Values values = {{"port", amount("1 in")}};
    CHECK(is_unknown("choose(kind is balanced, port, port)", values));
    CHECK(is_unknown("choose(starboard > 1 in, port, port)", values));
    CHECK(inches("choose(starboard is known, starboard, port)", values) == Approx(1));
    // A value that is not taken need not be known; one that is taken must be.
    const Values kind = {{"port", amount("1 in")}, {"kind", word("balanced")}};
    CHECK(inches("choose(kind is balanced, port, starboard)", kind) == Approx(1));
    CHECK(is_unknown("choose(kind is single_rod, port, starboard)", kind));
}

TEST_CASE("A measurement within its spread of the limit chooses nothing") {
    const Values near = {{"port", amount("1 in ± 1/16 in")}};
    CHECK(is_unknown("choose(port > 0.99 in, 1 in, 2 in)", near));
    CHECK(inches("choose(port > 1/2 in, 1 in, 2 in)", near) == Approx(1));
}

TEST_CASE("The spread comes from the argument that was taken") {
    const Values values = {{"port", amount("1 in ± 1/16 in")}, {"starboard", amount("2 in ± 1/4 in")}};
    const auto spread = [&](const std::string& text) {
        return std::get<Quantity>(outcome(text, values)).spread / 0.0254;
    };
    CHECK(spread("greatest_known(port, starboard)") == Approx(0.25));
    CHECK(spread("least_known(port, starboard)") == Approx(0.0625));
    CHECK(spread("greatest_known(port, stroke)") == Approx(0.0625));
    CHECK(spread("choose(stroke is unknown, port, starboard)") == Approx(0.0625));
    CHECK(spread("2 * choose(stroke is known, port, starboard)") == Approx(0.5));
}

TEST_CASE("Picking functions refuse what cannot be picked among") {
    CHECK(refusal("choose(kind is balanced, port)") ==
          "letter 1: choose() is given 2 arguments (write it like choose(x is y, 1 in, 2 in))");
    CHECK(refusal("choose(kind is balanced, port, kind is single_rod, stroke)").find("4 arguments") !=
          std::string::npos);
    CHECK(refusal("choose(port, starboard, stroke)") ==
          "letter 8: 'port' is a length, not a condition (compare it with a limit, as in 'x > 2 in')");
    CHECK(refusal("choose(kind is balanced, kind, stroke)").find("'kind' is a word, not a quantity") !=
          std::string::npos);
    CHECK(refusal("choose(kind is balanced, port, 2)") ==
          "letter 32: choose() of a length and a plain number (all its arguments must be of one kind)");
    CHECK(refusal("greatest_known(port, 2)").find("all its arguments must be of one kind") !=
          std::string::npos);
    CHECK(refusal("greatest_known(port)").find("it takes at least 2 arguments") != std::string::npos);
    CHECK(refusal("greatest_know(port, stroke)").find("did you mean 'greatest_known'?") != std::string::npos);
}
