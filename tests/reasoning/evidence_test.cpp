// What one answer says about the readings of its finding.
#include <catch2/catch.hpp>

#include "rules/reasoning/evidence.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Play at the rim: large above 2 in, small above 3/4 in, none below.
Finding play() {
    Knowledge knowledge;
    add_finding(knowledge, "play", {"large", "small", "none"});
    Finding finding = knowledge.findings[0];
    finding.unit = unit("in");
    finding.spread = quantity("1/4 in").value;
    finding.readings[0].limit = quantity("2 in");
    finding.readings[1].limit = quantity("3/4 in");
    return finding;
}

std::vector<double> said(const Finding& finding, const Answer& answer, double misreading = 0.02) {
    const auto likelihood = likelihood_of(finding, answer, misreading);
    REQUIRE(likelihood.has_value());
    return *likelihood;
}

}  // namespace

TEST_CASE("A reading is taken as it is") {
    CHECK(said(play(), {1}) == std::vector<double>{0, 1, 0});
}

TEST_CASE("Can't tell, a reading that does not exist and a quantity of another kind say nothing") {
    CHECK_FALSE(likelihood_of(play(), {CannotTell{}}, 0.02).has_value());
    CHECK_FALSE(likelihood_of(play(), {3}, 0.02).has_value());
    CHECK_FALSE(likelihood_of(play(), {-1}, 0.02).has_value());
    CHECK_FALSE(likelihood_of(play(), {quantity("2 psi")}, 0.02).has_value());
    Finding plain = play();
    plain.readings.clear();
    CHECK_FALSE(likelihood_of(plain, {quantity("2 in")}, 0.02).has_value());
}

TEST_CASE("A measurement well inside a reading's range weighs a hundred to one at most") {
    const std::vector<double> likelihood = said(play(), {quantity("1 3/8 in")});
    CHECK(likelihood[1] == 1);
    CHECK(likelihood[0] == Approx(0.01));
    CHECK(likelihood[2] == Approx(0.01));
}

TEST_CASE("A measurement on the threshold leaves both sides equally likely") {
    const std::vector<double> likelihood = said(play(), {quantity("2 in")});
    CHECK(likelihood[0] == Approx(1).margin(1e-3));
    CHECK(likelihood[1] == Approx(1).margin(1e-3));
    CHECK(likelihood[2] == Approx(0.02 / 3 / 0.49667).epsilon(1e-3));
}

TEST_CASE("The answer's own spread goes before the finding's") {
    const std::vector<double> sharp = said(play(), {quantity("2.1 in ± 0.01 in")});
    const std::vector<double> vague = said(play(), {quantity("2.1 in ± 1 in")});
    CHECK(sharp[1] == Approx(0.01));
    CHECK(vague[1] > 0.5);
    Finding exact = play();
    exact.spread = 0;
    CHECK(said(exact, {quantity("2.0001 in")}, 0)[0] == 1);
    CHECK(said(exact, {quantity("2 in")}, 0)[1] == 1);  // not beyond the limit
}

TEST_CASE("Findings whose worse readings lie below their limits are read the other way round") {
    Finding pressure = play();
    pressure.limits_are_lower_ends = false;
    pressure.readings[0].limit = quantity("3/4 in");
    pressure.readings[1].limit = quantity("2 in");
    CHECK(said(pressure, {quantity("0.3 in")})[0] == 1);
    CHECK(said(pressure, {quantity("1.3 in")})[1] == 1);
    CHECK(said(pressure, {quantity("3 in")})[2] == 1);
}

TEST_CASE("The chance that the true value lies beyond a threshold agrees with the normal table") {
    // Check F2: own example there (conjugate normal, cross-checked with R's pnorm): prior 10 with sd 2,
    // instrument sd 0.5, threshold 12. The evidence takes the measurement as it comes, so the prior is put in
    // here.
    Finding finding = play();
    finding.readings.pop_back();
    finding.readings[0].limit = quantity("12 in");
    const double expected[][2] = {{11.5, 0.1126264532}, {12.0, 0.404182578}, {12.5, 0.7665728646}};
    for (const auto& [reading, chance] : expected) {
        const double precision = 1 / 4.0 + 1 / 0.25;
        Quantity measured = quantity("1 in");
        const double inch = measured.value;
        measured.value = (10 / 4.0 + reading / 0.25) / precision * inch;
        measured.spread = 2 * std::sqrt(1 / precision) * inch;
        const std::vector<double> likelihood = said(finding, {measured}, 0);
        CHECK(likelihood[0] / (likelihood[0] + likelihood[1]) == Approx(chance).margin(1e-8));
    }
}

TEST_CASE("The possible readings of a measurement are those within its spread, the most probable first") {
    const auto possible = [](const std::string& text) {
        return possible_readings(play(), quantity(text)).possible;
    };
    CHECK(possible("3 in") == std::vector<std::string>{"large"});
    CHECK(possible("2.1 in") == std::vector<std::string>{"large", "small"});
    CHECK(possible("1.9 in") == std::vector<std::string>{"small", "large"});
    CHECK(possible("1.4 in ± 1 in") == std::vector<std::string>{"small", "large", "none"});
}
