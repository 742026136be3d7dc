// One case asked several things, the sets of faults when only some are kept of each size, and what is known
// before any answer.
#include "rules/reasoning/written_case.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>

#include "chance.hpp"
#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/tied.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Random {
    FaultNetwork network;
    FaultCase given;
};

constexpr int causes_in_all = 40;

// Forty causes on ten findings, one or two each. Everything can show everywhere, so that any set can give the
// answers.
Random random_case(unsigned seed) {
    Chance chance(seed);
    Random random;
    for (int f = 0; f < 10; ++f) {
        const auto levels = static_cast<std::size_t>(2 + chance.upto(2));
        random.network.findings.push_back({shares(chance, levels, chance.between(0.02, 0.1)),
                                           shares(chance, levels, chance.between(0.1, 0.5))});
        std::vector<double> likelihood(levels, 0.0);
        if (chance.one_in(2)) {
            for (double& l : likelihood) l = chance.between(0.01, 1);
        } else {
            likelihood[static_cast<std::size_t>(chance.upto(static_cast<int>(levels) - 1))] = 1;
        }
        random.given.likelihood.push_back(likelihood);
    }
    for (int i = 0; i < causes_in_all; ++i) {
        std::vector<FaultLink>& links = random.network.causes.emplace_back();
        for (int f = 0; f < 10; ++f) {
            const std::size_t levels = random.network.findings[static_cast<std::size_t>(f)].stray.size();
            if (chance.one_in(6)) links.push_back({f, shares(chance, levels, chance.between(0.1, 0.95))});
        }
        random.given.prior.push_back(chance.between(0.001, 0.1));
    }
    random.given.unlisted_prior = chance.between(0.01, 0.1);
    return random;
}

using Faults = std::pair<std::vector<int>, bool>;  // causes, and whether something unlisted is there

double weight_of(const Random& random, const Faults& faults) {
    return log_weight_of_set(random.network, random.given, faults.first, faults.second);
}

// The `most` heaviest of each size, each one larger than one of the size before; those at least as heavy as
// `log_least`, until a size adds nothing.
std::vector<std::pair<double, Faults>> grown_plainly(const Random& random, std::size_t most,
                                                     double log_least) {
    std::vector<std::pair<double, Faults>> listed;
    std::set<Faults> level{{{}, false}};
    for (std::size_t size = 0; !level.empty(); ++size) {
        for (const Faults& faults : level) listed.push_back({-weight_of(random, faults), faults});
        std::sort(listed.begin(), listed.end());
        if (listed.size() > most) listed.resize(most);
        std::set<std::pair<double, Faults>> larger;
        for (const Faults& faults : level) {
            for (int cause = 0; cause < causes_in_all; ++cause) {
                Faults more = faults;
                if (std::count(more.first.begin(), more.first.end(), cause) > 0) continue;
                more.first.push_back(cause);
                std::sort(more.first.begin(), more.first.end());
                larger.insert({-weight_of(random, more), more});
            }
        }
        level.clear();
        if (size == 0) level.insert({{}, true});
        for (const auto& [minus, faults] : larger) {
            if (level.size() < most) level.insert(faults);
        }
        if (size >= 2 && listed.size() == most && -larger.begin()->first < -listed.back().first) break;
    }
    std::erase_if(listed, [&](const auto& set) { return -set.first < log_least; });
    return listed;
}

}  // namespace

TEST_CASE("The sets of faults are those of growing the heaviest of each size, whatever is not looked at") {
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const Random random = random_case(seed);
        const std::size_t most = 3 + seed % 30;
        INFO("seed " << seed << ", the heaviest " << most);
        const std::vector<WeighedSet> found = heaviest_sets(random.network, random.given, most);
        const auto expected = grown_plainly(random, most, never);
        REQUIRE(found.size() == expected.size());
        for (std::size_t n = 0; n < found.size(); ++n) {
            REQUIRE(found[n].log_weight == Approx(-expected[n].first).epsilon(1e-11));
            REQUIRE(Faults{found[n].causes, found[n].unlisted} == expected[n].second);
        }
    }
}

TEST_CASE("A case asked several things tells the same as one asked each anew, to the last digit") {
    for (unsigned seed = 1; seed <= 100; ++seed) {
        const Random random = random_case(1000 + seed);
        WrittenCase written(random.network, random.given);
        const Posterior first = posterior(random.network, random.given);
        std::vector<bool> counted(random.given.prior.size());
        for (std::size_t i = 0; i < counted.size(); ++i) counted[i] = (i + seed) % 3 != 0;
        for (int time = 0; time < 2; ++time) {
            CHECK(posterior(written).marginal == first.marginal);
            CHECK(posterior(written).log_evidence == first.log_evidence);
            CHECK(log_weights_alone(written, counted) ==
                  log_weights_alone(random.network, random.given, counted));
            const std::vector<WeighedSet> anew = heaviest_sets(random.network, random.given, 20);
            const std::vector<WeighedSet> again = heaviest_sets(written, 20);
            REQUIRE(again.size() == anew.size());
            for (std::size_t n = 0; n < anew.size(); ++n) {
                CHECK(again[n].causes == anew[n].causes);
                CHECK(again[n].log_weight == anew[n].log_weight);
            }
        }
    }
}

TEST_CASE("Before any answer a cause is as probable as the network makes it when something is wrong") {
    for (unsigned seed = 1; seed <= 50; ++seed) {
        Chance chance(seed);
        Knowledge knowledge = empty_knowledge();
        add_finding(knowledge, "noise", {"loud", "quiet"}, 0.05);
        Facts facts;
        facts.history = 0;
        facts.answers[0] = {0};
        const int causes = 1 + chance.upto(5);
        for (int i = 0; i < causes; ++i) {
            add_cause(knowledge, "c" + std::to_string(i), chance.between(0.1, 280), {{0, {0.6, 0.4}}});
        }
        Situation situation(knowledge, facts);
        const DiagnosisCase diagnosis(knowledge, facts, Fired(), situation);
        const Posterior network = posterior(diagnosis.network(), diagnosis.with_none());
        Ranking ranking = rank(diagnosis);
        add_weights(diagnosis, ranking);
        const Posterior after = posterior(diagnosis.network(), diagnosis.with_all());
        for (const RankedCause& cause : ranking.causes) {
            const auto i = static_cast<std::size_t>(cause.cause);
            CHECK(cause.prior == Approx(network.marginal[i]).epsilon(1e-13));
            REQUIRE(cause.weights.size() == 1);
            const double change = (after.log_odds[i] - network.log_odds[i]) * 10 / std::log(10.0);
            CHECK(cause.weights[0].decibans == Approx(change).epsilon(1e-10).margin(1e-10));
        }
    }
}
