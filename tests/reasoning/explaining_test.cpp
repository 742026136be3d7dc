// What would turn the first cause, why one cause rather than another, and what each answer, rule and
// assumption matters.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <set>

#include "chance.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/contrast.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/tied.hpp"
#include "rules/reasoning/trace.hpp"
#include "rules/reasoning/turning.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Job {
    Knowledge knowledge;
    Facts facts;
};

Shows shows(Index finding, double bad) {
    return {finding, {bad, 1 - bad}};
}

// Four causes and four findings; priors, leaks and links of reference check A7 (own example,
// exact fractions over 16 fault sets).
Job four_by_four() {
    Job job;
    job.knowledge = empty_knowledge();
    job.knowledge.settings.not_listed_odds = 0;
    job.facts.history = 0;
    const double leaks[] = {0.01, 0.02, 0.05, 0.01};
    for (int f = 0; f < 4; ++f)
        add_finding(job.knowledge, "f" + std::to_string(f), {"bad", "good"}, leaks[f]);
    add_cause(job.knowledge, "c0", 50, {shows(0, 0.8), shows(1, 0.3)});
    add_cause(job.knowledge, "c1", 100, {shows(1, 0.7), shows(2, 0.5)});
    add_cause(job.knowledge, "c2", 20, {shows(0, 0.6), shows(2, 0.9)});
    add_cause(job.knowledge, "c3", 40, {shows(3, 0.9), shows(0, 0.2)});
    return job;
}

Index first_of(const Job& job) {
    return assess(job.knowledge, job.facts).ranking[0].cause;
}

double probability(const Assessment& found, Index cause) {
    for (const RankedCause& ranked : found.ranking) {
        if (ranked.cause == cause) return ranked.probability;
    }
    return -1;
}

Job random_job(unsigned seed) {
    Chance chance(seed);
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    const int findings = 3 + chance.upto(3);
    for (int f = 0; f < findings; ++f) {
        add_finding(job.knowledge, "f" + std::to_string(f), {"bad", "good"}, chance.between(0.01, 0.1));
        if (!chance.one_in(3)) job.facts.answers[f] = {chance.upto(1)};
    }
    const int causes = 2 + chance.upto(4);
    for (int i = 0; i < causes; ++i) {
        std::vector<Shows> links;
        for (int f = 0; f < findings; ++f) {
            if (chance.one_in(2)) links.push_back(shows(f, chance.between(0.1, 0.95)));
        }
        add_cause(job.knowledge, "c" + std::to_string(i), chance.between(5, 200), links);
    }
    for (int r = chance.upto(2); r > 0; --r) {
        const double by = chance.one_in(2) ? 40 : 0.25;
        add_rule(job.knowledge, "rule" + std::to_string(r), "f0 is bad",
                 {action(Action::Kind::favour, chance.upto(causes - 1), by)});
    }
    if (chance.one_in(3)) {
        const Index remedy = job.knowledge.causes[0].remedy;
        job.facts.tried[remedy] = Outcome::not_cured;
        job.facts.tried_as[remedy] = 1;
        if (job.facts.answers.contains(1)) {
            job.facts.earlier.push_back({1, 0, job.facts.answers[1]});
            job.facts.answers[1] = {chance.upto(1)};
            job.facts.answered_at[1] = 1;
        }
    }
    return job;
}

}  // namespace

TEST_CASE("Three of four single answers, read otherwise, change the first cause (reference check C5)") {
    Job job = four_by_four();
    job.facts.answers = {{0, {0}}, {1, {0}}, {2, {1}}, {3, {1}}};
    const Turning turning = what_would_turn(job.knowledge, job.facts);
    CHECK(job.knowledge.causes[static_cast<std::size_t>(turning.first)].id == "c0");
    std::map<Index, std::string> flipped;
    for (const Turn& turn : turning.if_wrong) {
        REQUIRE(turn.answers.size() == 1);
        if (turn.answers[0].reading < 0) continue;
        flipped[turn.answers[0].finding] = job.knowledge.causes[static_cast<std::size_t>(turn.first)].id;
    }
    CHECK(flipped == std::map<Index, std::string>{{0, "c1"}, {2, "c1"}, {3, "c3"}});
    CHECK(turning.by_answering.empty());
}

TEST_CASE("Every reading that is said to turn the first cause does, and no single other one would") {
    int not_turning = 0;
    for (unsigned seed = 1; seed <= 200; ++seed) {
        const Job job = random_job(seed);
        const Turning turning = what_would_turn(job.knowledge, job.facts);
        INFO("seed " << seed);
        if (turning.first == none) continue;
        REQUIRE(turning.first == first_of(job));
        std::set<std::pair<Index, int>> said;
        for (const Turn& turn : turning.by_answering) {
            Job then = job;
            for (const AsIf& answer : turn.answers) then.facts.answers[answer.finding] = {answer.reading};
            const Assessment found = assess(then.knowledge, then.facts);
            REQUIRE(found.ranking[0].cause == turn.first);
            REQUIRE(found.ranking[0].probability == Approx(turn.first_probability).margin(1e-12));
            REQUIRE(turn.first != turning.first);
            if (turn.answers.size() == 1) said.insert({turn.answers[0].finding, turn.answers[0].reading});
        }
        if (!job.knowledge.rules.empty()) continue;  // they change the evidence that the chance is seen in
        const double log_now = assess(job.knowledge, job.facts).log_evidence;
        for (Index f = 0; f < static_cast<Index>(job.knowledge.findings.size()); ++f) {
            if (job.facts.answers.contains(f)) continue;
            for (int reading = 0; reading < 2; ++reading) {
                Job then = job;
                then.facts.answers[f] = {reading};
                const Assessment found = assess(then.knowledge, then.facts);
                const bool too_rare = std::exp(found.log_evidence - log_now) < 1.01 * least_turning_chance;
                if (too_rare || said.contains({f, reading})) continue;
                REQUIRE(found.ranking[0].cause == turning.first);
                ++not_turning;
            }
        }
    }
    CHECK(not_turning > 50);
}

TEST_CASE("The chance of a reading that would turn the first cause is the one the answers give it") {
    Job job = four_by_four();
    job.facts.answers = {{0, {0}}, {1, {0}}};
    const Turning turning = what_would_turn(job.knowledge, job.facts);
    REQUIRE(turning.by_answering.size() == 2);
    for (const Turn& turn : turning.by_answering) {
        REQUIRE(turn.answers.size() == 1);
        Job then = job;
        then.facts.answers[turn.answers[0].finding] = {turn.answers[0].reading};
        const double ratio = std::exp(assess(then.knowledge, then.facts).log_evidence -
                                      assess(job.knowledge, job.facts).log_evidence);
        CHECK(turn.chance == Approx(ratio).margin(1e-12));
    }
}

TEST_CASE("Two findings are named together when neither alone would change the first cause") {
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    for (const char* id : {"x", "y"}) add_finding(job.knowledge, id, {"bad", "good"}, 0.05);
    job.knowledge.settings.not_listed_odds = 1;
    add_cause(job.knowledge, "common", 150, {shows(0, 0.02), shows(1, 0.02)});
    add_cause(job.knowledge, "rare", 8, {shows(0, 0.7), shows(1, 0.7)});
    const Turning turning = what_would_turn(job.knowledge, job.facts);
    REQUIRE(turning.by_answering.size() == 1);
    REQUIRE(turning.by_answering[0].answers.size() == 2);
    CHECK(turning.by_answering[0].answers[0].reading == 0);
    CHECK(turning.by_answering[0].answers[1].reading == 0);
    CHECK(turning.by_answering[0].first == 1);
}

TEST_CASE("An answer fired on by a rule turns the first cause as the rule says") {
    Job job = four_by_four();
    job.facts.answers = {{1, {0}}};
    add_rule(job.knowledge, "strange_smell", "f3 is good", {action(Action::Kind::rule_out, 1)});
    REQUIRE(first_of(job) == 1);
    const Turning turning = what_would_turn(job.knowledge, job.facts);
    REQUIRE_FALSE(turning.by_answering.empty());
    CHECK(turning.by_answering[0].answers[0].finding == 3);
    CHECK(turning.by_answering[0].answers[0].reading == 1);
}

TEST_CASE("A contrast adds up to the log-odds of the two sets, exactly") {
    int compared = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const Job job = random_job(seed);
        const Assessment found = assess(job.knowledge, job.facts);
        if (!found.conflict.empty()) continue;
        for (Index a = 0; a < 2; ++a) {
            for (Index b : {static_cast<Index>(1 - a), none}) {
                const Contrast c = contrast(job.knowledge, job.facts, a, b);
                if (!c.possible) continue;
                INFO("seed " << seed << " a " << a << " b " << b);
                const double odds = std::log(c.with_a.probability / c.with_b.probability);
                REQUIRE(c.decibans == Approx(odds * 10 / std::log(10.0)).margin(1e-8));
                REQUIRE(std::count(c.with_a.causes.begin(), c.with_a.causes.end(), a) == 1);
                REQUIRE(std::count(c.with_b.causes.begin(), c.with_b.causes.end(), a) == 0);
                ++compared;
            }
        }
    }
    CHECK(compared > 500);
}

TEST_CASE("A contrast takes the heaviest sets with the one and not the other") {
    for (unsigned seed = 1; seed <= 100; ++seed) {
        const Job job = random_job(seed);
        Situation situation(job.knowledge, job.facts);
        const Fired fired = fire(job.knowledge, situation);
        const DiagnosisCase diagnosis(job.knowledge, job.facts, fired, situation);
        const FaultCase given = diagnosis.with_all();
        const Contrast c = contrast(job.knowledge, job.facts, 0, 1);
        if (!c.possible) continue;
        double best = 0;
        double total = 0;
        const int causes = static_cast<int>(job.knowledge.causes.size());
        for (unsigned bits = 0; bits < 2u << causes; ++bits) {
            std::vector<int> set;
            for (int i = 0; i < causes; ++i) {
                if ((bits >> i & 1) != 0) set.push_back(i);
            }
            const bool unlisted = (bits >> causes & 1) != 0;
            const bool allowed =
                std::all_of(given.requirements.begin(), given.requirements.end(), [&](const Requirement& r) {
                    return (unlisted && r.unlisted) ||
                           std::any_of(set.begin(), set.end(), [&](int i) { return r.causes[i]; });
                });
            if (!allowed) continue;
            const double weight = std::exp(log_weight_of_set(diagnosis.network(), given, set, unlisted));
            if (!std::isfinite(weight)) continue;
            total += weight;
            if ((bits & 1) != 0 && (bits & 2) == 0) best = std::max(best, weight);
        }
        INFO("seed " << seed);
        REQUIRE(c.with_a.probability == Approx(best / total).margin(1e-9));
    }
}

TEST_CASE("A cause that is ruled out has no contrast, nor a cause with itself") {
    Job job = four_by_four();
    add_rule(job.knowledge, "no_c1", "f0 is bad", {action(Action::Kind::rule_out, 1)});
    job.facts.answers = {{0, {0}}};
    CHECK_FALSE(contrast(job.knowledge, job.facts, 0, 1).possible);
    CHECK_FALSE(contrast(job.knowledge, job.facts, 0, 0).possible);
    CHECK_FALSE(contrast(job.knowledge, job.facts, 0, 17).possible);
}

TEST_CASE("A six speaks for the loaded die with 3.01 decibans, another number against it with 0.97 (C2)") {
    // I. J. Good's example: a six comes up with 1/3 and with 1/6. The honest die is the stray.
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    for (int n = 0; n < 2; ++n) {
        add_finding(job.knowledge, "throw" + std::to_string(n), {"six", "other"}, 1.0 / 6);
    }
    // 1/3 with the stray's 1/6 in it: 1 - (1 - 1/6) (1 - x) = 1/3.
    add_cause(job.knowledge, "loaded", 10, {shows(0, 0.2), shows(1, 0.2)});
    add_cause(job.knowledge, "honest", 10, {});
    job.facts.answers = {{0, {0}}, {1, {1}}};
    const Contrast c = contrast(job.knowledge, job.facts, 0, 1);
    REQUIRE(c.possible);
    for (const ContrastRow& row : c.rows) {
        if (row.kind != ContrastRow::Kind::finding) continue;
        CHECK(row.decibans == Approx(row.index == 0 ? 3.0102999566 : -0.9691001301).margin(1e-7));
    }
}

TEST_CASE("A trace follows a rule through facts and worksheets to answers and assumptions") {
    Job job = four_by_four();
    RigField bore;
    bore.id = "bore";
    bore.choices = {{"large", "Large"}, {"small", "Small"}};
    bore.assumed = std::string("large");
    job.knowledge.rig_fields.push_back(bore);
    add_rule(job.knowledge, "oily", "f0 is bad and rig.bore is large", {derive("oily")});
    add_rule(job.knowledge, "oil_means_c2", "fact.oily", {action(Action::Kind::favour, 2, 8)});
    job.facts.answers = {{0, {0}}};
    const Trace traced = trace(job.knowledge, job.facts);
    REQUIRE(traced.rules.size() == 2);
    const TracedRule& last = traced.rules[1];
    CHECK(last.findings == std::vector<Index>{0});
    CHECK(last.assumptions == std::vector<Index>{0});
    CHECK(last.rules == std::vector<Index>{0});
    REQUIRE(traced.assumptions.size() == 1);
    CHECK(traced.assumptions[0].rules == std::vector<Index>{0, 1});
}

TEST_CASE("What an assumption matters is what the first cause would be with the field unknown") {
    Job job = four_by_four();
    RigField bore;
    bore.id = "bore";
    bore.choices = {{"large", "Large"}, {"small", "Small"}};
    bore.assumed = std::string("large");
    job.knowledge.rig_fields.push_back(bore);
    add_rule(job.knowledge, "large_means_c2", "rig.bore is large", {action(Action::Kind::favour, 2, 8)});
    job.facts.answers = {{0, {0}}};
    const Trace traced = trace(job.knowledge, job.facts);
    Job unknown = job;
    unknown.knowledge.rig_fields[0].assumed = Unknown{};
    const Assessment then = assess(unknown.knowledge, unknown.facts);
    REQUIRE(traced.first == 2);
    REQUIRE(traced.assumptions.size() == 1);
    CHECK(traced.assumptions[0].without.probability == Approx(probability(then, 2)).margin(1e-12));
    CHECK(traced.assumptions[0].without.first == 0);
    CHECK(traced.rules[0].without.probability == Approx(probability(then, 2)).margin(1e-12));
    Job unasked = job;
    unasked.facts.answers.clear();
    const Assessment before = assess(unasked.knowledge, unasked.facts);
    REQUIRE(traced.answers.size() == 1);
    CHECK(traced.answers[0].without.probability == Approx(probability(before, 2)).margin(1e-12));
}
