// Quantities and ranges as people write them, and what is said to what cannot be read.
#include <cmath>
#include <random>

#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover;

namespace {

constexpr double inch = 0.0254;  // NIST SP 811 (exact)

Quantity read(const std::string& text, const std::string& fallback = "") {
    INFO(text);
    const Result<Quantity> quantity = read_quantity(text, fallback);
    REQUIRE_OK(quantity);
    return quantity.value();
}

std::string refusal(const std::string& text) {
    const Result<Quantity> quantity = read_quantity(text);
    return quantity.ok() ? "was read" : quantity.error().text();
}

double in(const std::string& text, const std::string& unit) {
    return in_unit(read(text), find_unit(unit).value());
}

}  // namespace

TEST_CASE("A tape is read in inches and fractions, however they are written") {
    for (const char* text : {"17 3/4 in", "17-3/4\"", "17-3/4 in", "17¾\"", "17 ¾ in", "17.75 in", "17.75in",
                             "17 3/4 inches", "17–3/4″", "17 3⁄4 in", "+17 3/4 in", "  17  3/4  in  "}) {
        INFO(text);
        CHECK(read(text).value == Approx(17.75 * inch).epsilon(1e-14));
    }
    CHECK(read("3/4 in").value == Approx(0.75 * inch));
    CHECK(read("-1/4 in").value == Approx(-0.25 * inch));
    CHECK(read("−1/4 in").value == Approx(-0.25 * inch));
    CHECK(read("½\"").value == Approx(0.5 * inch));
}

TEST_CASE("Feet and inches make one length") {
    for (const char* text :
         {"3 ft 4 in", "3' 4\"", "3'4\"", "3′ 4″", "3 feet 4 inches", "3 1/3 ft", "40 in"}) {
        INFO(text);
        CHECK(read(text).value == Approx(40 * inch));
    }
    CHECK(read("-3 ft 4 1/2 in").value == Approx(-40.5 * inch));
    CHECK(read("3' 4-1/2\" ± 1/16").spread == Approx(inch / 16));
    CHECK(in("1 min 30 s", "s") == Approx(90));
}

TEST_CASE("Other quantities of the trade are read") {
    CHECK(in("450 mm", "m") == Approx(0.45));
    CHECK(in("12°", "deg") == Approx(12));
    CHECK(in("2.5 turns", "deg") == Approx(900));
    CHECK(in("68 F", "C") == Approx(20));
    CHECK(in("-5 °C", "K") == Approx(268.15));
    CHECK(in("1.7 in^3/turn", "mL/turn") == Approx(27.858).epsilon(1e-4));  // 1.7 x 16.387 064
    CHECK(in("5e-3 m", "mm") == Approx(5));
    CHECK(in("3", "count") == 3);
    CHECK(in("50 %", "count") == Approx(0.5));
}

TEST_CASE("The spread may have the unit of the value, its own, or be a percentage") {
    CHECK(read("36 in ± 1/16 in").spread == Approx(inch / 16));
    CHECK(read("36 in +/- 1/16 in").spread == Approx(inch / 16));
    CHECK(read("36 in +- 1/16").spread == Approx(inch / 16));
    CHECK(read("36 in ± 2 mm").spread == Approx(0.002));
    CHECK(read("100 psi ± 5%").spread == Approx(read("5 psi").value));
    CHECK(read("50 % ± 5 %").spread == Approx(0.05));
    CHECK(read("5.5 ± 0.1 turns") == read("5.5 turns ± 0.1 turns"));
    CHECK(read("5.5 ± 0.1", "turns") == read("5.5 turns ± 0.1 turns"));
    CHECK(read("5.5 ± 10%", "turns").spread == Approx(read("0.55 turns").value));
    CHECK(read("36 in").spread == 0);
}

TEST_CASE("The spread of a temperature is a difference, not a point on the thermometer") {
    const Quantity oil = read("68 F ± 9 F");
    CHECK(oil.value == Approx(293.15));
    CHECK(oil.spread == Approx(5));
}

TEST_CASE("A bare number takes the unit of its field, a written unit wins over it") {
    CHECK(read("4 1/2", "in").value == Approx(4.5 * inch));
    CHECK(read("450 mm", "in").value == Approx(0.45));
    CHECK(read("3").dimension.is_number());
}

TEST_CASE("A range has two ends, which may share a unit") {
    for (const char* text : {"20-25 lbf·ft", "20 to 25 lbf*ft", "20 – 25 ft-lb", "20 ft-lb to 25 ft-lb"}) {
        INFO(text);
        const Result<QuantityRange> range = read_range(text);
        REQUIRE_OK(range);
        CHECK(range.value().low.value == Approx(read("20 lbf·ft").value));
        CHECK(range.value().high.value == Approx(read("25 lbf·ft").value));
    }
    const Result<QuantityRange> across = read_range("-5 to 5", "deg");
    REQUIRE_OK(across);
    CHECK(across.value().low.value == -across.value().high.value);
    CHECK(read_range("1/2-3/4 in").value().low.value == Approx(0.5 * inch));
}

TEST_CASE("A whole number, a dash and a fraction are a mixed number, never a range") {
    const Result<QuantityRange> tape = read_range("17-3/4 in");
    REQUIRE_OK(tape);
    CHECK(tape.value().low == tape.value().high);
    CHECK(tape.value().low.value == Approx(17.75 * inch));
    CHECK(read_range("2 in ± 1/8 in").value().high.spread == Approx(inch / 8));
}

TEST_CASE("A range that cannot be is refused") {
    CHECK(read_range("25-20 psi").error().text() ==
          "cannot read '25-20 psi': the low end is above the high end (write the low end first)");
    CHECK(read_range("20 in to 25 psi").error().text() ==
          "cannot read '20 in to 25 psi': one end is a length, the other a pressure (give both ends in units "
          "of one "
          "kind)");
    CHECK(read_range("20-25-30 psi").error().text() ==
          "cannot read '20-25-30 psi': expected the end of the text after the range at letter 6, found '-' "
          "(write it "
          "like 20-25 lbf·ft)");
}

TEST_CASE("What cannot be read is refused at its letter and with a cure") {
    CHECK(refusal("4,5 in") ==
          "cannot read '4,5 in': expected a point, not a comma, at letter 2, found ',' (write 4.5, not 4,5)");
    CHECK(refusal("1,200 psi") ==
          "cannot read '1,200 psi': expected a point, not a comma, at letter 2, found ',' (write 1.200, not "
          "1,200, or "
          "1200 for thousands)");
    CHECK(refusal("") ==
          "cannot read '': expected a number, where the text ends (write it like 4 1/2 in, 450 mm or 2.5 "
          "turns)");
    CHECK(refusal("about 3 in") ==
          "cannot read 'about 3 in': expected a number at letter 1, found 'a' (write it like 4 1/2 in, 450 "
          "mm or 2.5 "
          "turns)");
    CHECK(refusal("5 inn") == "cannot read '5 inn': unknown unit 'inn' at letter 3 (did you mean 'in'?)");
    CHECK(refusal("20-25 psi") ==
          "cannot read '20-25 psi': this is a range where one value is needed (give one value, with ± for "
          "its spread if "
          "it has one)");
    CHECK(refusal("3/0 in") ==
          "cannot read '3/0 in': expected a whole number above nothing at letter 3, found '0' (write a "
          "fraction like "
          "3/4)");
    CHECK(refusal("17 5/4 in") ==
          "cannot read '17 5/4 in': the fraction of a mixed number must be less than one (write 17 3/4, and "
          "a range "
          "with 'to')");
    CHECK(refusal("3 in 4") ==
          "cannot read '3 in 4': expected the end of the text or a part in a smaller unit than in at letter "
          "6, found "
          "'4' (write it like 3 ft 4 in, 1 min 30 s or 4 1/2 in)");
    CHECK(refusal("5 in ± 2 psi") ==
          "cannot read '5 in ± 2 psi': the value is a length and its spread a pressure (give both in units "
          "of one "
          "kind, such as 36 in ± 1/16 in)");
    CHECK(refusal("5 in ± -1 in") ==
          "cannot read '5 in ± -1 in': a spread is never negative (write it like 36 in ± 1/16 in)");
    CHECK(refusal("36 in ±") ==
          "cannot read '36 in ±': expected a number, where the text ends (write it like 4 1/2 in, 450 mm or "
          "2.5 "
          "turns)");
    CHECK(refusal("½ § in") ==
          "cannot read '½ § in': unknown unit '§' at letter 3 (units are written like in, ft, mm, "
          "deg, turns, lbf, lbf·ft, psi, bar, mL, floz, gal/min, in^3/turn, s, min, F, count)");
    CHECK(refusal("1e999 in") ==
          "cannot read '1e999 in': expected a number of ordinary size at letter 1, found '1' (give 0, or a "
          "number "
          "from 1e-60 to 1e60)");
    CHECK(refusal("1e-300 in").find("from 1e-60 to 1e60") != std::string::npos);
}

TEST_CASE("A quantity of the wrong kind is refused naming what was expected") {
    const auto refused = [](const char* text, const char* unit) {
        const Result<Quantity> quantity = read_quantity_of(text, find_unit(unit).value());
        return quantity.ok() ? "was read" : quantity.error().text();
    };
    CHECK(refused("20 psi", "in") ==
          "'20 psi' is a pressure, expected a length such as 4 1/2 in (write it like 4 1/2 in)");
    CHECK(refused("3", "in") ==
          "'3' is a plain number, expected a length such as 4 1/2 in (write it like 4 1/2 in, "
          "with its unit)");
    CHECK(refused("20 lb", "lbf") ==
          "'20 lb' is a mass, expected a force such as 4.5 lbf (write lbf for a force)");
    CHECK(refused("8 oz", "floz") ==
          "'8 oz' is a mass, expected a volume such as 4.5 floz (write fl oz for a volume)");
    REQUIRE_OK(read_quantity_of("450 mm", find_unit("in").value()));
    REQUIRE_OK(read_quantity_of("2", find_unit("count").value()));
}

TEST_CASE("No text brings the reader down") {
    std::mt19937 random(20240501);
    const std::string letters = "0123456789 .,-+/*^'\"inftmpsurdlbgaoe±°½·″–\xff\xc3%";
    for (int i = 0; i < 5000; ++i) {
        std::string text;
        const int length = static_cast<int>(random() % 24);
        for (int k = 0; k < length; ++k) text += letters[random() % letters.size()];
        INFO(text);
        const Result<QuantityRange> range = read_range(text, i % 2 ? "in" : "");
        if (range.ok()) {
            CHECK(range.value().low.dimension == range.value().high.dimension);
        } else {
            CHECK_FALSE(range.error().what.empty());
        }
        (void)find_unit(text);
    }
}
