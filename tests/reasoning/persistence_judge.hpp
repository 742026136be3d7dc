// The judge of answers given after remedies: draws, for every set of faults, the level each fault (and stray)
// gives each finding once and for all, one combination after the other, and looks at what shows before and
// after each remedy. Shares nothing with the engine but the plain structs.
#pragma once

#include <vector>

#include "rules/model/facts.hpp"
#include "rules/reasoning/fault_network.hpp"

namespace hardover_tests {

// A finding looked at in some stage: likelihood per level.
struct Look {
    int finding = 0;
    int stage = 0;
    std::vector<double> likelihood;
};

struct PersistentCase {
    hardover::FaultNetwork network;  // as it is with nothing put right
    std::vector<double> prior;
    double unlisted_prior = 0;
    std::vector<int> gone_from;  // per cause: the first stage in which it is not there
    std::vector<Look> looks;
    std::vector<hardover::Requirement> requirements;
};

struct PersistentSum {
    double total = 0;
    std::vector<double> marginal;
    double unlisted = 0;
};

// One thing that gives a finding a level: for how long, and how often which.
struct Giver {
    int until = 0;  // stages below this one
    std::vector<double> how_often;
};

// Sum over all draws of the givers from `n` on of their chance times the likelihood of all looks.
inline double over_draws(const std::vector<Giver>& givers, std::size_t n, std::vector<int>& drawn,
                         const std::vector<const Look*>& looks) {
    if (n == givers.size()) {
        double likely = 1;
        for (const Look* look : looks) {
            int worst = static_cast<int>(look->likelihood.size()) - 1;
            for (std::size_t g = 0; g < givers.size(); ++g) {
                if (look->stage < givers[g].until && drawn[g] < worst) worst = drawn[g];
            }
            likely *= look->likelihood[static_cast<std::size_t>(worst)];
        }
        return likely;
    }
    double sum = 0;
    for (std::size_t level = 0; level < givers[n].how_often.size(); ++level) {
        if (givers[n].how_often[level] == 0) continue;
        drawn[n] = static_cast<int>(level);
        sum += givers[n].how_often[level] * over_draws(givers, n + 1, drawn, looks);
    }
    return sum;
}

inline bool meets(const hardover::Requirement& requirement, unsigned faults, int causes) {
    if (requirement.unlisted && (faults >> causes & 1) != 0) return true;
    for (int i = 0; i < causes; ++i) {
        if ((faults >> i & 1) != 0 && requirement.causes[static_cast<std::size_t>(i)]) return true;
    }
    return false;
}

inline PersistentSum sum_over_everything(const PersistentCase& c) {
    const int causes = static_cast<int>(c.network.causes.size());
    const int always = 1000;
    PersistentSum result;
    result.marginal.assign(static_cast<std::size_t>(causes), 0.0);
    for (unsigned faults = 0; faults < 1u << (causes + 1); ++faults) {
        double weight = (faults >> causes & 1) != 0 ? c.unlisted_prior : 1 - c.unlisted_prior;
        for (int i = 0; i < causes; ++i) {
            const double prior = c.prior[static_cast<std::size_t>(i)];
            weight *= (faults >> i & 1) != 0 ? prior : 1 - prior;
        }
        for (const auto& requirement : c.requirements) {
            if (!meets(requirement, faults, causes)) weight = 0;
        }
        for (std::size_t f = 0; weight > 0 && f < c.network.findings.size(); ++f) {
            std::vector<const Look*> looks;
            for (const Look& look : c.looks) {
                if (look.finding == static_cast<int>(f)) looks.push_back(&look);
            }
            if (looks.empty()) continue;
            std::vector<Giver> givers{{always, c.network.findings[f].stray}};
            if ((faults >> causes & 1) != 0) givers.push_back({always, c.network.findings[f].unlisted});
            for (int i = 0; i < causes; ++i) {
                if ((faults >> i & 1) == 0) continue;
                for (const auto& link : c.network.causes[static_cast<std::size_t>(i)]) {
                    if (link.finding != static_cast<int>(f)) continue;
                    givers.push_back({c.gone_from[static_cast<std::size_t>(i)], link.how_often});
                }
            }
            std::vector<int> drawn(givers.size(), 0);
            weight *= over_draws(givers, 0, drawn, looks);
        }
        result.total += weight;
        if ((faults >> causes & 1) != 0) result.unlisted += weight;
        for (int i = 0; i < causes; ++i) {
            if ((faults >> i & 1) != 0) result.marginal[static_cast<std::size_t>(i)] += weight;
        }
    }
    for (double& m : result.marginal) m /= result.total;
    result.unlisted /= result.total;
    return result;
}

}  // namespace hardover_tests
