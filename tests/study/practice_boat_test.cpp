// A practice boat is the same each time, fits its level, and answers as its faults make it.
#include <algorithm>

#include "app/jobs/rig_boat.hpp"
#include "rules/reasoning/situation.hpp"
#include "study/practice_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

TEST_CASE("The same seed and level make the same boat with the same answers") {
    for (int level = least_level; level <= most_level; ++level) {
        const auto one = practice_boat(11, level);
        const auto other = practice_boat(11, level);
        CHECK(one->told == other->told);
        CHECK(one->words == other->words);
        CHECK(one->faults == other->faults);
        const std::vector<bool> none_gone(one->faults.size(), false);
        for (std::size_t f = 0; f < shipped().findings.size(); ++f) {
            if (!one->makes_sense[f]) continue;
            const auto finding = static_cast<Index>(f);
            const auto a = one->answers(finding, none_gone);
            const auto b = other->answers(finding, none_gone);
            REQUIRE(a.size() == b.size());
            for (std::size_t i = 0; i < a.size(); ++i) {
                CHECK(a[i].finding == b[i].finding);
                CHECK(a[i].answer == b[i].answer);
            }
        }
    }
}

TEST_CASE("Another seed makes another boat") {
    int differ = 0;
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        const auto a = practice_boat(seed, 3);
        const auto b = practice_boat(seed + 1, 3);
        differ += a->faults != b->faults || a->told != b->told ? 1 : 0;
    }
    CHECK(differ >= 5);
}

TEST_CASE("A boat of a level is as the level's words say") {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        const auto easy = practice_boat(seed, 1);
        CHECK(easy->faults.size() == 1);
        CHECK(easy->rig.drives == 1);
        CHECK(easy->rig.helms == 1);
        CHECK_FALSE(easy->rig.autopilot);
        CHECK(practice_boat(seed, 3)->faults.size() == 1);
        CHECK(practice_boat(seed, 4)->faults.size() <= 2);
        const auto hard = practice_boat(seed, 5);
        CHECK(hard->faults.size() <= 3);
        CHECK((hard->rig.drives == 2 || hard->rig.helms == 2 || hard->rig.autopilot));
    }
}

TEST_CASE("Every fault is possible on its rig, and the boat shows what the customer says") {
    for (int level = least_level; level <= most_level; ++level) {
        const auto boat = practice_boat(21, level);
        Situation situation(prepared(), boat->told);
        const std::vector<bool> none_gone(boat->faults.size(), false);
        for (const Index fault : boat->faults) {
            CHECK(situation.holds(prepared().cause_possible_when(fault)) != Truth::no);
        }
        REQUIRE(boat->complaint != none);
        for (const auto& [finding, reading] : shipped().complaints[boat->complaint].says) {
            CHECK(boat->reading(finding, none_gone) == reading);
        }
    }
}

// Common practice, no source.
TEST_CASE("No practice boat has a rig that no yard would see") {
    const auto told = [](const PracticeBoat& boat, const char* field) {
        const auto value = boat.told.rig.find(find(shipped().rig_fields, field));
        return value == boat.told.rig.end() ? std::string() : std::get<std::string>(value->second);
    };
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        for (int level = least_level; level <= most_level; ++level) {
            INFO("seed " << seed << ", level " << level);
            const auto boat = practice_boat(seed, level);
            if (boat->rig.drives == 2 && boat->rig.rams == 1) CHECK(told(*boat, "tie_bar") == "tied");
            if (told(*boat, "mount") == "sterndrive_external") CHECK(told(*boat, "ram_kind") == "single_rod");
            if (told(*boat, "mount") == "outboard_centre") CHECK(told(*boat, "ram_kind") == "balanced");
            CHECK((told(*boat, "helm") == "cable_valve") == told(*boat, "assist").empty());
        }
    }
}

TEST_CASE("What is asked about the complaint never denies it while the fault is there") {
    for (std::uint64_t seed = 1; seed <= 80; ++seed) {
        for (int level = least_level; level <= most_level; ++level) {
            const auto boat = practice_boat(seed, level);
            const std::vector<bool> none_gone(boat->faults.size(), false);
            for (const Index detail : details_of(shipped(), boat->complaint)) {
                INFO("seed " << seed << ", level " << level << ", " << shipped().findings[detail].id);
                const int sound = static_cast<int>(shipped().findings[detail].readings.size()) - 1;
                CHECK(boat->reading(detail, none_gone) != sound);
            }
        }
    }
}

TEST_CASE("A boat of the easiest level with its fault put right reads sound wherever odds decide") {
    const auto boat = practice_boat(5, 1);
    const std::vector<bool> all_gone(boat->faults.size(), true);
    for (const Shows& shows : shipped().causes[boat->faults.front()].shows) {
        const Finding& finding = shipped().findings[shows.finding];
        if (!boat->makes_sense[shows.finding] || finding.unit || !finding.felt.empty()) continue;
        CHECK(boat->reading(shows.finding, all_gone) == static_cast<int>(finding.readings.size()) - 1);
    }
}

TEST_CASE("A level that there is not is refused with the levels there are") {
    const auto refused = make_practice_boat(prepared(), 1, 6);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().text().find("1, the easiest, to 5") != std::string::npos);
}
