// The exact ranking against a plain sum over all sets of faults, on random networks.
#include <catch2/catch.hpp>
#include <cmath>

#include "brute_force.hpp"
#include "chance.hpp"
#include "rules/reasoning/fault_network.hpp"
#include "rules/reasoning/fault_sets.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::vector<double> distribution(Chance& chance, std::size_t levels, double sound) {
    std::vector<double> d(levels, 0.0);
    double sum = 0;
    for (std::size_t k = 0; k + 1 < levels; ++k) {
        d[k] = chance.one_in(4) ? 0 : chance.between(0.1, 1);
        sum += d[k];
    }
    for (std::size_t k = 0; k + 1 < levels; ++k) d[k] *= sum > 0 ? (1 - sound) / sum : 0;
    d[levels - 1] = sum > 0 ? sound : 1;
    return d;
}

std::vector<double> answer(Chance& chance, std::size_t levels) {
    std::vector<double> likelihood(levels, 0.0);
    if (chance.one_in(3)) {
        for (double& l : likelihood) l = chance.one_in(4) ? 0.5 : chance.between(0.01, 1);
    } else {
        likelihood[static_cast<std::size_t>(chance.upto(static_cast<int>(levels) - 1))] = 1;
    }
    return likelihood;
}

struct Random {
    FaultNetwork network;
    FaultCase given;
};

Random random_case(unsigned seed) {
    Chance chance(seed);
    Random random;
    const int findings = 1 + chance.upto(7);
    const int causes = chance.upto(8);
    for (int f = 0; f < findings; ++f) {
        const auto levels = static_cast<std::size_t>(2 + chance.upto(2));
        random.network.findings.push_back(
            {distribution(chance, levels, chance.between(0.8, 0.99)), distribution(chance, levels, 0.8)});
        random.given.likelihood.push_back(chance.one_in(4) ? std::vector<double>() : answer(chance, levels));
    }
    for (int i = 0; i < causes; ++i) {
        std::vector<FaultLink> links;
        for (int f = 0; f < findings; ++f) {
            if (!chance.one_in(2)) continue;
            const std::size_t levels = random.network.findings[static_cast<std::size_t>(f)].stray.size();
            links.push_back({f, distribution(chance, levels, chance.between(0.02, 0.9))});
        }
        random.network.causes.push_back(links);
        random.given.prior.push_back(chance.one_in(8) ? 0 : chance.between(0.001, 0.3));
    }
    random.given.unlisted_prior = chance.one_in(5) ? 0 : chance.between(0.01, 0.1);
    for (int r = chance.upto(2); r > 0; --r) {
        Requirement requirement;
        requirement.unlisted = chance.one_in(2);
        for (int i = 0; i < causes; ++i) requirement.causes.push_back(!chance.one_in(3));
        random.given.requirements.push_back(requirement);
    }
    return random;
}

// Equal to the sum over all sets, by tables of more than so many bits.
void check_exact_and_wide(const Random& random, double bits) {
    const Enumerated expected = enumerate(random.network, random.given);
    const Posterior found = posterior(random.network, random.given);
    REQUIRE(found.width_bits > bits);
    REQUIRE(found.dissolved == 0);
    CHECK(found.log_evidence == Approx(std::log(expected.total)).epsilon(1e-11));
    CHECK(found.unlisted == Approx(expected.unlisted).epsilon(1e-10));
    for (std::size_t i = 0; i < expected.marginal.size(); ++i) {
        CHECK(found.marginal[i] == Approx(expected.marginal[i]).epsilon(1e-10));
    }
}

}  // namespace

TEST_CASE("The ranking equals a sum over every set of faults, for 3000 random cases") {
    for (unsigned seed = 1; seed <= 3000; ++seed) {
        const Random random = random_case(seed);
        INFO("seed " << seed);
        const Enumerated expected = enumerate(random.network, random.given);
        const Posterior found = posterior(random.network, random.given);
        REQUIRE(found.possible == (expected.total > 0));
        if (!found.possible) continue;
        REQUIRE(found.dissolved == 0);
        REQUIRE(found.log_evidence == Approx(std::log(expected.total)).epsilon(1e-11).margin(1e-11));
        REQUIRE(found.unlisted == Approx(expected.unlisted).margin(1e-11));
        for (std::size_t i = 0; i < expected.marginal.size(); ++i) {
            REQUIRE(found.marginal[i] == Approx(expected.marginal[i]).margin(1e-11));
        }
    }
}

TEST_CASE(
    "The probability of the answers, of one counted fault alone, and of any counted faults equal a sum over "
    "all sets") {
    for (unsigned seed = 1; seed <= 2000; ++seed) {
        const Random random = random_case(seed);
        INFO("seed " << seed);
        Chance chance(seed + 50000);
        std::vector<bool> counted;
        std::vector<bool> ignored;
        for (std::size_t i = 0; i < random.given.prior.size(); ++i) {
            counted.push_back(!chance.one_in(3));
            ignored.push_back(!counted.back());
        }
        const Enumerated expected = enumerate(random.network, random.given, ignored);
        REQUIRE(std::exp(log_evidence(random.network, random.given)) ==
                Approx(expected.total).epsilon(1e-11).margin(1e-300));
        const auto weight_of = [&](const std::vector<int>& faults) {
            const auto found = expected.sets.find(faults);
            return found == expected.sets.end() ? 0 : found->second * expected.total;
        };
        const auto unlisted = static_cast<int>(counted.size());
        std::vector<WeighedSet> sets;
        for (const auto& [faults, share] : expected.sets) {
            sets.push_back({faults, !faults.empty() && faults.back() == unlisted});
            if (sets.back().unlisted) sets.back().causes.pop_back();
        }
        // Every set of what is not counted gone through, and by tables.
        for (std::size_t aside : {most_aside, std::size_t{0}}) {
            const std::vector<double> alone = log_weights_alone(random.network, random.given, counted, aside);
            REQUIRE(alone.size() == counted.size() + 1);
            for (std::size_t i = 0; i < alone.size(); ++i) {
                REQUIRE(std::exp(alone[i]) ==
                        Approx(weight_of({static_cast<int>(i)})).epsilon(1e-10).margin(1e-300));
            }
            const std::vector<double> among =
                log_weights_among(random.network, random.given, counted, sets, aside);
            for (std::size_t n = 0; n < sets.size(); ++n) {
                std::vector<int> faults = sets[n].causes;
                if (sets[n].unlisted) faults.push_back(unlisted);
                REQUIRE(std::exp(among[n]) == Approx(weight_of(faults)).epsilon(1e-10).margin(1e-300));
            }
        }
    }
}

TEST_CASE("Where tables grow so large that a second order is looked for, the ranking is still exact") {
    for (unsigned seed = 1; seed <= 5; ++seed) {
        Chance chance(seed);
        Random random;
        for (int f = 0; f < 15; ++f) {
            random.network.findings.push_back({distribution(chance, 2, 0.95), distribution(chance, 2, 0.8)});
            random.given.likelihood.push_back({chance.between(0.5, 1), chance.between(0.01, 0.4)});
        }
        for (int i = 0; i < 11; ++i) {
            std::vector<FaultLink> links;
            for (int f = 0; f < 15; ++f) {
                if (chance.one_in(2)) links.push_back({f, distribution(chance, 2, chance.between(0.1, 0.9))});
            }
            random.network.causes.push_back(links);
            random.given.prior.push_back(chance.between(0.01, 0.3));
        }
        random.given.unlisted_prior = 0.05;
        INFO("seed " << seed);
        check_exact_and_wide(random, 13);
    }
}

TEST_CASE("Wide tables of findings with two and three readings are exact, also where a cause always shows") {
    for (unsigned seed = 1; seed <= 6; ++seed) {
        Chance chance(seed);
        Random random;
        const auto levels_of = [](int finding) { return finding % 3 == 1 ? std::size_t{3} : std::size_t{2}; };
        for (int f = 0; f < 11; ++f) {
            const std::size_t levels = levels_of(f);
            random.network.findings.push_back(
                {distribution(chance, levels, 0.95), distribution(chance, levels, 0.8)});
            std::vector<double>& likelihood = random.given.likelihood.emplace_back();
            for (std::size_t k = 0; k < levels; ++k) likelihood.push_back(chance.between(0.01, 1));
        }
        for (int i = 0; i < 9; ++i) {
            std::vector<FaultLink> links;
            for (int f = 0; f < 11; ++f) {
                if (chance.one_in(3)) continue;
                std::vector<double> how_often = distribution(chance, levels_of(f), chance.between(0.1, 0.9));
                if (chance.one_in(3))
                    how_often = levels_of(f) == 2 ? std::vector{1.0, 0.0} : std::vector{0.3, 0.7, 0.0};
                links.push_back({f, how_often});
            }
            random.network.causes.push_back(links);
            random.given.prior.push_back(chance.between(0.01, 0.3));
        }
        random.given.unlisted_prior = 0.05;
        INFO("seed " << seed);
        check_exact_and_wide(random, 12);  // more numbers than are worked on at a time
    }
}

TEST_CASE("The listed sets of faults carry exactly the weight they have in the sum over all sets") {
    for (unsigned seed = 1; seed <= 1000; ++seed) {
        const Random random = random_case(seed);
        INFO("seed " << seed);
        const Enumerated expected = enumerate(random.network, random.given);
        const std::vector<WeighedSet> listed = heaviest_sets(random.network, random.given, 256);
        double last = 0;
        double sum = 0;
        for (const WeighedSet& set : listed) {
            std::vector<int> faults = set.causes;
            if (set.unlisted) faults.push_back(static_cast<int>(random.network.causes.size()));
            const auto found = expected.sets.find(faults);
            REQUIRE(found != expected.sets.end());
            const double probability = std::exp(set.log_weight) / expected.total;
            REQUIRE(probability == Approx(found->second).margin(1e-11));
            REQUIRE((&set == listed.data() || set.log_weight <= last));
            last = set.log_weight;
            sum += probability;
        }
        if (expected.total > 0 && expected.sets.size() <= 256) REQUIRE(sum == Approx(1).margin(1e-10));
    }
}

TEST_CASE("Among many causes the sets that meet rare requirements are still found") {
    Chance chance(5);
    FaultNetwork network;
    FaultCase given;
    network.findings.push_back({{0.05, 0.95}, {0.2, 0.8}});
    given.likelihood.push_back({1, 0});
    for (int i = 0; i < 40; ++i) {
        const bool rare = i >= 36;
        network.causes.push_back({{0, {0.5, 0.5}}});
        given.prior.push_back(rare ? 0.0001 : chance.between(0.01, 0.03));
        if (!rare) continue;
        Requirement requirement;
        requirement.causes.assign(40, false);
        requirement.causes[static_cast<std::size_t>(i)] = true;
        given.requirements.push_back(requirement);
    }
    const std::vector<WeighedSet> sets = heaviest_sets(network, given, 256);
    REQUIRE(sets.size() == 256);
    const Posterior all = posterior(network, given);
    double listed = 0;
    for (const WeighedSet& set : sets) listed += std::exp(set.log_weight - all.log_evidence);
    CHECK(listed > 0.3);
    CHECK(listed < 1 + 1e-12);
}
