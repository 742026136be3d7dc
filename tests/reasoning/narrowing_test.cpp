// One more look before the work: when it is taken, when not, and what an answer tells of a doubt.
#include <algorithm>
#include <catch2/catch.hpp>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/narrowing.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A garden pump that gives no water. Three faults are common and the first is proved; a fourth is rare, and a
// kink in the hose is seen at a glance.
struct Pump {
    Knowledge knowledge = empty_knowledge();
    Index flow, strainer_seen, colour, hose_seen;
    Index clogged, kinked;
    Facts facts;

    explicit Pump(double rare_odds, double minutes_to_look = 1) {
        knowledge.settings.not_listed_odds = 1;
        flow = add_finding(knowledge, "flow", {"none", "full"});
        strainer_seen = add_finding(knowledge, "strainer_seen", {"dirty", "clean"}, 0.3);
        colour = add_finding(knowledge, "colour", {"faded", "fresh"});
        hose_seen = add_finding(knowledge, "hose_seen", {"kinked", "round"});
        knowledge.findings[static_cast<std::size_t>(hose_seen)].minutes = minutes_to_look;
        clogged =
            add_cause(knowledge, "clogged", 300, {{flow, {0.9, 0.1}}, {strainer_seen, {0.97, 0.03}}}, 20);
        add_cause(knowledge, "worn", 30, {{flow, {0.9, 0.1}}, {strainer_seen, {0.2, 0.8}}}, 120);
        add_cause(knowledge, "dry", 30, {{flow, {0.9, 0.1}}, {strainer_seen, {0.2, 0.8}}}, 120);
        kinked =
            add_cause(knowledge, "kinked", rare_odds, {{flow, {0.9, 0.1}}, {hose_seen, {0.95, 0.05}}}, 10);
        prove(knowledge, clogged, add_check(knowledge, "look_at_strainer", 14, {strainer_seen}),
              "strainer_seen is dirty");
        facts.history = 0;
        facts.answers[flow] = {0};
        facts.answers[strainer_seen] = {0};
    }
};

// Four causes: the first three are kept in mind, the fourth is beyond; and something that is not on the list.
struct Four {
    std::vector<Hypothesis> hypotheses = std::vector<Hypothesis>(5);
    std::vector<RankedCause> ranked = std::vector<RankedCause>(4);

    Four() {
        for (int c = 0; c < 4; ++c) {
            hypotheses[static_cast<std::size_t>(c)].causes = {c};
            ranked[static_cast<std::size_t>(c)].cause = c;
        }
        hypotheses[4].unlisted = true;
    }
};

}  // namespace

TEST_CASE("Before a proved cause is put right, a glance is given to the rare one it may be after all") {
    Pump pump(60);
    const Assessment before = assess(pump.knowledge, pump.facts);
    REQUIRE(before.next.kind == NextStep::Kind::ask);
    CHECK(before.next.index == pump.hose_seen);
    CHECK(before.next.narrows);

    pump.facts.answers[pump.hose_seen] = {1};
    const Assessment after = assess(pump.knowledge, pump.facts);
    CHECK(after.next.kind == NextStep::Kind::remedy);
    CHECK(after.next.cause == pump.clogged);
    CHECK_FALSE(after.next.narrows);
}

TEST_CASE("A cause in the last percent of the odds is still worth a glance before the work") {
    const Pump pump(4);
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    const auto kinked = std::find_if(assessment.ranking.begin(), assessment.ranking.end(),
                                     [&](const RankedCause& ranked) { return ranked.cause == pump.kinked; });
    REQUIRE(kinked->probability < 0.01);
    CHECK(assessment.next.narrows);
    CHECK(assessment.next.index == pump.hose_seen);
}

TEST_CASE("A look that takes long, or after what hardly ever happens, does not hold up the work") {
    for (const Pump& pump : {Pump(60, 4000), Pump(0.01)}) {
        const Assessment assessment = assess(pump.knowledge, pump.facts);
        CHECK(assessment.next.kind == NextStep::Kind::remedy);
        CHECK(assessment.next.cause == pump.clogged);
    }
}

TEST_CASE("With no more causes than a technician keeps in mind there is no other to look for") {
    Pump pump(60);
    pump.knowledge.causes.erase(pump.knowledge.causes.begin() + 1);
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.next.kind == NextStep::Kind::remedy);
}

TEST_CASE("Of two looks the one that tells more a minute is taken") {
    const Four four;
    Decision decision;
    decision.weights = {0.6, 0.2, 0.1, 0.05, 0.05};
    decision.questions = {{0, -1, 0, 1}, {1, -1, 0, 1}, {2, -1, 0, 8}, {3, -1, 0, 1}};
    const std::vector<double> sorts_the_first_three{0.9, 0.3, 0.3, 0.69, 0.0, 0.1, 0.7, 0.7, 0.31, 1.0};
    decision.chances = {
        {0.2, 0.2, 0.2, 0.6, 0.2, 0.8, 0.8, 0.8, 0.4, 0.8},  // tells a little
        {0.1, 0.1, 0.1, 0.9, 0.1, 0.9, 0.9, 0.9, 0.1, 0.9},  // tells more
        {0.0, 0.0, 0.0, 1.0, 0.0, 1.0, 1.0, 1.0, 0.0, 1.0},  // tells all, in eight minutes
        sorts_the_first_three,
    };
    CHECK(narrowing_question(decision, four.hypotheses, four.ranked, Before::remedy) == 1);
    decision.questions[2].minutes = 2;
    CHECK(narrowing_question(decision, four.hypotheses, four.ranked, Before::remedy) == 2);
    decision.questions = {decision.questions[3]};
    decision.chances = {sorts_the_first_three};
    CHECK_FALSE(narrowing_question(decision, four.hypotheses, four.ranked, Before::remedy));
}

TEST_CASE("Before help is called a look is worth more: whoever comes starts from the list") {
    const Four four;
    Decision decision;
    decision.questions = {{0, -1, 0, 20}};
    decision.chances = {{0.1, 0.1, 0.1, 0.9, 0.1, 0.9, 0.9, 0.9, 0.1, 0.9}};
    // Something unlisted has nearly all of it.
    decision.weights = {0.001, 0.001, 0.001, 0.001, 0.996};
    CHECK(narrowing_question(decision, four.hypotheses, four.ranked, Before::help) == 0);
    CHECK_FALSE(narrowing_question(decision, four.hypotheses, four.ranked, Before::remedy));
}

TEST_CASE(
    "The look before help is for a boat nothing was tried on, after a remedy for nothing help comes at "
    "once") {
    Pump pump(7, 320);
    pump.facts.answers.erase(pump.strainer_seen);
    const Index split = add_cause(pump.knowledge, "split", 0.1, {{pump.flow, {0.9, 0.1}}});
    pump.knowledge.causes[0].odds = {9};
    pump.knowledge.causes[1].odds = pump.knowledge.causes[2].odds = {8};
    // Of the pumps that come back nearly all have something else.
    pump.knowledge.settings.not_listed_odds = 900;
    pump.knowledge.settings.call_for_help = 30;
    for (Remedy& remedy : pump.knowledge.remedies) remedy.minutes = 3000;
    pump.knowledge.causes.front().proof = none;
    pump.knowledge.findings[static_cast<std::size_t>(pump.strainer_seen)].minutes = 4000;
    pump.knowledge.checks.front().minutes = 4000;

    const Assessment untouched = assess(pump.knowledge, pump.facts);
    REQUIRE(untouched.next.kind == NextStep::Kind::ask);
    CHECK(untouched.next.index == pump.hose_seen);
    CHECK(untouched.next.narrows);

    pump.facts.tried[pump.knowledge.causes[static_cast<std::size_t>(split)].remedy] = Outcome::not_cured;
    CHECK(assess(pump.knowledge, pump.facts).next.kind == NextStep::Kind::stop_asking);
}

// T. M. Cover and J. A. Thomas, Elements of Information Theory, 2nd ed. 2006, section 7.1.4: a
// binary symmetric channel carries 1 - H(p) bits of a fair coin's one bit, for p = 0.11 half a bit. From
// memory.
TEST_CASE("What an answer tells is the mutual information of the textbooks") {
    CHECK(share_told(0.5, {0.89, 0.11}, {0.11, 0.89}) == Approx(0.5).margin(1e-3));
    CHECK(share_told(0.5, {1, 0}, {0, 1}) == Approx(1));
    CHECK(share_told(0.2, {0.7, 0.3}, {0.7, 0.3}) == Approx(0).margin(1e-12));
}
