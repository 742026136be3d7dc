#include "rules/reasoning/ranking.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "rules/reasoning/log_sum.hpp"
#include "rules/reasoning/written_case.hpp"

namespace hardover {

namespace {

// What is looked at: all causes, or without those put right when something is still wrong.
bool counts(const DiagnosisCase& diagnosis, std::size_t cause) {
    return diagnosis.cured() || !diagnosis.put_right()[cause];
}

bool anything_left_out(const DiagnosisCase& diagnosis) {
    for (std::size_t i = 0; i < diagnosis.put_right().size(); ++i) {
        if (!counts(diagnosis, i)) return true;
    }
    return false;
}

// By cause: whether it is looked at.
std::vector<bool> counted_causes(const DiagnosisCase& diagnosis) {
    std::vector<bool> counted;
    for (std::size_t i = 0; i < diagnosis.put_right().size(); ++i) counted.push_back(counts(diagnosis, i));
    return counted;
}

// Share of the evidence that exactly one fault (still) accounts for.
double single_share(const DiagnosisCase& diagnosis, WrittenCase& written, double log_evidence) {
    double share = 0;
    for (double weight : log_weights_alone(written, counted_causes(diagnosis))) {
        share += std::exp(weight - log_evidence);
    }
    return share;
}

std::vector<Hypothesis> hypotheses_of(const DiagnosisCase& diagnosis, std::vector<WeighedSet> sets,
                                      double log_evidence) {
    std::vector<Hypothesis> hypotheses;
    const auto probability = [&](const WeighedSet& set) { return std::exp(set.log_weight - log_evidence); };
    if (anything_left_out(diagnosis)) {
        std::map<std::pair<std::vector<int>, bool>, double> merged;
        for (const WeighedSet& set : sets) {
            std::vector<int> still;
            for (int cause : set.causes) {
                if (counts(diagnosis, static_cast<std::size_t>(cause))) still.push_back(cause);
            }
            merged[{still, set.unlisted}] += probability(set);
        }
        for (const auto& [set, sum] : merged) hypotheses.push_back({set.first, set.second, sum});
    } else {
        hypotheses.reserve(sets.size());
        for (WeighedSet& set : sets) {
            hypotheses.push_back({std::move(set.causes), set.unlisted, probability(set)});
        }
    }
    std::sort(hypotheses.begin(), hypotheses.end(), [](const Hypothesis& a, const Hypothesis& b) {
        if (a.probability != b.probability) return a.probability > b.probability;
        return a.causes != b.causes ? a.causes < b.causes : a.unlisted < b.unlisted;
    });
    return hypotheses;
}

// After remedies a hypothesis gathers many sets, not all of them listed: the first ones are weighed exactly.
void weigh_first_exactly(const DiagnosisCase& diagnosis, WrittenCase& written, double log_evidence,
                         std::vector<Hypothesis>& hypotheses) {
    constexpr std::size_t first = 16;
    std::vector<WeighedSet> sets;
    for (std::size_t h = 0; h < std::min(first, hypotheses.size()); ++h) {
        sets.push_back({hypotheses[h].causes, hypotheses[h].unlisted});
    }
    const std::vector<double> weights = log_weights_among(written, counted_causes(diagnosis), sets);
    for (std::size_t h = 0; h < weights.size(); ++h) {
        hypotheses[h].probability = std::exp(weights[h] - log_evidence);
    }
    std::stable_sort(hypotheses.begin(), hypotheses.end(),
                     [](const Hypothesis& a, const Hypothesis& b) { return a.probability > b.probability; });
}

// The listed sets give lower bounds, the dissolved tables upper bounds; the estimate is kept between them.
double keep_within(const std::vector<WeighedSet>& sets, int cause, double log_present, double log_absent,
                   double& probability) {
    double listed_present = never;
    double listed_absent = never;
    for (const WeighedSet& set : sets) {
        const bool in =
            cause < 0 ? set.unlisted : std::binary_search(set.causes.begin(), set.causes.end(), cause);
        double& listed = in ? listed_present : listed_absent;
        listed = log_add(listed, set.log_weight);
    }
    const double low = 1 / (1 + std::exp(log_absent - listed_present));
    const double high = 1 / (1 + std::exp(listed_absent - log_present));
    probability = std::clamp(probability, low, std::max(low, high));
    return std::max(probability - low, high - probability);
}

void bound_approximation(const std::vector<WeighedSet>& sets, Posterior& p, double& bound) {
    for (std::size_t i = 0; i < p.marginal.size(); ++i) {
        if (p.marginal[i] <= 0) continue;
        bound = std::max(
            bound, keep_within(sets, static_cast<int>(i), p.log_present[i], p.log_absent[i], p.marginal[i]));
        p.log_odds[i] = std::log(p.marginal[i]) - std::log1p(-p.marginal[i]);
    }
    bound = std::max(bound, keep_within(sets, -1, p.log_unlisted_present, p.log_unlisted_absent, p.unlisted));
    double listed = never;
    for (const WeighedSet& set : sets) listed = log_add(listed, set.log_weight);
    bound = std::max(bound, 1 - std::exp(listed - p.log_evidence));  // for `several` and the sets
}

int group_of(const RankedCause& cause) {
    if (cause.impossible_here) return 3;
    if (cause.ruled_out_by != none) return 2;
    return cause.probability > 0 ? 0 : 1;
}

constexpr double rounding = 1e-12;  // share of a probability

// The most probable first, then those that cannot be; what is equal but for rounding in the order of the
// priors and the knowledge, so that causes that are alike do not change places from one answer to the next.
std::vector<RankedCause> in_order(std::vector<RankedCause> causes) {
    struct Place {
        int group = 0;
        std::size_t at = 0;
    };
    std::vector<Place> places;
    places.reserve(causes.size());
    for (std::size_t i = 0; i < causes.size(); ++i) places.push_back({group_of(causes[i]), i});
    const auto probability = [&](const Place& place) { return causes[place.at].probability; };
    const auto by_knowledge = [&](const Place& x, const Place& y) {
        const double prior_x = causes[x.at].prior;
        const double prior_y = causes[y.at].prior;
        return prior_x != prior_y ? prior_x > prior_y : x.at < y.at;
    };
    std::sort(places.begin(), places.end(), [&](const Place& x, const Place& y) {
        if (x.group != y.group) return x.group < y.group;
        if (probability(x) != probability(y)) return probability(x) > probability(y);
        return by_knowledge(x, y);
    });
    for (auto first = places.begin(); first != places.end();) {
        auto last = first + 1;
        while (last != places.end() && last->group == first->group &&
               probability(*last) >= probability(*(last - 1)) * (1 - rounding)) {
            ++last;
        }
        std::sort(first, last, by_knowledge);
        first = last;
    }
    std::vector<RankedCause> ordered;
    ordered.reserve(causes.size());
    for (const Place& place : places) ordered.push_back(std::move(causes[place.at]));
    return ordered;
}

double log_nothing_wrong(const std::vector<double>& priors, double unlisted_prior) {
    double log_nothing = std::log1p(-unlisted_prior);
    for (double prior : priors) log_nothing += std::log1p(-prior);
    return log_nothing;
}

// ln P(something is wrong) with these priors: the answers' probability is given for such boats.
double log_something_wrong(const std::vector<double>& priors, double unlisted_prior) {
    return std::log(-std::expm1(log_nothing_wrong(priors, unlisted_prior)));
}

// Log-odds of every cause when all that is known is that something is wrong.
std::vector<double> log_odds_before(const DiagnosisCase& diagnosis) {
    const std::vector<double>& priors = diagnosis.usual_prior();
    const double log_nothing = log_nothing_wrong(priors, diagnosis.usual_prior_not_listed());
    std::vector<double> log_odds;
    for (double prior : priors) {
        const double log_absent = std::log1p(-prior);
        const double another = -std::expm1(log_nothing - log_absent);
        log_odds.push_back(prior > 0 ? std::log(prior) - log_absent - std::log(another) : never);
    }
    return log_odds;
}

}  // namespace

Ranking rank(const DiagnosisCase& diagnosis) {
    Ranking ranking;
    const double log_before =
        log_something_wrong(diagnosis.usual_prior(), diagnosis.usual_prior_not_listed());
    const FaultCase given = diagnosis.with_all();
    WrittenCase written(diagnosis.network(), given);
    Posterior after = posterior(written);
    ranking.possible = after.possible;
    std::vector<WeighedSet> sets;
    if (after.possible) {
        const double log_least = after.dissolved > 0 ? never : after.log_evidence + std::log(negligible);
        sets = heaviest_sets(written, most_hypotheses, log_least);
    }
    if (after.possible && after.dissolved > 0) bound_approximation(sets, after, ranking.bound);
    const double before = std::exp(log_before);
    std::vector<RankedCause> causes;
    causes.reserve(given.prior.size());
    for (std::size_t i = 0; i < given.prior.size(); ++i) {
        RankedCause cause;
        cause.cause = static_cast<Index>(i);
        cause.prior = diagnosis.usual_prior()[i] / before;
        cause.put_right = diagnosis.put_right()[i];
        cause.impossible_here = diagnosis.impossible_here(cause.cause);
        cause.ruled_out_by = diagnosis.ruled_out_by(cause.cause);
        if (after.possible && counts(diagnosis, i)) cause.probability = after.marginal[i];
        causes.push_back(std::move(cause));
    }
    ranking.causes = in_order(std::move(causes));
    if (!after.possible) return ranking;
    ranking.not_listed = after.unlisted;
    ranking.log_evidence =
        after.log_evidence -
        (diagnosis.cured() ? log_before : log_something_wrong(given.prior, given.unlisted_prior));
    ranking.several = std::clamp(1 - single_share(diagnosis, written, after.log_evidence), 0.0, 1.0);
    ranking.hypotheses = hypotheses_of(diagnosis, std::move(sets), after.log_evidence);
    if (anything_left_out(diagnosis)) {
        weigh_first_exactly(diagnosis, written, after.log_evidence, ranking.hypotheses);
    }
    return ranking;
}

void add_weights(const DiagnosisCase& diagnosis, Ranking& ranking) {
    if (!ranking.possible || diagnosis.items().empty()) return;
    const PosteriorLimits narrow{11, 1 << 17};
    const std::size_t count = diagnosis.items().size();
    std::vector<bool> in_use(count, false);
    const std::vector<double> none_used = log_odds_before(diagnosis);
    std::vector<double> all_used(none_used.size());
    for (const RankedCause& cause : ranking.causes) {
        all_used[static_cast<std::size_t>(cause.cause)] =
            std::log(cause.probability) - std::log1p(-cause.probability);
    }
    {
        const Posterior all = posterior(diagnosis.network(), diagnosis.with_all());
        if (all.dissolved == 0) all_used = all.log_odds;
    }
    std::vector<std::vector<double>> share(count, std::vector<double>(none_used.size(), 0.0));
    const auto run_chain = [&](auto item_at) {
        std::fill(in_use.begin(), in_use.end(), false);
        std::vector<double> last = none_used;
        for (std::size_t n = 0; n < count; ++n) {
            const std::size_t item = item_at(n);
            in_use[item] = true;
            const std::vector<double> now =
                n + 1 == count ? all_used
                               : posterior(diagnosis.network(), diagnosis.with(in_use), narrow).log_odds;
            for (std::size_t i = 0; i < now.size(); ++i) share[item][i] += (now[i] - last[i]) / 2;
            last = now;
        }
    };
    run_chain([](std::size_t n) { return n; });
    run_chain([count](std::size_t n) { return count - 1 - n; });

    const double decibans = 10 / std::log(10.0);
    for (RankedCause& cause : ranking.causes) {
        const auto i = static_cast<std::size_t>(cause.cause);
        if (!counts(diagnosis, i) || !std::isfinite(all_used[i]) || !std::isfinite(none_used[i])) continue;
        for (std::size_t n = 0; n < count; ++n) {
            const EvidenceItem& item = diagnosis.items()[n];
            cause.weights.push_back(
                {item.kind, item.index, item.reading, share[n][i] * decibans, item.stage, item.earlier});
        }
        std::stable_sort(cause.weights.begin(), cause.weights.end(), [](const Weight& a, const Weight& b) {
            return std::abs(a.decibans) > std::abs(b.decibans);
        });
    }
}

std::vector<EvidenceItem> smallest_conflict(const DiagnosisCase& diagnosis) {
    const auto possible = [&](const std::vector<bool>& in_use) {
        return posterior(diagnosis.network(), diagnosis.with(in_use)).possible;
    };
    std::vector<bool> in_use(diagnosis.items().size(), true);
    std::vector<EvidenceItem> conflict;
    if (possible(in_use)) return conflict;
    for (std::size_t n = in_use.size(); n-- > 0;) {
        in_use[n] = false;
        if (possible(in_use)) in_use[n] = true;
    }
    for (std::size_t n = 0; n < in_use.size(); ++n) {
        if (in_use[n]) conflict.push_back(diagnosis.items()[n]);
    }
    return conflict;
}

}  // namespace hardover
