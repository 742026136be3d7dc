// What a cause comes from is dealt with before it: left in place, it would bring it back.
#include <catch2/catch.hpp>

#include "rules/reasoning/assessment.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A garden pump whose strainer is proved to be blocked: by leaves, or because the wall of the well is broken
// and sheds sand. The wall is seen from above; sand in the water speaks for it.
struct Well {
    Knowledge knowledge = empty_knowledge();
    Index flow, strainer_seen, sand, wall_seen;
    Index clogged, wall_broken;
    Facts facts;

    explicit Well(bool sandy) {
        knowledge.settings.not_listed_odds = 1;
        flow = add_finding(knowledge, "flow", {"none", "full"});
        strainer_seen = add_finding(knowledge, "strainer_seen", {"dirty", "clean"});
        sand = add_finding(knowledge, "sand", {"sandy", "clear"});
        wall_seen = add_finding(knowledge, "wall_seen", {"broken", "whole"});
        clogged =
            add_cause(knowledge, "clogged", 300, {{flow, {0.9, 0.1}}, {strainer_seen, {0.97, 0.03}}}, 40);
        wall_broken =
            add_cause(knowledge, "wall_broken", 30, {{sand, {0.8, 0.2}}, {wall_seen, {0.9, 0.1}}}, 200);
        prove(knowledge, clogged, add_check(knowledge, "lift_strainer", 5, {strainer_seen}),
              "strainer_seen is dirty");
        prove(knowledge, wall_broken, add_check(knowledge, "look_down", 5, {wall_seen}),
              "wall_seen is broken");
        knowledge.causes[static_cast<std::size_t>(clogged)].comes_from = {wall_broken};
        facts.history = 0;
        facts.answers[flow] = {0};
        facts.answers[strainer_seen] = {0};
        facts.answers[sand] = {sandy ? 0 : 1};
    }

    NextStep next() const { return assess(knowledge, facts).next; }
};

}  // namespace

TEST_CASE("Before a proved cause is put right, what it likely comes from is looked for") {
    Well well(true);
    const NextStep look = well.next();
    CHECK(look.kind == NextStep::Kind::prove);
    CHECK(look.cause == well.wall_broken);
    CHECK(look.ahead_of == well.clogged);

    SECTION("found, it is put right first") {
        well.facts.answers[well.wall_seen] = {0};
        const NextStep first = well.next();
        CHECK(first.kind == NextStep::Kind::remedy);
        CHECK(first.cause == well.wall_broken);
        CHECK(first.ahead_of == well.clogged);
        well.facts.tried[first.index] = Outcome::better;
        CHECK(well.next().cause == well.clogged);
    }
    SECTION("not found, the cause itself is put right") {
        well.facts.answers[well.wall_seen] = {1};
        const NextStep first = well.next();
        CHECK(first.kind == NextStep::Kind::remedy);
        CHECK(first.cause == well.clogged);
        CHECK(first.ahead_of == none);
    }
}

TEST_CASE("What a cause hardly ever comes from is not looked for: the look costs more than it saves") {
    const NextStep next = Well(false).next();
    CHECK(next.kind == NextStep::Kind::remedy);
    CHECK(next.cause == 0);
}

TEST_CASE("Without the word that one comes from the other the order is the plan's") {
    Well well(true);
    well.facts.answers[well.wall_seen] = {0};
    well.knowledge.causes[static_cast<std::size_t>(well.clogged)].comes_from.clear();
    CHECK(well.next().ahead_of == none);
}

TEST_CASE("Work that puts right what a cause brought about as well leaves nothing of that to be done") {
    Well well(true);
    well.facts.answers[well.wall_seen] = {0};
    const NextStep apart = well.next();
    REQUIRE(apart.cause == well.wall_broken);
    well.knowledge.remedies[static_cast<std::size_t>(apart.index)].also_cures = {well.clogged};
    const NextStep at_once = well.next();
    CHECK(at_once.index == apart.index);
    CHECK(at_once.minutes_after < apart.minutes_after);
    well.facts.tried[apart.index] = Outcome::cured;
    for (const RankedCause& cause : assess(well.knowledge, well.facts).ranking) CHECK(cause.put_right);
}
