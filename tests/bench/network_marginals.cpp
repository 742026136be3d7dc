// Reads one noisy-OR network (form: tests/outside/noisy_or.hpp) and prints ln P(answers) and the probability
// of every cause: the engine as a whole process, to be compared with other programs.
#include <cstdio>
#include <fstream>
#include <iostream>

#include "rules/reasoning/fault_network.hpp"

using namespace hardover;

namespace {

bool read(std::istream& file, FaultNetwork& network, FaultCase& given) {
    std::size_t causes = 0;
    std::size_t findings = 0;
    if (!(file >> causes >> findings) || causes > 10000 || findings > 100000) return false;
    network.causes.resize(causes);
    given.prior.resize(causes);
    for (double& prior : given.prior) file >> prior;
    for (std::size_t f = 0; f < findings && file; ++f) {
        double leak = 0;
        int seen = 0;
        int links = 0;
        file >> leak >> seen >> links;
        network.findings.push_back({{leak, 1 - leak}, {0, 1}});
        given.likelihood.emplace_back();
        if (seen != 0) given.likelihood.back() = {seen == 2 ? 1.0 : 0.0, seen == 1 ? 1.0 : 0.0};
        for (int n = 0; n < links; ++n) {
            std::size_t cause = 0;
            double strength = 0;
            if (!(file >> cause >> strength) || cause >= causes) return false;
            network.causes[cause].push_back({static_cast<int>(f), {strength, 1 - strength}});
        }
    }
    return static_cast<bool>(file);
}

}  // namespace

int main(int argc, char** argv) {
    std::ifstream file(argc > 1 ? argv[1] : "");
    FaultNetwork network;
    FaultCase given;
    if (!read(file, network, given)) {
        std::cerr << "usage: network_marginals FILE, a noisy-OR network\n";
        return 2;
    }
    const Posterior result = posterior(network, given);
    std::printf("%.17g\n", result.log_evidence);
    for (double marginal : result.marginal) std::printf("%.17g\n", marginal);
    return result.dissolved == 0 ? 0 : 3;
}
