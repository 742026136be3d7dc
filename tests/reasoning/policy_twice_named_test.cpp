// A cause that names a finding twice, as no file may but code can: the engine takes both as acting together.
#include <catch2/catch.hpp>

#include "brute_force.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("A cause that shows one finding twice is counted as giving the worse of both") {
    FaultNetwork network;
    network.findings = {{{0.05, 0.95}, {0.2, 0.8}}, {{0.02, 0.98}, {0.2, 0.8}}};
    network.causes = {{{0, {0.5, 0.5}}, {1, {0.7, 0.3}}, {0, {0.4, 0.6}}},
                      {{0, {0.8, 0.2}}, {1, {0.1, 0.9}}}};
    FaultCase given;
    given.prior = {0.1, 0.2};
    given.unlisted_prior = 0.04;
    given.likelihood = {{1, 0}, {1, 0}};
    const Posterior found = posterior(network, given);
    const Enumerated exact = enumerate(network, given);
    for (std::size_t i = 0; i < 2; ++i) CHECK(found.marginal[i] == Approx(exact.marginal[i]).margin(1e-12));
}
