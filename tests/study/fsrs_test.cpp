// Review times against ts-fsrs 5.4.2 and the figures published with fsrs-rs
// (tests/reference/learning_checks.yaml). ts-fsrs rounds every step to 8 decimals, so the figures agree to 1
// part in a million.
#include "app/study/fsrs.hpp"

#include "study/learning_checks.hpp"

using namespace hardover::study;
using namespace hardover_tests;

namespace {

constexpr double agreed = 1e-6;
constexpr int century = 36500;

// Goes through a sequence of reviews and compares every step.
void follow(const YAML::Node& sequence, const MemoryModel& model, double target) {
    Memory memory;
    for (std::size_t i = 0; i < sequence.size(); ++i) {
        const YAML::Node step = sequence[i];
        INFO("step " << i + 1);
        const auto grade = static_cast<Grade>(step["rating"].as<int>());
        const int elapsed = step["elapsed"].as<int>();
        if (i > 0 && !step["r_before"].IsNull()) {
            CHECK(chance_of_remembering(model, memory.stability, elapsed) ==
                  Approx(step["r_before"].as<double>()).epsilon(agreed));
        }
        memory = i == 0 ? first_review(model, grade) : next_review(model, memory, elapsed, grade);
        CHECK(memory.stability == Approx(step["stability"].as<double>()).epsilon(agreed));
        CHECK(memory.difficulty == Approx(step["difficulty"].as<double>()).epsilon(agreed));
        CHECK(whole_days_until(model, memory.stability, target, century) == step["interval"].as<int>());
    }
}

}  // namespace

TEST_CASE("Every sequence of reviews gives the stability, difficulty and days of the reference") {
    const YAML::Node all = learning_checks("fsrs6")["sequences_retention_0_90"];
    REQUIRE(all.size() == 10);
    for (const auto& sequence : all) {
        DYNAMIC_SECTION(sequence.first.as<std::string>()) {
            follow(sequence.second, MemoryModel{}, 0.9);
        }
    }
}

TEST_CASE("Without the rule for the same day the sequences of the reference come out too") {
    MemoryModel model;
    model.same_day_rule = false;
    for (const auto& sequence : learning_checks("fsrs6")["sequences_same_day_rule_off"]) {
        follow(sequence.second, model, 0.9);
    }
}

TEST_CASE("Single reviews from any state give the reference's state") {
    const YAML::Node rows = learning_checks("fsrs6")["single_steps"]["rows"];
    REQUIRE(rows.size() == 60);
    const MemoryModel model;
    for (const auto& row : rows) {
        const auto n = numbers_of(row);
        const Memory after = next_review(model, {n[0], n[1]}, static_cast<int>(n[2]),
                                         static_cast<Grade>(static_cast<int>(n[3])));
        CHECK(chance_of_remembering(model, n[0], static_cast<int>(n[2])) == Approx(n[4]).epsilon(agreed));
        CHECK(after.stability == Approx(n[5]).epsilon(agreed));
        CHECK(after.difficulty == Approx(n[6]).epsilon(agreed));
    }
}

TEST_CASE("Chance of remembering and days until the next review agree with the reference") {
    const MemoryModel model;
    for (const auto& row : learning_checks("fsrs6")["retrievability"]["rows"]) {
        const auto n = numbers_of(row);
        CHECK(chance_of_remembering(model, n[1], static_cast<int>(n[0])) == Approx(n[2]).epsilon(agreed));
    }
    for (const auto& row : learning_checks("fsrs6")["intervals"]["rows"]) {
        const auto n = numbers_of(row);
        INFO("target " << n[0] << ", stability " << n[1]);
        CHECK(whole_days_until(model, n[1], n[0], century) == static_cast<int>(n[3]));
    }
}

TEST_CASE("The mean reversion of difficulty takes the easy start unlimited, as published") {
    // fsrs-rs, test_next_difficulty: D = 5, ratings 1 to 4.
    const std::vector<double> published = {8.341763, 6.6659956, 4.990228, 3.3144615};
    for (int grade = 1; grade <= 4; ++grade) {
        const Memory after = next_review(MemoryModel{}, {5, 5}, 1, static_cast<Grade>(grade));
        CHECK(after.difficulty == Approx(published[static_cast<std::size_t>(grade) - 1]).epsilon(agreed));
    }
    // fsrs-rs, test_memory_state: ratings 1, 3, 3, 3, 3, 3 after 0, 0, 1, 3, 8, 21 days.
    Memory memory = first_review(MemoryModel{}, Grade::again);
    for (const int days : {0, 1, 3, 8, 21}) memory = next_review(MemoryModel{}, memory, days, Grade::good);
    CHECK(memory.stability == Approx(53.62691).epsilon(agreed));
    CHECK(memory.difficulty == Approx(6.3574867).epsilon(agreed));
}

TEST_CASE("The days to the next review are kept from one day to the end of the course") {
    const MemoryModel model;
    CHECK(whole_days_until(model, 0.01, 0.9, 120) == 1);
    CHECK(whole_days_until(model, 500, 0.9, 120) == 120);
    CHECK(whole_days_until(model, 2.5, 0.9, 120) == 3);
}
