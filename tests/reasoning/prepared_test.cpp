// Knowledge prepared once serves any number of jobs and threads: the same assessment as prepared anew.
#include <catch2/catch.hpp>
#include <cstdio>
#include <thread>

#include "chance.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/situation.hpp"
#include "shipped_worksheets.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string digits(double number) {
    char text[40];
    std::snprintf(text, sizeof text, " %a", number);  // every bit of it
    return text;
}

std::string text_of(const NextStep& step) {
    std::string text = "\nstep " + std::to_string(static_cast<int>(step.kind)) + " " +
                       std::to_string(step.index) + " " + std::to_string(step.cause) + digits(step.minutes) +
                       digits(step.minutes_after);
    for (Index finding : step.findings) text += " finding " + std::to_string(finding);
    for (const NextStep::Branch& branch : step.branches) {
        text += digits(branch.chance) + " first " + std::to_string(branch.first) +
                digits(branch.first_probability);
    }
    return text;
}

std::string text_of(const Assessment& now) {
    std::string text = digits(now.not_listed) + digits(now.several) + digits(now.log_evidence) +
                       digits(now.minutes_left) + now.conflict;
    for (const RankedCause& cause : now.ranking) {
        text += "\ncause " + std::to_string(cause.cause) + digits(cause.prior) + digits(cause.probability);
        for (const Weight& weight : cause.weights) text += digits(weight.decibans);
    }
    for (const FaultSet& set : now.sets) text += "\nset" + digits(set.probability);
    for (const FiredRule& rule : now.fired) text += "\nrule " + std::to_string(rule.rule);
    for (const WorkedSheet& sheet : now.worksheets) {
        for (const Value& value : sheet.results) {
            const auto* quantity = std::get_if<Quantity>(&value);
            text += quantity ? digits(quantity->value) + digits(quantity->spread) : " -";
        }
    }
    text += text_of(now.next);
    for (const NextStep& step : now.also) text += text_of(step);
    return text;
}

// Some answers of every kind; in every other job a remedy was tried and answers were given after it.
Facts random_facts(const Knowledge& knowledge, Chance& chance) {
    Facts facts;
    facts.history = chance.upto(static_cast<int>(knowledge.histories.size()) - 1);
    facts.complaints = {chance.upto(static_cast<int>(knowledge.complaints.size()) - 1)};
    if (chance.one_in(2)) {
        facts.tried[chance.upto(static_cast<int>(knowledge.remedies.size()) - 1)] = Outcome::not_cured;
    }
    for (int n = chance.upto(12); n > 0; --n) {
        const Index finding = chance.upto(static_cast<int>(knowledge.findings.size()) - 1);
        const Finding& f = knowledge.findings[static_cast<std::size_t>(finding)];
        if (f.readings.empty()) continue;
        const int last = static_cast<int>(f.readings.size()) - 1;
        facts.answers[finding] = {chance.one_in(3) ? chance.upto(last) : last};
        if (!facts.tried.empty() && chance.one_in(2)) facts.answered_at[finding] = 1;
    }
    return facts;
}

std::vector<Facts> jobs_on(const Knowledge& knowledge) {
    std::vector<Facts> jobs;
    for (unsigned seed = 1; seed <= 40; ++seed) {
        Chance chance(seed);
        jobs.push_back(random_facts(knowledge, chance));
    }
    return jobs;
}

}  // namespace

TEST_CASE("Prepared knowledge gives what knowledge prepared anew gives, to the last digit") {
    const Knowledge& knowledge = shipped();
    const PreparedKnowledge prepared(knowledge);
    for (const Facts& facts : jobs_on(knowledge)) {
        CHECK(text_of(assess(prepared, facts)) == text_of(assess(knowledge, facts)));
    }
}

TEST_CASE("Several threads may share prepared knowledge: each gets the same to the last digit") {
    const Knowledge& knowledge = shipped();
    const PreparedKnowledge prepared(knowledge);
    const std::vector<Facts> jobs = jobs_on(knowledge);
    std::vector<std::string> alone;
    for (const Facts& facts : jobs) alone.push_back(text_of(assess(prepared, facts)));
    constexpr std::size_t threads = 4;
    std::vector<std::vector<std::string>> together(threads);
    std::vector<std::thread> running;
    for (std::size_t t = 0; t < threads; ++t) {
        running.emplace_back([&, t] {
            // Each starts elsewhere, so that different jobs are in hand at the same time.
            for (std::size_t n = 0; n < jobs.size(); ++n) {
                together[t].push_back(text_of(assess(prepared, jobs[(n + 10 * t) % jobs.size()])));
            }
        });
    }
    for (std::thread& thread : running) thread.join();
    for (std::size_t t = 0; t < threads; ++t) {
        for (std::size_t n = 0; n < jobs.size(); ++n) {
            CHECK(together[t][n] == alone[(n + 10 * t) % jobs.size()]);
        }
    }
}

TEST_CASE("Weights and branches are left out when they are not asked for, and nothing else changes") {
    const Knowledge& knowledge = shipped();
    const PreparedKnowledge prepared(knowledge);
    for (const Facts& facts : jobs_on(knowledge)) {
        Assessment whole = assess(prepared, facts);
        const Assessment bare = assess(prepared, facts, {false, false});
        for (const RankedCause& cause : bare.ranking) CHECK(cause.weights.empty());
        CHECK(bare.next.branches.empty());
        for (RankedCause& cause : whole.ranking) cause.weights.clear();
        whole.next.branches.clear();
        CHECK(text_of(bare) == text_of(whole));
    }
}

TEST_CASE("A situation keeps what was prepared for it, though the handle it came from is gone") {
    const Knowledge& knowledge = shipped();
    const Facts facts;
    Situation situation(knowledge, facts);  // prepared for this call only
    CHECK(std::holds_alternative<Unknown>(situation.value_of("no_such_name")));
    CHECK(std::holds_alternative<Unknown>(situation.value_of("history")));
    CHECK(situation.derived("no_such_fact") == Truth::no);
}
