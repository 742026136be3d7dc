// The tables behind posterior(): a case written out for elimination, its order, and the two passes over it.
// Inner part of fault_network; pure numbers.
#pragma once

#include <cstdint>
#include <vector>

#include "rules/reasoning/fault_network.hpp"

namespace hardover::frontier {

// Index of the table half: "not on this list" absent or present. It is the lowest digit of every table.
inline constexpr int lanes = 2;

// One finding with evidence, its levels reduced: levels the answer excludes are gone, neighbours with equal
// likelihood are one.
struct State {
    int levels = 0;
    // Into Problem::numbers: [level * lanes + lane], stray alone or the worse of stray and unlisted; and per
    // level.
    int start = 0;
    int likelihood = 0;
    bool may_dissolve = true;  // false for requirements
};

struct Link {
    int state = 0;
    int at = 0;  // into Problem::numbers: `levels` times how_often, then `levels` times no_worse
};

struct Cause {
    int index = 0;  // in the FaultCase
    // Prior times what the evidence that needs no table says, per lane.
    double present[lanes] = {0, 0};
    double absent[lanes] = {0, 0};
    int first_link = 0;
    int last_link = 0;  // one past
};

struct Problem {
    bool possible = true;
    std::vector<State> states;
    std::vector<Cause> causes;  // prior above 0
    std::vector<Link> links;    // by the ranges of the causes; some may be in no range any more
    std::vector<double> numbers;
    double log_constant = 0;
    double lane_weight[lanes] = {1, 0};

    const double* start_of(const State& state) const { return numbers.data() + state.start; }
    const double* likelihood_of(const State& state) const { return numbers.data() + state.likelihood; }
    // A state that says nothing any more: `numbers` begins with its numbers, all 1.
    static State settled() { return {1, 0, 0, false}; }
};

// The order in which causes are taken and what it costs.
struct Order {
    std::vector<int> causes;  // indices into Problem::causes
    double width_bits = 1;
    double table_entries = 0;
    std::vector<int> open_at_widest;  // states
};

Problem write_out(const FaultNetwork& network, const FaultCase& given);

// Repeatedly takes the causes of the finding that opens fewest new ones; where that makes large tables, also
// tries cause by cause, in two ways, and keeps the smallest tables.
Order elimination_order(const Problem& problem);

// Forward and backward pass.
void eliminate(const Problem& problem, const Order& order, Posterior& result);

// Forward pass only: Posterior::log_evidence.
double log_evidence(const Problem& problem, const Order& order);

// Replaces state `which` by factors on its causes that are never below its likelihood, touching it where the
// causes have the given probabilities (tangent of a concave, or chord of a convex function of the sum of
// -ln(sound share); Jaakkola & Jordan, JAIR 10 (1999), section 4 for the noisy-OR).
void dissolve(Problem& problem, int which, const std::vector<double>& marginal);

// How much the finding can say at most: ln of its greatest over its least likelihood, seen from "no fault".
double most_it_can_say(const Problem& problem, const State& state);

}  // namespace hardover::frontier
