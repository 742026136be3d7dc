// A case written out for elimination: evidence reduced to as few levels as it needs, constants taken out.
#include <algorithm>
#include <cmath>

#include "rules/reasoning/frontier.hpp"

namespace hardover::frontier {

namespace {

// How the levels of a finding are reduced by its likelihood: the first `skipped` levels are excluded, the
// others are grouped where neighbours have equal likelihood (the worst of two groups is still a group).
struct Levels {
    std::size_t skipped = 0;
    std::vector<int> group;  // per level from `skipped`
    std::vector<double> likelihood;
};

Levels reduce(const std::vector<double>& likelihood) {
    Levels levels;
    while (levels.skipped < likelihood.size() && likelihood[levels.skipped] <= 0) ++levels.skipped;
    for (std::size_t k = levels.skipped; k < likelihood.size(); ++k) {
        if (levels.likelihood.empty() || levels.likelihood.back() != likelihood[k]) {
            levels.likelihood.push_back(likelihood[k]);
        }
        levels.group.push_back(static_cast<int>(levels.likelihood.size()) - 1);
    }
    return levels;
}

// Share of `distribution` that is not excluded; the rest, grouped and made to add to 1, goes to `out`.
double grouped(const Levels& levels, const std::vector<double>& distribution, double* out) {
    const std::size_t groups = levels.likelihood.size();
    std::fill(out, out + groups, 0.0);
    double kept = 0;
    for (std::size_t j = 0; j < levels.group.size(); ++j) {
        out[levels.group[j]] += distribution[levels.skipped + j];
        kept += distribution[levels.skipped + j];
    }
    if (kept > 0) {
        for (std::size_t g = 0; g < groups; ++g) out[g] /= kept;
    }
    return kept;
}

// The worse of two independent levels.
void worse_of_both(const double* a, const double* b, std::size_t levels, double* out) {
    double a_left = 1;
    double b_left = 1;
    for (std::size_t k = 0; k < levels; ++k) {
        const double a_better = std::max(0.0, a_left - a[k]);
        const double b_better = std::max(0.0, b_left - b[k]);
        out[k] = a[k] * b[k] + a[k] * b_better + a_better * b[k];
        a_left = a_better;
        b_left = b_better;
    }
}

struct Writer {
    const FaultNetwork& network;
    const FaultCase& given;
    Problem problem;
    std::vector<Levels> levels;   // per finding
    std::vector<int> state_of;    // per finding; -1: no evidence, or none that needs a table
    std::vector<double> reduced;  // one cause's distribution over the groups of a finding
    double log_lane[lanes] = {0, 0};

    Writer(const FaultNetwork& n, const FaultCase& g) : network(n), given(g) {}

    void write_finding(std::size_t f) {
        if (given.likelihood[f].empty()) return;
        levels[f] = reduce(given.likelihood[f]);
        const std::size_t groups = levels[f].likelihood.size();
        if (groups == 0) {
            problem.possible = false;
            return;
        }
        std::vector<double> stray(groups), unlisted(groups), both(groups);
        const double kept_stray = grouped(levels[f], network.findings[f].stray, stray.data());
        const double kept_unlisted = grouped(levels[f], network.findings[f].unlisted, unlisted.data());
        log_lane[0] += std::log(kept_stray);
        log_lane[1] += std::log(kept_stray) + std::log(kept_unlisted);
        if (groups == 1) {
            problem.log_constant += std::log(levels[f].likelihood[0]);
            return;
        }
        worse_of_both(stray.data(), unlisted.data(), groups, both.data());
        State state;
        state.levels = static_cast<int>(groups);
        state.likelihood = levels[f].likelihood;
        for (std::size_t k = 0; k < groups; ++k) {
            state.start.push_back(stray[k]);
            state.start.push_back(both[k]);
        }
        state_of[f] = static_cast<int>(problem.states.size());
        problem.states.push_back(std::move(state));
    }

    void add_numbers(const double* how_often, std::size_t count) {
        problem.numbers.insert(problem.numbers.end(), how_often, how_often + count);
        const std::size_t at = problem.numbers.size();
        problem.numbers.resize(at + count);
        double left = 0;
        for (std::size_t k = count; k-- > 0;) problem.numbers[at + k] = left += how_often[k];
        problem.numbers[at] = 1;
    }

    void write_cause(std::size_t i) {
        Cause cause;
        cause.index = static_cast<int>(i);
        cause.first_link = static_cast<int>(problem.links.size());
        double factor = 1;
        for (const FaultLink& link : network.causes[i]) {
            if (given.likelihood[link.finding].empty()) continue;
            const Levels& l = levels[link.finding];
            reduced.resize(std::max(reduced.size(), l.likelihood.size()));
            factor *= grouped(l, link.how_often, reduced.data());
            const int state = state_of[link.finding];
            if (state < 0) continue;
            problem.links.push_back({state, static_cast<int>(problem.numbers.size())});
            add_numbers(reduced.data(), l.likelihood.size());
        }
        for (std::size_t r = 0; r < given.requirements.size(); ++r) {
            if (!given.requirements[r].causes[i]) continue;
            const double certain[2] = {1, 0};
            const int state = static_cast<int>(problem.states.size() - given.requirements.size() + r);
            problem.links.push_back({state, static_cast<int>(problem.numbers.size())});
            add_numbers(certain, 2);
        }
        cause.last_link = static_cast<int>(problem.links.size());
        for (int lane = 0; lane < lanes; ++lane) {
            cause.present[lane] = given.prior[i] * factor;
            cause.absent[lane] = 1 - given.prior[i];
        }
        problem.causes.push_back(cause);
    }

    // A requirement is a finding that is surely bad with any of its faults, never without, and is bad.
    void write_requirement(const Requirement& requirement) {
        State state;
        state.levels = 2;
        const double by_unlisted = requirement.unlisted ? 1 : 0;
        state.start = {0, by_unlisted, 1, 1 - by_unlisted};
        state.likelihood = {1, 0};
        state.may_dissolve = false;
        problem.states.push_back(std::move(state));
    }

    // A finding that only one cause can show needs no table: its likelihood goes to that cause.
    void fold_single_findings() {
        std::vector<int> shown_by(problem.states.size(), 0);
        for (const Link& link : problem.links) ++shown_by[link.state];
        for (Cause& cause : problem.causes) {
            int kept = cause.first_link;
            for (int l = cause.first_link; l < cause.last_link; ++l) {
                if (shown_by[problem.links[l].state] == 1) {
                    fold(problem.links[l], cause);
                } else {
                    problem.links[kept++] = problem.links[l];
                }
            }
            cause.last_link = kept;
        }
    }

    void fold(const Link& link, Cause& cause) {
        State& state = problem.states[link.state];
        const double* how_often = &problem.numbers[link.at];
        const double* no_worse = how_often + state.levels;
        for (int lane = 0; lane < lanes; ++lane) {
            double present = 0;
            double absent = 0;
            double better = 0;
            for (int k = state.levels; k-- > 0;) {
                const double start = state.start[k * lanes + lane];
                present += state.likelihood[k] * (start * no_worse[k] + better * how_often[k]);
                absent += state.likelihood[k] * start;
                better += start;
            }
            cause.present[lane] *= present;
            cause.absent[lane] *= absent;
        }
        state = State{1, {1, 1}, {1}, false};
    }

    void close_lanes() {
        log_lane[0] += std::log1p(-given.unlisted_prior);
        log_lane[1] += std::log(given.unlisted_prior);
        const double greatest = std::max(log_lane[0], log_lane[1]);
        if (!std::isfinite(greatest)) {
            problem.possible = false;
            return;
        }
        problem.log_constant += greatest;
        for (int lane = 0; lane < lanes; ++lane) {
            problem.lane_weight[lane] = std::exp(log_lane[lane] - greatest);
        }
    }
};

}  // namespace

Problem write_out(const FaultNetwork& network, const FaultCase& given) {
    Writer writer(network, given);
    writer.levels.resize(network.findings.size());
    writer.state_of.assign(network.findings.size(), -1);
    for (std::size_t f = 0; f < network.findings.size(); ++f) writer.write_finding(f);
    for (const Requirement& requirement : given.requirements) writer.write_requirement(requirement);
    if (!writer.problem.possible) return writer.problem;
    for (std::size_t i = 0; i < network.causes.size(); ++i) {
        if (given.prior[i] > 0) writer.write_cause(i);
    }
    writer.fold_single_findings();
    writer.close_lanes();
    return writer.problem;
}

}  // namespace hardover::frontier
