// The order of remedies and the worth of questions against published rules and independently worked values.
// Where a value comes from stands beside it; all were computed there exactly (fractions, all orders tried).
#include <catch2/catch.hpp>
#include <cmath>

#include "rules/reasoning/fault_sets.hpp"
#include "rules/reasoning/roll_out.hpp"

using namespace hardover;

namespace {

// Single faults, one action each.
RepairModel one_action_each(const std::vector<double>& minutes, double call_for_help) {
    RepairModel model;
    model.call_for_help = call_for_help;
    for (std::size_t a = 0; a < minutes.size(); ++a) {
        model.actions.push_back({minutes[a], -1, {}});
        model.needs.push_back({{static_cast<int>(a)}, false});
    }
    return model;
}

RepairPlan plan_of(const RepairModel& model, const std::vector<double>& weights) {
    RepairPlanner planner(model);
    return planner.plan(weights, std::vector<char>(model.actions.size(), 0));
}

double minutes_of(const RepairModel& model, const std::vector<int>& order,
                  const std::vector<double>& weights) {
    RepairPlanner planner(model);
    return planner.minutes_of(order, weights, std::vector<char>(model.actions.size(), 0));
}

// A two-level finding that these single faults show with these chances, and nothing else.
FaultNetwork questions(std::size_t faults, const std::vector<std::vector<double>>& yes,
                       const std::vector<double>& leaks) {
    FaultNetwork network;
    network.causes.resize(faults);
    for (std::size_t q = 0; q < yes.size(); ++q) {
        network.findings.push_back({{leaks[q], 1 - leaks[q]}, {0, 1}});
        for (std::size_t i = 0; i < faults; ++i) {
            network.causes[i].push_back({static_cast<int>(q), {yes[q][i], 1 - yes[q][i]}});
        }
    }
    return network;
}

// Questions on the findings of a network, in order, each with its minutes.
std::vector<Question> asked(const std::vector<double>& minutes) {
    std::vector<Question> questions;
    for (std::size_t q = 0; q < minutes.size(); ++q) {
        questions.push_back({static_cast<int>(q), -1, 0, minutes[q]});
    }
    return questions;
}

// Expected minutes of the step that the roll-out prefers.
double best_of(Outlook& outlook) {
    return RollOut(outlook).weigh(outlook.start()).front().total();
}

}  // namespace

TEST_CASE("With one fault the remedies go by chance over cost") {
    // Check B1. Theorem: Kadane & Simon 1977; Heckerman, Breese & Rommelse 1995. All 120 orders enumerated.
    const std::vector<double> chance = {0.3, 0.25, 0.2, 0.15, 0.1};
    const RepairModel model = one_action_each({6, 2, 10, 1, 4}, 1000);
    const RepairPlan plan = plan_of(model, chance);
    CHECK(plan.order == std::vector<int>{3, 1, 0, 4, 2});
    CHECK(plan.minutes == Approx(9.5).margin(1e-9));
    CHECK(minutes_of(model, {2, 4, 0, 1, 3}, chance) == Approx(18.35).margin(1e-9));
    CHECK(minutes_of(model, {0, 1, 2, 3, 4}, chance) == Approx(12.55).margin(1e-9));
    CHECK(minutes_of(model, {3, 1, 4, 0, 2}, chance) == Approx(10.1).margin(1e-9));
}

TEST_CASE("Remedies that are proved first go by chance over the cost of the proof") {
    // Check B2. Formula: Heckerman, Breese & Rommelse, CACM 38(3) 1995, from memory there; all orders
    // enumerated.
    const std::vector<double> chance = {0.5, 0.3, 0.2};
    RepairModel model = one_action_each({10, 20, 5}, 1000);
    model.actions[0].proof_minutes = 4;
    model.actions[1].proof_minutes = 1;
    model.actions[2].proof_minutes = 2;
    const RepairPlan plan = plan_of(model, chance);
    CHECK(plan.order == std::vector<int>{1, 0, 2});
    CHECK(plan.minutes == Approx(16.2).margin(1e-9));
    CHECK(minutes_of(model, {0, 1, 2}, chance) == Approx(16.9).margin(1e-9));
    CHECK(minutes_of(model, {0, 2, 1}, chance) == Approx(17.3).margin(1e-9));
    CHECK(minutes_of(model, {1, 2, 0}, chance) == Approx(16.4).margin(1e-9));
    CHECK(minutes_of(model, {2, 0, 1}, chance) == Approx(17.5).margin(1e-9));
    CHECK(minutes_of(model, {2, 1, 0}, chance) == Approx(16.8).margin(1e-9));
}

TEST_CASE("Help is called when the rest of the remedies is not worth trying") {
    // Checks B4 and B4b. Result: Lin 2014/2015 (read: abstract); numbers worked over all subsets and orders.
    // The remedies work only sometimes: the share that does not is a hopeless hypothesis.
    const std::vector<double> weights = {0.27, 0.2, 0.19, 0.075, 1 - 0.27 - 0.2 - 0.19 - 0.075};
    RepairModel model = one_action_each({6, 2, 10, 1}, 40);
    model.needs.push_back({{}, true});
    const RepairPlan dear_help = plan_of(model, weights);
    CHECK(dear_help.order == std::vector<int>{1, 3, 0, 2});
    CHECK(dear_help.minutes == Approx(22.3).margin(1e-9));
    CHECK(minutes_of(model, {}, weights) == Approx(40).margin(1e-9));
    CHECK(minutes_of(model, {1}, weights) == Approx(34).margin(1e-9));
    CHECK(minutes_of(model, {1, 3}, weights) == Approx(31.8).margin(1e-9));
    CHECK(minutes_of(model, {1, 3, 0}, weights) == Approx(25.35).margin(1e-9));

    model.call_for_help = 22;
    const RepairPlan cheap_help = plan_of(model, weights);
    CHECK(cheap_help.order == std::vector<int>{1, 3, 0});
    CHECK(cheap_help.minutes == Approx(17.16).margin(1e-9));
    CHECK(minutes_of(model, {1, 3, 0, 2}, weights) == Approx(17.53).margin(1e-9));
}

TEST_CASE("With several independent faults the remedies go by odds over cost") {
    // Check B9. Setting: Srinivas, UAI 1995 (read: summary); sort rule by pairwise exchange; all 6 orders.
    const double p[] = {0.2, 0.1, 0.3};
    RepairModel model;
    model.actions = {{5, -1, {}}, {1, -1, {}}, {4, -1, {}}};
    model.call_for_help = 1000;
    std::vector<double> weights;
    for (unsigned bits = 1; bits < 8; ++bits) {
        RepairNeed need;
        double weight = 1 / (1 - 0.8 * 0.9 * 0.7);
        for (int i = 0; i < 3; ++i) {
            const bool present = (bits >> i & 1) != 0;
            weight *= present ? p[i] : 1 - p[i];
            if (present) need.actions.push_back(i);
        }
        model.needs.push_back(need);
        weights.push_back(weight);
    }
    const RepairPlan plan = plan_of(model, weights);
    CHECK(plan.order == std::vector<int>{1, 2, 0});
    CHECK(plan.minutes == Approx(6.564516129).margin(1e-9));
    CHECK(minutes_of(model, {0, 1, 2}, weights) == Approx(8.1653225806).margin(1e-9));
    CHECK(minutes_of(model, {0, 2, 1}, weights) == Approx(8.185483871).margin(1e-9));
    CHECK(minutes_of(model, {1, 0, 2}, weights) == Approx(7.8548387097).margin(1e-9));
    CHECK(minutes_of(model, {2, 0, 1}, weights) == Approx(7.0241935484).margin(1e-9));
    CHECK(minutes_of(model, {2, 1, 0}, weights) == Approx(6.5806451613).margin(1e-9));
}

TEST_CASE("When two faults are certainly there together, both remedies are planned") {
    RepairModel model;
    model.actions = {{10, -1, {}}, {20, -1, {}}, {1, -1, {}}};
    model.needs = {{{0, 1}, false}};
    model.call_for_help = 240;
    const RepairPlan plan = plan_of(model, {1});
    CHECK(plan.order == std::vector<int>{0, 1});
    CHECK(plan.minutes == Approx(30));
}

TEST_CASE("A question is worth the minutes its answers save") {
    // Check B5: own example there; method Heckerman 1995, Breese & Heckerman 1996. Action a4 mends its fault
    // in nine of ten: the tenth is a hopeless hypothesis that answers alike.
    const FaultNetwork network =
        questions(5, {{0.9, 0.1, 0.1, 0.5, 0.5}, {0.05, 0.9, 0.2, 0.3, 0.3}}, {0, 0});
    RepairModel model = one_action_each({10, 8, 5, 12}, 50);
    model.needs.push_back({{}, true});
    const std::vector<Hypothesis> faults = {
        {{0}, false, 0.4}, {{1}, false, 0.3}, {{2}, false, 0.2}, {{3}, false, 0.09}, {{4}, false, 0.01}};
    Outlook outlook(decision_for(network, faults, model, asked({1, 2})));
    CHECK(outlook.plan().order == std::vector<int>{0, 2, 1, 3});
    CHECK(outlook.plan().minutes == Approx(17.9).margin(1e-9));
    CHECK(1 + outlook.minutes_after({0}) == Approx(14.92).margin(1e-9));
    CHECK(2 + outlook.minutes_after({1}) == Approx(15.856).margin(1e-9));
    // The best policy of all takes 14.7815 minutes; so small a case is solved.
    CHECK(best_of(outlook) == Approx(14.7815).margin(1e-9));
}

TEST_CASE("Two answers that only together tell the causes apart are found by looking two steps ahead") {
    // Check B6 ("XOR pair"): own example there, exact.
    const FaultNetwork network = questions(4, {{1, 1, 0, 0}, {1, 0, 1, 0}}, {0, 0});
    RepairModel model;
    model.actions = {{10, -1, {}}, {10, -1, {}}};
    model.needs = {{{0}, false}, {{1}, false}, {{1}, false}, {{0}, false}};
    model.call_for_help = 100;
    const std::vector<Hypothesis> faults = {
        {{0}, false, 0.25}, {{1}, false, 0.25}, {{2}, false, 0.25}, {{3}, false, 0.25}};
    Outlook outlook(decision_for(network, faults, model, asked({1, 1})));
    CHECK(outlook.plan().minutes == Approx(15).margin(1e-9));
    CHECK(outlook.minutes_after({0}) == Approx(15).margin(1e-9));
    CHECK(outlook.minutes_after({1}) == Approx(15).margin(1e-9));
    CHECK(outlook.minutes_after({0, 1}) == Approx(10).margin(1e-9));
    CHECK(best_of(outlook) == Approx(12).margin(1e-9));
}

TEST_CASE("With several faults possible a question is still worth what the exact sum says") {
    // Check B13: own example there, 3 causes, 2 questions, something is wrong; exact.
    FaultNetwork network = questions(3, {{0.9, 0, 0}, {0, 0.8, 0.7}}, {0.05, 0.1});
    const double p[] = {0.2, 0.1, 0.3};
    RepairModel model;
    model.actions = {{5, -1, {}}, {1, -1, {}}, {4, -1, {}}};
    model.call_for_help = 1000;
    std::vector<Hypothesis> faults;
    for (unsigned bits = 1; bits < 8; ++bits) {
        Hypothesis hypothesis;
        hypothesis.probability = 1 / (1 - 0.8 * 0.9 * 0.7);
        for (int i = 0; i < 3; ++i) {
            const bool present = (bits >> i & 1) != 0;
            hypothesis.probability *= present ? p[i] : 1 - p[i];
            if (present) hypothesis.causes.push_back(i);
        }
        model.needs.push_back({hypothesis.causes, false});
        faults.push_back(hypothesis);
    }
    Outlook outlook(decision_for(network, faults, model, asked({0.5, 0.5})));
    CHECK(outlook.plan().minutes == Approx(6.564516129).margin(1e-9));
    CHECK(0.5 + outlook.minutes_after({0}) == Approx(5.9620362903).margin(1e-9));
    CHECK(0.5 + outlook.minutes_after({1}) == Approx(6.558266129).margin(1e-9));
}

TEST_CASE("The bits a question tells agree with the joint entropy it takes away") {
    // Check A11: network A7 after f0 is bad (fractions and log2); the sets of faults as hypotheses.
    FaultNetwork network;
    const double leaks[] = {0.01, 0.02, 0.05, 0.01};
    for (double leak : leaks) network.findings.push_back({{leak, 1 - leak}, {0, 1}});
    network.causes = {{{0, {0.8, 0.2}}, {1, {0.3, 0.7}}},
                      {{1, {0.7, 0.3}}, {2, {0.5, 0.5}}},
                      {{0, {0.6, 0.4}}, {2, {0.9, 0.1}}},
                      {{3, {0.9, 0.1}}, {0, {0.2, 0.8}}}};
    FaultCase given;
    given.prior = {0.05, 0.10, 0.02, 0.04};
    given.likelihood = {{1, 0}, {}, {}, {}};
    std::vector<Hypothesis> faults;
    RepairModel model;
    for (const WeighedSet& set : heaviest_sets(network, given, 256)) {
        faults.push_back({set.causes, false, std::exp(set.log_weight)});
        model.needs.push_back({{}, true});
    }
    const Outlook outlook(decision_for(network, faults, model, asked({1, 1, 1, 1})));
    CHECK(outlook.information(1) == Approx(0.203595435).margin(1e-7));
    CHECK(outlook.information(2) == Approx(0.431859253).margin(1e-7));
    CHECK(outlook.information(3) == Approx(0.445996655).margin(1e-7));
}

TEST_CASE("A test in the middle of a chain of eight tells most") {
    // Check B12 (half-split): classic; computed.
    const FaultNetwork network = questions(
        8, {{1, 1, 1, 1, 0, 0, 0, 0}, {1, 0, 0, 0, 0, 0, 0, 0}, {1, 1, 0, 0, 0, 0, 0, 0}}, {0, 0, 0});
    std::vector<Hypothesis> faults;
    RepairModel model;
    for (int i = 0; i < 8; ++i) {
        faults.push_back({{i}, false, 0.125});
        model.needs.push_back({{}, true});
    }
    const Outlook outlook(decision_for(network, faults, model, asked({1, 1, 1})));
    CHECK(outlook.information(0) == Approx(1).margin(1e-9));
    CHECK(outlook.information(1) == Approx(0.5435644432).margin(1e-9));
    CHECK(outlook.information(2) == Approx(0.8112781245).margin(1e-9));
}
