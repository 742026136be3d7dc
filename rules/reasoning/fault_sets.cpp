#include "rules/reasoning/fault_sets.hpp"

#include <algorithm>
#include <cmath>

#include "rules/reasoning/tied.hpp"
#include "rules/reasoning/written_case.hpp"

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
    WrittenCase written(network, given);
    return heaviest_sets(written, most, log_least);
}

std::vector<WeighedSet> heaviest_sets(WrittenCase& written, std::size_t most, double log_least) {
    if (!written.given().tied.empty()) return heaviest_sets_of_tied(written.network(), written.given(), most);
    std::vector<WeighedSet> sets;
    if (!written.problem().possible) return sets;
    const frontier::SetGrowth& growth = written.growth();
    frontier::SetLevel level = growth.nothing();
    double worth_listing = never;
    for (int size = 0;; ++size) {
        collect(growth, level, log_least, sets);
        if (size >= 2) {
            worth_listing = log_least;
            if (sets.size() >= most) {
                const auto last = sets.begin() + static_cast<std::ptrdiff_t>(most - 1);
                std::nth_element(sets.begin(), last, sets.end(), before);
                worth_listing = std::max(worth_listing, last->log_weight);
            }
        }
        level = growth.one_more(level, most, log_least, worth_listing);
        if (level.sets.empty()) break;
    }
    std::sort(sets.begin(), sets.end(), before);
    if (sets.size() > most) sets.resize(most);
    return sets;
}

std::vector<double> log_weights_of_singles(const FaultNetwork& network, const FaultCase& given) {
    WrittenCase written(network, given);
    return log_weights_of_singles(written);
}

std::vector<double> log_weights_of_singles(WrittenCase& written) {
    const FaultCase& given = written.given();
    if (!given.tied.empty()) return log_weights_of_singles_of_tied(written.network(), given);
    std::vector<double> weights(given.prior.size() + 1, never);
    if (written.problem().possible) written.growth().weigh_singles(weights);
    return weights;
}

}  // namespace hardover
