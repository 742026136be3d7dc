// What rules want asked comes first where it can still change what is done, and setting up is paid once.
#include <algorithm>
#include <catch2/catch.hpp>
#include <utility>

#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/roll_out.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A lamp that stays dark: bulb (quick) or wiring (long), about equally likely. A glance at the glass tells
// little; taking the bulb out proves it, opening the conduit proves the wiring.
struct Lamp {
    Knowledge knowledge = empty_knowledge();
    Index dark, glass, colour, bulb_seen, wire_seen, bulb, wire;
    Facts facts;

    explicit Lamp(double glass_minutes = 1) {
        dark = add_finding(knowledge, "dark", {"dark", "bright"});
        glass = add_finding(knowledge, "glass", {"black", "clear"}, 0.02, glass_minutes);
        colour = add_finding(knowledge, "colour", {"faded", "fresh"});
        bulb_seen = add_finding(knowledge, "bulb_seen", {"broken", "whole"});
        wire_seen = add_finding(knowledge, "wire_seen", {"broken", "whole"});
        add_check(knowledge, "take_bulb_out", 4, {bulb_seen});
        add_check(knowledge, "open_conduit", 30, {wire_seen});
        bulb = add_cause(knowledge, "bulb", 100,
                         {{dark, {0.9, 0.1}}, {glass, {0.06, 0.94}}, {bulb_seen, {0.97, 0.03}}}, 6);
        wire = add_cause(knowledge, "wire", 100, {{dark, {0.9, 0.1}}, {wire_seen, {0.97, 0.03}}}, 90);
        prove(knowledge, bulb, 0, "bulb_seen is broken");
        prove(knowledge, wire, 1, "wire_seen is broken");
        facts.history = 0;
        facts.answers[dark] = {0};
    }

    NextStep next() const { return assess(knowledge, facts).next; }
};

}  // namespace

TEST_CASE("A rule's question that cannot change what is done is left out, however cheap") {
    Lamp lamp;
    add_rule(lamp.knowledge, "r_colour", "dark is dark", {action(Action::Kind::ask, lamp.colour)});
    CHECK(lamp.next().asked_by == none);
}

TEST_CASE("A rule's cheap question comes first although it saves nothing") {
    Lamp lamp;
    const Assessment plain = assess(lamp.knowledge, lamp.facts);
    const auto asks_for_glass = [&](const NextStep& step) {
        return step.kind == NextStep::Kind::ask && step.index == lamp.glass;
    };
    // Nobody who counts minutes would ask it, neither first nor later.
    REQUIRE_FALSE(asks_for_glass(plain.next));
    REQUIRE(std::none_of(plain.also.begin(), plain.also.end(), asks_for_glass));
    add_rule(lamp.knowledge, "r_glass", "dark is dark", {action(Action::Kind::ask, lamp.glass)});
    const Assessment ruled = assess(lamp.knowledge, lamp.facts);
    CHECK(asks_for_glass(ruled.next));
    CHECK(ruled.next.asked_by == 0);
    CHECK(ruled.minutes_left > plain.minutes_left);
}

TEST_CASE("A rule's question that saves nothing is left out when it takes long") {
    Lamp lamp(6);
    add_rule(lamp.knowledge, "r_glass", "dark is dark", {action(Action::Kind::ask, lamp.glass)});
    CHECK(lamp.next().asked_by == none);
}

TEST_CASE("Beside a step three times as long a rule's question is cheap") {
    for (const auto& [minutes, asked_by] : {std::pair<double, Index>{70, 0}, {90, none}}) {
        Lamp lamp(minutes);
        lamp.knowledge.checks[0].minutes = 60;
        lamp.knowledge.checks[1].minutes = 80;
        lamp.knowledge.remedies[0].minutes = 150;  // whatever comes next is long work
        const Assessment plain = assess(lamp.knowledge, lamp.facts);
        REQUIRE(plain.next.minutes == Approx(240));
        REQUIRE(std::none_of(plain.also.begin(), plain.also.end(), [&](const NextStep& step) {
            return step.kind == NextStep::Kind::ask && step.index == lamp.glass;
        }));
        add_rule(lamp.knowledge, "r_glass", "dark is dark", {action(Action::Kind::ask, lamp.glass)});
        CHECK(lamp.next().asked_by == asked_by);
    }
}

TEST_CASE("What an open check can tell is asked before what another rule wants seen elsewhere") {
    Lamp lamp;
    const Index socket = add_finding(lamp.knowledge, "socket", {"scorched", "clean"});
    const Index base = add_finding(lamp.knowledge, "base", {"loose", "tight"});
    for (Index found : {socket, base}) {
        lamp.knowledge.checks[0].gets.push_back(found);
        lamp.knowledge.findings[static_cast<std::size_t>(found)].check = 0;
    }
    lamp.knowledge.causes[static_cast<std::size_t>(lamp.wire)].shows.push_back({socket, {0.5, 0.5}});
    add_rule(lamp.knowledge, "r_glass", "dark is dark", {action(Action::Kind::ask, lamp.glass)});
    lamp.knowledge.causes[static_cast<std::size_t>(lamp.bulb)].shows[1].how_often = {0.4, 0.6};
    lamp.facts.answers[base] = {1};  // the bulb is out
    REQUIRE(lamp.next().asked_by == 0);
    add_rule(lamp.knowledge, "r_socket", "dark is dark", {action(Action::Kind::ask, socket)});
    CHECK(lamp.next().asked_by == 1);
    CHECK(lamp.next().findings.front() == socket);
    lamp.facts.answers.erase(base);  // and now it is not
    CHECK(lamp.next().asked_by == 0);
}

TEST_CASE("A rule's question that is answered is not asked again") {
    Lamp lamp;
    add_rule(lamp.knowledge, "r_bulb", "dark is dark", {action(Action::Kind::ask, lamp.bulb_seen)});
    CHECK(lamp.next().asked_by == 0);
    lamp.facts.answers[lamp.bulb_seen] = {CannotTell{}};
    CHECK(lamp.next().asked_by == none);
}

TEST_CASE("A proved cause waits for a rule's question that may prove another likely cause") {
    Lamp lamp;
    lamp.facts.answers[lamp.bulb_seen] = {0};
    CHECK(lamp.next().kind == NextStep::Kind::remedy);
    // Both at once are likely: the wiring is known to burn bulbs.
    for (Cause& cause : lamp.knowledge.causes) cause.odds = {280};
    add_rule(lamp.knowledge, "r_wire", "bulb_seen is broken", {action(Action::Kind::ask, lamp.wire_seen)});
    const Assessment assessment = assess(lamp.knowledge, lamp.facts);
    REQUIRE(assessment.ranking.front().proved);
    REQUIRE(assessment.ranking[1].cause == lamp.wire);
    REQUIRE(assessment.ranking[1].probability >= 0.1);
    CHECK(assessment.next.asked_by == 0);
    CHECK(assessment.next.findings == std::vector<Index>{lamp.wire_seen});
    // Not for a cause that is hardly likely any more.
    lamp.knowledge.causes[static_cast<std::size_t>(lamp.wire)].odds = {2};
    CHECK(lamp.next().kind == NextStep::Kind::remedy);
}

TEST_CASE("When help costs less than any remedy is worth, it is time to stop asking") {
    Lamp lamp;
    lamp.knowledge.settings.call_for_help = 3;
    const Assessment assessment = assess(lamp.knowledge, lamp.facts);
    CHECK(assessment.next.kind == NextStep::Kind::stop_asking);
    CHECK(assessment.minutes_left == Approx(3));
}

TEST_CASE("Proofs of one check share its setting up, and a question of the check pays it for them") {
    RepairModel model;
    model.call_for_help = 500;
    model.actions = {{60, 22, {}, 0, 20}, {80, 23, {}, 0, 20}};
    model.needs = {{{0}, false}, {{1}, false}};
    const FaultNetwork network{{{}, {{0, {0.5, 0.5}}}}, {{{0.1, 0.9}, {0, 1}}}};
    const std::vector<Hypothesis> faults = {{{0}, false, 0.6}, {{1}, false, 0.4}};
    Outlook outlook(decision_for(network, faults, model, {{0, 0, 20, 1}}));
    // First proof 22; the second, where the first finds nothing, 3; each remedy where its fault is.
    CHECK(outlook.plan().order == std::vector<int>{0, 1});
    CHECK(outlook.plan().minutes == Approx(22 + 0.6 * 60 + 0.4 * (3 + 80)));
    CHECK(outlook.asking(outlook.start(), 0) == Approx(21));
    Position after;
    outlook.act(outlook.start(), 0, after);
    CHECK(outlook.asking(after, 0) == Approx(1));
    CHECK(outlook.acting(after, 1) == Approx(0.4 * (3 + 80)));
    outlook.ask(outlook.start(), 0, after);
    outlook.take_answer(outlook.start(), 0, 0, after);
    CHECK(outlook.acting(after, 0) == Approx(after.mass * 2 + 60 * 0.6 * 0.1));
}
