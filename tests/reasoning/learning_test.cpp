// Learning from counts: published and worked values, what no jobs change, and that adding counts is a sum.
#include "rules/reasoning/learning.hpp"

#include <cmath>
#include <numeric>

#include "chance.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Two histories, three causes; the first shows a finding with two readings, the second one with three.
Knowledge pump() {
    Knowledge knowledge = empty_knowledge();
    knowledge.histories[0].share = 0.6;
    History fresh;
    fresh.id = "fresh";
    fresh.share = 0.4;
    knowledge.histories.push_back(fresh);
    const Index flow = add_finding(knowledge, "flow", {"weak", "full"}, 0.05);
    const Index sound = add_finding(knowledge, "sound", {"loud", "harsh", "even"}, 0.04);
    add_cause(knowledge, "air", 50, {{flow, {0.6, 0.4}}});
    add_cause(knowledge, "dirt", 200, {{sound, {0.2, 0.5, 0.3}}});
    add_cause(knowledge, "wear", 400, {});
    for (Cause& cause : knowledge.causes) cause.odds.push_back(100);
    return knowledge;
}

ClosedJobs random_counts(Chance& chance) {
    ClosedJobs jobs;
    for (int i = chance.upto(12); i > 0; --i) {
        const std::string history = chance.one_in(2) ? "fresh" : history_not_known;
        const std::string cause = "cause_" + std::to_string(chance.upto(3));
        jobs.causes[history][cause] += 1 + chance.upto(9);
        jobs.readings[cause]["flow"][chance.one_in(2) ? "weak" : "full"] += 1 + chance.upto(3);
    }
    return jobs;
}

ClosedJobs plus(ClosedJobs a, const ClosedJobs& b) {
    add(a, b);
    return a;
}

}  // namespace

TEST_CASE("A share after some jobs is the mean of its Beta distribution") {
    // Check E1 (textbook; exact fractions): share 0.05 worth 20 jobs, then 5 of 40.
    const LearnedShare share = share_after(0.05, 20, 5, 40);
    CHECK(share.mean == Approx(0.1).epsilon(1e-9));
    CHECK(share.deviation == Approx(0.038411064).epsilon(1e-7));
    // The rules of succession of the same check, 7 of 10: Laplace's, and with Jeffreys' prior.
    CHECK(share_after(0.5, 2, 7, 10).mean == Approx(0.6666666667).epsilon(1e-9));
    CHECK(share_after(0.5, 1, 7, 10).mean == Approx(0.6818181818).epsilon(1e-9));
}

TEST_CASE("Causes that exclude one another are learned as one group") {
    // Check E2 (textbook; exact fractions): Dirichlet over four causes, worth 10 jobs.
    const std::vector<double> prior = {0.4, 0.3, 0.2, 0.1};
    const std::vector<std::int64_t> counts = {2, 5, 0, 3};
    const std::vector<double> posterior = {0.3, 0.4, 0.1, 0.2};
    for (std::size_t i = 0; i < prior.size(); ++i) {
        CHECK(share_after(prior[i], 10, counts[i], 10).mean == Approx(posterior[i]).epsilon(1e-9));
    }
}

TEST_CASE("Two sets of shipped odds are compared by the probability of the jobs") {
    // Check E3 (Heckerman, Geiger and Chickering 1995, form from memory; computed).
    const double a = log_probability_of_counts({4, 3, 2, 1}, {2, 5, 0, 3});
    const double b = log_probability_of_counts({1, 1, 1, 1}, {2, 5, 0, 3});
    CHECK(a == Approx(-13.9185507838).epsilon(1e-9));
    CHECK(b == Approx(-13.4880059913).epsilon(1e-9));
    CHECK(std::exp(a - b) == Approx(0.6501547988).epsilon(1e-7));
}

TEST_CASE("What a cause itself did to a finding is told from what other causes and strays did") {
    // Check E4 (latent triggers of a noisy-OR; exact): causes 0.6 and 0.3, stray 0.05, finding positive.
    const auto with = [](double p) { return std::vector<double>{p, 1 - p}; };
    const auto either = [](double p, double q) { return 1 - (1 - p) * (1 - q); };
    CHECK(own_reading_given(with(0.6), with(either(0.3, 0.05)), 0)[0] == Approx(0.8174386921).epsilon(1e-9));
    CHECK(own_reading_given(with(0.3), with(either(0.6, 0.05)), 0)[0] == Approx(0.408719346).epsilon(1e-9));
    CHECK(own_reading_given(with(0.05), with(either(0.6, 0.3)), 0)[0] == Approx(0.068119891).epsilon(1e-8));
    for (const double p : {0.6, 0.3, 0.05}) CHECK(own_reading_given(with(p), with(0.5), 1)[0] == 0);
}

TEST_CASE("What a cause itself did is right for graded readings too, against every combination") {
    Chance chance(20261125);
    for (int round = 0; round < 500; ++round) {
        std::vector<double> cause(4), others(4);
        for (double& share : cause) share = chance.between(0.01, 1);
        for (double& share : others) share = chance.between(0.01, 1);
        for (auto* shares : {&cause, &others}) {
            const double sum = std::accumulate(shares->begin(), shares->end(), 0.0);
            for (double& share : *shares) share /= sum;
        }
        const auto found = static_cast<std::size_t>(chance.upto(3));
        std::vector<double> expected(4, 0);
        double sum = 0;
        for (std::size_t own = 0; own < 4; ++own) {
            for (std::size_t other = 0; other < 4; ++other) {
                if (std::min(own, other) != found) continue;
                expected[own] += cause[own] * others[other];
                sum += cause[own] * others[other];
            }
        }
        const std::vector<double> given = own_reading_given(cause, others, found);
        for (std::size_t own = 0; own < 4; ++own) CHECK(given[own] == Approx(expected[own] / sum));
    }
}

TEST_CASE("Without jobs the learned knowledge has the shipped odds to the last digit") {
    const Knowledge shipped = pump();
    for (const int strength : {1, 7, 20, 200}) {
        const Knowledge learned = with_learned(shipped, {}, {strength, true});
        for (std::size_t i = 0; i < shipped.causes.size(); ++i) {
            CHECK(learned.causes[i].odds == shipped.causes[i].odds);
            for (std::size_t s = 0; s < shipped.causes[i].shows.size(); ++s) {
                CHECK(learned.causes[i].shows[s].how_often == shipped.causes[i].shows[s].how_often);
            }
        }
        CHECK(learned.settings.not_listed_odds == shipped.settings.not_listed_odds);
    }
}

TEST_CASE("Jobs of a history move the odds of that history only") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.causes["in_service"] = {{"air", 5}, {"wear", 35}};
    const Knowledge learned = with_learned(shipped, jobs, {});
    CHECK(learned.causes[0].odds[0] == Approx(100));             // check E1 again, per 1000
    CHECK(learned.causes[1].odds[0] == Approx(200 * 20 / 60.));  // no job had it
    CHECK(learned.causes[2].odds[0] == Approx(1000 * (8 + 35) / 60.));
    for (std::size_t i = 0; i < 3; ++i) CHECK(learned.causes[i].odds[1] == 100);
}

TEST_CASE("Not on this list is learned from the jobs of every history, told or not") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.causes["in_service"] = {{"air", 6}};
    jobs.causes["fresh"] = {{"not_listed", 2}};
    jobs.causes[history_not_known] = {{"not_listed", 1}, {"dirt", 11}};
    const Knowledge learned = with_learned(shipped, jobs, {});
    CHECK(learned.settings.not_listed_odds == Approx(1000 * (20 * 0.040 + 3) / (20 + 20)));
    CHECK(learned.causes[1].odds[0] == Approx(200 * 20 / 26.));
}

TEST_CASE("A job of a cause this knowledge lacks is a job without its causes") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.causes["fresh"] = {{"barnacles", 20}};
    const Knowledge learned = with_learned(shipped, jobs, {});
    for (const Cause& cause : learned.causes) CHECK(cause.odds[1] == Approx(50));
}

TEST_CASE("The stronger the shipped odds, the less the same jobs move them") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.causes["in_service"] = {{"air", 30}};
    double before = 1001;
    for (const int strength : {1, 5, 20, 80, 200}) {
        const double odds = with_learned(shipped, jobs, {strength, false}).causes[0].odds[0];
        CHECK(odds < before);
        CHECK(odds > 50);
        before = odds;
    }
}

TEST_CASE("How often a cause shows a finding stays as shipped unless it is asked for") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.readings["air"]["flow"] = {{"weak", 40}};
    CHECK(with_learned(shipped, jobs, {20, false}).causes[0].shows[0].how_often ==
          shipped.causes[0].shows[0].how_often);
    const auto learned = with_learned(shipped, jobs, {20, true}).causes[0].shows[0].how_often;
    CHECK(learned[0] > 0.8);
    CHECK(learned[0] + learned[1] == Approx(1));
}

TEST_CASE("How often is learned without what strays explain, and comes to the truth with many jobs") {
    // Invented truth: the cause alone shows the readings as 0.5, 0.1, 0.4; strays as shipped 0.02, 0.02,
    // 0.96.
    const Knowledge shipped = pump();
    const std::vector<double> truth = {0.5, 0.1, 0.4};
    const std::vector<double> stray = {0.02, 0.02, 0.96};
    std::vector<double> seen(3, 0);
    for (std::size_t own = 0; own < 3; ++own) {
        for (std::size_t other = 0; other < 3; ++other)
            seen[std::min(own, other)] += truth[own] * stray[other];
    }
    ClosedJobs jobs;
    const std::vector<std::string> readings = {"loud", "harsh", "even"};
    for (std::size_t k = 0; k < 3; ++k) {
        jobs.readings["dirt"]["sound"][readings[k]] = std::llround(seen[k] * 10'000'000);
    }
    const auto learned = with_learned(shipped, jobs, {20, true}).causes[1].shows[0].how_often;
    for (std::size_t k = 0; k < 3; ++k) CHECK(learned[k] == Approx(truth[k]).margin(1e-5));
}

TEST_CASE("Readings and findings this knowledge lacks teach nothing and break nothing") {
    const Knowledge shipped = pump();
    ClosedJobs jobs;
    jobs.readings["dirt"]["sound"] = {{"singing", 9}};
    jobs.readings["dirt"]["smell"] = {{"burnt", 9}};
    jobs.readings["barnacles"]["flow"] = {{"weak", 9}};
    const Knowledge learned = with_learned(shipped, jobs, {20, true});
    for (std::size_t k = 0; k < 3; ++k) {
        CHECK(learned.causes[1].shows[0].how_often[k] == Approx(shipped.causes[1].shows[0].how_often[k]));
    }
}

TEST_CASE("The strength that foretells best is high for jobs as the odds say and low for others") {
    Knowledge shipped = pump();
    shipped.settings.not_listed_odds = 0;
    ClosedJobs few;
    few.causes["in_service"] = {{"air", 19}};
    CHECK_FALSE(strength_that_foretells_best(shipped, few).has_value());
    ClosedJobs as_told;  // 50 : 200 : 400
    as_told.causes["in_service"] = {{"air", 10}, {"dirt", 40}, {"wear", 80}};
    CHECK(strength_that_foretells_best(shipped, as_told) == 200);
    ClosedJobs otherwise;
    otherwise.causes["in_service"] = {{"air", 80}, {"dirt", 40}, {"wear", 10}};
    CHECK(strength_that_foretells_best(shipped, otherwise) == 4);
}

TEST_CASE("Adding counts of shops is a sum: order and grouping make no difference") {
    for (unsigned seed = 1; seed <= 500; ++seed) {
        INFO("seed " << seed);
        Chance chance(seed);
        const ClosedJobs a = random_counts(chance);
        const ClosedJobs b = random_counts(chance);
        const ClosedJobs c = random_counts(chance);
        CHECK(plus(a, b) == plus(b, a));
        CHECK(plus(plus(a, b), c) == plus(a, plus(b, c)));
        CHECK(plus(a, {}) == a);
        CHECK(plus(a, b).in_all() == a.in_all() + b.in_all());
        CHECK(plus(a, b).with_cause("cause_1") == a.with_cause("cause_1") + b.with_cause("cause_1"));
    }
}
