#include "rules/reasoning/fault_network.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "rules/reasoning/frontier.hpp"
#include "rules/reasoning/log_sum.hpp"
#include "rules/reasoning/tied.hpp"
#include "rules/reasoning/written_case.hpp"

namespace hardover {

namespace {

bool fits(const frontier::Order& order, const PosteriorLimits& limits) {
    return order.width_bits <= limits.width_bits && order.table_entries <= limits.table_entries;
}

// States to dissolve, and the order for what is left: it hangs on which states are dissolved, not on how.
struct Dissolving {
    std::vector<int> states;
    frontier::Order order;
};

// So that the rest fits: at the widest place the state with the least to say, again and again.
Dissolving choose_dissolved(frontier::Problem problem, frontier::Order order, const FaultCase& given,
                            const PosteriorLimits& limits) {
    Dissolving chosen;
    chosen.order = std::move(order);
    while (!fits(chosen.order, limits)) {
        int least = -1;
        for (int state : chosen.order.open_at_widest) {
            if (!problem.states[state].may_dissolve) continue;
            if (least < 0 || frontier::most_it_can_say(problem, problem.states[state]) <
                                 frontier::most_it_can_say(problem, problem.states[least])) {
                least = state;
            }
        }
        if (least < 0) break;  // only requirements are open: a bit each, cannot pass a sensible limit
        chosen.states.push_back(least);
        frontier::dissolve(problem, least, given.prior);
        chosen.order = frontier::elimination_order(problem);
    }
    return chosen;
}

// Where the product bound touches is improved a few times with the probabilities it gives.
Posterior approximate(const frontier::Problem& problem, const frontier::Order& order, const FaultCase& given,
                      const PosteriorLimits& limits) {
    const Dissolving chosen = choose_dissolved(problem, order, given, limits);
    std::vector<double> marginal = given.prior;
    Posterior best;
    for (int round = 0; round < 4; ++round) {
        frontier::Problem reduced = problem;
        for (int state : chosen.states) frontier::dissolve(reduced, state, marginal);
        Posterior now;
        now.marginal.assign(given.prior.size(), 0);
        frontier::eliminate(reduced, chosen.order, now);
        now.dissolved = static_cast<int>(chosen.states.size());
        if (!now.possible) return now;
        marginal = now.marginal;
        if (round == 0 || now.log_evidence < best.log_evidence)
            best = now;  // the smaller bound is the better
    }
    for (std::size_t i = 0; i < best.marginal.size(); ++i) {
        best.log_present.push_back(best.log_evidence + std::log(best.marginal[i]));
        best.log_absent.push_back(best.log_evidence + std::log1p(-best.marginal[i]));
    }
    best.log_unlisted_present = best.log_evidence + std::log(best.unlisted);
    best.log_unlisted_absent = best.log_evidence + std::log1p(-best.unlisted);
    return best;
}

}  // namespace

std::vector<double> no_worse_than(const std::vector<double>& distribution) {
    std::vector<double> out(distribution.size());
    double sum = 0;
    for (std::size_t k = distribution.size(); k-- > 0;) out[k] = sum += distribution[k];
    return out;
}

Posterior posterior(const FaultNetwork& network, const FaultCase& given, const PosteriorLimits& limits) {
    WrittenCase written(network, given);
    return posterior(written, limits);
}

Posterior posterior(WrittenCase& written, const PosteriorLimits& limits) {
    const FaultCase& given = written.given();
    if (!given.tied.empty()) return posterior_of_tied(written.network(), given, limits);
    const frontier::Problem& problem = written.problem();
    Posterior result;
    result.marginal.assign(given.prior.size(), 0);
    result.log_odds.assign(given.prior.size(), -std::numeric_limits<double>::infinity());
    if (!problem.possible) {
        result.possible = false;
        return result;
    }
    const frontier::Order& order = written.order();
    if (!fits(order, limits)) return approximate(problem, order, given, limits);
    frontier::eliminate(problem, order, result);
    return result;
}

double log_evidence(const FaultNetwork& network, const FaultCase& given, const PosteriorLimits& limits) {
    if (!given.tied.empty()) {
        double sum = never;
        for (const FaultCase& plain : untied(given)) sum = log_add(sum, log_evidence(network, plain, limits));
        return sum;
    }
    const frontier::Problem problem = frontier::write_out(network, given);
    if (!problem.possible) return never;
    const frontier::Order order = frontier::elimination_order(problem);
    if (!fits(order, limits)) return approximate(problem, order, given, limits).log_evidence;
    return frontier::log_evidence(problem, order);
}

}  // namespace hardover
