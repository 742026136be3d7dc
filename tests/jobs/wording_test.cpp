// Numbers in words: percentages that never claim certainty, minutes a person would say, weights.
#include "app/jobs/wording.hpp"

#include <catch2/catch.hpp>

using namespace hardover::jobs_detail;

TEST_CASE("A probability is never shown as certain unless it is") {
    CHECK(percent_text(0) == "under 1 %");
    CHECK(percent_text(0.0099) == "under 1 %");
    CHECK(percent_text(0.01) == "1 %");
    CHECK(percent_text(0.466) == "47 %");
    CHECK(percent_text(0.99) == "99 %");
    CHECK(percent_text(0.9901) == "over 99 %");
    CHECK(percent_text(1) == "over 99 %");
    CHECK(percent_text(0, true) == "0 %");
    CHECK(percent_text(1, true) == "100 %");
    CHECK(percent_text(0.999999, true) == "over 99 %");
    CHECK(percent_text(0.000001, true) == "under 1 %");
}

TEST_CASE("Minutes are told as finely as they are known") {
    CHECK(minutes_text(0.2) == "1 min");
    CHECK(minutes_text(4.6) == "5 min");
    CHECK(minutes_text(19) == "19 min");
    CHECK(minutes_text(33) == "35 min");
    CHECK(minutes_text(58) == "1 h");
    CHECK(minutes_text(95) == "1 h 35 min");
    CHECK(minutes_text(240) == "4 h");
}

TEST_CASE("Ten to one speaks strongly, three to one clearly, less a little") {
    CHECK(strength_text(10) == "strongly for");
    CHECK(strength_text(9.99) == "clearly for");
    CHECK(strength_text(5) == "clearly for");
    CHECK(strength_text(-4.9) == "a little against");
    CHECK(strength_text(2) == "a little for");
    CHECK(strength_text(-1.99) == "barely against");
    CHECK(strength_text(-12) == "strongly against");
}

TEST_CASE("Words fit into a sentence") {
    CHECK(lower_first("Feel of the wheel") == "feel of the wheel");
    CHECK(lower_first("A little harder") == "a little harder");
    CHECK(lower_first("O-ring cut") == "O-ring cut");
    CHECK(lower_first("US gallons") == "US gallons");
    CHECK(lower_first("") == "");
    CHECK(sentence("Bleed it") == "Bleed it.");
    CHECK(sentence("Is it?") == "Is it?");
    CHECK(sentence("") == "");
    CHECK(listed({}) == "");
    CHECK(listed({"a"}) == "a");
    CHECK(listed({"a", "b"}) == "a and b");
    CHECK(listed({"a", "b", "c"}, "or") == "a, b or c");
    std::string text;
    add_sentence(text, "");
    add_sentence(text, "One.");
    add_sentence(text, "");
    add_sentence(text, "Two.");
    CHECK(text == "One. Two.");
}
