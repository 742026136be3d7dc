// Which rules fire: three-valued conditions, derived facts, worksheets, complaints, what was assumed.
#include <algorithm>
#include <catch2/catch.hpp>
#include <random>
#include <set>

#include "chance.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/situation.hpp"
#include "rules/reasoning/worksheets.hpp"
#include "shipped_worksheets.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Findings a to e that are seen or not.
Knowledge letters() {
    Knowledge knowledge = empty_knowledge();
    for (const char* id : {"a", "b", "c", "d", "e"}) add_finding(knowledge, id, {"seen", "not_seen"});
    return knowledge;
}

const Answer seen{0};
const Answer not_seen{1};

std::set<std::string> true_facts(const Assessment& assessment) {
    std::set<std::string> facts;
    for (const auto& [fact, holds] : assessment.derived) {
        if (holds) facts.insert(fact);
    }
    return facts;
}

bool fires(const std::string& when, const Facts& facts) {
    Knowledge knowledge = letters();
    add_rule(knowledge, "r", when, {derive("result")});
    return !assess(knowledge, facts).fired.empty();
}

// x: a and b; c_derived: d; y: x and not c_derived; z: y and e; w: x.
Knowledge chained(const std::vector<int>& order) {
    Knowledge knowledge = letters();
    for (const char* fact : {"x", "y", "z", "w", "c_derived"}) {
        Rule rule;
        rule.then = {derive(fact)};
        knowledge.rules.push_back(rule);
    }
    const Names names(knowledge);
    const std::vector<std::pair<std::string, std::string>> rules = {
        {"a is seen and b is seen", "x"},
        {"fact.x and not fact.c_derived", "y"},
        {"d is seen", "c_derived"},
        {"fact.y and e is seen", "z"},
        {"fact.x", "w"},
    };
    knowledge.rules.clear();
    for (int n : order) {
        Rule rule;
        rule.id = rules[static_cast<std::size_t>(n)].second;
        rule.when = condition(names, rules[static_cast<std::size_t>(n)].first);
        rule.then = {derive(rules[static_cast<std::size_t>(n)].second)};
        knowledge.rules.push_back(rule);
    }
    return knowledge;
}

// turns = volume / displacement, as a worksheet with a rig field that may be assumed, and a finding read off
// it.
struct Turns {
    Knowledge knowledge = empty_knowledge();
    Index counted, excess;
    Facts facts;

    Turns() {
        RigField expected;
        expected.id = "expected_turns";
        expected.unit = unit("turns");
        expected.assumed = quantity("4 turns");
        knowledge.rig_fields.push_back(expected);
        counted = add_finding(knowledge, "counted", {});
        knowledge.findings[0].unit = unit("turns");
        knowledge.findings[0].spread = quantity("0.1 turns").value;
        excess = add_finding(knowledge, "excess", {"many_more", "more", "as_expected"});
        Worksheet sheet;
        sheet.id = "turns_count";
        WorksheetInput from_rig{"expected", "Turns expected", unit("turns"), 0, none, 0, {}};
        WorksheetInput from_finding{"counted", "Turns counted", unit("turns"), none, counted, 0, {}};
        sheet.inputs = {from_rig, from_finding};
        sheet.results.push_back({"excess", "Turns too many", unit("count"), {}});
        const Names inside(sheet);
        const Result<Expression> formula =
            read_formula("counted / expected", inside, Functions(), unit("count").dimension, {});
        REQUIRE_OK(formula);
        sheet.results[0].formula = formula.value();
        sheet.holds_when.push_back({condition(inside, "counted > 0 turns"), "Count the turns first."});
        sheet.advice.push_back({condition(inside, "excess > 1.1"), "Look for a leak past the piston."});
        knowledge.worksheets.push_back(sheet);
        Finding& read_off = knowledge.findings[1];
        read_off.unit = unit("count");
        read_off.from = WorksheetResultRef{0, 0};
        read_off.readings[0].limit = quantity("1.3");
        read_off.readings[1].limit = quantity("1.12");
        add_cause(knowledge, "leaks_past", 100, {{excess, {0.6, 0.3, 0.1}}});
        add_cause(knowledge, "something_else", 100, {}, 200);
        facts.history = 0;
    }

    void count(const std::string& turns) { facts.answers[counted] = {quantity(turns)}; }
};

}  // namespace

TEST_CASE("A rule fires only on yes, in strong three-valued logic") {
    // Check D1. Source: Kleene 1952, the tables of and, or and not.
    Facts facts;  // a: no, b: unknown, c: yes
    facts.answers[0] = not_seen;
    facts.answers[2] = seen;
    const std::string no = "a is seen";
    const std::string unknown = "b is seen";
    const std::string yes = "c is seen";
    CHECK_FALSE(fires(no, facts));
    CHECK_FALSE(fires(unknown, facts));
    CHECK(fires(yes, facts));
    CHECK(fires("not " + no, facts));
    CHECK_FALSE(fires("not " + unknown, facts));
    CHECK_FALSE(fires(yes + " and " + unknown, facts));
    CHECK_FALSE(fires("not (" + yes + " and " + unknown + ")", facts));
    CHECK(fires("not (" + no + " and " + unknown + ")", facts));
    CHECK(fires(yes + " or " + unknown, facts));
    CHECK_FALSE(fires(no + " or " + unknown, facts));
    CHECK_FALSE(fires(unknown + " or not " + unknown, facts));
}

TEST_CASE("A fact is not denied while it is not known, whatever the order of the rules") {
    // Check D2: own example there; expected are the facts that hold at the end.
    std::vector<int> order = {0, 1, 2, 3, 4};
    std::mt19937 engine(7);
    for (int shuffle = 0; shuffle < 20; ++shuffle) {
        const Knowledge knowledge = chained(order);
        Facts facts;
        facts.answers = {{0, seen}, {1, seen}, {4, seen}, {3, not_seen}};
        CHECK(true_facts(assess(knowledge, facts)) == std::set<std::string>{"w", "x", "y", "z"});
        Facts d_unknown = facts;
        d_unknown.answers.erase(3);
        CHECK(true_facts(assess(knowledge, d_unknown)) == std::set<std::string>{"w", "x"});
        Facts d_seen = facts;
        d_seen.answers[3] = seen;
        CHECK(true_facts(assess(knowledge, d_seen)) == std::set<std::string>{"c_derived", "w", "x"});
        Facts b_taken_back = facts;
        b_taken_back.answers.erase(1);
        CHECK(true_facts(assess(knowledge, b_taken_back)).empty());
        std::shuffle(order.begin(), order.end(), engine);
    }
}

TEST_CASE("A fact that no rule can derive any more is settled as not so") {
    Facts facts;
    facts.answers = {{0, seen}, {1, not_seen}};
    const Assessment assessment = assess(chained({0, 1, 2, 3, 4}), facts);
    CHECK(assessment.derived.at("x") == false);
    CHECK(assessment.derived.at("w") == false);
    CHECK(assessment.derived.count("c_derived") == 0);
}

TEST_CASE("A rule that would need its own result is unknown instead of running for ever") {
    Knowledge knowledge = letters();
    Rule rule;
    rule.id = "round";
    rule.then = {derive("round")};
    knowledge.rules.push_back(rule);
    knowledge.rules[0].when = condition(knowledge, "not fact.round");
    CHECK(assess(knowledge, Facts{}).fired.empty());
}

TEST_CASE("A fired rule names what it is based on and raises its cautions, deferrals and stops once") {
    Knowledge knowledge = letters();
    knowledge.cautions.resize(2);
    knowledge.stops.resize(1);
    knowledge.deferrals.resize(2);
    knowledge.deferrals[0].when = condition(knowledge, "e is seen");
    add_rule(knowledge, "first", "a is seen or b is seen",
             {action(Action::Kind::caution, 1), action(Action::Kind::defer, 0)});
    add_rule(knowledge, "second", "a is seen",
             {action(Action::Kind::caution, 1), action(Action::Kind::stop, 0)});
    add_rule(knowledge, "third", "c is seen", {action(Action::Kind::caution, 0)});
    Facts facts;
    facts.answers[0] = seen;
    const Assessment assessment = assess(knowledge, facts);
    REQUIRE(assessment.fired.size() == 2);
    CHECK(assessment.fired[0].because == std::vector<std::string>{"a"});
    CHECK(assessment.cautions == std::vector<Index>{1});
    CHECK(assessment.stops == std::vector<Index>{0});
    CHECK(assessment.deferrals == std::vector<Index>{0, 1});  // the second is always given
}

TEST_CASE("What the customer complains of counts as seen until the technician says otherwise") {
    Knowledge knowledge = letters();
    Complaint complaint;
    complaint.id = "wanders";
    complaint.says = {{0, 0}};
    knowledge.complaints.push_back(complaint);
    add_rule(knowledge, "r", "complaint is wanders and a is seen", {derive("x")});
    add_cause(knowledge, "cause", 100, {{0, {0.9, 0.1}}});
    Facts facts;
    CHECK(assess(knowledge, facts).evidence.empty());
    facts.complaints = {0};
    const Assessment complained = assess(knowledge, facts);
    CHECK(true_facts(complained).count("x") == 1);
    CHECK(complained.evidence.at(0) == std::vector<double>{1, 0});
    CHECK(complained.ranking[0].probability > complained.ranking[0].prior);
    facts.answers[0] = not_seen;
    CHECK(true_facts(assess(knowledge, facts)).empty());
    CHECK(assess(knowledge, facts).evidence.at(0) == std::vector<double>{0, 1});
    facts.answers[0] = {CannotTell{}};
    CHECK(assess(knowledge, facts).evidence.empty());
}

TEST_CASE("A worksheet is worked out from the rig and the measurements, and its result is evidence") {
    Turns turns;
    const Assessment before = assess(turns.knowledge, turns.facts);
    CHECK_FALSE(before.worksheets[0].complete());
    CHECK(before.evidence.empty());
    turns.count("6 turns");
    const Assessment after = assess(turns.knowledge, turns.facts);
    REQUIRE(after.worksheets[0].complete());
    CHECK(std::get<Quantity>(after.worksheets[0].results[0]).value == Approx(1.5));
    CHECK(after.worksheets[0].advice == std::vector<std::string>{"Look for a leak past the piston."});
    CHECK(after.evidence.at(turns.excess)[0] == 1);
    CHECK(after.evidence.at(turns.excess)[2] == Approx(0.01));
    CHECK(after.ranking[0].probability > after.ranking[0].prior + 0.1);
}

TEST_CASE("An assumed rig field is named, and a known one is not") {
    Turns turns;
    turns.count("6 turns");
    const Assessment assumed = assess(turns.knowledge, turns.facts);
    CHECK(assumed.assumed == std::vector<Index>{0});
    CHECK(assumed.worksheets[0].input_assumed == std::vector<bool>{true, false});
    turns.facts.rig[0] = quantity("6 turns");
    const Assessment known = assess(turns.knowledge, turns.facts);
    CHECK(known.assumed.empty());
    CHECK(known.worksheets[0].input_assumed == std::vector<bool>{false, false});
    CHECK(std::get<Quantity>(known.worksheets[0].results[0]).value == Approx(1));
    CHECK(known.evidence.at(turns.excess)[2] == 1);
}

TEST_CASE("The technician's own reading goes before what the worksheet says") {
    Turns turns;
    turns.count("6 turns");
    turns.facts.answers[turns.excess] = {2};
    CHECK(assess(turns.knowledge, turns.facts).evidence.at(turns.excess) == std::vector<double>{0, 0, 1});
}

TEST_CASE("A worksheet that does not hold for its inputs says why and gives nothing") {
    Turns turns;
    turns.count("0 turns");
    const Assessment assessment = assess(turns.knowledge, turns.facts);
    CHECK(assessment.worksheets[0].refused == "Count the turns first.");
    CHECK_FALSE(assessment.worksheets[0].complete());
    CHECK(assessment.evidence.empty());
}

TEST_CASE("A measurement near a threshold leaves two readings and fires no rule on either") {
    Turns turns;
    add_rule(turns.knowledge, "many", "excess is many_more", {derive("many")});
    add_rule(turns.knowledge, "not_sound", "excess is not as_expected", {derive("not_sound")});
    turns.count("5.2 turns ± 0.4 turns");
    const Assessment assessment = assess(turns.knowledge, turns.facts);
    const std::vector<double>& evidence = assessment.evidence.at(turns.excess);
    CHECK(evidence[0] == Approx(1).margin(0.02));
    CHECK(evidence[1] == Approx(1).margin(0.02));
    CHECK(evidence[2] < 0.02);
    CHECK(assessment.derived.count("many") == 0);
    CHECK(true_facts(assessment).count("not_sound") == 1);
}

TEST_CASE("A finding read off a worksheet is proposed through the measurements it still needs") {
    Turns turns;
    const Index check = add_check(turns.knowledge, "count_turns", 6, {turns.counted, turns.excess});
    turns.knowledge.findings[0].minutes = 3;
    const Assessment assessment = assess(turns.knowledge, turns.facts);
    REQUIRE(assessment.next.kind == NextStep::Kind::check);
    CHECK(assessment.next.index == check);
    CHECK(assessment.next.findings == std::vector<Index>{turns.counted});
    CHECK(assessment.next.minutes == Approx(9));
    turns.facts.answers[turns.counted] = {CannotTell{}};
    CHECK(assess(turns.knowledge, turns.facts).next.kind != NextStep::Kind::check);
}

TEST_CASE(
    "What a worksheet needs for other results does not keep a finding read off it from being proposed") {
    Turns turns;
    const Index check = add_check(turns.knowledge, "count_turns", 6, {turns.counted, turns.excess});
    Worksheet& sheet = turns.knowledge.worksheets[0];
    sheet.inputs.push_back({"wheel", "Wheel diameter", unit("in"), none, none, 0, {}});  // nothing tells it
    const Names inside(sheet);
    const Result<Expression> travel =
        read_formula("3 * wheel", inside, Functions(), unit("in").dimension, {});
    REQUIRE_OK(travel);
    sheet.results.push_back({"travel", "Rim travel", unit("in"), travel.value()});
    const NextStep next = assess(turns.knowledge, turns.facts).next;
    REQUIRE(next.kind == NextStep::Kind::check);
    CHECK(next.index == check);
    turns.count("6 turns");
    const Assessment after = assess(turns.knowledge, turns.facts);
    CHECK(std::get<Quantity>(after.worksheets[0].results[0]).value == Approx(1.5));
    CHECK(after.evidence.contains(turns.excess));
}

TEST_CASE("A worksheet alone is worked out from given inputs, a wrong kind of input is as none") {
    Turns turns;
    const WorkedSheet worked =
        work_out(turns.knowledge, 0, {quantity("4 turns"), quantity("5 turns ± 0.2 turns")});
    REQUIRE(worked.complete());
    const Quantity& excess = std::get<Quantity>(worked.results[0]);
    CHECK(excess.value == Approx(1.25));
    CHECK(excess.spread == Approx(0.05).epsilon(1e-3));
    CHECK_FALSE(work_out(turns.knowledge, 0, {quantity("4 in"), quantity("5 turns")}).complete());
    CHECK_FALSE(work_out(turns.knowledge, 0, {}).complete());
}

TEST_CASE("A rule's favour and the answers are weighed side by side") {
    Knowledge knowledge = letters();
    const Index cause = add_cause(knowledge, "cause", 100, {{0, {0.9, 0.1}}});
    add_cause(knowledge, "other", 100, {{0, {0.9, 0.1}}});
    add_rule(knowledge, "r", "b is seen", {action(Action::Kind::favour, cause, 8)});
    Facts facts;
    facts.history = 0;
    facts.answers = {{0, seen}, {1, seen}};
    const Assessment assessment = assess(knowledge, facts);
    REQUIRE(assessment.ranking[0].cause == cause);
    const std::vector<Weight>& weights = assessment.ranking[0].weights;
    CHECK(weights[0].kind == Weight::Kind::rule);
    CHECK(weights[0].index == 0);
    CHECK(weights[0].decibans > 3);
}

TEST_CASE("A cause ruled out keeps the rule's name and 0, and when none is left the rules are named") {
    Knowledge knowledge = letters();
    const Index cause = add_cause(knowledge, "cause", 100, {{0, {0.9, 0.1}}});
    const Index other = add_cause(knowledge, "other", 100, {{0, {0.5, 0.5}}});
    add_rule(knowledge, "not_cause", "b is seen", {action(Action::Kind::rule_out, cause)});
    add_rule(knowledge, "not_other", "c is seen", {action(Action::Kind::rule_out, other)});
    Facts facts;
    facts.answers = {{0, seen}, {1, seen}};
    const Assessment one_left = assess(knowledge, facts);
    CHECK(one_left.conflict.empty());
    CHECK(one_left.ranking[1].cause == cause);
    CHECK(one_left.ranking[1].probability == 0);
    CHECK(one_left.ranking[1].ruled_out_by == 0);
    facts.answers[2] = seen;
    const Assessment none_left = assess(knowledge, facts);
    CHECK(none_left.conflict == "The rules leave no cause on the list possible: not_cause; not_other.");
    CHECK(none_left.not_listed == Approx(1));
}

TEST_CASE("Facts that cannot all be so are named, without those that have no part in it") {
    Knowledge knowledge = letters();
    const Index cause = add_cause(knowledge, "cause", 100, {{0, {0.9, 0.1}}});
    add_cause(knowledge, "other", 100, {{0, {0.5, 0.5}}});
    add_rule(knowledge, "not_cause", "b is seen", {action(Action::Kind::rule_out, cause)});
    Facts facts;
    facts.answers = {{0, seen}, {1, seen}};
    facts.tried[knowledge.causes[0].remedy] = Outcome::cured;
    const Assessment assessment = assess(knowledge, facts);
    CHECK(assessment.conflict == "These cannot all be so: rule not_cause; what became of the remedies.");
    CHECK(assessment.next.kind == NextStep::Kind::stop_asking);
}

TEST_CASE("A rule that waits for an answer is passed over only where it cannot hold") {
    const Knowledge& knowledge = shipped();
    const PreparedKnowledge prepared(knowledge);
    std::size_t fired = 0;
    for (unsigned seed = 1; seed <= 100; ++seed) {
        Chance chance(seed);
        Facts facts;
        facts.complaints = {chance.upto(static_cast<int>(knowledge.complaints.size()) - 1)};
        for (std::size_t f = 0; f < knowledge.findings.size(); ++f) {
            const auto readings = static_cast<int>(knowledge.findings[f].readings.size());
            if (readings > 0 && chance.one_in(3))
                facts.answers[static_cast<Index>(f)] = Answer{chance.upto(readings - 1)};
        }
        Situation quick(prepared, facts);
        Situation whole(prepared, facts);
        for (std::size_t r = 0; r < knowledge.rules.size(); ++r) {
            INFO(knowledge.rules[r].id);
            const bool holds = whole.rule_holds(static_cast<Index>(r)) == Truth::yes;
            REQUIRE(quick.rule_fires(static_cast<Index>(r)) == holds);
            fired += holds ? 1 : 0;
        }
    }
    CHECK(fired > 100);
}
