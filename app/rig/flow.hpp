// Pressure lost by oil on its way through hoses, fittings, orifices and valves. SI throughout.
// Knows one path at a time: how paths join into a circuit is told elsewhere.
// A size, density or viscosity that cannot be (zero or negative) gives NaN.
#pragma once

#include <string>
#include <vector>

namespace hardover::rig {

// Oil as a flow sees it at its present temperature.
struct FlowingOil {
    double density = 0;              // kg/m^3
    double kinematic_viscosity = 0;  // m^2/s
};

struct Line {
    double bore = 0;       // m
    double length = 0;     // m
    double roughness = 0;  // m; drawn tube and rubber hose 1.5e-6 to 1e-5, taken as smooth (0)
};

// Mean speed in a round bore, m/s, at a flow in m^3/s.
double flow_speed(double flow, double bore);

// Smallest bore, m, that keeps a flow under a speed limit.
double bore_for_flow(double flow, double speed_limit);

// Reynolds number v·D/nu; `kinematic_viscosity` in m^2/s. Laminar below about 2000.
double reynolds_number(double speed, double bore, double kinematic_viscosity);

// Hagen-Poiseuille: pressure per flow, Pa·s/m^3, of a laminar line: 128·mu·L/(pi·D^4); `viscosity` in Pa·s.
// Holds for Reynolds numbers below 2000 and past the entry length of 0.06·Re·D.
double laminar_resistance(double viscosity, double length, double bore);

// Darcy friction factor (four times Fanning's). `relative_roughness` is roughness over bore.
// Churchill, Chemical Engineering 84 (1977) 24, p. 91: every Reynolds number, an interpolation between 2000
// and 4000, and 64/Re when laminar.
double friction_factor(double reynolds, double relative_roughness);
// With its slope by Reynolds number.
struct FrictionFactor {
    double value = 0;
    double slope = 0;
};
FrictionFactor friction_factor_and_slope(double reynolds, double relative_roughness);
// Below this Reynolds number Churchill's factor is 64/Re to the last digit.
inline constexpr double stays_laminar_below = 600;

// Colebrook, J. Inst. Civ. Eng. 11 (1939), p. 133, solved exactly; turbulent flow only (NaN below Re 3000).
double colebrook_friction_factor(double reynolds, double relative_roughness);

// Darcy-Weisbach: pressure lost, Pa, with a friction factor already known; `speed` in m/s.
double darcy_loss(double friction, double length, double bore, double density, double speed);

// Pressure lost along a line, Pa, at a flow in m^3/s of either sign (the loss takes the same sign).
// Friction factor by Churchill.
double line_loss(const Line& line, const FlowingOil& oil, double flow);

// Flow through a line, m^3/s, at a pressure difference in Pa of either sign; inverse of line_loss.
double line_flow(const Line& line, const FlowingOil& oil, double pressure);

// Pressure lost in a fitting, Pa: K·density·v^2/2.
double fitting_loss(double loss_coefficient, double density, double speed);

// Length of straight line, m, that loses as much as a fitting: K·D/f.
double equivalent_length(double loss_coefficient, double bore, double friction);

// Loss coefficients that hold in laminar flow too, where a constant K is far too low.
// W. Hooper, Chemical Engineering 88 (1981) 17, p. 96: K = K1/Re + Kinf·(1 + 1 in / D).
double two_k(double k1, double k_infinite, double reynolds, double bore);
// R. Darby, Chemical Engineering 106 (1999) 7, p. 101: K = K1/Re + Ki·(1 + Kd/(D/1 in)^0.3).
double three_k(double k1, double ki, double kd, double reynolds, double bore);

// A screwed fitting with Hooper's two constants.
struct Fitting {
    std::string name;  // "90 deg elbow"
    double k1 = 0;
    double k_infinite = 0;
};
// Constants as quoted in the documentation of the open library `fluids` (C. Bell).
const std::vector<Fitting>& screwed_fittings();

// Loss coefficients of a square tee of equal bores where two turbulent flows join (Crane TP-410, 2009, ch.
// 2). `branch_share` is the branch's part of the joined flow, 0 to 1. The branch's may be negative: it is
// drawn in.
double tee_branch_loss_coefficient(double branch_share);
double tee_run_loss_coefficient(double branch_share);

// Flow through an orifice, m^3/s: Cd·A·sqrt(2·dp/density); sharp edge Cd about 0.6 to 0.65. Takes the sign of
// the pressure difference. Holds for Reynolds numbers above about 1000.
double orifice_flow(double discharge_coefficient, double area, double pressure, double density);

// The same as the throat of a wider pipe, with the speed of approach: divided by sqrt(1 - beta^4), where
// `diameter_ratio` beta is throat over pipe, below 1.
double orifice_meter_flow(double discharge_coefficient, double area, double diameter_ratio, double pressure,
                          double density);

// A valve's flow coefficient Kv as a flow in m^3/s: what passes at 1 bar when the liquid has 1000 kg/m^3
// (IEC 60534-1). Kv in m^3/h divided by 3600.
double flow_coefficient(double flow, double pressure, double density);
double valve_flow(double flow_coefficient, double pressure, double density);
double valve_loss(double flow_coefficient, double flow, double density);
// Loss coefficient K of that valve related to the speed in a bore.
double loss_coefficient_of_valve(double flow_coefficient, double bore);

}  // namespace hardover::rig
