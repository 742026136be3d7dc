// What is proposed next: what can change the plan, what is proved, what can be had, what was tried.
#include <algorithm>
#include <catch2/catch.hpp>

#include "rules/reasoning/assessment.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

bool proposes_finding(const NextStep& step, Index finding) {
    const bool listed = std::find(step.findings.begin(), step.findings.end(), finding) != step.findings.end();
    return listed || (step.kind == NextStep::Kind::ask && step.index == finding);
}

bool proposed(const Assessment& assessment, Index finding) {
    return proposes_finding(assessment.next, finding) ||
           std::any_of(assessment.also.begin(), assessment.also.end(),
                       [&](const NextStep& step) { return proposes_finding(step, finding); });
}

double probability_of(const Assessment& assessment, Index cause) {
    const auto found = std::find_if(assessment.ranking.begin(), assessment.ranking.end(),
                                    [&](const RankedCause& c) { return c.cause == cause; });
    return found->probability;
}

// A garden pump that gives no water: a clogged strainer (quick to clean) or a worn wheel (long to renew). The
// hum tells them apart; the strainer can be looked at.
struct Pump {
    Knowledge knowledge = empty_knowledge();
    Index flow, hum, colour, strainer_seen, wheel_seen;
    Index look_at_strainer, open_pump;
    Index clogged, worn;
    Facts facts;

    Pump() {
        knowledge.settings.not_listed_odds = 4;  // of a pump this simple nearly all is listed
        flow = add_finding(knowledge, "flow", {"none", "full"});
        hum = add_finding(knowledge, "hum", {"rough", "smooth"});
        colour = add_finding(knowledge, "colour", {"faded", "fresh"});
        strainer_seen = add_finding(knowledge, "strainer_seen", {"dirty", "clean"});
        wheel_seen = add_finding(knowledge, "wheel_seen", {"worn", "whole"});
        look_at_strainer = add_check(knowledge, "look_at_strainer", 14, {strainer_seen});
        open_pump = add_check(knowledge, "open_pump", 25, {wheel_seen});
        clogged = add_cause(knowledge, "clogged", 100,
                            {{flow, {0.9, 0.1}}, {hum, {0.05, 0.95}}, {strainer_seen, {0.97, 0.03}}}, 20);
        worn = add_cause(knowledge, "worn", 100,
                         {{flow, {0.9, 0.1}}, {hum, {0.95, 0.05}}, {wheel_seen, {0.97, 0.03}}}, 120);
        prove(knowledge, clogged, look_at_strainer, "strainer_seen is dirty");
        prove(knowledge, worn, open_pump, "wheel_seen is worn");
        facts.history = 0;
        facts.answers[flow] = {0};
    }

    // Gives the check of the wheel its only need, the knowledge's first.
    void opening_needs(const std::string& id) {
        Need need;
        need.id = id;
        knowledge.needs = {need};
        knowledge.checks[static_cast<std::size_t>(open_pump)].needs = {0};
    }

    Index remedy_of(Index cause) const { return knowledge.causes[static_cast<std::size_t>(cause)].remedy; }
};

}  // namespace

TEST_CASE("A question that tells nothing about the causes is never proposed") {
    const Pump pump;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(proposed(assessment, pump.hum));
    CHECK_FALSE(proposed(assessment, pump.colour));
}

TEST_CASE("A question whose answer changes the odds but not what is done is not proposed") {
    Pump pump;
    // A single cause: whatever the hum, its strainer is cleaned.
    pump.knowledge.causes.pop_back();
    pump.knowledge.causes[0].proof = none;
    pump.knowledge.settings.not_listed_odds = 1;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK_FALSE(proposed(assessment, pump.hum));
    CHECK(assessment.next.kind == NextStep::Kind::remedy);
    CHECK(assessment.next.index == pump.remedy_of(pump.clogged));
}

TEST_CASE("The cheap question comes before the costly proof") {
    const Pump pump;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    REQUIRE(assessment.next.kind == NextStep::Kind::ask);
    CHECK(assessment.next.index == pump.hum);
    CHECK(assessment.minutes_left == Approx(assessment.next.minutes + assessment.next.minutes_after));
    for (const NextStep& other : assessment.also) {
        CHECK(other.minutes + other.minutes_after >= assessment.minutes_left - 1e-9);
    }
}

TEST_CASE("The branches of a question say what each answer would do, and then it does") {
    const Pump pump;
    const Assessment before = assess(pump.knowledge, pump.facts);
    REQUIRE(before.next.branches.size() == 2);
    double sum = 0;
    for (const NextStep::Branch& branch : before.next.branches) {
        sum += branch.chance;
        Facts then = pump.facts;
        then.answers[branch.finding] = {branch.reading};
        const Assessment after = assess(pump.knowledge, then);
        CHECK(after.ranking.front().cause == branch.first);
        CHECK(after.ranking.front().probability == Approx(branch.first_probability).margin(1e-12));
        CHECK(after.log_evidence - before.log_evidence == Approx(std::log(branch.chance)).margin(1e-12));
    }
    CHECK(sum == Approx(1).margin(1e-12));
}

TEST_CASE("Before anything is taken apart the leading cause is proved") {
    Pump pump;
    pump.facts.answers[pump.hum] = {0};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    REQUIRE(assessment.ranking.front().cause == pump.worn);
    CHECK(assessment.next.kind == NextStep::Kind::prove);
    CHECK(assessment.next.index == pump.open_pump);
    CHECK(assessment.next.cause == pump.worn);
    CHECK(assessment.next.findings == std::vector<Index>{pump.wheel_seen});
    CHECK(assessment.next.minutes == Approx(26));
}

TEST_CASE("A proof that takes longer than the remedy itself is not asked for") {
    Pump pump;
    pump.facts.answers[pump.hum] = {0};
    pump.knowledge.checks[static_cast<std::size_t>(pump.open_pump)].minutes = 500;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.next.kind == NextStep::Kind::remedy);
    CHECK(assessment.next.index == pump.remedy_of(pump.worn));
}

TEST_CASE("A proved cause is put right next") {
    Pump pump;
    pump.facts.answers[pump.strainer_seen] = {0};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.ranking.front().proved);
    REQUIRE(assessment.next.kind == NextStep::Kind::remedy);
    CHECK(assessment.next.index == pump.remedy_of(pump.clogged));
    CHECK(assessment.next.cause == pump.clogged);
    CHECK(assessment.next.minutes == Approx(20 + pump.knowledge.settings.try_out));
}

TEST_CASE("The price of parts counts as minutes at the shop's rate") {
    Pump pump;
    pump.facts.answers[pump.strainer_seen] = {0};
    pump.knowledge.remedies[static_cast<std::size_t>(pump.remedy_of(pump.clogged))].parts = {
        {"strainer", 60}};
    CHECK(assess(pump.knowledge, pump.facts).next.minutes == Approx(20 + 30 + 10));
    pump.facts.shop_rate = 60;
    CHECK(assess(pump.knowledge, pump.facts).next.minutes == Approx(20 + 60 + 10));
}

TEST_CASE("A proof that was answered with can't tell is not asked for again") {
    Pump pump;
    pump.facts.answers[pump.hum] = {0};
    pump.facts.answers[pump.wheel_seen] = {CannotTell{}};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK_FALSE(proposed(assessment, pump.wheel_seen));
    CHECK(assessment.next.kind == NextStep::Kind::remedy);
}

TEST_CASE("A check whose needs are not available is not proposed") {
    Pump pump;
    pump.opening_needs("dry_weather");
    pump.facts.answers[pump.hum] = {0};
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
    pump.facts.unavailable = {0};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK_FALSE(proposed(assessment, pump.wheel_seen));
    CHECK(assessment.next.kind != NextStep::Kind::stop_asking);
    CHECK(assessment.next.blocked_by.empty());
}

TEST_CASE("A check that a standing stop bars is not proposed, and is again once the stop is lifted") {
    Pump pump;
    pump.opening_needs("mains_on");
    Stop wet;
    wet.id = "wet_motor";
    wet.bars = {0};
    pump.knowledge.stops.push_back(wet);
    const Index motor = add_finding(pump.knowledge, "motor", {"wet", "dry"});
    Rule rule;
    rule.id = "r_wet_motor";
    rule.when = condition(pump.knowledge, "motor is wet");
    Action stop;
    stop.kind = Action::Kind::stop;
    stop.target = 0;
    rule.then = {stop};
    pump.knowledge.rules.push_back(rule);

    pump.facts.answers[pump.hum] = {0};
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
    pump.facts.answers[motor] = {0};
    const Assessment stopped = assess(pump.knowledge, pump.facts);
    CHECK(stopped.barred == std::set<Index>{0});
    CHECK_FALSE(proposed(stopped, pump.wheel_seen));
    pump.facts.answers[motor] = {1};
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
}

TEST_CASE("What one finding needs besides does not hold up the rest of its check") {
    Pump pump;
    Need helper;
    helper.id = "second_person";
    pump.knowledge.needs.push_back(helper);
    const Index bubbles = add_finding(pump.knowledge, "bubbles", {"bubbles", "none"});
    Finding& seen_by_two = pump.knowledge.findings[static_cast<std::size_t>(bubbles)];
    seen_by_two.check = pump.open_pump;
    seen_by_two.needs = {0};
    pump.knowledge.checks[static_cast<std::size_t>(pump.open_pump)].gets.push_back(bubbles);
    pump.facts.answers[pump.hum] = {0};
    CHECK(proposed(assess(pump.knowledge, pump.facts), bubbles));
    pump.facts.unavailable = {0};
    const Assessment alone = assess(pump.knowledge, pump.facts);
    CHECK(proposed(alone, pump.wheel_seen));
    CHECK_FALSE(proposed(alone, bubbles));
}

TEST_CASE("A circumstance that the rig rules out is not waited for, one that the rig leaves open is") {
    Pump pump;
    RigField place;
    place.id = "place";
    place.choices = {{"well", "In the well"}, {"bench", "On the bench"}};
    pump.knowledge.rig_fields.push_back(place);
    pump.opening_needs("in_well");
    pump.knowledge.needs[0].possible_when = condition(pump.knowledge, "rig.place is well");
    pump.facts.answers[pump.hum] = {0};
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
    pump.facts.rig[0] = std::string("well");
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
    pump.facts.rig[0] = std::string("bench");
    CHECK_FALSE(proposed(assess(pump.knowledge, pump.facts), pump.wheel_seen));
}

TEST_CASE("When nothing is left but what cannot be had now, the step says which need is missing") {
    Pump pump;
    Need dry;
    dry.id = "dry_weather";
    pump.knowledge.needs.push_back(dry);
    for (Check& check : pump.knowledge.checks) check.needs = {0};
    for (Finding& finding : pump.knowledge.findings) finding.check = pump.open_pump;
    for (Remedy& remedy : pump.knowledge.remedies) remedy.minutes = 10000;
    pump.facts.unavailable = {0};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.next.kind == NextStep::Kind::stop_asking);
    CHECK(assessment.next.blocked_by == std::vector<Index>{0});
    CHECK(assessment.minutes_left == Approx(pump.knowledge.settings.call_for_help));
}

TEST_CASE("What is proved more likely than not is put right before help is called, however cheap help is") {
    Pump pump;
    pump.knowledge.settings.not_listed_odds = 100;
    pump.knowledge.settings.call_for_help = 1;
    pump.facts.answers[pump.strainer_seen] = {0};
    // A second bad look at the strainer by chance leaves room for doubt.
    pump.knowledge.findings[static_cast<std::size_t>(pump.strainer_seen)].stray = {0.06, 0.94};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    const double proved = probability_of(assessment, pump.clogged);
    CHECK(proved > 0.5);
    CHECK(proved < 0.9);
    REQUIRE(assessment.next.kind == NextStep::Kind::remedy);
    CHECK(assessment.next.cause == pump.clogged);
    pump.facts.answers.erase(pump.strainer_seen);
    CHECK(assess(pump.knowledge, pump.facts).next.kind == NextStep::Kind::stop_asking);
}

TEST_CASE("A remedy that did not cure is evidence and is not proposed again") {
    Pump pump;
    pump.facts.answers[pump.strainer_seen] = {0};
    const Assessment before = assess(pump.knowledge, pump.facts);
    REQUIRE(before.next.index == pump.remedy_of(pump.clogged));
    pump.facts.tried[pump.remedy_of(pump.clogged)] = Outcome::not_cured;
    const Assessment after = assess(pump.knowledge, pump.facts);
    CHECK(probability_of(after, pump.clogged) == 0);
    CHECK(probability_of(after, pump.worn) > 5 * probability_of(before, pump.worn));
    const bool again =
        after.next.kind == NextStep::Kind::remedy && after.next.index == pump.remedy_of(pump.clogged);
    CHECK_FALSE(again);
    for (const RankedCause& cause : after.ranking) CHECK(cause.put_right == (cause.cause == pump.clogged));
    const std::vector<Weight>& weights = after.ranking.front().weights;
    CHECK(std::any_of(weights.begin(), weights.end(),
                      [](const Weight& w) { return w.kind == Weight::Kind::remedy && w.decibans > 0; }));
}

TEST_CASE("A remedy that helped but did not cure means there were two faults") {
    Pump pump;
    pump.facts.tried[pump.remedy_of(pump.clogged)] = Outcome::better;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(probability_of(assessment, pump.worn) + assessment.not_listed > 0.999);
    CHECK(probability_of(assessment, pump.worn) > probability_of(assessment, pump.clogged));
}

TEST_CASE("When every remedy failed, only something not on the list is left and help is called") {
    Pump pump;
    pump.facts.tried[pump.remedy_of(pump.clogged)] = Outcome::not_cured;
    pump.facts.tried[pump.remedy_of(pump.worn)] = Outcome::not_cured;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.not_listed == Approx(1).margin(1e-12));
    CHECK(assessment.next.kind == NextStep::Kind::stop_asking);
    CHECK(assessment.sets.size() == 1);
    CHECK(assessment.sets.front().not_listed);
}

TEST_CASE("After a cure the job is done and what was wrong is known") {
    Pump pump;
    pump.facts.tried[pump.remedy_of(pump.worn)] = Outcome::cured;
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.next.kind == NextStep::Kind::done);
    CHECK(assessment.minutes_left == 0);
    CHECK(probability_of(assessment, pump.worn) == Approx(1).margin(1e-12));
}

TEST_CASE("A question that a rule wants asked comes first, unless it is answered or changes nothing") {
    Pump pump;
    add_rule(pump.knowledge, "r_strainer", "flow is none", {action(Action::Kind::ask, pump.strainer_seen)});
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.next.index == pump.look_at_strainer);
    CHECK(assessment.next.asked_by == 0);

    Pump other;
    add_rule(other.knowledge, "r_colour", "flow is none", {action(Action::Kind::ask, other.colour)});
    const Assessment unmoved = assess(other.knowledge, other.facts);
    CHECK(unmoved.next.index == other.hum);
    CHECK(unmoved.next.asked_by == none);
}

TEST_CASE("Setting a check up is paid once: its other findings then cost only their own minutes") {
    Pump pump;
    const Index wear_ring = add_finding(pump.knowledge, "wear_ring", {"scored", "smooth"}, 0.02, 2);
    Check& check = pump.knowledge.checks[static_cast<std::size_t>(pump.open_pump)];
    check.gets.push_back(wear_ring);
    pump.knowledge.findings[static_cast<std::size_t>(wear_ring)].check = pump.open_pump;
    pump.knowledge.causes[static_cast<std::size_t>(pump.worn)].proved_when =
        condition(pump.knowledge, "wear_ring is scored and wheel_seen is worn");
    pump.facts.answers[pump.hum] = {0};
    const Assessment whole = assess(pump.knowledge, pump.facts);
    REQUIRE(whole.next.kind == NextStep::Kind::prove);
    CHECK(whole.next.minutes == Approx(25 + 1 + 2));
    CHECK(whole.next.findings.size() == 2);
    pump.facts.answers[pump.wheel_seen] = {0};
    const Assessment half = assess(pump.knowledge, pump.facts);
    REQUIRE(half.next.kind == NextStep::Kind::prove);
    CHECK(half.next.minutes == Approx(2));
    CHECK(half.next.findings == std::vector<Index>{wear_ring});
}

TEST_CASE("A finding that makes no sense on this rig is neither asked nor counted") {
    Pump pump;
    RigField strainer;
    strainer.id = "strainer";
    strainer.choices = {{"fitted", "Fitted"}, {"missing", "Missing"}};
    pump.knowledge.rig_fields.push_back(strainer);
    pump.knowledge.findings[static_cast<std::size_t>(pump.hum)].possible_when =
        condition(pump.knowledge, "rig.strainer is fitted");
    pump.knowledge.causes[static_cast<std::size_t>(pump.clogged)].possible_when =
        condition(pump.knowledge, "rig.strainer is fitted");
    CHECK(proposed(assess(pump.knowledge, pump.facts), pump.hum));
    pump.facts.rig[0] = std::string("missing");
    pump.facts.answers[pump.hum] = {1};
    const Assessment assessment = assess(pump.knowledge, pump.facts);
    CHECK(assessment.evidence.count(pump.hum) == 0);
    CHECK(probability_of(assessment, pump.clogged) == 0);
    CHECK(assessment.ranking.back().cause == pump.clogged);
    CHECK(assessment.ranking.back().impossible_here);
}

TEST_CASE("Two cheap questions that tell the causes apart only together are asked") {
    // Source of the numbers: check B6 of the reference values, as a knowledge base with remedies of two
    // causes each.
    Knowledge knowledge = empty_knowledge();
    knowledge.settings.try_out = 0;
    knowledge.settings.not_listed_odds = 0.01;
    const Index q1 = add_finding(knowledge, "q1", {"yes", "no"}, 0.002);
    const Index q2 = add_finding(knowledge, "q2", {"yes", "no"}, 0.002);
    const std::vector<double> yes = {0.99, 0.01};
    add_cause(knowledge, "f1", 2, {{q1, yes}, {q2, yes}}, 60);
    add_cause(knowledge, "f2", 2, {{q1, yes}}, 60);
    add_cause(knowledge, "f3", 2, {{q2, yes}}, 60);
    add_cause(knowledge, "f4", 2, {}, 60);
    knowledge.causes[3].remedy = knowledge.causes[0].remedy;
    knowledge.causes[2].remedy = knowledge.causes[1].remedy;
    Facts facts;
    facts.history = 0;
    const Assessment assessment = assess(knowledge, facts);
    CHECK(assessment.next.kind == NextStep::Kind::ask);
    CHECK(assessment.minutes_left < 70);
}

TEST_CASE("Nothing known at all still gives an assessment") {
    const Assessment nothing = assess(Knowledge(), Facts());
    CHECK(nothing.ranking.empty());
    CHECK(nothing.not_listed == Approx(1));
    CHECK(nothing.next.kind == NextStep::Kind::stop_asking);
    Pump pump;
    pump.facts = Facts();
    const Assessment unknown_history = assess(pump.knowledge, pump.facts);
    CHECK(unknown_history.ranking.size() == 2);
    CHECK(unknown_history.ranking[0].probability == Approx(unknown_history.ranking[0].prior));
}

TEST_CASE("The prior of a cause is its share of the boats that come back") {
    Knowledge knowledge = empty_knowledge();
    knowledge.settings.not_listed_odds = 50;
    for (int i = 0; i < 10; ++i) add_cause(knowledge, "c" + std::to_string(i), i < 5 ? 150 : 90, {});
    const Assessment assessment = assess(knowledge, Facts{});
    for (const RankedCause& cause : assessment.ranking) {
        CHECK(cause.prior == Approx(cause.cause < 5 ? 0.15 : 0.09).epsilon(0.03));
    }
}

TEST_CASE("Facts that point outside the knowledge are left aside") {
    Pump pump;
    const Assessment before = assess(pump.knowledge, pump.facts);
    pump.facts.history = 7;
    pump.facts.complaints = {12};
    pump.facts.answers[pump.hum] = {9};
    pump.facts.tried[99] = Outcome::not_cured;
    pump.facts.unavailable = {42};
    const Assessment after = assess(pump.knowledge, pump.facts);
    CHECK(after.conflict.empty());
    CHECK(after.ranking.front().probability == Approx(before.ranking.front().probability));
}
