// What answers mean that were given after a remedy was tried: against a plain sum over everything that can
// be, and in the small.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "chance.hpp"
#include "persistence_judge.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/evidence.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Job {
    Knowledge knowledge;
    Facts facts;
};

void add_answer(Facts& facts, Index finding, int stage, const Answer& answer) {
    if (facts.answers.contains(finding)) {
        facts.earlier.push_back({finding, facts.answered_at[finding], facts.answers[finding]});
    }
    facts.answers[finding] = answer;
    facts.answered_at[finding] = stage;
}

Answer random_answer(Chance& chance, const Finding& finding) {
    if (!finding.unit) return {chance.upto(static_cast<int>(finding.readings.size()) - 1)};
    Quantity measured = quantity("1 in");
    measured.value *= chance.between(0.5, 5);
    return {measured};
}

Job random_job(unsigned seed) {
    Chance chance(seed);
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    const int findings = 1 + chance.upto(3);
    for (int f = 0; f < findings; ++f) {
        const std::size_t levels = static_cast<std::size_t>(2 + chance.upto(1));
        std::vector<std::string> readings;
        for (std::size_t k = 0; k < levels; ++k) readings.push_back("r" + std::to_string(k));
        add_finding(job.knowledge, "f" + std::to_string(f), readings);
        Finding& finding = job.knowledge.findings.back();
        finding.stray = shares(chance, levels, chance.between(0.02, 0.1));
        if (!chance.one_in(2)) continue;
        finding.unit = unit("in");
        finding.spread = quantity("1 in").value;
        for (std::size_t k = 0; k + 1 < levels; ++k) {
            finding.readings[k].limit = quantity(std::to_string(levels - k) + " in");
        }
    }
    const int causes = 2 + chance.upto(2);
    for (int i = 0; i < causes; ++i) {
        std::vector<Shows> shows;
        for (int f = 0; f < findings; ++f) {
            if (chance.one_in(3)) continue;
            const auto levels = job.knowledge.findings[static_cast<std::size_t>(f)].readings.size();
            shows.push_back({f, shares(chance, levels, chance.between(0.2, 0.95))});
        }
        add_cause(job.knowledge, "c" + std::to_string(i), chance.between(5, 250), shows);
    }
    const int tried = 1 + chance.upto(1);
    for (int stage = 0; stage <= tried; ++stage) {
        for (Index f = 0; f < findings; ++f) {
            if (chance.one_in(2)) continue;
            add_answer(job.facts, f, stage,
                       random_answer(chance, job.knowledge.findings[static_cast<std::size_t>(f)]));
        }
        if (stage == tried) break;
        const Index remedy = job.knowledge.causes[static_cast<std::size_t>(stage)].remedy;
        job.facts.tried[remedy] = chance.one_in(3) ? Outcome::better : Outcome::not_cured;
        job.facts.tried_as[remedy] = stage + 1;
    }
    return job;
}

// The job in the terms of the judge. Priors are those of the same job without answers: not the point here.
PersistentCase judged(const Job& job, const std::vector<EarlierAnswer>& set_aside) {
    const Knowledge& k = job.knowledge;
    PersistentCase c;
    Facts untold;
    untold.history = 0;
    Situation situation(k, untold);
    const DiagnosisCase plain(k, untold, Fired(), situation);
    c.network = plain.network();
    c.prior = plain.with_none().prior;
    c.unlisted_prior = plain.with_none().unlisted_prior;
    Requirement wrong{std::vector<bool>(k.causes.size(), true), true};
    for (std::size_t i = 0; i < k.causes.size(); ++i) {
        const auto tried = job.facts.tried_as.find(k.causes[i].remedy);
        c.gone_from.push_back(tried == job.facts.tried_as.end() ? 1000 : tried->second);
        if (tried == job.facts.tried_as.end()) continue;
        wrong.causes[i] = false;
        if (job.facts.tried.at(k.causes[i].remedy) != Outcome::better) continue;
        Requirement helped{std::vector<bool>(k.causes.size(), false), false};
        helped.causes[i] = true;
        c.requirements.push_back(helped);
    }
    c.requirements.push_back(wrong);
    std::vector<EarlierAnswer> told = job.facts.earlier;
    for (const auto& [finding, answer] : job.facts.answers) {
        told.push_back({finding, job.facts.answered_at.at(finding), answer});
    }
    for (const EarlierAnswer& answer : told) {
        if (std::find(set_aside.begin(), set_aside.end(), answer) != set_aside.end()) continue;
        const auto& finding = k.findings[static_cast<std::size_t>(answer.finding)];
        const auto likelihood = likelihood_of(finding, answer.answer, k.settings.misreading);
        c.looks.push_back({answer.finding, answer.stage, *likelihood});
    }
    return c;
}

// Feel of the wheel springy before the bleeding; air or a soft hose gives that.
Job springy_wheel() {
    Job job;
    job.knowledge = empty_knowledge();
    job.facts.history = 0;
    const Index feel = add_finding(job.knowledge, "feel", {"springy", "firm"});
    add_cause(job.knowledge, "air", 100, {{feel, {0.9, 0.1}}});
    add_cause(job.knowledge, "soft_hose", 50, {{feel, {0.9, 0.1}}});
    add_cause(job.knowledge, "bent_rod", 50, {});
    add_answer(job.facts, feel, 0, {0});
    return job;
}

void bleed(Job& job, Outcome outcome) {
    job.facts.tried[job.knowledge.causes[0].remedy] = outcome;
    job.facts.tried_as[job.knowledge.causes[0].remedy] = 1;
}

double probability(const Job& job, const std::string& cause) {
    const Assessment found = assess(job.knowledge, job.facts);
    for (const RankedCause& ranked : found.ranking) {
        if (ranked.cause == find(job.knowledge.causes, cause)) return ranked.probability;
    }
    return -1;
}

}  // namespace

TEST_CASE("Answers before and after remedies equal a sum over all that can be, for 1500 random jobs") {
    int tied = 0;
    int told_again = 0;
    for (unsigned seed = 1; seed <= 1500; ++seed) {
        const Job job = random_job(seed);
        const Assessment found = assess(job.knowledge, job.facts);
        const PersistentSum expected = sum_over_everything(judged(job, found.set_aside));
        INFO("seed " << seed);
        if (!(expected.total > 0)) {
            REQUIRE_FALSE(found.conflict.empty());
            continue;
        }
        REQUIRE(found.conflict.empty());
        REQUIRE(found.bound == 0);
        for (const RankedCause& cause : found.ranking) {
            const double right =
                cause.put_right ? 0 : expected.marginal[static_cast<std::size_t>(cause.cause)];
            REQUIRE(cause.probability == Approx(right).margin(1e-9));
        }
        REQUIRE(found.not_listed == Approx(expected.unlisted).margin(1e-9));
        double sum = 0;
        for (const FaultSet& set : found.sets) sum += set.probability;
        REQUIRE(sum <= 1 + 1e-9);
        Situation situation(job.knowledge, job.facts);
        const DiagnosisCase diagnosis(job.knowledge, job.facts, Fired(), situation);
        if (!diagnosis.with_all().tied.empty()) ++tied;
        if (job.facts.earlier.size() > found.set_aside.size()) ++told_again;
    }
    CHECK(told_again > 500);
    CHECK(tied > 100);
}

TEST_CASE("Any answers in use, the others left out, equal a sum over all that can be") {
    for (unsigned seed = 1; seed <= 400; ++seed) {
        const Job job = random_job(seed + 5000);
        Chance chance(seed);
        Situation situation(job.knowledge, job.facts);
        const DiagnosisCase diagnosis(job.knowledge, job.facts, Fired(), situation);
        PersistentCase c = judged(job, diagnosis.set_aside());
        std::vector<bool> in_use(diagnosis.items().size(), true);
        for (std::size_t n = 0; n < in_use.size(); ++n) {
            const EvidenceItem& item = diagnosis.items()[n];
            if (item.kind != Weight::Kind::finding || chance.one_in(2)) continue;
            in_use[n] = false;
            c.looks.erase(std::remove_if(c.looks.begin(), c.looks.end(),
                                         [&](const Look& look) {
                                             return look.finding == item.index && look.stage == item.stage;
                                         }),
                          c.looks.end());
        }
        const PersistentSum expected = sum_over_everything(c);
        const Posterior found = posterior(diagnosis.network(), diagnosis.with(in_use));
        INFO("seed " << seed + 5000);
        REQUIRE(found.possible == (expected.total > 0));
        if (!found.possible) continue;
        REQUIRE(found.log_evidence == Approx(std::log(expected.total)).margin(1e-9));
        for (std::size_t i = 0; i < expected.marginal.size(); ++i) {
            REQUIRE(found.marginal[i] == Approx(expected.marginal[i]).margin(1e-9));
        }
    }
}

TEST_CASE("The weights add up to the change of the log-odds also with answers given again") {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const Job job = random_job(seed);
        const Assessment found = assess(job.knowledge, job.facts);
        INFO("seed " << seed);
        for (const RankedCause& cause : found.ranking) {
            if (cause.weights.empty()) continue;
            double sum = 0;
            for (const Weight& weight : cause.weights) sum += weight.decibans;
            const double now = std::log(cause.probability / (1 - cause.probability));
            const double before = std::log(cause.prior / (1 - cause.prior));
            REQUIRE(sum == Approx((now - before) * 10 / std::log(10.0)).margin(1e-8));
        }
    }
}

TEST_CASE("A springy wheel that is firm after bleeding was air, what is still wrong shows elsewhere") {
    Job job = springy_wheel();
    bleed(job, Outcome::better);
    const double hose_if_not_looked_again = probability(job, "soft_hose");
    add_answer(job.facts, 0, 1, {1});
    CHECK(assess(job.knowledge, job.facts).conflict.empty());
    CHECK(probability(job, "soft_hose") < 0.2 * hose_if_not_looked_again);
    CHECK(probability(job, "bent_rod") > 0.3);
}

TEST_CASE("A wheel still springy after bleeding speaks for the hose more than springy before it alone") {
    Job job = springy_wheel();
    bleed(job, Outcome::not_cured);
    const double not_looked_again = probability(job, "soft_hose");
    add_answer(job.facts, 0, 1, {0});
    CHECK(probability(job, "soft_hose") > not_looked_again);
    CHECK(probability(job, "air") == 0);
}

TEST_CASE("A finding answered only after the remedy says nothing of what the remedy put right") {
    Job job = springy_wheel();
    job.facts.answers.clear();
    job.facts.answered_at.clear();
    bleed(job, Outcome::better);
    add_answer(job.facts, 0, 1, {1});
    Situation situation(job.knowledge, job.facts);
    const DiagnosisCase diagnosis(job.knowledge, job.facts, Fired(), situation);
    CHECK(diagnosis.network().causes[0].empty());
    CHECK(probability(job, "soft_hose") < probability(job, "bent_rod") / 5);
}

TEST_CASE("An answer to something no remedy touched counts once, however often it is given") {
    Job job = springy_wheel();
    const Index play = add_finding(job.knowledge, "play", {"some", "none"});
    job.knowledge.causes[2].shows.push_back({play, {0.8, 0.2}});
    add_answer(job.facts, play, 0, {0});
    bleed(job, Outcome::not_cured);
    const double once = probability(job, "bent_rod");
    add_answer(job.facts, play, 1, {0});
    CHECK(probability(job, "bent_rod") == Approx(once).margin(1e-12));
}

TEST_CASE("A reading that got worse, or changed though nothing was touched, sets the earlier one aside") {
    Job job = springy_wheel();
    job.facts.answers[0] = {1};
    bleed(job, Outcome::not_cured);
    add_answer(job.facts, 0, 1, {0});
    const Assessment worse = assess(job.knowledge, job.facts);
    REQUIRE(worse.set_aside.size() == 1);
    CHECK(worse.set_aside[0] == EarlierAnswer{0, 0, {1}});
    CHECK(worse.conflict.empty());
    CHECK(worse.ranking[0].cause == find(job.knowledge.causes, "soft_hose"));

    Job untouched = springy_wheel();
    untouched.facts.tried[untouched.knowledge.causes[2].remedy] = Outcome::not_cured;
    add_answer(untouched.facts, 0, 1, {1});
    CHECK(assess(untouched.knowledge, untouched.facts).set_aside.size() == 1);
}

TEST_CASE("What the customer told stays true of the boat before the remedy") {
    Job job = springy_wheel();
    job.facts = {};
    job.facts.history = 0;
    Complaint complaint;
    complaint.id = "spongy";
    complaint.says = {{0, 0}};
    job.knowledge.complaints.push_back(complaint);
    job.facts.complaints = {0};
    bleed(job, Outcome::better);
    add_answer(job.facts, 0, 1, {1});
    Job told = springy_wheel();
    bleed(told, Outcome::better);
    add_answer(told.facts, 0, 1, {1});
    for (const char* cause : {"soft_hose", "bent_rod"}) {
        CHECK(probability(job, cause) == Approx(probability(told, cause)).margin(1e-12));
    }
}

TEST_CASE("A rule that rules out air by a firm wheel does not say there was none before the bleeding") {
    Job job = springy_wheel();
    add_rule(job.knowledge, "firm_no_air", "feel is firm", {action(Action::Kind::rule_out, 0)});
    add_rule(job.knowledge, "firm_no_hose", "feel is firm", {action(Action::Kind::rule_out, 1)});
    bleed(job, Outcome::better);
    add_answer(job.facts, 0, 1, {1});
    const Assessment found = assess(job.knowledge, job.facts);
    CHECK(found.conflict.empty());
    for (const RankedCause& cause : found.ranking) {
        if (cause.cause == 0) CHECK(cause.ruled_out_by == none);
        if (cause.cause == 1) CHECK(cause.ruled_out_by != none);
    }
}

TEST_CASE("Taking the later answer back is as if it had never been given") {
    for (unsigned seed = 1; seed <= 50; ++seed) {
        const Job job = random_job(seed);
        const Facts before = facts_at(job.facts, 0);
        const Assessment a = assess(job.knowledge, before);
        const Assessment b = assess(job.knowledge, facts_at(facts_at(job.facts, 1), 0));
        CHECK(before == facts_at(facts_at(job.facts, 1), 0));
        CHECK(a.log_evidence == b.log_evidence);
        CHECK(facts_at(job.facts, 99) == job.facts);
    }
}
