// How hard a text is to read: the automated readability index, and what passes in good trade text.
#include "rules/reading/plain_language.hpp"

#include <catch2/catch.hpp>

using namespace hardover::reading_detail;

namespace {

ReadingGrade grade_of(const std::string& text, const std::string& trade_text = "") {
    TradeWords trade;
    trade.add(trade_text);
    return reading_grade({text}, trade);
}

bool passes(const std::string& text) {
    const ReadingGrade read =
        grade_of(text, "Steering cable, control valve, hydraulic reservoir, transom bulkhead");
    return read.grade <= highest_grade(read.words);
}

}  // namespace

TEST_CASE("The grade is the automated readability index") {
    // E. A. Smith and R. J. Senter, AMRL-TR-66-220 (1967): 4.71 * letters/words + 0.5 * words/sentences
    // - 21.43. "Turn the wheel." has 12 letters, 3 words and 1 sentence.
    const ReadingGrade read = grade_of("Turn the wheel.");
    CHECK(read.words == 3);
    CHECK(read.grade == Approx(4.71 * 12 / 3 + 0.5 * 3 / 1 - 21.43));
    CHECK(grade_of("Turn it. Stop it.").grade == Approx(4.71 * 12 / 4 + 0.5 * 4 / 2 - 21.43));
    CHECK(grade_of("").words == 0);
    CHECK(grade_of("  -- ").grade == 0);
}

TEST_CASE("Numbers, fractions and hyphens do not make a text hard") {
    CHECK(grade_of("Wait 17.5 s.").words == 3);
    CHECK(grade_of("Take 3/4 of it.").words == 4);
    CHECK(grade_of("Turn lock-to-lock.").words == 4);
    CHECK(grade_of("Turn 1500 times.").grade == grade_of("Turn 1 times.").grade);
}

TEST_CASE("Words of the trade count as words of ordinary length") {
    const std::string text = "Fill the reservoir.";
    CHECK(grade_of(text, "Oil and reservoir").grade < grade_of(text).grade);
    CHECK(grade_of("Fill the reservoirs.", "Oil and reservoir").grade ==
          grade_of("Fill the reservoir.", "Oil and reservoir").grade);
    CHECK(grade_of("Turn the ram.", "Ram").grade == grade_of("Turn the ram.").grade);
}

TEST_CASE("Good trade text passes") {
    CHECK(passes(
        "A bolt that turns below the maker's figure has lost its grip, though it feels tight by hand."));
    CHECK(passes(
        "The hose must reach both locks and full trim, shorten under pressure, and never bend tighter than "
        "its maker allows. Lay a straight edge inside the tightest bend and measure the gap at its middle."));
    CHECK(passes(
        "Oil that keeps coming from the low-pressure port has passed the piston seal inside the ram."));
    CHECK(passes("Wipe the hydraulic reservoir, the control valve and the transom bulkhead dry."));
}

TEST_CASE("Officialese, long sentences and learned words fail") {
    CHECK_FALSE(
        passes("Subsequent verification of directional controllability characteristics necessitates "
               "comprehensive instrumentation."));
    CHECK_FALSE(
        passes("Prior to commencement of disassembly, operatives are required to ascertain that residual "
               "pressurisation has been eliminated from all interconnecting pipework."));
    CHECK_FALSE(
        passes("The technician who has been asked to look at the boat should first go round it and look at "
               "all the hoses and all the fittings and all the bolts and then sit down at the wheel and turn "
               "it from one lock to the other and back again while a second person who stands at the drive "
               "looks at how it moves and calls out when it stops."));
}

TEST_CASE("A short text may scatter more than a long one") {
    CHECK(highest_grade(9) > highest_grade(16));
    CHECK(highest_grade(10000) == Approx(8).margin(0.2));
}
