// A decimal comma as people type it. The ways of writing a number are common practice; ISO 80000-1 allows
// comma and point, from memory.
#include "rules/quantity/decimal_comma.hpp"

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

double typed_in(const std::string& text, const std::string& unit) {
    INFO(text);
    const Result<Quantity> quantity = read_quantity(with_decimal_points(text));
    REQUIRE_OK(quantity);
    return in_unit(quantity.value(), find_unit(unit).value());
}

std::string refusal(const std::string& text) {
    const Result<Quantity> quantity = read_quantity(with_decimal_points(text));
    return quantity.ok() ? "was read" : quantity.error().text();
}

}  // namespace

TEST_CASE("A comma that can only be a decimal one is read as a point") {
    CHECK(typed_in("13,26 bar", "bar") == Approx(13.26));
    CHECK(typed_in("4,5 in", "in") == Approx(4.5));
    CHECK(typed_in("-0,5 mm", "mm") == Approx(-0.5));
    CHECK(typed_in("1,2345 mm", "mm") == Approx(1.2345));
    CHECK(typed_in("1200,75 psi", "psi") == Approx(1200.75));
    CHECK(typed_in("2,5turns", "turns") == Approx(2.5));
    CHECK(with_decimal_points("13,26") == "13.26");
}

TEST_CASE("Each number of a text has a comma of its own") {
    CHECK(with_decimal_points("36,5 mm ± 0,25 mm") == "36.5 mm ± 0.25 mm");
    const Result<QuantityRange> range = read_range(with_decimal_points("20,5-25,5 N·m"));
    REQUIRE_OK(range);
    CHECK(range.value().high.value == Approx(25.5));
}

TEST_CASE("A comma that may stand for thousands or for something else is refused, and said why") {
    CHECK(refusal("1,200 psi") ==
          "cannot read '1,200 psi': expected a point, not a comma, at letter 2, found ',' (write 1.200, not "
          "1,200, or 1200 for thousands)");
    CHECK(refusal("0,125 in") ==
          "cannot read '0,125 in': expected a point, not a comma, at letter 2, found ',' (write 0.125, not "
          "0,125)");
    for (const char* text : {"1,200,50 psi", "1,2,3 in", "1.200,5 psi", "4, 5 in", ",5 in", "5, in",
                             "17,3/4 in", "1,200.5 psi"}) {
        INFO(text);
        CHECK(with_decimal_points(text) == text);
        CHECK(refusal(text) != "was read");
    }
    CHECK(
        refusal("1.200,5 psi") ==
        "cannot read '1.200,5 psi': expected no comma behind a point at letter 6, found ',' (write one point "
        "and nothing for thousands, such as 1234.5)");
}

TEST_CASE("What has no comma stays as it was typed") {
    for (const char* text :
         {"", "17 3/4 in", "36 in ± 1/16 in", "1e5 Pa", "can't tell", "heavy, both ways"}) {
        CHECK(with_decimal_points(text) == text);
    }
}
