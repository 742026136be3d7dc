// The quick estimate that chooses which questions are worth a real plan.
#include <catch2/catch.hpp>
#include <cmath>

#include "policy_models.hpp"

using namespace hardover_tests;

namespace {

// Loose bracket, worn seal, air: a remedy each, the second proved first.
RepairModel three_faults() {
    RepairModel model;
    model.call_for_help = 300;
    RepairAction bracket;
    bracket.minutes = 20;
    RepairAction seal;
    seal.minutes = 90;
    seal.proof_minutes = 10;
    RepairAction air;
    air.minutes = 40;
    model.actions = {bracket, seal, air};
    for (int action = 0; action < 3; ++action) model.needs.push_back({{action}, false, false});
    return model;
}

struct Screened {
    RepairModel model = three_faults();
    RepairPlanner planner{model};
    Standing start = planner.start({0.5, 0.3, 0.2});
    double planned = planner.minutes(start);
    std::vector<int> order = planner.order();
    std::vector<double> each = planner.minutes_each(order, start);
    PlanScreen screen{model, start, order, each};
};

// Four faults with a remedy each, the third proved by a check; findings that some of them show, or none.
Decision four_faults_decision() {
    FaultNetwork network;
    network.findings = {
        {{0.01, 0.02, 0.97}, {0.3, 0.2, 0.5}}, {{0.05, 0.95}, {0.2, 0.8}}, {{0.04, 0.96}, {0.04, 0.96}}};
    network.causes = {{{0, {0.6, 0.3, 0.1}}}, {{0, {0.1, 0.1, 0.8}}, {1, {0.7, 0.3}}}, {{1, {0.4, 0.6}}}, {}};
    const std::vector<Hypothesis> hypotheses = {{{0}, false, 0.3}, {{1}, false, 0.25},
                                                {{2}, false, 0.2}, {{3}, false, 0.12},
                                                {{}, true, 0.08},  {{0, 2}, false, 0.05}};
    RepairModel repairs;
    repairs.call_for_help = 240;
    for (int remedy = 0; remedy < 4; ++remedy) {
        RepairAction action;
        action.minutes = 30 + 15 * remedy;
        if (remedy == 2) {
            action.proof_minutes = 12;
            action.proof_findings = {1};
            action.proof_check = 0;
            action.proof_setting_up = 5;
        }
        repairs.actions.push_back(action);
    }
    repairs.needs = {{{0}, false, false}, {{1}, false, false}, {{2}, false, false},
                     {{3}, false, false}, {{}, true, false},   {{0, 2}, false, false}};
    return decision_for(network, hypotheses, repairs, {{0, -1, 0, 2}, {1, 0, 5, 7}, {2, -1, 0, 1}});
}

// What the screen makes of a question when it is placed after each of its answers.
double screened_one_by_one(Outlook& outlook, int question) {
    double minutes = 0;
    Position after;
    outlook.ask(outlook.start(), question, after);
    for (int reading = 0; reading < outlook.readings_of(question); ++reading) {
        outlook.take_answer(outlook.start(), question, reading, after);
        minutes += outlook.screen().minutes(after);
    }
    outlook.screen().stand_at(outlook.start());
    return minutes;
}

}  // namespace

TEST_CASE("With one fault left the estimate is going straight to its remedy, after its proof") {
    Screened s;
    CHECK(s.screen.minutes(s.planner.start({1, 0, 0})) == Approx(20));
    CHECK(s.screen.minutes(s.planner.start({0, 1, 0})) == Approx(10 + 90));
    CHECK(s.screen.minutes(s.planner.start({0, 0, 0.5})) == Approx(0.5 * 40));
}

TEST_CASE("A proof that is answered is not paid again in the estimate") {
    Screened s;
    Standing known = s.start;
    known.step_minutes[1] = s.model.actions[1].minutes;
    known.extra_minutes[1] = 0;
    known.live = {1};
    known.weight = {0.3};
    known.mass = 0.3;
    CHECK(s.screen.minutes(known) == Approx(0.3 * 90));
}

TEST_CASE("With nothing answered the estimate is no more than the plan, and never more than help") {
    Screened s;
    CHECK(s.screen.minutes(s.start) <= s.planned * (1 + 1e-12));
    Standing hopeless = s.start;
    for (double& minutes : hopeless.step_minutes) minutes = 1e6;
    CHECK(s.screen.minutes(hopeless) <= hopeless.mass * s.model.call_for_help * (1 + 1e-12));
}

TEST_CASE("An answer is estimated alike by its chances alone and by what it leaves") {
    const auto alike = [](Outlook& outlook) {
        for (int q = 0; q < static_cast<int>(outlook.decision().questions.size()); ++q) {
            const double one_by_one = screened_one_by_one(outlook, q);
            CHECK(outlook.screened(outlook.start(), q) == Approx(one_by_one).epsilon(1e-12));
        }
    };
    Outlook four(four_faults_decision());
    alike(four);
    for (ModelClass kind : {ModelClass::questions, ModelClass::opening, ModelClass::set_up}) {
        for (unsigned seed = 1; seed <= 20; ++seed) {
            Outlook outlook(random_decision(kind, 300 + seed));
            alike(outlook);
        }
    }
}

TEST_CASE("A question concerns the hypotheses with a cause that shows its finding, and what is not listed") {
    const Decision decision = four_faults_decision();
    const auto concerned = [&](std::size_t question) {
        return std::vector<int>(decision.concerned[question].begin(), decision.concerned[question].end());
    };
    CHECK(concerned(0) == std::vector<int>{0, 1, 4, 5});
    CHECK(concerned(1) == std::vector<int>{1, 2, 4, 5});
    CHECK(concerned(2) == std::vector<int>{4});
    const std::size_t count = decision.weights.size();
    // Of the first finding's second reading, by hand: none worse than it by chance, less none as bad.
    CHECK(decision.chances[0][count + 3] == Approx(0.02));
    CHECK(decision.chances[0][count + 2] == Approx(0.02));
    CHECK(decision.chances[0][count + 0] == Approx(0.99 * 0.4 - 0.97 * 0.1));
    CHECK(decision.chances[0][count + 4] == Approx(0.99 * 0.7 - 0.97 * 0.5));
}

TEST_CASE("What a question tells is the mutual information of its answer and what is wrong") {
    Outlook outlook(four_faults_decision());
    const Decision& decision = outlook.decision();
    const std::size_t count = decision.weights.size();
    for (int q = 0; q < 3; ++q) {
        double bits = 0;
        for (int reading = 0; reading < outlook.readings_of(q); ++reading) {
            const double* chance = &decision.chances[q][static_cast<std::size_t>(reading) * count];
            double mass = 0;
            for (std::size_t h = 0; h < count; ++h) mass += decision.weights[h] * chance[h];
            for (std::size_t h = 0; h < count; ++h) {
                bits += decision.weights[h] * chance[h] * std::log2(chance[h] / mass);
            }
        }
        CHECK(outlook.information(q) == Approx(bits).margin(1e-14));
    }
}

TEST_CASE("What a question tells at most is no less than what it tells, and nothing where it tells nothing") {
    for (ModelClass kind : {ModelClass::questions, ModelClass::opening, ModelClass::set_up}) {
        for (unsigned seed = 1; seed <= 50; ++seed) {
            Outlook outlook(random_decision(kind, 700 + seed));
            for (int q = 0; q < static_cast<int>(outlook.decision().questions.size()); ++q) {
                const double bits = outlook.information(q);
                CHECK(outlook.most_information(q) >= bits - 1e-12);
                CHECK(outlook.most_information(q) <= 20 * bits + 1e-12);  // of use as a bound
            }
        }
    }
    Decision tells_nothing = four_faults_decision();
    tells_nothing.chances = {std::vector<double>(2 * tells_nothing.weights.size(), 0.5)};
    tells_nothing.questions.resize(1);
    tells_nothing.concerned = {};
    tells_nothing.same_as = {};
    Outlook outlook(tells_nothing);
    CHECK(outlook.most_information(0) == Approx(0).margin(1e-12));
}

TEST_CASE("The question that a plan after every answer makes best is among the first two of the estimate") {
    // A question is worth a plan for what it saves; the estimate must not lose the best. Limits: measured on
    // these models, with some room; a wrong sign anywhere in the estimate misses them.
    int found = 0;
    int all = 0;
    for (ModelClass kind :
         {ModelClass::questions, ModelClass::opening, ModelClass::set_up, ModelClass::several}) {
        for (unsigned seed = 1; seed <= 50; ++seed) {
            Outlook outlook(random_decision(kind, 4000 + seed));
            const auto total = [&](int q, const auto& minutes) {
                Position after;
                outlook.ask(outlook.start(), q, after);
                double sum = outlook.asking(outlook.start(), q);
                for (int reading = 0; reading < outlook.readings_of(q); ++reading) {
                    outlook.take_answer(outlook.start(), q, reading, after);
                    sum += minutes(after);
                }
                return sum;
            };
            std::vector<std::pair<double, int>> planned;
            std::vector<std::pair<double, int>> estimated;
            for (int q = 0; q < static_cast<int>(outlook.decision().questions.size()); ++q) {
                planned.push_back({total(q, [&](auto& at) { return outlook.planner().minutes(at); }), q});
                estimated.push_back({total(q, [&](auto& at) { return outlook.screen().minutes(at); }), q});
            }
            std::sort(estimated.begin(), estimated.end());
            const int best = std::min_element(planned.begin(), planned.end())->second;
            ++all;
            if (best == estimated[0].second || best == estimated[1].second) ++found;
        }
    }
    INFO(found << " of " << all);
    CHECK(found > 0.75 * all);  // two of five by chance: 0.4
}
