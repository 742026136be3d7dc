#include "rules/reasoning/fault_sets.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

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

// As log_weights_among(), for one set: what counts and is not in it is taken away, what is in it required.
double log_weight_by_tables(const FaultNetwork& network, FaultCase given, const std::vector<bool>& counted,
                            const WeighedSet& set) {
    double log_absent = 0;
    for (std::size_t i = 0; i < given.prior.size(); ++i) {
        if (!counted[i] || std::binary_search(set.causes.begin(), set.causes.end(), static_cast<int>(i))) {
            continue;
        }
        log_absent += std::log1p(-given.prior[i]);
        given.prior[i] = 0;
    }
    for (int cause : set.causes) {
        Requirement present;
        present.causes.assign(given.prior.size(), false);
        present.causes[static_cast<std::size_t>(cause)] = true;
        given.requirements.push_back(std::move(present));
    }
    if (set.unlisted) {
        given.requirements.push_back({std::vector<bool>(given.prior.size(), false), true});
    } else {
        log_absent += std::log1p(-given.unlisted_prior);
        given.unlisted_prior = 0;
    }
    return log_evidence(network, given) + log_absent;
}

// Per place, the sum of what each plain case of a tied one gives.
template <typename WeightsOf>
std::vector<double> sum_of_terms(const FaultCase& given, std::size_t places, WeightsOf weights_of) {
    std::vector<double> sums(places, never);
    for (const FaultCase& plain : untied(given)) {
        const std::vector<double> term = weights_of(plain);
        for (std::size_t i = 0; i < places; ++i) sums[i] = log_add(sums[i], term[i]);
    }
    return sums;
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

std::vector<double> log_weights_alone(const FaultNetwork& network, const FaultCase& given,
                                      const std::vector<bool>& counted, std::size_t aside) {
    WrittenCase written(network, given);
    return log_weights_alone(written, counted, aside);
}

std::vector<double> log_weights_alone(WrittenCase& written, const std::vector<bool>& counted,
                                      std::size_t aside) {
    const FaultCase& given = written.given();
    if (!given.tied.empty()) {
        return sum_of_terms(given, given.prior.size() + 1, [&](const FaultCase& plain) {
            return log_weights_alone(written.network(), plain, counted, aside);
        });
    }
    std::vector<double> weights(given.prior.size() + 1, never);
    if (!written.problem().possible) return weights;
    if (written.growth().aside(counted) <= aside) {
        written.growth().weigh_alone(counted, weights);
        return weights;
    }
    for (std::size_t i = 0; i < given.prior.size(); ++i) {
        if (!counted[i] || given.prior[i] <= 0) continue;
        weights[i] = log_weight_by_tables(written.network(), given, counted, {{static_cast<int>(i)}});
    }
    weights.back() = log_weight_by_tables(written.network(), given, counted, {{}, true});
    return weights;
}

std::vector<double> log_weights_among(const FaultNetwork& network, const FaultCase& given,
                                      const std::vector<bool>& counted, const std::vector<WeighedSet>& sets,
                                      std::size_t aside) {
    WrittenCase written(network, given);
    return log_weights_among(written, counted, sets, aside);
}

std::vector<double> log_weights_among(WrittenCase& written, const std::vector<bool>& counted,
                                      const std::vector<WeighedSet>& sets, std::size_t aside) {
    const FaultCase& given = written.given();
    if (!given.tied.empty()) {
        return sum_of_terms(given, sets.size(), [&](const FaultCase& plain) {
            return log_weights_among(written.network(), plain, counted, sets, aside);
        });
    }
    std::vector<double> weights(sets.size(), never);
    if (!written.problem().possible) return weights;
    const bool few = written.growth().aside(counted) <= aside;
    for (std::size_t n = 0; n < sets.size(); ++n) {
        weights[n] = few ? written.growth().log_weight(sets[n].causes, sets[n].unlisted, counted)
                         : log_weight_by_tables(written.network(), given, counted, sets[n]);
    }
    return weights;
}

}  // namespace hardover
