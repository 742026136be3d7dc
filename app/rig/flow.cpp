#include "app/rig/flow.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double pi = std::numbers::pi;
constexpr double inch = 0.0254;           // m
constexpr double bar = 1e5;               // Pa
constexpr double water_density = 1000.0;  // kg/m^3, the reference liquid of flow coefficients

double bore_area(double bore) {
    return bore > 0 ? pi / 4 * bore * bore : nan;
}

double sixteenth_power(double x) {
    const double fourth = x * x * x * x;
    return fourth * fourth * fourth * fourth;
}

}  // namespace

double flow_speed(double flow, double bore) {
    return flow / bore_area(bore);
}

double bore_for_flow(double flow, double speed_limit) {
    if (flow < 0 || speed_limit <= 0) return nan;
    return std::sqrt(4 * flow / (pi * speed_limit));
}

double reynolds_number(double speed, double bore, double kinematic_viscosity) {
    if (bore <= 0 || kinematic_viscosity <= 0) return nan;
    return std::abs(speed) * bore / kinematic_viscosity;
}

double laminar_resistance(double viscosity, double length, double bore) {
    if (viscosity <= 0 || length < 0 || bore <= 0) return nan;
    return 128 * viscosity * length / (pi * std::pow(bore, 4));
}

FrictionFactor friction_factor_and_slope(double reynolds, double relative_roughness) {
    if (reynolds <= 0 || relative_roughness < 0) return {nan, nan};
    // Below, the other terms are lost in the last digit.
    if (reynolds < stays_laminar_below) return {64 / reynolds, -64 / (reynolds * reynolds)};
    // 8·(laminar + turbulent)^(1/12), where turbulent = (rough + smooth)^-1.5; slopes by Reynolds number.
    const double thinning = std::pow(7 / reynolds, 0.9);
    const double inside = thinning + 0.27 * relative_roughness;
    const double rise = -2.457 * std::log(inside);
    const double rough = sixteenth_power(rise);
    const double rough_slope = 16 * rough / rise * 2.457 * 0.9 * thinning / (inside * reynolds);
    const double smooth = sixteenth_power(37530 / reynolds);
    const double both = rough + smooth;
    const double turbulent = 1 / (both * std::sqrt(both));
    const double turbulent_slope = -1.5 * turbulent / both * (rough_slope - 16 * smooth / reynolds);
    const double third = 8 / reynolds * (8 / reynolds) * (8 / reynolds);
    const double laminar = third * third * third * third;
    const double sum = laminar + turbulent;
    const double factor = 8 * std::cbrt(std::sqrt(std::sqrt(sum)));
    return {factor, factor / 12 * (turbulent_slope - 12 * laminar / reynolds) / sum};
}

double friction_factor(double reynolds, double relative_roughness) {
    return friction_factor_and_slope(reynolds, relative_roughness).value;
}

double colebrook_friction_factor(double reynolds, double relative_roughness) {
    if (!(reynolds >= 3000) || relative_roughness < 0) return nan;
    // In s = 1/sqrt(f) the equation is nearly straight, so Newton's steps settle within a few.
    double s = 1 / std::sqrt(friction_factor(reynolds, relative_roughness));
    for (int step = 0; step < 20; ++step) {
        const double inside = relative_roughness / 3.7 + 2.51 * s / reynolds;
        const double fault = s + 2 * std::log10(inside);
        const double slope = 1 + 2 / std::numbers::ln10 * 2.51 / reynolds / inside;
        const double correction = fault / slope;
        s -= correction;
        if (std::abs(correction) < 1e-14 * s) break;
    }
    return 1 / (s * s);
}

double darcy_loss(double friction, double length, double bore, double density, double speed) {
    if (bore <= 0) return nan;
    return friction * length / bore * density * speed * std::abs(speed) / 2;
}

double line_loss(const Line& line, const FlowingOil& oil, double flow) {
    if (line.bore <= 0 || line.length < 0 || oil.density <= 0 || oil.kinematic_viscosity <= 0) return nan;
    if (flow == 0) return 0;
    const double speed = flow_speed(flow, line.bore);
    const double reynolds = reynolds_number(speed, line.bore, oil.kinematic_viscosity);
    const double friction = friction_factor(reynolds, line.roughness / line.bore);
    return darcy_loss(friction, line.length, line.bore, oil.density, speed);
}

double line_flow(const Line& line, const FlowingOil& oil, double pressure) {
    if (line.length <= 0 || std::isnan(line_loss(line, oil, 1.0)) || !std::isfinite(pressure)) return nan;
    if (pressure == 0) return 0;
    const double wanted = std::abs(pressure);
    // Churchill's factor is never below the laminar one, so the laminar flow is an upper end.
    double low = 0;
    double high = wanted / laminar_resistance(oil.density * oil.kinematic_viscosity, line.length, line.bore);
    for (int step = 0; step < 200 && high - low > 1e-15 * high; ++step) {
        const double middle = (low + high) / 2;
        (line_loss(line, oil, middle) < wanted ? low : high) = middle;
    }
    return std::copysign((low + high) / 2, pressure);
}

double fitting_loss(double loss_coefficient, double density, double speed) {
    return loss_coefficient * density * speed * std::abs(speed) / 2;
}

double equivalent_length(double loss_coefficient, double bore, double friction) {
    return friction > 0 ? loss_coefficient * bore / friction : nan;
}

double two_k(double k1, double k_infinite, double reynolds, double bore) {
    if (reynolds <= 0 || bore <= 0) return nan;
    return k1 / reynolds + k_infinite * (1 + inch / bore);
}

double three_k(double k1, double ki, double kd, double reynolds, double bore) {
    if (reynolds <= 0 || bore <= 0) return nan;
    return k1 / reynolds + ki * (1 + kd / std::pow(bore / inch, 0.3));
}

const std::vector<Fitting>& screwed_fittings() {
    static const std::vector<Fitting> fittings = {
        {"90 deg elbow", 800, 0.4},
        {"tee, as elbow", 500, 0.7},
        {"tee, straight through", 200, 0.1},
    };
    return fittings;
}

double tee_branch_loss_coefficient(double branch_share) {
    if (!(branch_share >= 0 && branch_share <= 1)) return nan;
    const double run_share = 1 - branch_share;
    const double scale = branch_share <= 0.4 ? 0.9 * run_share : 0.55;
    return scale * (1 + branch_share * branch_share - 2 * run_share * run_share);
}

double tee_run_loss_coefficient(double branch_share) {
    if (!(branch_share >= 0 && branch_share <= 1)) return nan;
    return 1.55 * branch_share - branch_share * branch_share;
}

double orifice_flow(double discharge_coefficient, double area, double pressure, double density) {
    if (discharge_coefficient <= 0 || area < 0 || density <= 0) return nan;
    return std::copysign(discharge_coefficient * area * std::sqrt(2 * std::abs(pressure) / density),
                         pressure);
}

double orifice_meter_flow(double discharge_coefficient, double area, double diameter_ratio, double pressure,
                          double density) {
    if (!(diameter_ratio >= 0 && diameter_ratio < 1)) return nan;
    return orifice_flow(discharge_coefficient, area, pressure, density) /
           std::sqrt(1 - std::pow(diameter_ratio, 4));
}

double flow_coefficient(double flow, double pressure, double density) {
    if (pressure <= 0 || density <= 0) return nan;
    return flow * std::sqrt(bar / pressure * density / water_density);
}

double valve_flow(double flow_coefficient, double pressure, double density) {
    if (flow_coefficient < 0 || density <= 0) return nan;
    return std::copysign(flow_coefficient * std::sqrt(std::abs(pressure) / bar * water_density / density),
                         pressure);
}

double valve_loss(double flow_coefficient, double flow, double density) {
    if (flow_coefficient <= 0 || density <= 0) return nan;
    const double share = flow / flow_coefficient;
    return bar * share * std::abs(share) * density / water_density;
}

double loss_coefficient_of_valve(double flow_coefficient, double bore) {
    if (flow_coefficient <= 0) return nan;
    const double area_per_flow = bore_area(bore) / flow_coefficient;
    return 2 * bar / water_density * area_per_flow * area_per_flow;
}

}  // namespace hardover::rig
