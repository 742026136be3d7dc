#include "rules/reasoning/branches.hpp"

#include <cmath>

namespace hardover {

namespace {

// What each reading of a finding would do to the ranking.
void add_branches_of(const Knowledge& knowledge, const DiagnosisCase& diagnosis, Index finding,
                     std::vector<NextStep::Branch>& branches) {
    const std::size_t readings = knowledge.findings[static_cast<std::size_t>(finding)].readings.size();
    FaultCase given = diagnosis.with_all();
    double likely = 0;
    double log_first = 0;
    const std::size_t first_branch = branches.size();
    for (std::size_t r = 0; r < readings; ++r) {
        std::vector<double>& likelihood = given.likelihood[static_cast<std::size_t>(finding)];
        likelihood.assign(readings, 0.0);
        likelihood[r] = 1;
        const Posterior then = posterior(diagnosis.network(), given);
        if (!then.possible) continue;
        NextStep::Branch branch;
        branch.finding = finding;
        branch.reading = static_cast<int>(r);
        if (branches.size() == first_branch) log_first = then.log_evidence;
        likely += branch.chance = std::exp(then.log_evidence - log_first);
        for (std::size_t i = 0; i < then.marginal.size(); ++i) {
            const bool counts = diagnosis.cured() || !diagnosis.put_right()[i];
            if (!counts || then.marginal[i] <= branch.first_probability) continue;
            branch.first = static_cast<Index>(i);
            branch.first_probability = then.marginal[i];
        }
        branches.push_back(branch);
    }
    for (std::size_t b = first_branch; b < branches.size(); ++b) branches[b].chance /= likely;
}

}  // namespace

void add_branches(const Knowledge& knowledge, const DiagnosisCase& diagnosis, Advice& advice) {
    for (Index finding : advice.weighed_in) {
        add_branches_of(knowledge, diagnosis, finding, advice.next.branches);
    }
}

}  // namespace hardover
