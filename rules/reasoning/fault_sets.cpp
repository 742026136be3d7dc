#include "rules/reasoning/fault_sets.hpp"

#include <algorithm>
#include <cmath>

#include "rules/reasoning/frontier.hpp"
#include "rules/reasoning/set_growth.hpp"
#include "rules/reasoning/tied.hpp"

namespace hardover {

namespace {

bool before(const WeighedSet& a, const WeighedSet& b) {
    if (a.log_weight != b.log_weight) return a.log_weight > b.log_weight;
    if (a.causes != b.causes) return a.causes < b.causes;
    return a.unlisted < b.unlisted;
}

// Adds the sets of this size that account for all answers and requirements.
void collect(const frontier::SetGrowth& growth, const frontier::SetLevel& level, double log_least,
             std::vector<WeighedSet>& sets) {
    for (std::size_t n = 0; n < level.sets.size(); ++n) {
        if (level.sets[n].missing > 0 || level.sets[n].log_weight < log_least) continue;
        sets.push_back({growth.causes_of(level, n), level.sets[n].lane == 1, level.sets[n].log_weight});
    }
}

}  // namespace

std::vector<WeighedSet> heaviest_sets(const FaultNetwork& network, const FaultCase& given, std::size_t most,
                                      double log_least) {
    if (!given.tied.empty()) return heaviest_sets_of_tied(network, given, most);
    const frontier::Problem problem = frontier::write_out(network, given);
    std::vector<WeighedSet> sets;
    if (!problem.possible) return sets;
    const frontier::SetGrowth growth(problem);
    frontier::SetLevel level = growth.nothing();
    for (int size = 0;; ++size) {
        collect(growth, level, log_least, sets);
        level = growth.one_more(level, most, log_least);
        if (level.sets.empty()) break;
        if (size < 2) continue;
        double worth_listing = log_least;
        if (sets.size() >= most) {
            const auto last = sets.begin() + static_cast<std::ptrdiff_t>(most - 1);
            std::nth_element(sets.begin(), last, sets.end(), before);
            worth_listing = std::max(worth_listing, last->log_weight);
        }
        const auto heaviest =
            std::max_element(level.sets.begin(), level.sets.end(),
                             [](const auto& a, const auto& b) { return a.log_weight < b.log_weight; });
        if (heaviest->log_weight < worth_listing) break;
    }
    std::sort(sets.begin(), sets.end(), before);
    if (sets.size() > most) sets.resize(most);
    return sets;
}

std::vector<double> log_weights_of_singles(const FaultNetwork& network, const FaultCase& given) {
    if (!given.tied.empty()) return log_weights_of_singles_of_tied(network, given);
    std::vector<double> weights(network.causes.size() + 1, never);
    const frontier::Problem problem = frontier::write_out(network, given);
    if (!problem.possible) return weights;
    const frontier::SetGrowth growth(problem);
    const frontier::SetLevel singles = growth.one_more(growth.nothing(), weights.size(), never);
    for (std::size_t n = 0; n < singles.sets.size(); ++n) {
        const frontier::GrownSet& set = singles.sets[n];
        if (set.missing > 0) continue;
        const std::vector<int> causes = growth.causes_of(singles, n);
        weights[causes.empty() ? weights.size() - 1 : static_cast<std::size_t>(causes.front())] =
            set.log_weight;
    }
    return weights;
}

}  // namespace hardover
