// Ability, difficulty and item analysis against published and computed figures
// (tests/reference/learning_checks.yaml).
#include "app/study/rasch.hpp"

#include "app/study/item_analysis.hpp"
#include "app/study/rating.hpp"
#include "study/learning_checks.hpp"

using namespace hardover::study;
using namespace hardover_tests;

namespace {

// The class of 24 without its wrongly keyed item.
std::vector<std::vector<int>> class24(std::size_t items = 11) {
    return matrix_of(learning_checks("ctt")["class24"]["matrix"], items);
}

}  // namespace

TEST_CASE("Difficulties of the class of 24 are the reference's, with their errors") {
    const YAML::Node expected = learning_checks("rasch")["class24_items_1_to_11"];
    const auto answers = class24();
    const RaschFit fit = fit_rasch(answers);
    REQUIRE(fit.difficulty.size() == 11);
    for (std::size_t i = 0; i < 11; ++i) {
        INFO("item " << i + 1);
        CHECK(fit.difficulty[i].value == Approx(expected["map_b"][i].as<double>()).margin(1e-6));
        CHECK(fit.difficulty[i].error == Approx(expected["map_se"][i].as<double>()).margin(1e-4));
    }
    for (std::size_t n = 0; n < answers.size(); ++n) {
        std::size_t score = 0;
        for (const int answer : answers[n]) score += static_cast<std::size_t>(answer);
        CHECK(fit.ability[n].value == Approx(expected["eap_by_score_0_11"][score].as<double>()).margin(1e-4));
        CHECK(fit.ability[n].error == Approx(expected["psd_by_score_0_11"][score].as<double>()).margin(1e-4));
    }
}

TEST_CASE("Items all right or all wrong and questions not answered leave every estimate finite") {
    const RaschFit fit = fit_rasch({{1, 0, -1}, {1, 0, 1}, {1, 0, 0}});
    CHECK(fit.difficulty[0].value < 0);
    CHECK(fit.difficulty[1].value > 0);
    CHECK(fit.difficulty[0].value == Approx(-fit.difficulty[1].value));
    CHECK(fit.ability[1].value > fit.ability[0].value);
    CHECK(fit.ability[0].value > fit.ability[2].value);
    CHECK(fit.ability[0].error > fit.ability[1].error);
    CHECK(fit_rasch({}).difficulty.empty());
}

TEST_CASE("The running rating moves as in the reference") {
    struct Row {
        const char* key;
        RatingSpeed speed;
        double guess;
    };
    for (const Row& row : {Row{"elo_fixed_0.4", {0.4, 0}, 0}, Row{"elo_U_1_0.05", {1, 0.05}, 0},
                           Row{"elo_U_1_0.05_guess0.25", {1, 0.05}, 0.25}}) {
        INFO(row.key);
        const YAML::Node expected = learning_checks("elo")[row.key];
        const auto answers = class24();
        std::vector<Rating> learners(24);
        std::vector<Rating> items(11);
        for (std::size_t n = 0; n < 24; ++n) {
            for (std::size_t i = 0; i < 11; ++i) {
                take_answer(learners[n], items[i], answers[n][i] == 1, row.guess, row.speed);
            }
        }
        for (std::size_t n = 0; n < 24; ++n) {
            CHECK(learners[n].value == Approx(expected["theta"][n].as<double>()).margin(1e-9));
        }
        for (std::size_t i = 0; i < 11; ++i) {
            CHECK(items[i].value == Approx(expected["d"][i].as<double>()).margin(1e-9));
        }
    }
}

TEST_CASE("Item figures and reliability are those published and computed") {
    // K. L. Wuensch, East Carolina University: KR-20 of ten people and ten items.
    const YAML::Node published = learning_checks("ctt")["published_A"];
    const auto ten = matrix_of(published["matrix"], 10);
    CHECK(kuder_richardson_20(ten).value() == Approx(0.696347032).margin(1e-9));
    const auto figures = item_figures(ten);
    for (std::size_t i = 0; i < 10; ++i) {
        CHECK(figures[i].share_right == Approx(published["published"]["p"][i].as<double>()).margin(1e-9));
        CHECK(figures[i].with_rest.value() ==
              Approx(published["computed"]["r_item_rest"][i].as<double>()).margin(1e-9));
    }

    const YAML::Node expected = learning_checks("ctt")["class24"];
    const auto whole_class = class24(12);
    const auto of_class = item_figures(whole_class);
    for (std::size_t i = 0; i < 12; ++i) {
        CHECK(of_class[i].discrimination == Approx(expected["D27_tie_fair_g6"][i].as<double>()).margin(1e-9));
    }
    CHECK(kuder_richardson_20(whole_class).value() == Approx(0.5608110354).margin(1e-9));
    CHECK(kuder_richardson_20(class24()).value() == Approx(0.7127948113).margin(1e-9));
    CHECK_FALSE(kuder_richardson_20({{1}, {0}}).has_value());
    CHECK_FALSE(kuder_richardson_20({{1, 0}, {0, 1}}).has_value());
}

TEST_CASE("A share of few answers comes with Wilson's interval") {
    const Interval half = wilson_95(6, 12);
    CHECK(half.low == Approx(0.2537815976).margin(1e-9));
    CHECK(half.high == Approx(0.7462184024).margin(1e-9));
    const Interval all = wilson_95(10, 10);
    CHECK(all.low == Approx(0.7224672001).margin(1e-9));
    CHECK(all.high == Approx(1).margin(1e-12));
}
