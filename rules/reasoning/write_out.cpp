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
    int state = -1;  // -1: needs no table

    int groups() const { return static_cast<int>(likelihood.size()); }
};

Levels reduce(const std::vector<double>& likelihood) {
    Levels levels;
    while (levels.skipped < likelihood.size() && likelihood[levels.skipped] <= 0) ++levels.skipped;
    levels.group.reserve(likelihood.size() - levels.skipped);
    for (std::size_t k = levels.skipped; k < likelihood.size(); ++k) {
        if (levels.likelihood.empty() || levels.likelihood.back() != likelihood[k]) {
            levels.likelihood.push_back(likelihood[k]);
        }
        levels.group.push_back(levels.groups() - 1);
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
    std::vector<int> level_of;    // per finding: into `levels`; -1: no evidence
    std::vector<Levels> levels;   // of the findings with evidence
    std::vector<double> reduced;  // one distribution over the groups of a finding
    double log_lane[lanes] = {0, 0};
    static constexpr int surely_bad = 3;  // into the numbers

    Writer(const FaultNetwork& n, const FaultCase& g) : network(n), given(g) {
        problem.numbers = {1, 1, 1,      // of a settled state
                           1, 0, 1, 0};  // a link that surely gives the first of two levels
        level_of.assign(network.findings.size(), -1);
    }

    int add_numbers(const std::vector<double>& numbers) {
        const std::size_t at = problem.numbers.size();
        problem.numbers.insert(problem.numbers.end(), numbers.begin(), numbers.end());
        return static_cast<int>(at);
    }

    int add_state(int count, const std::vector<double>& start, const std::vector<double>& likelihood,
                  bool may_dissolve) {
        State state;
        state.levels = count;
        state.start = add_numbers(start);
        state.likelihood = add_numbers(likelihood);
        state.may_dissolve = may_dissolve;
        problem.states.push_back(state);
        return static_cast<int>(problem.states.size()) - 1;
    }

    void write_finding(std::size_t f) {
        level_of[f] = static_cast<int>(levels.size());
        Levels& here = levels.emplace_back(reduce(given.likelihood[f]));
        const std::size_t groups = here.likelihood.size();
        if (groups == 0) {
            problem.possible = false;
            return;
        }
        std::vector<double> stray(groups), unlisted(groups), both(groups);
        const double kept_stray = grouped(here, network.findings[f].stray, stray.data());
        const double kept_unlisted = grouped(here, network.findings[f].unlisted, unlisted.data());
        log_lane[0] += std::log(kept_stray);
        log_lane[1] += std::log(kept_stray) + std::log(kept_unlisted);
        if (groups == 1) {
            problem.log_constant += std::log(here.likelihood[0]);
            return;
        }
        worse_of_both(stray.data(), unlisted.data(), groups, both.data());
        std::vector<double> start;
        for (std::size_t k = 0; k < groups; ++k) {
            start.push_back(stray[k]);
            start.push_back(both[k]);
        }
        here.state = add_state(here.groups(), start, here.likelihood, true);
    }

    // What a cause gives to a state, and what is no worse.
    void add_link(int state, const double* how_often, int count) {
        problem.links.push_back({state, static_cast<int>(problem.numbers.size())});
        problem.numbers.insert(problem.numbers.end(), how_often, how_often + count);
        const std::size_t at = problem.numbers.size();
        problem.numbers.resize(at + static_cast<std::size_t>(count));
        double left = 0;
        for (int k = count; k-- > 0;) problem.numbers[at + k] = left += how_often[k];
        problem.numbers[at] = 1;
    }

    void write_cause(std::size_t i) {
        Cause cause;
        cause.index = static_cast<int>(i);
        cause.first_link = static_cast<int>(problem.links.size());
        double factor = 1;
        for (const FaultLink& link : network.causes[i]) {
            const int at = level_of[link.finding];
            if (at < 0) continue;
            const Levels& here = levels[at];
            if (reduced.size() < here.likelihood.size()) reduced.resize(here.likelihood.size());
            factor *= grouped(here, link.how_often, reduced.data());
            if (here.state >= 0) add_link(here.state, reduced.data(), here.groups());
        }
        for (std::size_t r = 0; r < given.requirements.size(); ++r) {
            if (!given.requirements[r].causes[i]) continue;
            const std::size_t state = problem.states.size() - given.requirements.size() + r;
            problem.links.push_back({static_cast<int>(state), surely_bad});
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
        const double by_unlisted = requirement.unlisted ? 1 : 0;
        add_state(2, {0, by_unlisted, 1, 1 - by_unlisted}, {1, 0}, false);
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
        const State state = problem.states[link.state];
        const double* how_often = problem.numbers.data() + link.at;
        const double* no_worse = how_often + state.levels;
        const double* likelihood = problem.likelihood_of(state);
        for (int lane = 0; lane < lanes; ++lane) {
            double present = 0;
            double absent = 0;
            double better = 0;
            for (int k = state.levels; k-- > 0;) {
                const double start = problem.start_of(state)[k * lanes + lane];
                present += likelihood[k] * (start * no_worse[k] + better * how_often[k]);
                absent += likelihood[k] * start;
                better += start;
            }
            cause.present[lane] *= present;
            cause.absent[lane] *= absent;
        }
        problem.states[link.state] = problem.settled();
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
    std::size_t with_evidence = 0;
    for (const std::vector<double>& likelihood : given.likelihood) with_evidence += !likelihood.empty();
    writer.levels.reserve(with_evidence);
    for (std::size_t f = 0; f < network.findings.size(); ++f) {
        if (!given.likelihood[f].empty()) writer.write_finding(f);
    }
    for (const Requirement& requirement : given.requirements) writer.write_requirement(requirement);
    if (!writer.problem.possible) return writer.problem;
    for (std::size_t i = 0; i < network.causes.size(); ++i) {
        if (given.prior[i] > 0) writer.write_cause(i);
    }
    writer.fold_single_findings();
    writer.close_lanes();
    return std::move(writer.problem);
}

}  // namespace hardover::frontier
