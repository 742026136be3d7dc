// The judge of the ranking: sums over all sets of faults one by one, straight from the definition. Written
// apart from the engine and sharing nothing with it but the plain structs.
#pragma once

#include <map>
#include <vector>

#include "rules/reasoning/fault_network.hpp"

namespace hardover_tests {

struct Enumerated {
    double total = 0;              // P(answers and requirements)
    std::vector<double> marginal;  // per cause
    double unlisted = 0;
    double several = 0;  // more than one fault
    std::map<std::vector<int>, double>
        sets;  // faults present -> probability; the unlisted has the last index
};

// Distribution of the worse (lower) of two independent levels, pair by pair.
inline std::vector<double> worse(const std::vector<double>& a, const std::vector<double>& b) {
    std::vector<double> out(a.size(), 0.0);
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) out[i < j ? i : j] += a[i] * b[j];
    }
    return out;
}

// P(each level of a finding | these faults are present, and no others).
inline std::vector<double> shown(const hardover::FaultNetwork& network, int finding,
                                 const std::vector<int>& faults) {
    const auto& f = network.findings[static_cast<std::size_t>(finding)];
    std::vector<double> level = f.stray;
    for (int fault : faults) {
        if (fault == static_cast<int>(network.causes.size())) {
            level = worse(level, f.unlisted);
            continue;
        }
        for (const auto& link : network.causes[static_cast<std::size_t>(fault)]) {
            if (link.finding == finding) level = worse(level, link.how_often);
        }
    }
    return level;
}

// `ignored`: causes that do not count as faults in `sets` and `several` (they have been put right).
inline Enumerated enumerate(const hardover::FaultNetwork& network, const hardover::FaultCase& given,
                            const std::vector<bool>& ignored = {}) {
    const int causes = static_cast<int>(network.causes.size());
    Enumerated result;
    result.marginal.assign(static_cast<std::size_t>(causes), 0.0);
    for (unsigned bits = 0; bits < 1u << (causes + 1); ++bits) {
        std::vector<int> faults;
        double weight = 1;
        for (int i = 0; i <= causes; ++i) {
            const double prior =
                i == causes ? given.unlisted_prior : given.prior[static_cast<std::size_t>(i)];
            const bool present = (bits >> i & 1) != 0;
            weight *= present ? prior : 1 - prior;
            if (present) faults.push_back(i);
        }
        for (const auto& requirement : given.requirements) {
            bool met = false;
            for (int fault : faults) {
                met = met || (fault == causes
                                  ? requirement.unlisted
                                  : static_cast<bool>(requirement.causes[static_cast<std::size_t>(fault)]));
            }
            if (!met) weight = 0;
        }
        for (std::size_t f = 0; weight > 0 && f < network.findings.size(); ++f) {
            if (given.likelihood[f].empty()) continue;
            const std::vector<double> level = shown(network, static_cast<int>(f), faults);
            double likely = 0;
            for (std::size_t k = 0; k < level.size(); ++k) likely += level[k] * given.likelihood[f][k];
            weight *= likely;
        }
        if (!(weight > 0)) continue;
        result.total += weight;
        std::vector<int> counted;
        for (int fault : faults) {
            if (fault < causes) result.marginal[static_cast<std::size_t>(fault)] += weight;
            if (fault == causes) result.unlisted += weight;
            if (fault == causes || ignored.empty() || !ignored[static_cast<std::size_t>(fault)]) {
                counted.push_back(fault);
            }
        }
        result.sets[counted] += weight;
        if (counted.size() > 1) result.several += weight;
    }
    for (double& m : result.marginal) m /= result.total;
    for (auto& [set, weight] : result.sets) weight /= result.total;
    result.unlisted /= result.total;
    result.several /= result.total;
    return result;
}

}  // namespace hardover_tests
