// When tables would grow too large: a finding's joint likelihood replaced by a product over its causes that
// is never below it.
#include <algorithm>
#include <cmath>

#include "rules/reasoning/frontier.hpp"

namespace hardover::frontier {

namespace {

constexpr double longest = 30;  // -ln of a sound share, cut here: e^-30 is nothing beside any likelihood

// The state as two levels, worse and better, with likelihoods never below its own: cut where they differ
// most.
struct TwoLevels {
    int cut = 1;  // first level of the better half
    double worse = 0;
    double better = 0;
};

TwoLevels in_two(const double* likelihood, int levels) {
    TwoLevels best;
    double best_ratio = -1;
    for (int cut = 1; cut < levels; ++cut) {
        const double worse = *std::max_element(likelihood, likelihood + cut);
        const double better = *std::max_element(likelihood + cut, likelihood + levels);
        const double ratio = std::abs(std::log(worse + 1e-12) - std::log(better + 1e-12));
        if (ratio > best_ratio) {
            best_ratio = ratio;
            best = {cut, worse, better};
        }
    }
    return best;
}

double minus_log(double share) {
    return share > 0 ? std::min(longest, -std::log(share)) : longest;
}

// likelihood(x) = worse - (worse - better) e^-x, where x adds up -ln(better share) of all that act. Its ln is
// never above base + slope * x: a tangent at `touch` when it rises (concave), the chord up to `most` when it
// falls (convex).
struct Line {
    double base = 0;
    double slope = 0;
};

Line line_above(const TwoLevels& two, double touch, double least, double most) {
    const auto ln = [&](double x) { return std::log(two.worse - (two.worse - two.better) * std::exp(-x)); };
    if (two.worse >= two.better) {
        touch = std::max(touch, 1e-6);
        const double fall = (two.worse - two.better) * std::exp(-touch);
        const double slope = fall / (two.worse - fall);
        return {ln(touch) - slope * touch, slope};
    }
    if (most - least < 1e-9) return {ln(least), 0};
    const double slope = (ln(most) - ln(least)) / (most - least);
    return {ln(least) - slope * least, slope};
}

}  // namespace

double most_it_can_say(const Problem& problem, const State& state) {
    const double* start = problem.start_of(state);
    const double* likelihood = problem.likelihood_of(state);
    double without_fault = 0;
    for (int k = 0; k < state.levels; ++k) without_fault += start[k * lanes] * likelihood[k];
    const auto [least, greatest] = std::minmax_element(likelihood, likelihood + state.levels);
    const double up = *greatest / std::max(without_fault, 1e-300);
    const double down = without_fault / std::max(*least, 1e-300);
    return std::log(likelihood[0] > likelihood[state.levels - 1] ? up : down);
}

void dissolve(Problem& problem, int which, const std::vector<double>& marginal) {
    const State state = problem.states[which];
    const TwoLevels two = in_two(problem.likelihood_of(state), state.levels);
    std::vector<std::pair<Cause*, double>> acting;  // cause, its part of x
    double expected = 0;
    double most = 0;
    for (Cause& cause : problem.causes) {
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            if (problem.links[l].state != which) continue;
            const double part = minus_log(problem.numbers[problem.links[l].at + state.levels + two.cut]);
            acting.push_back({&cause, part});
            expected += marginal[cause.index] * part;
            most += part;
        }
    }
    double start[lanes];
    for (int lane = 0; lane < lanes; ++lane) {
        double better = 0;
        for (int k = two.cut; k < state.levels; ++k) better += problem.start_of(state)[k * lanes + lane];
        start[lane] = minus_log(better);
    }
    const Line line = line_above(two, start[0] + expected, std::min(start[0], start[1]),
                                 std::max(start[0], start[1]) + most);
    for (auto& [cause, part] : acting) {
        for (double& present : cause->present) present *= std::exp(line.slope * part);
    }
    for (int lane = 0; lane < lanes; ++lane) {
        problem.lane_weight[lane] *= std::exp(line.base + line.slope * start[lane]);
    }
    problem.states[which] = problem.settled();
    for (Cause& cause : problem.causes) {
        int kept = cause.first_link;
        for (int l = cause.first_link; l < cause.last_link; ++l) {
            if (problem.links[l].state != which) problem.links[kept++] = problem.links[l];
        }
        cause.last_link = kept;
    }
}

}  // namespace hardover::frontier
