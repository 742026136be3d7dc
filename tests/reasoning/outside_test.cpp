// The same random noisy-OR networks through this engine and through general-purpose programs: toulbar2
// (Debian) to the digits it prints, and the npm package bayesjs to 1e-9 where it can be installed.
#include <filesystem>
#include <memory>
#include <sstream>

#include "outside/noisy_or.hpp"
#include "outside/process.hpp"
#include "rules/reasoning/fault_network.hpp"
#include "support.hpp"

using namespace hardover_tests;

namespace {

constexpr double half_a_printed_digit = 0.0005;  // toulbar2 prints three decimals of ln Z
constexpr double precision_of_costs = 1e-4;      // its tables are whole numbers inside (7 digits)
constexpr int not_there = 77;                    // exit code of tests/outside/bayesjs

double log_z(const NoisyOr& network, int given) {
    const ScratchFile file("network.uai", as_uai(network, given));
    const Finished ran = run_process({"toulbar2", file.path(), "-logz"});
    const std::optional<double> log_z = toulbar2_log_z(ran.out);
    INFO(ran.out);
    REQUIRE(log_z.has_value());
    return *log_z;
}

}  // namespace

TEST_CASE("toulbar2 gives the same probability of the answers, alone and with each cause") {
    for (unsigned seed = 1; seed <= 6; ++seed) {
        const NoisyOr network = random_noisy_or(seed, 8 + static_cast<int>(seed), 20, 5, 14);
        const hardover::Posterior ours =
            hardover::posterior(as_fault_network(network), as_fault_case(network));
        INFO("seed " << seed);
        const double margin = half_a_printed_digit + precision_of_costs;
        CHECK(ours.log_evidence == Approx(log_z(network, -1)).margin(margin));
        for (std::size_t i = 0; i < network.prior.size(); ++i) {
            INFO("cause " << i);
            const double with_cause = ours.log_evidence + std::log(ours.marginal[i]);
            CHECK(with_cause == Approx(log_z(network, static_cast<int>(i))).margin(margin));
        }
    }
}

TEST_CASE("toulbar2 agrees also when something not on the list may show in every finding") {
    // Outside, it is one more cause, linked to all findings; inside, it has a place of its own.
    NoisyOr network = random_noisy_or(77, 7, 9, 4, 9);
    hardover::FaultNetwork inside = as_fault_network(network);
    hardover::FaultCase given = as_fault_case(network);
    given.unlisted_prior = 0.04;
    for (hardover::FaultNetwork::Finding& finding : inside.findings) finding.unlisted = {0.2, 0.8};
    network.prior.push_back(given.unlisted_prior);
    for (NoisyOr::Finding& finding : network.findings) finding.links.push_back({7, 0.2});
    const hardover::Posterior ours = hardover::posterior(inside, given);
    const double margin = half_a_printed_digit + precision_of_costs;
    CHECK(ours.log_evidence == Approx(log_z(network, -1)).margin(margin));
    CHECK(ours.log_evidence + std::log(ours.unlisted) == Approx(log_z(network, 7)).margin(margin));
    CHECK(ours.log_evidence + std::log(ours.marginal[0]) == Approx(log_z(network, 0)).margin(margin));
}

TEST_CASE("A junction tree gives the same probability of every cause to nine decimals") {
    std::vector<NoisyOr> networks;
    std::vector<std::unique_ptr<ScratchFile>> files;
    const std::string folder = (std::filesystem::path(HARDOVER_PROGRAM).parent_path() / "outside").string();
    std::vector<std::string> words{source_path("tests/outside/bayesjs"), folder};
    for (unsigned seed = 1; seed <= 12; ++seed) {
        networks.push_back(random_noisy_or(500 + seed, 6, 9, 3, 7));
        files.push_back(
            std::make_unique<ScratchFile>("network" + std::to_string(seed), as_text(networks.back())));
        words.push_back(files.back()->path());
    }
    const Finished ran = run_process(words);
    if (ran.code == not_there) {
        WARN("bayesjs is not there and cannot be fetched from npm: not compared");
        return;
    }
    INFO(ran.out);
    REQUIRE(ran.code == 0);
    std::istringstream lines(ran.out);
    for (std::size_t n = 0; n < networks.size(); ++n) {
        std::string time;
        REQUIRE(lines >> time >> time);
        const hardover::Posterior ours =
            hardover::posterior(as_fault_network(networks[n]), as_fault_case(networks[n]));
        for (std::size_t i = 0; i < networks[n].prior.size(); ++i) {
            INFO("network " << n << ", cause " << i);
            double theirs = -1;
            REQUIRE(lines >> theirs);
            CHECK(ours.marginal[i] == Approx(theirs).margin(1e-9));
        }
    }
}
