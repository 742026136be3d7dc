#include "app/rig/circuit_laws.hpp"

#include <algorithm>
#include <cmath>

#include "app/rig/flow.hpp"

namespace hardover::rig::circuit {

namespace {

constexpr double laminar_below = 1e-12;  // pressure, of its scale
constexpr double wider_opening = 10;     // of the rounding width

// An equation whose pressure term is huge is divided by that, so that all residuals are of one size.
double weight(double resistance) {
    return 1 / (1 + resistance);
}

BranchResidual path_residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    // Creeping through any restriction is laminar; a purely quadratic loss would be flat there.
    const double creeping = branch.quadratic > 0 ? std::sqrt(laminar_below / branch.quadratic) : 0;
    const double size = std::hypot(ends.flow, rounding.width, creeping);
    const double linear = branch.linear + rounding.seepage;
    double loss = linear * ends.flow + branch.quadratic * ends.flow * size;
    double slope = linear + branch.quadratic * (size + ends.flow * ends.flow / size);
    if (branch.reynolds_per_flow > 0) {
        const Smooth factor = turbulence(branch.reynolds_per_flow * std::abs(ends.flow), branch.roughness);
        loss += branch.linear * ends.flow * (factor.value - 1);
        slope += branch.linear *
                 (factor.value - 1 + std::abs(ends.flow) * branch.reynolds_per_flow * factor.slope);
    }
    const double w = weight(linear + branch.quadratic);
    return {w * (ends.from - ends.to - loss), w, -w, 0, -w * slope};
}

// Flow >= 0, shortfall of opening pressure >= 0, one of them 0.
BranchResidual one_way_residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    const double linear = branch.linear + rounding.seepage;
    const double w = weight(linear);
    const double excess = w * (ends.from - ends.to - branch.cracking - linear * ends.flow);
    const Smooth open = positive_part(ends.flow + excess, rounding.width);
    return {ends.flow - open.value, -w * open.slope, w * open.slope, 0, 1 - open.slope * (1 - w * linear)};
}

BranchResidual pilot_residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    const double difference = ends.from - ends.to;
    const Smooth forward = positive_part(difference - branch.cracking, rounding.width);
    const double push = branch.pilot_ratio * (ends.pilot - ends.from) + difference - branch.cracking;
    // The lift feeds back on its own pressures: while corners are rounded it opens over a wider range too.
    const double range = branch.opening_range + wider_opening * rounding.width;
    const Smooth lift = ramp(push / range, rounding.width);
    const double lift_slope = lift.slope / range;
    // Lifted, the full difference drives the flow; else only what exceeds the cracking pressure.
    const double gain = difference - forward.value;
    const double drive = forward.value + lift.value * gain;
    const double by_difference = forward.slope + lift.value * (1 - forward.slope) + lift_slope * gain;
    const double by_pilot = lift_slope * branch.pilot_ratio * gain;
    const double linear = branch.linear + rounding.seepage;
    const double w = weight(linear);
    return {w * (drive - linear * ends.flow), w * (by_difference - by_pilot), -w * by_difference,
            w * by_pilot, -w * linear};
}

// The shaft is a clutch: any pressure rise within its limit at the commanded flow, the limit itself when
// slower.
BranchResidual pump_residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    const bool forward = branch.command >= 0;
    const Smooth filling = pump_filling(branch, forward ? ends.from : ends.to, rounding.width);
    const double rise = ends.to - ends.from;
    const double kept = 1 - rounding.seepage;
    const double slip = branch.command * filling.value - ends.flow;
    const Smooth given = kept_within(kept * rise + slip, branch.limit, rounding.width);
    const double w = weight(branch.limit);
    const double by_rise = 1 - given.slope * kept;
    const double by_inlet = -given.slope * branch.command * filling.slope;
    return {w * (rise - given.value + rounding.seepage * ends.flow),
            w * (-by_rise + (forward ? by_inlet : 0)), w * (by_rise + (forward ? 0 : by_inlet)), 0,
            w * (given.slope + rounding.seepage)};
}

BranchResidual held_residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    return {ends.from - branch.pressure + rounding.seepage * ends.flow, 1, 0, 0, rounding.seepage};
}

}  // namespace

Smooth positive_part(double x, double width) {
    const double root = std::hypot(x, 2 * width);
    if (root == 0) return {0, 0.5};
    // For x < 0 the sum would lose its digits; the other form is the same number.
    const double value = x >= 0 ? (x + root) / 2 : 2 * width * width / (root - x);
    return {value, value / root};
}

Smooth kept_within(double x, double limit, double width) {
    const Smooth above = positive_part(x - limit, width);
    const Smooth below = positive_part(-x - limit, width);
    return {x - above.value + below.value, 1 - above.slope - below.slope};
}

Smooth ramp(double x, double width) {
    const Smooth rising = positive_part(x, width);
    const Smooth over = positive_part(x - 1, width);
    return {rising.value - over.value, rising.slope - over.slope};
}

Smooth turbulence(double reynolds, double relative_roughness) {
    if (reynolds < stays_laminar_below) return {1, 0};
    const FrictionFactor factor = friction_factor_and_slope(reynolds, relative_roughness);
    return {factor.value * reynolds / 64, (factor.value + factor.slope * reynolds) / 64};
}

Smooth pump_filling(const Branch& pump, double inlet, double width) {
    const double range = pump.suction_limit - pump.no_filling;
    const Smooth share = ramp((inlet - pump.no_filling) / range, width);
    return {share.value, share.slope / range};
}

BranchResidual residual(const Branch& branch, const BranchEnds& ends, const Rounding& rounding) {
    switch (branch.kind) {
        case Branch::Kind::path:
            return path_residual(branch, ends, rounding);
        case Branch::Kind::one_way:
            return one_way_residual(branch, ends, rounding);
        case Branch::Kind::pilot:
            return pilot_residual(branch, ends, rounding);
        case Branch::Kind::pump:
            return pump_residual(branch, ends, rounding);
        case Branch::Kind::held:
            return held_residual(branch, ends, rounding);
    }
    return {ends.flow, 0, 0, 0, 1};
}

}  // namespace hardover::rig::circuit
