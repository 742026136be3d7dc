#include "rules/reasoning/tied.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "rules/reasoning/log_sum.hpp"

namespace hardover {

namespace {

// ln p of log-odds.
double log_of(double log_odds) {
    if (log_odds == never) return never;
    return log_odds < 0 ? log_odds - std::log1p(std::exp(log_odds)) : -std::log1p(std::exp(-log_odds));
}

double log_likely(const std::vector<double>& shown, const std::vector<double>& likelihood) {
    double sum = 0;
    for (std::size_t k = 0; k < shown.size(); ++k) sum += shown[k] * likelihood[k];
    return std::log(sum);
}

// Sums of the terms' evidence, per cause and, last, for the unlisted: present and absent.
struct Sums {
    double all = never;
    std::vector<double> present;
    std::vector<double> absent;

    explicit Sums(std::size_t causes) : present(causes + 1, never), absent(causes + 1, never) {}

    void add(const Posterior& term) {
        all = log_add(all, term.log_evidence);
        for (std::size_t i = 0; i + 1 < present.size(); ++i) {
            add_at(i, term, term.log_odds[i], term.log_present, term.log_absent);
        }
        const bool bounded = term.dissolved > 0;
        add_at(present.size() - 1, term, term.unlisted_log_odds,
               std::vector<double>(bounded ? present.size() : 0, term.log_unlisted_present),
               std::vector<double>(bounded ? present.size() : 0, term.log_unlisted_absent));
    }

    void add_at(std::size_t at, const Posterior& term, double log_odds, const std::vector<double>& most_in,
                const std::vector<double>& most_out) {
        const bool bounded = term.dissolved > 0;
        present[at] = log_add(present[at], bounded ? most_in[at] : term.log_evidence + log_of(log_odds));
        absent[at] = log_add(absent[at], bounded ? most_out[at] : term.log_evidence + log_of(-log_odds));
    }

    double odds(std::size_t at) const { return present[at] == never ? never : present[at] - absent[at]; }
    double share(std::size_t at) const { return 1 / (1 + std::exp(-odds(at))); }
};

}  // namespace

std::vector<FaultCase> untied(const FaultCase& given) {
    FaultCase plain = given;
    plain.tied.clear();
    std::vector<FaultCase> cases{std::move(plain)};
    for (const Tied& tie : given.tied) {
        std::vector<FaultCase> longer;
        for (const FaultCase& base : cases) {
            for (const auto& term : tie.terms) {
                longer.push_back(base);
                for (std::size_t n = 0; n < tie.findings.size(); ++n) {
                    longer.back().likelihood[static_cast<std::size_t>(tie.findings[n])] = term[n];
                }
            }
        }
        cases = std::move(longer);
    }
    return cases;
}

Posterior posterior_of_tied(const FaultNetwork& network, const FaultCase& given,
                            const PosteriorLimits& limits) {
    const std::size_t causes = given.prior.size();
    Posterior result;
    result.possible = false;
    Sums sums(causes);
    for (const FaultCase& plain : untied(given)) {
        const Posterior term = posterior(network, plain, limits);
        if (!term.possible || term.log_evidence == never) continue;
        result.possible = true;
        result.width_bits = std::max(result.width_bits, term.width_bits);
        result.dissolved = std::max(result.dissolved, term.dissolved);
        sums.add(term);
    }
    result.marginal.assign(causes, 0);
    result.log_odds.assign(causes, never);
    if (!result.possible) return result;
    result.log_evidence = sums.all;
    for (std::size_t i = 0; i < causes; ++i) {
        result.log_odds[i] = sums.odds(i);
        result.marginal[i] = sums.share(i);
    }
    result.unlisted_log_odds = sums.odds(causes);
    result.unlisted = sums.share(causes);
    if (result.dissolved > 0) {
        result.log_present.assign(sums.present.begin(), sums.present.end() - 1);
        result.log_absent.assign(sums.absent.begin(), sums.absent.end() - 1);
        result.log_unlisted_present = sums.present.back();
        result.log_unlisted_absent = sums.absent.back();
    }
    return result;
}

std::vector<WeighedSet> heaviest_sets_of_tied(const FaultNetwork& network, const FaultCase& given,
                                              std::size_t most) {
    std::map<std::pair<std::vector<int>, bool>, double> weights;
    for (const FaultCase& plain : untied(given)) {
        for (const WeighedSet& set : heaviest_sets(network, plain, most)) weights[{set.causes, set.unlisted}];
    }
    std::vector<WeighedSet> sets;
    for (const auto& [set, weight] : weights) {
        sets.push_back({set.first, set.second, log_weight_of_set(network, given, set.first, set.second)});
    }
    std::stable_sort(sets.begin(), sets.end(),
                     [](const WeighedSet& a, const WeighedSet& b) { return a.log_weight > b.log_weight; });
    if (sets.size() > most) sets.resize(most);
    return sets;
}

std::vector<double> levels_shown(const FaultNetwork& network, int finding, const std::vector<int>& causes,
                                 bool unlisted) {
    const FaultNetwork::Finding& f = network.findings[static_cast<std::size_t>(finding)];
    std::vector<double> no_worse = no_worse_than(f.stray);
    const auto worsen = [&](const std::vector<double>& by) {
        const std::vector<double> share = no_worse_than(by);
        for (std::size_t k = 0; k < no_worse.size(); ++k) no_worse[k] *= share[k];
    };
    if (unlisted) worsen(f.unlisted);
    for (int cause : causes) {
        for (const FaultLink& link : network.causes[static_cast<std::size_t>(cause)]) {
            if (link.finding == finding) worsen(link.how_often);
        }
    }
    for (std::size_t k = 0; k + 1 < no_worse.size(); ++k) {
        no_worse[k] = std::max(0.0, no_worse[k] - no_worse[k + 1]);
    }
    return no_worse;
}

double log_weight_of_set(const FaultNetwork& network, const FaultCase& given, const std::vector<int>& causes,
                         bool unlisted) {
    double weight = unlisted ? std::log(given.unlisted_prior) : std::log1p(-given.unlisted_prior);
    for (std::size_t i = 0; i < given.prior.size(); ++i) {
        const bool present = std::binary_search(causes.begin(), causes.end(), static_cast<int>(i));
        weight += present ? std::log(given.prior[i]) : std::log1p(-given.prior[i]);
    }
    for (std::size_t f = 0; f < given.likelihood.size(); ++f) {
        if (given.likelihood[f].empty()) continue;
        weight +=
            log_likely(levels_shown(network, static_cast<int>(f), causes, unlisted), given.likelihood[f]);
    }
    for (const Tied& tie : given.tied) {
        double either = never;
        for (const auto& term : tie.terms) {
            double product = 0;
            for (std::size_t n = 0; n < tie.findings.size(); ++n) {
                product += log_likely(levels_shown(network, tie.findings[n], causes, unlisted), term[n]);
            }
            either = log_add(either, product);
        }
        weight += either;
    }
    return weight;
}

}  // namespace hardover
