// A class's figures against published and computed ones (tests/reference/learning_checks.yaml), and what they
// say of gaps, few answers and wrong marking.
#include "app/classroom/figures.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <random>

#include "classroom/class_support.hpp"
#include "study/learning_checks.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

ClassFigures figures_of(const ClassResults& results) {
    return make_figures(results, Knowledge{});
}

ClassFigures class24(std::size_t items) {
    return figures_of(class_of(matrix_of(learning_checks("ctt")["class24"]["matrix"], items)));
}

// Answers as the Rasch model makes them: abilities and difficulties normal (0, 1).
std::vector<std::vector<int>> rasch_class(std::size_t learners, std::size_t items, unsigned seed) {
    std::mt19937 chance(seed);
    std::normal_distribution<double> normal;
    std::uniform_real_distribution<double> even;
    std::vector<double> difficulty(items);
    for (double& value : difficulty) value = normal(chance);
    std::vector<std::vector<int>> table(learners, std::vector<int>(items));
    for (auto& row : table) {
        const double ability = normal(chance);
        for (std::size_t i = 0; i < items; ++i) {
            row[i] = even(chance) < 1 / (1 + std::exp(difficulty[i] - ability)) ? 1 : 0;
        }
    }
    return table;
}

}  // namespace

TEST_CASE("a published class comes out with its published figures") {
    // K. L. Wuensch, East Carolina University: ten people, ten items.
    const YAML::Node published = learning_checks("ctt")["published_A"];
    const ClassFigures figures = figures_of(class_of(matrix_of(published["matrix"], 10)));
    REQUIRE(figures.by_item.size() == 10);
    for (std::size_t i = 0; i < 10; ++i) {
        INFO("item " << i + 1);
        const ItemFigures& item = figures.by_item[i];
        CHECK(item.share_right.value() == Approx(published["published"]["p"][i].as<double>()).margin(1e-9));
        CHECK(item.with_rest.value() ==
              Approx(published["computed"]["r_item_rest"][i].as<double>()).margin(1e-9));
        CHECK(item.reliability_without.value() ==
              Approx(published["computed"]["alpha_if_deleted"][i].as<double>()).margin(1e-9));
    }
    REQUIRE(figures.whole.kr20);
    CHECK(figures.whole.kr20->value == Approx(0.696347032).margin(1e-9));
    CHECK(figures.whole.kr20->measurement_error ==
          Approx(published["computed"]["sem_from_sd_N_minus_1"].as<double>()).margin(1e-8));
    CHECK(figures.whole.deviation.value() * figures.whole.deviation.value() ==
          Approx(published["computed"]["variance_N_minus_1"].as<double>()).margin(1e-8));
    double mean = 0;
    for (const auto& total : published["published"]["totals"]) mean += total.as<double>() / 10;
    CHECK(figures.whole.mean.value() == Approx(mean));
    CHECK(figures.whole.learners == 10);
    CHECK(figures.whole.learners_left_out == 0);
}

TEST_CASE("a second published worksheet comes out with its shares") {
    // Item analysis worksheet, ten learners by ten items (studylib.net, document 25270846).
    const YAML::Node published = learning_checks("ctt")["published_B"];
    const ClassFigures figures = figures_of(class_of(matrix_of(published["matrix"], 10)));
    for (std::size_t i = 0; i < 10; ++i) {
        INFO("item " << i + 1);
        CHECK(figures.by_item[i].share_right.value() ==
              Approx(published["published"]["p"][i].as<double>()).margin(1e-9));
    }
}

TEST_CASE("of the class of 24 the wrongly keyed item is named, and only that one") {
    const YAML::Node expected = learning_checks("ctt")["class24"];
    const ClassFigures figures = class24(12);
    for (std::size_t i = 0; i < 12; ++i) {
        INFO("item " << i + 1);
        const ItemFigures& item = figures.by_item[i];
        CHECK((item.verdict == ItemVerdict::key_suspect) == (i == 11));
        CHECK(item.discrimination.value() ==
              Approx(expected["D27_tie_fair_g6"][i].as<double>()).margin(1e-9));
        CHECK(item.with_rest.value() == Approx(expected["r_item_rest"][i].as<double>()).margin(1e-9));
        CHECK(item.reliability_without.value() ==
              Approx(expected["alpha_if_deleted"][i].as<double>()).margin(1e-9));
        CHECK_FALSE(item.why.empty());
    }
    const YAML::Node fisher = learning_checks("ctt")["fisher_r_95"]["r=-.585195,n=24"];
    CHECK(figures.by_item[11].with_rest_95->low == Approx(fisher[0].as<double>()).margin(1e-5));
    CHECK(figures.by_item[11].with_rest_95->high == Approx(fisher[1].as<double>()).margin(1e-5));
    CHECK(figures.by_item[0].verdict == ItemVerdict::too_easy);   // 23 of 24
    CHECK(figures.by_item[10].verdict == ItemVerdict::too_hard);  // 2 of 24
    CHECK(figures.whole.kr20->value == Approx(0.5608110354).margin(1e-9));
    CHECK(figures.whole.kr20->measurement_error ==
          Approx(expected["sem_sd_N_minus_1"].as<double>()).margin(1e-8));
    CHECK(figures.rough);
}

TEST_CASE("difficulties and abilities of the class of 24 are the reference's") {
    const YAML::Node expected = learning_checks("rasch")["class24_items_1_to_11"];
    const ClassFigures figures = class24(11);
    for (std::size_t i = 0; i < 11; ++i) {
        CHECK(figures.by_item[i].difficulty->value == Approx(expected["map_b"][i].as<double>()).margin(1e-6));
        CHECK(figures.by_item[i].difficulty->error ==
              Approx(expected["map_se"][i].as<double>()).margin(1e-4));
    }
    for (const LearnerFigures& learner : figures.by_learner) {
        const auto score = static_cast<std::size_t>(learner.right);
        CHECK(learner.ability.value ==
              Approx(expected["eap_by_score_0_11"][score].as<double>()).margin(1e-4));
        CHECK(learner.ability.error ==
              Approx(expected["psd_by_score_0_11"][score].as<double>()).margin(1e-4));
    }
}

TEST_CASE("the range of a reliability lies near that of L. S. Feldt's F distribution") {
    // Feldt 1965, 95 %: 1 - (1 - KR-20) times the F quantiles of 23 and 23 * 11 degrees of freedom, worked
    // out apart from this program.
    const auto kr20 = class24(12).whole.kr20.value();
    CHECK(kr20.within_95.low < kr20.value);
    CHECK(kr20.within_95.high > kr20.value);
    CHECK(kr20.within_95.low == Approx(0.2483129).margin(0.07));
    CHECK(kr20.within_95.high == Approx(0.7807712).margin(0.07));
    CHECK(kr20.error == Approx(0.4391889646 * std::sqrt(24.0 / (11 * 22))).margin(1e-9));
}

TEST_CASE("the range of a reliability holds the true one about 95 times in 100") {
    // The reliability of a very large class is taken as true.
    const std::size_t items = 20;
    const auto everyone = rasch_class(20000, items, 5);
    const double truth = study::kuder_richardson_20(everyone).value();
    int held = 0;
    const int classes = 400;
    for (int n = 0; n < classes; ++n) {
        const auto from = everyone.begin() + n * 24;
        const auto range = study::reliability({from, from + 24}).value().within_95;
        held += range.low <= truth && truth <= range.high ? 1 : 0;
    }
    CHECK(held >= classes * 90 / 100);
    CHECK(held <= classes * 99 / 100);
}

TEST_CASE("answers that are missing shrink the table of the reliability, not the other figures") {
    auto table = matrix_of(learning_checks("ctt")["class24"]["matrix"], 11);
    for (int& answer : table[3]) answer = -1;
    table[3][0] = 1;   // this learner came once
    table[7][4] = -1;  // this one left an item out
    table.push_back(std::vector<int>(11, 1));
    for (auto& row : table) row.push_back(-1);
    table[0][11] = 1;  // an item that a single learner met
    const ClassFigures figures = figures_of(class_of(table));
    CHECK(figures.learners == 25);
    CHECK(figures.whole.learners + figures.whole.learners_left_out == 25);
    CHECK(figures.whole.items + figures.whole.items_left_out == 12);
    CHECK(figures.whole.items == 11);
    CHECK(figures.whole.learners == 23);
    CHECK(figures.by_item[0].learners == 25);
    CHECK(figures.by_item[4].learners == 23);
    CHECK(figures.by_item[11].learners == 1);
    CHECK_FALSE(figures.by_item[11].share_right.has_value());
    CHECK_FALSE(figures.by_item[11].reliability_without.has_value());
    CHECK(figures.by_item[11].verdict == ItemVerdict::too_few);
    CHECK(figures.by_learner[3].items == 1);
    CHECK(figures.by_learner[3].ability.error > figures.by_learner[4].ability.error);
}

TEST_CASE("a learner who met only the hard items is not put below one who met only the easy ones for it") {
    // Eight learners; the first two have half the items each, three of four right.
    std::vector<std::vector<int>> table = {{1, 1, 1, 0, -1, -1, -1, -1}, {-1, -1, -1, -1, 1, 1, 1, 0}};
    for (int n = 0; n < 3; ++n) {
        table.push_back({1, 1, 1, 1, 0, 0, 0, 0});
        table.push_back({1, 1, 1, 1, 1, 0, 0, 0});
    }
    const ClassFigures figures = figures_of(class_of(table));
    CHECK(figures.by_learner[0].right == figures.by_learner[1].right);
    CHECK(figures.by_learner[1].ability.value > figures.by_learner[0].ability.value);
    const std::vector<double> stands = study::standing(table);
    CHECK(stands[1] > stands[0]);
}

TEST_CASE("the first answer counts, disputed ones do not, and the order of the results does not matter") {
    ClassResults results = class_of(rasch_class(6, 4, 3));
    results.items.push_back(answered("A01", "remedy/item_001", results.items[0].review.mark < 0.5, 9));
    results.items.push_back(answered("A02", "remedy/item_009", true, 10));
    results.items.back().origin.disputed = true;
    ClassResults reversed = results;
    std::reverse(reversed.items.begin(), reversed.items.end());
    const ClassFigures figures = figures_of(results);
    const ClassFigures other = figures_of(reversed);
    CHECK(figures.disputed == 1);
    CHECK(figures.answers == 25);
    CHECK(figures.by_item.size() == 4);
    CHECK(figures.by_learner[0].items == 4);
    CHECK(figures.by_learner[0].answers == 5);
    for (std::size_t n = 0; n < 6; ++n) {
        CHECK(figures.by_learner[n].right == other.by_learner[n].right);
        CHECK(figures.by_learner[n].ability.value == other.by_learner[n].ability.value);
    }
}

TEST_CASE("no average of a class of four is told") {
    ClassResults results = class_of(rasch_class(4, 6, 3));
    for (std::size_t n = 0; n < 4; ++n) results.boats.push_back(worked(seat_code(n), 20500, 10, 2));
    const ClassFigures figures = figures_of(results);
    CHECK_FALSE(figures.share_right.has_value());
    CHECK_FALSE(figures.whole.mean.has_value());
    CHECK_FALSE(figures.whole.kr20.has_value());
    for (const TopicFigures& topic : figures.by_topic) CHECK_FALSE(topic.share_right.has_value());
    for (const ItemFigures& item : figures.by_item) CHECK_FALSE(item.share_right.has_value());
    REQUIRE(figures.term.size() == 1);
    CHECK_FALSE(figures.term[0].avoidable.has_value());
    CHECK(figures.by_learner[0].boats.over_best() == Approx(12));
    results.boats.push_back(worked("A05", 20500, 20, -8));
    CHECK(figures_of(results).term[0].avoidable.value() == Approx(12));
}

TEST_CASE("an item whose wrong choice draws the strong is named with it") {
    ClassResults results;
    // Learners in order of ability by other items; on the last one the strong take choice c.
    const std::size_t learners = GENERATE(24, 12);
    const std::size_t half = learners / 2;
    for (std::size_t n = 0; n < learners; ++n) {
        for (std::size_t i = 0; i < learners; ++i) {
            results.items.push_back(answered(seat_code(n), fmt::format("remedy/item_{:03}", i + 1), i <= n,
                                             static_cast<int>(i) + 1));
        }
        const bool right = n + 1 == half || n == half;
        ItemResult odd = answered(seat_code(n), "proof/odd", right, static_cast<int>(learners) + 1);
        odd.review.answer = right ? "a" : n > half ? "c" : "b";
        results.items.push_back(odd);
    }
    const ClassFigures figures = figures_of(results);
    const ItemFigures& odd = figures.by_item[0];
    REQUIRE(odd.item == "proof/odd");
    REQUIRE(odd.choices.size() == 3);
    CHECK(odd.choices[0].right);
    CHECK(odd.choices[0].taken == 2);
    if (learners == 12) {
        // All of the three strongest took it: by chance as many do with an item that is right.
        CHECK(odd.verdict != ItemVerdict::key_suspect);
        return;
    }
    CHECK(odd.verdict == ItemVerdict::key_suspect);
    CHECK(odd.why.find("choice c") != std::string::npos);
    CHECK(odd.why.find("100 in 100") != std::string::npos);
}

TEST_CASE("choices are not compared where learners got different versions") {
    ClassResults results = class_of(rasch_class(12, 1, 1));
    results.items[4].review.seed = 77;
    CHECK(figures_of(results).by_item[0].choices.empty());
    results.items[4].review.seed = 0;
    CHECK(figures_of(results).by_item[0].choices.size() == 2);
}

TEST_CASE("items that everyone or nobody has right are named so") {
    std::vector<std::vector<int>> table(12, {1, 0, 1});
    for (std::size_t n = 0; n < 6; ++n) table[n][2] = 0;
    const ClassFigures figures = figures_of(class_of(table));
    CHECK(figures.by_item[0].verdict == ItemVerdict::everyone_right);
    CHECK(figures.by_item[1].verdict == ItemVerdict::everyone_wrong);
    CHECK(figures.by_item[2].verdict == ItemVerdict::too_few);  // for a correlation of nothing
}

TEST_CASE("nothing is said of an item that its correlation's range does not bear out") {
    std::size_t fine = 0, open = 0;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        const std::size_t learners = seed % 2 == 0 ? 24 : 12;
        for (const ItemFigures& item : figures_of(class_of(rasch_class(learners, 20, seed))).by_item) {
            INFO(item.why);
            const bool by_correlation = item.why.find("correlation with the rest") != std::string::npos;
            if (item.verdict == ItemVerdict::fine) {
                ++fine;
                CHECK(item.with_rest_95->low > 0);
            }
            if (item.verdict == ItemVerdict::key_suspect && by_correlation)
                CHECK(item.with_rest_95->high < 0);
            if (item.verdict == ItemVerdict::weak) CHECK(item.with_rest_95->high < 0.1);
            if (item.verdict != ItemVerdict::too_few || !item.with_rest) continue;
            ++open;
            CHECK(item.why.find("Too few answers to tell") == 0);
            CHECK(by_correlation);
        }
    }
    CHECK(fine > 0);
    CHECK(open > 0);
}

// 300 learners; the item has nothing to do with the others.
TEST_CASE("of enough answers an item is said not to tell strong from weak") {
    auto table = rasch_class(300, 20, 3);
    std::size_t weak = 0;
    for (unsigned seed = 1; seed <= 5; ++seed) {
        const auto other = rasch_class(300, 20, 100 + seed);
        for (std::size_t n = 0; n < table.size(); ++n) table[n][10] = other[n][10];
        const ItemFigures item = figures_of(class_of(table)).by_item[10];
        weak += item.verdict == ItemVerdict::weak ? 1 : 0;
        CHECK(item.verdict != ItemVerdict::fine);
    }
    CHECK(weak > 0);
}

TEST_CASE("causes taken for others are counted over items and boats, by learner") {
    ClassResults results;
    const auto add_item = [&](const std::string& seat, const std::string& right, const std::string& chosen) {
        ItemResult item = answered(seat, "signs/" + right, right == chosen);
        item.right_cause = right;
        item.chosen_cause = chosen;
        results.items.push_back(item);
    };
    add_item("A01", "air", "worn");
    add_item("A01", "air", "worn");
    add_item("A02", "air", "air");
    add_item("A03", "worn", "bent");
    BoatResult boat = worked("A02", 20501, 0, 0);
    boat.faults = {"air"};
    boat.named = "worn";
    results.boats.push_back(boat);
    boat.faults = {"bent", "air"};  // two faults, one of them named: no mistake
    boat.named = "bent";
    results.boats.push_back(boat);
    const ClassFigures figures = figures_of(results);
    REQUIRE(figures.confusions.size() == 2);
    const Confusion& worst = figures.confusions[0];
    CHECK(worst.right == "air");
    CHECK(worst.chosen == "worn");
    CHECK(worst.answers == 2);
    CHECK(worst.boats == 1);
    CHECK(worst.learners == 2);
    CHECK(worst.of == 5);
    REQUIRE(figures.table.causes == std::vector<std::string>{"air", "worn", "bent"});
    CHECK(figures.table.times == std::vector<std::vector<int>>{{1, 3, 0}, {0, 0, 1}, {0, 0, 1}});
}

TEST_CASE("a long term is told by the week from Monday, a short one by the day") {
    ClassResults results;
    const int monday = 20500 - (20500 + 3) % 7;  // 1970-01-01 was a Thursday
    for (std::size_t n = 0; n < 5; ++n) {
        results.boats.push_back(worked(seat_code(n), monday, 20, 5));
        results.boats.push_back(worked(seat_code(n), monday + 6, 10, -5));
    }
    CHECK(figures_of(results).term.size() == 2);
    CHECK_FALSE(figures_of(results).by_week);
    for (std::size_t n = 0; n < 5; ++n) results.boats.push_back(worked(seat_code(n), monday + 30, 4, 0));
    const ClassFigures figures = figures_of(results);
    REQUIRE(figures.by_week);
    REQUIRE(figures.term.size() == 2);
    CHECK(figures.term[0].first_day == monday);
    CHECK(figures.term[0].boats == 10);
    CHECK(figures.term[0].avoidable.value() == Approx(15));
    CHECK(figures.term[0].luck.value() == Approx(0).margin(1e-12));
    CHECK(figures.term[1].first_day == monday + 28);
    CHECK(figures.by_learner[0].through_term.size() == 3);
    CHECK(figures.all_boats.avoidable == Approx(5 * 34));
}

TEST_CASE("each set has a reliability of its own") {
    ClassResults results = class_of(rasch_class(12, 8, 4));
    for (ItemResult& item : results.items) {
        if (item.origin.sequence > 4) item.origin.set = "S2";
    }
    const ClassFigures figures = figures_of(results);
    REQUIRE(figures.by_set.size() == 2);
    CHECK(figures.by_set[1].set == "S2");
    CHECK(figures.by_set[1].items == 4);
    CHECK(figures.whole.items == 8);
}

TEST_CASE("with many answers the known abilities and difficulties come back") {
    const auto table = rasch_class(200, 60, 9);
    std::mt19937 chance(9);
    std::normal_distribution<double> normal;
    const ClassFigures figures = figures_of(class_of(table));
    double off = 0;
    for (const ItemFigures& item : figures.by_item) {
        const double truth = normal(chance);
        off += (item.difficulty->value - truth) * (item.difficulty->value - truth) / 60;
        CHECK(item.difficulty->error < 0.25);
    }
    CHECK(std::sqrt(off) < 0.3);
    CHECK_FALSE(figures.rough);
}
