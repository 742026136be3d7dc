#include "app/rig/circuit_newton.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace hardover::rig::circuit {

namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr double last_width = 1e-9;  // of the pressure scale: at most some hundredths of a pascal
constexpr double least_seepage = 1e-13;
constexpr double settled_residual = 1e-12;
constexpr double good_enough = 1e-8;  // where rounding of the computer lets it come no nearer
// Strength of the ties in settle_in_time(): at the start, when let go, and when there is no hope.
constexpr double first_tie = 0.1, last_tie = 1e-8, strongest_tie = 1e4;
constexpr int most_times = 100;

// Ties pressures and speeds to where they were, as the give of oil and the mass of a load do in a short time.
struct Tie {
    VectorXd to;
    double strength = 0;
};

struct Equations {
    VectorXd residual;
    MatrixXd slopes;
};

void add_branches(const Network& network, const VectorXd& x, const Rounding& rounding, Equations& out,
                  VectorXd& inflow) {
    for (int i = 0; i < static_cast<int>(network.branches.size()); ++i) {
        const Branch& branch = network.branches[i];
        const int row = network.flow_at(i);
        const auto pressure = [&](int node) { return node == Branch::outside ? 0.0 : x[node]; };
        const BranchResidual value = residual(
            branch, {pressure(branch.from), pressure(branch.to), pressure(branch.pilot), x[row]}, rounding);
        out.residual[row] = value.value;
        const auto slope = [&](int node, double by) {
            if (node != Branch::outside) out.slopes(row, node) += by;
        };
        slope(branch.from, value.by_from);
        slope(branch.to, value.by_to);
        slope(branch.pilot, value.by_pilot);
        out.slopes(row, row) += value.by_flow;
        // A reservoir gives its flow to its node; any other branch takes it from `from`.
        const bool held = branch.kind == Branch::Kind::held;
        const auto flow = [&](int node, double sign) {
            if (node == Branch::outside) return;
            inflow[node] += sign * x[row];
            out.slopes(node, row) += sign;
        };
        flow(branch.from, held ? 1 : -1);
        flow(branch.to, 1);
    }
}

void add_bodies(const Network& network, const VectorXd& x, const Rounding& rounding, Equations& out,
                VectorXd& inflow) {
    for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i) {
        const Body& body = network.bodies[i];
        const int v = network.speed_at(i), f = v + 1, s = v + 2;
        const double damping = body.damping + rounding.seepage;
        out.residual[v] = body.force - damping * x[v] - x[f] - x[s];
        out.slopes(v, v) -= damping;
        out.slopes(v, f) -= 1;
        out.slopes(v, s) -= 1;
        const auto side = [&](int node, double pull) {
            out.residual[v] += pull * x[node];
            out.slopes(v, node) += pull;
            inflow[node] -= pull * x[v];
            out.slopes(node, v) -= pull;
        };
        for (const Piston& piston : body.pistons) {
            side(piston.side_a, piston.pull_a);
            side(piston.side_b, -piston.pull_b);
        }
        // Dry friction: sticks below its limit. The seepage lets a stuck load creep, unnoticeably.
        const double kept = 1 - rounding.seepage;
        const Smooth dry = kept_within(x[f] * kept + x[v], body.friction, rounding.width);
        out.residual[f] = x[f] - dry.value;
        out.slopes(f, f) = 1 - dry.slope * kept;
        out.slopes(f, v) = -dry.slope;
        if (body.at_least && body.at_most) {
            out.residual[s] = x[v];
            out.slopes(s, v) = 1;
        } else if (body.at_least || body.at_most) {
            const double side_of = body.at_most ? 1 : -1;
            const Smooth pressed = positive_part(side_of * (x[s] * kept + x[v]), rounding.width);
            out.residual[s] = x[s] - side_of * pressed.value;
            out.slopes(s, s) = 1 - pressed.slope * kept;
            out.slopes(s, v) = -pressed.slope;
        } else {
            out.residual[s] = x[s];
            out.slopes(s, s) = 1;
        }
    }
}

void evaluate(const Network& network, const VectorXd& x, const Rounding& rounding, const Tie& tie,
              Equations& out) {
    const int nodes = static_cast<int>(network.nodes.size());
    out.residual.setZero(x.size());
    out.slopes.setZero(x.size(), x.size());
    VectorXd inflow = VectorXd::Zero(nodes);
    add_branches(network, x, rounding, out, inflow);
    add_bodies(network, x, rounding, out, inflow);
    for (int node = 0; node < nodes; ++node) {
        // More may flow out than in only where the oil tears apart, at the vapour pressure.
        double outflow = rounding.seepage * x[node] - inflow[node];
        if (tie.strength > 0) outflow += tie.strength * (x[node] - tie.to[node]);
        const Smooth torn = positive_part(outflow - (x[node] - network.vapour), rounding.width);
        out.residual[node] = outflow - torn.value;
        out.slopes.row(node) *= -(1 - torn.slope);
        out.slopes(node, node) += (1 - torn.slope) * (rounding.seepage + tie.strength) + torn.slope;
    }
    if (tie.strength > 0)
        for (int i = 0; i < static_cast<int>(network.bodies.size()); ++i) {
            const int v = network.speed_at(i);
            out.residual[v] -= tie.strength * (x[v] - tie.to[v]);
            out.slopes(v, v) -= tie.strength;
        }
}

// Newton at one rounding. True when the residual came below `aim`.
bool descend(const Network& network, const Rounding& rounding, const Tie& tie, double aim, int most_steps,
             Settled& state) {
    Equations now, trial;
    evaluate(network, state.unknowns, rounding, tie, now);
    for (int step = 0; step < most_steps; ++step) {
        now.residual.cwiseAbs().maxCoeff(&state.worst);
        const double size = now.residual.squaredNorm();
        state.residual = std::abs(now.residual[state.worst]);
        if (!std::isfinite(size)) return false;
        if (state.residual < aim) return true;
        const VectorXd direction = now.slopes.partialPivLu().solve(-now.residual);
        ++state.steps;
        double share = 1;
        bool better = false;
        VectorXd tried;
        for (; share > 1e-4 && !better; share /= 2) {
            tried = state.unknowns + share * direction;
            evaluate(network, tried, rounding, tie, trial);
            better = trial.residual.squaredNorm() < size * (1 - 1e-4 * share);
        }
        if (!better) return false;
        state.unknowns = tried;
        std::swap(now, trial);
    }
    state.residual = now.residual.cwiseAbs().maxCoeff(&state.worst);
    return state.residual < aim;
}

double aim(double width) {
    return width > last_width ? 0.1 * width : settled_residual;
}

Rounding rounding(double width) {
    return {width, std::max(least_seepage, 1e-3 * width)};
}

// Lets the circuit find its state as it would in time: short steps at first, longer while they go well. Plain
// Newton can get caught where valves lifted by a pilot act back on their own pressures (C. T. Kelley, D. E.
// Keyes, SIAM J. Numer. Anal. 35 (1998), p. 508: pseudo-transient continuation).
void settle_in_time(const Network& network, double width, Settled& state) {
    Tie tie{state.unknowns, first_tie};
    for (int step = 0; step < most_times && tie.strength > last_tie && tie.strength < strongest_tie; ++step) {
        Settled trial = state;
        const bool done = descend(network, rounding(width), tie, aim(width), 6, trial);
        const int taken = trial.steps - state.steps;
        state.steps = trial.steps;
        if (!done) {
            tie.strength *= 8;
            continue;
        }
        tie.strength *= taken < 3 ? 0.1 : taken < 5 ? 0.3 : 0.7;
        state.unknowns = trial.unknowns;
        tie.to = state.unknowns;
    }
}

// From a wide rounding to the last, in strides of `shrink`. Without patience it gives up where plain Newton
// gets caught.
void descend_through(const Network& network, double width, double shrink, bool patient, Settled& state) {
    for (;; width *= shrink) {
        const double now = std::max(width, last_width);
        descend(network, rounding(now), {}, aim(now), 15, state);
        if (state.residual > 10 * aim(now)) {
            if (!patient) return;
            settle_in_time(network, now, state);
            descend(network, rounding(now), {}, aim(now), 15, state);
        }
        if (width <= last_width) break;
    }
    // Where rounding of the computer lets it come no nearer, good enough is good enough.
    state.done = state.residual < good_enough;
}

}  // namespace

Settled settle(const Network& network, const VectorXd& start) {
    Settled state;
    const VectorXd still = VectorXd::Zero(network.unknowns());
    if (start.size() == still.size()) {
        state.unknowns = start;
        descend_through(network, 1e-6, 1e-3, false, state);
    }
    // In long strides first; where that fails, in shorter ones and from elsewhere.
    const std::pair<double, double> first_width_and_shrink[] = {
        {0.1, 1e-2}, {0.1, 0.1}, {1e-3, 0.1}, {1, 0.3}};
    for (const auto& [width, shrink] : first_width_and_shrink) {
        if (state.done) break;
        state.unknowns = still;
        descend_through(network, width, shrink, true, state);
    }
    return state;
}

VectorXd net_inflow(const Network& network, const VectorXd& x) {
    VectorXd inflow = VectorXd::Zero(static_cast<int>(network.nodes.size()));
    Equations unused{VectorXd::Zero(x.size()), MatrixXd::Zero(x.size(), x.size())};
    add_branches(network, x, {last_width, least_seepage}, unused, inflow);
    add_bodies(network, x, {last_width, least_seepage}, unused, inflow);
    return inflow;
}

}  // namespace hardover::rig::circuit
