// Marks against worked numbers (tests/reference/learning_checks.yaml).
#include "app/study/scoring.hpp"

#include <sstream>

#include "study/learning_checks.hpp"

using namespace hardover::study;
using namespace hardover_tests;

namespace {

// "2 1 3" or "0,2,3" -> numbers, less `first`.
std::vector<int> read_list(std::string text, int first) {
    for (char& letter : text) letter = letter == ',' ? ' ' : letter;
    std::vector<int> list;
    std::istringstream words(text);
    for (int number = 0; words >> number;) list.push_back(number - first);
    return list;
}

}  // namespace

TEST_CASE("Sureness is penalised as worked out, least for the honest chance") {
    for (const auto& row : learning_checks("scoring")["binary_confidence"]["rows"]) {
        const auto n = numbers_of(row);
        CHECK(brier_penalty(n[0], true) == Approx(n[1]).margin(1e-9));
        CHECK(brier_penalty(n[0], false) == Approx(n[2]).margin(1e-9));
        CHECK(log_penalty(n[0], true) == Approx(n[3]).margin(1e-9));
        CHECK(log_penalty(n[0], false) == Approx(n[4]).margin(1e-9));
    }
    const auto expected = [](double honest, double said, auto penalty) {
        return honest * penalty(said, true) + (1 - honest) * penalty(said, false);
    };
    const auto brier = [](double sure, bool right) { return brier_penalty(sure, right); };
    const auto logarithm = [](double sure, bool right) { return log_penalty(sure, right); };
    for (const double said : {0.1, 0.3, 0.6, 0.8, 0.95}) {
        CHECK(expected(0.7, said, brier) > expected(0.7, 0.7, brier));
        CHECK(expected(0.7, said, logarithm) > expected(0.7, 0.7, logarithm));
    }
}

TEST_CASE("A belief over several causes is scored by the one that was true") {
    const std::vector<double> belief = {0.1, 0.6, 0.2, 0.1};
    CHECK(brier_penalty(belief, 1) == Approx(0.22).margin(1e-9));
    CHECK(log_penalty(belief, 1) == Approx(0.5108256238).margin(1e-9));
}

TEST_CASE("Calibration falls into reliability, resolution and uncertainty") {
    const YAML::Node expected = learning_checks("scoring")["calibration"];
    std::vector<SureAnswer> answers;
    for (const auto& row : expected["data"]) answers.push_back({row[0].as<double>(), row[1].as<int>() == 1});
    const Calibration found = calibrate(answers);
    CHECK(found.brier == Approx(0.21).margin(1e-9));
    CHECK(found.reliability == Approx(0.004444444444).margin(1e-9));
    CHECK(found.resolution == Approx(0.01666666667).margin(1e-9));
    CHECK(found.uncertainty == Approx(0.2222222222).margin(1e-9));
    CHECK(found.bias() == Approx(0.05).margin(1e-9));
    CHECK(calibrate({}).answers == 0);
}

TEST_CASE("Orders are scored by Kendall's tau") {
    for (const auto& entry : learning_checks("scoring")["ordering"]) {
        INFO(entry.first.as<std::string>());
        const auto order = read_list(entry.first.as<std::string>(), 1);
        CHECK(kendall_tau(order) == Approx(entry.second["tau"].as<double>()).margin(1e-9));
        const std::vector<Before> chain = {{0, 1}, {1, 2}, {2, 3}, {3, 4}};
        CHECK(order_mark(order, chain) == Approx(entry.second["tau_floor"].as<double>()).margin(1e-9));
    }
}

TEST_CASE("Steps that may be swapped cost nothing, and making safe comes first or nothing counts") {
    // 1 before 2 and 3, both before 4, 4 before 5.
    std::vector<Before> rules = {{0, 1}, {0, 2}, {1, 3}, {2, 3}, {3, 4}};
    for (const auto& entry : learning_checks("scoring")["partial_order"]["scores_pair_and_floor"]) {
        const auto order = read_list(entry.first.as<std::string>(), 1);
        CHECK(order_mark(order, rules) == Approx(entry.second[1].as<double>()).margin(1e-9));
    }
    rules[0].must = true;
    CHECK(order_mark({1, 0, 2, 3, 4}, rules) == 0);
    CHECK(order_mark({0, 2, 1, 3, 4}, rules) == 1);
}

TEST_CASE("Several right ones are worth the hits less the misses, and ticking all is worth nothing") {
    const YAML::Node expected = learning_checks("scoring")["multiple_response"];
    const std::vector<bool> right = {true, false, true, true, false, false};
    for (const auto& entry : expected["scores"]) {
        const std::string name = entry.first.as<std::string>();
        INFO(name);
        std::vector<bool> ticked(6, false);
        for (const int at : read_list(name == "none" ? "" : name, 0)) {
            ticked[static_cast<std::size_t>(at)] = true;
        }
        CHECK(several_mark(right, ticked) == Approx(entry.second["plus_minus"].as<double>()).margin(1e-9));
    }
}
