// Cases whose tables would grow too large: they come back quickly, with bounds that hold.
#include <catch2/catch.hpp>
#include <cmath>
#include <ctime>
#include <random>

#include "brute_force.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/fault_sets.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

double uniform(std::mt19937& engine, double low, double high) {
    return low + (high - low) * static_cast<double>(engine()) / 4294967296.0;
}

struct Wide {
    FaultNetwork network;
    FaultCase given;
};

// Every cause shows about half of the findings, and all of them are bad.
Wide wide_case(unsigned seed, int causes, int findings) {
    std::mt19937 engine(seed);
    Wide wide;
    wide.network.causes.resize(static_cast<std::size_t>(causes));
    for (int f = 0; f < findings; ++f) {
        const double leak = uniform(engine, 0.01, 0.1);
        wide.network.findings.push_back({{leak, 1 - leak}, {0.2, 0.8}});
        wide.given.likelihood.push_back(f % 5 == 0 ? std::vector<double>{1, 0.3} : std::vector<double>{1, 0});
        for (auto& links : wide.network.causes) {
            if (engine() % 2 == 0) continue;
            const double often = uniform(engine, 0.1, 0.9);
            links.push_back({f, {often, 1 - often}});
        }
    }
    for (int i = 0; i < causes; ++i) wide.given.prior.push_back(uniform(engine, 0.01, 0.2));
    wide.given.unlisted_prior = 0.04;
    wide.given.requirements.push_back({std::vector<bool>(static_cast<std::size_t>(causes), true), true});
    return wide;
}

double seconds_since(std::clock_t start) {
    return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

}  // namespace

TEST_CASE("When findings are dissolved, the product is an upper bound that the exact sum never passes") {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const Wide wide = wide_case(seed, 8, 8);
        INFO("seed " << seed);
        const Enumerated exact = enumerate(wide.network, wide.given);
        const Posterior narrow = posterior(wide.network, wide.given, {4, 1 << 20});
        REQUIRE(narrow.dissolved > 0);
        REQUIRE(narrow.width_bits <= 4);
        REQUIRE(narrow.log_evidence >= std::log(exact.total) - 1e-9);
        for (std::size_t i = 0; i < 8; ++i) {
            REQUIRE(narrow.log_present[i] >= std::log(exact.total * exact.marginal[i]) - 1e-9);
            REQUIRE(narrow.log_absent[i] >= std::log(exact.total * (1 - exact.marginal[i])) - 1e-9);
        }
        REQUIRE(narrow.log_unlisted_present >= std::log(exact.total * exact.unlisted) - 1e-9);
    }
}

TEST_CASE("A case of thirty bad findings, all tangled, comes back soon and says how far off it may be") {
    Knowledge knowledge = empty_knowledge();
    std::mt19937 engine(3);
    Facts facts;
    facts.history = 0;
    for (int f = 0; f < 30; ++f) {
        facts.answers[add_finding(knowledge, "f" + std::to_string(f), {"bad", "sound"}, 0.05)] = {0};
    }
    for (int i = 0; i < 47; ++i) {
        std::vector<Shows> shows;
        for (int f = 0; f < 30; ++f) {
            const double often = uniform(engine, 0.1, 0.9);
            if (engine() % 2 == 0) shows.push_back({f, {often, 1 - often}});
        }
        add_cause(knowledge, "c" + std::to_string(i), uniform(engine, 5, 60), shows);
    }
    const std::clock_t start = std::clock();
    const Assessment assessment = assess(knowledge, facts);
    CHECK(seconds_since(start) < 20);
    CHECK(assessment.bound > 0);
    CHECK(assessment.bound <= 1);
    CHECK(assessment.conflict.empty());
    for (const RankedCause& cause : assessment.ranking) {
        CHECK(cause.probability >= 0);
        CHECK(cause.probability <= 1);
        double sum = 0;
        for (const Weight& weight : cause.weights) sum += weight.decibans;
        const double change =
            std::log(cause.probability / (1 - cause.probability)) - std::log(cause.prior / (1 - cause.prior));
        CHECK(sum == Approx(change * 10 / std::log(10.0)).margin(1e-6));
    }
}

TEST_CASE("A finding that only one cause shows costs no table, however many there are") {
    FaultNetwork network;
    FaultCase given;
    network.causes.resize(3);
    for (int f = 0; f < 90; ++f) {
        network.findings.push_back({{0.05, 0.95}, {0.2, 0.8}});
        network.causes[static_cast<std::size_t>(f % 3)].push_back({f, {0.7, 0.3}});
        given.likelihood.push_back(f % 2 == 0 ? std::vector<double>{1, 0} : std::vector<double>{0, 1});
    }
    given.prior = {0.1, 0.1, 0.1};
    given.unlisted_prior = 0.04;
    const Posterior found = posterior(network, given);
    CHECK(found.dissolved == 0);
    CHECK(found.width_bits < 2);
    const Enumerated exact = enumerate(network, given);
    for (std::size_t i = 0; i < 3; ++i) CHECK(found.marginal[i] == Approx(exact.marginal[i]).margin(1e-12));
}
