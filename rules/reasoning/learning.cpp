// Learning by counting: Beta means for odds, expectation and maximisation for how often a cause shows a
// finding.
#include "rules/reasoning/learning.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "rules/reasoning/diagnosis_case.hpp"

namespace hardover {

namespace {

constexpr double per = 1000;  // odds are per so many comebacks
constexpr std::int64_t fewest_to_judge = 20;

// Shares of the readings on boats with none of the causes; by the setting when the finding has none.
std::vector<double> stray_of(const Finding& finding, double setting) {
    if (finding.stray.size() == finding.readings.size()) return finding.stray;
    const auto bad = static_cast<double>(finding.readings.size() - 1);
    std::vector<double> stray(finding.readings.size(), bad > 0 ? setting / bad : 0);
    stray.back() = bad > 0 ? 1 - setting : 1;
    return stray;
}

// Counts of a finding's readings in its order; readings it does not have are left out.
std::vector<std::int64_t> in_order(const Finding& finding,
                                   const std::map<std::string, std::int64_t>& by_reading) {
    std::vector<std::int64_t> counts(finding.readings.size(), 0);
    for (const auto& [id, jobs] : by_reading) {
        const int reading = find_reading(finding, id);
        if (reading >= 0) counts[static_cast<std::size_t>(reading)] += jobs;
    }
    return counts;
}

// The shares with which the shipped ones, worth `strength` jobs, and the readings found agree best. The cause
// is known to be there, so what is not its own doing is stray readings only.
std::vector<double> how_often_after(const std::vector<double>& shipped, const std::vector<double>& stray,
                                    double strength, const std::vector<std::int64_t>& counts) {
    const auto asked = static_cast<double>(std::accumulate(counts.begin(), counts.end(), std::int64_t{0}));
    std::vector<double> share = shipped;
    for (int round = 0; round < 500; ++round) {
        std::vector<double> next(shipped.size());
        for (std::size_t k = 0; k < next.size(); ++k) next[k] = strength * shipped[k];
        for (std::size_t found = 0; found < counts.size(); ++found) {
            const std::vector<double> own = own_reading_given(share, stray, found);
            for (std::size_t k = 0; k < next.size(); ++k) {
                next[k] += static_cast<double>(counts[found]) * own[k];
            }
        }
        double moved = 0;
        for (std::size_t k = 0; k < next.size(); ++k) {
            next[k] /= strength + asked;
            moved = std::max(moved, std::abs(next[k] - share[k]));
        }
        share = std::move(next);
        if (moved < 1e-12) break;
    }
    return share;
}

void learn_how_often(Knowledge& knowledge, const ClosedJobs& jobs, double strength) {
    for (Cause& cause : knowledge.causes) {
        const auto of_cause = jobs.readings.find(cause.id);
        if (of_cause == jobs.readings.end()) continue;
        for (Shows& shows : cause.shows) {
            const Finding& finding = knowledge.findings[static_cast<std::size_t>(shows.finding)];
            const auto found = of_cause->second.find(finding.id);
            if (found == of_cause->second.end() || shows.how_often.size() != finding.readings.size()) {
                continue;
            }
            shows.how_often = how_often_after(shows.how_often, stray_of(finding, knowledge.settings.stray),
                                              strength, in_order(finding, found->second));
        }
    }
}

// The parameters and counts of one history: its causes, then "not on this list".
double log_probability_of_history(const Knowledge& knowledge, const ClosedJobs& jobs, std::size_t history,
                                  double strength) {
    const std::string& id = knowledge.histories[history].id;
    std::vector<double> parameters;
    std::vector<std::int64_t> counts;
    for (const Cause& cause : knowledge.causes) {
        parameters.push_back(std::max(cause.odds[history] / per, least_prior));
        counts.push_back(jobs.with_cause(id, cause.id));
    }
    parameters.push_back(std::max(knowledge.settings.not_listed_odds / per, least_prior));
    counts.push_back(jobs.with_cause(id, not_listed_cause));
    const double sum = std::accumulate(parameters.begin(), parameters.end(), 0.0);
    for (double& parameter : parameters) parameter *= strength / sum;
    return log_probability_of_counts(parameters, counts);
}

}  // namespace

std::int64_t ClosedJobs::of_history(const std::string& history) const {
    const auto found = causes.find(history);
    if (found == causes.end()) return 0;
    std::int64_t jobs = 0;
    for (const auto& [cause, count] : found->second) jobs += count;
    return jobs;
}

std::int64_t ClosedJobs::with_cause(const std::string& history, const std::string& cause) const {
    const auto found = causes.find(history);
    if (found == causes.end()) return 0;
    const auto count = found->second.find(cause);
    return count == found->second.end() ? 0 : count->second;
}

std::int64_t ClosedJobs::with_cause(const std::string& cause) const {
    std::int64_t jobs = 0;
    for (const auto& [history, counts] : causes) jobs += with_cause(history, cause);
    return jobs;
}

std::int64_t ClosedJobs::in_all() const {
    std::int64_t jobs = 0;
    for (const auto& [history, counts] : causes) jobs += of_history(history);
    return jobs;
}

void add(ClosedJobs& sum, const ClosedJobs& more) {
    for (const auto& [history, counts] : more.causes) {
        for (const auto& [cause, jobs] : counts) sum.causes[history][cause] += jobs;
    }
    for (const auto& [cause, findings] : more.readings) {
        for (const auto& [finding, readings] : findings) {
            for (const auto& [reading, jobs] : readings) sum.readings[cause][finding][reading] += jobs;
        }
    }
}

LearnedShare share_after(double shipped, double strength, std::int64_t with, std::int64_t of) {
    const double given = std::clamp(shipped, 0.0, 1.0);
    const double weight = strength + static_cast<double>(of);
    const double mean = of == 0 ? given : (strength * given + static_cast<double>(with)) / weight;
    return {mean, std::sqrt(mean * (1 - mean) / (weight + 1))};
}

Knowledge with_learned(const Knowledge& shipped, const ClosedJobs& jobs, const LearningWay& way) {
    Knowledge learned = shipped;
    for (std::size_t h = 0; h < shipped.histories.size(); ++h) {
        const std::string& history = shipped.histories[h].id;
        const std::int64_t of = jobs.of_history(history);
        if (of == 0) continue;
        for (Cause& cause : learned.causes) {
            if (h >= cause.odds.size()) continue;
            const std::int64_t with = jobs.with_cause(history, cause.id);
            cause.odds[h] = per * share_after(cause.odds[h] / per, way.strength, with, of).mean;
        }
    }
    if (const std::int64_t of = jobs.in_all(); of > 0) {
        double& odds = learned.settings.not_listed_odds;
        odds = per * share_after(odds / per, way.strength, jobs.with_cause(not_listed_cause), of).mean;
    }
    if (way.how_often) learn_how_often(learned, jobs, way.strength);
    return learned;
}

double log_probability_of_counts(const std::vector<double>& parameters,
                                 const std::vector<std::int64_t>& counts) {
    double log = 0;
    double weight = 0;
    double jobs = 0;
    for (std::size_t i = 0; i < parameters.size(); ++i) {
        const auto count = static_cast<double>(counts[i]);
        weight += parameters[i];
        jobs += count;
        log += std::lgamma(parameters[i] + count) - std::lgamma(parameters[i]);
    }
    return log + std::lgamma(weight) - std::lgamma(weight + jobs);
}

std::optional<int> strength_that_foretells_best(const Knowledge& shipped, const ClosedJobs& jobs) {
    std::int64_t counted = 0;
    for (const History& history : shipped.histories) counted += jobs.of_history(history.id);
    if (counted < fewest_to_judge) return std::nullopt;
    int best = 0;
    double best_log = 0;
    for (const int strength : {4, 10, 20, 50, 100, greatest_strength}) {
        double log = 0;
        for (std::size_t h = 0; h < shipped.histories.size(); ++h) {
            log += log_probability_of_history(shipped, jobs, h, strength);
        }
        if (best == 0 || log > best_log) {
            best = strength;
            best_log = log;
        }
    }
    return best;
}

std::vector<double> own_reading_given(const std::vector<double>& cause, const std::vector<double>& others,
                                      std::size_t reading) {
    // The worse of the two shows: either the cause's own is the reading and the others are no worse, or the
    // cause's own is better and the others gave the reading.
    std::vector<double> own(cause.size(), 0);
    const auto from = others.begin() + static_cast<std::ptrdiff_t>(reading);
    own[reading] = cause[reading] * std::accumulate(from, others.end(), 0.0);
    for (std::size_t k = reading + 1; k < cause.size(); ++k) own[k] = cause[k] * others[reading];
    const double sum = std::accumulate(own.begin(), own.end(), 0.0);
    if (sum > 0) {
        for (double& share : own) share /= sum;
    }
    return own;
}

}  // namespace hardover
