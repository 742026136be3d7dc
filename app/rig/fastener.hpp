// Bolts and screws: stress areas, strength grades, and the torque that gives a clamp load. SI throughout.
// A torque wrench sets tension only within 25 to 30 %, because friction varies that much.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::rig {

// The two thread forms differ in where the stress area's diameter lies.
enum class ThreadForm { inch, metric };

// Tensile stress area, m^2: pi/4·(d - k·p)^2 with k = 0.9743 (ASME B1.1) or 0.9382 (ISO 898-1).
double stress_area(double diameter, double pitch, ThreadForm form);

struct Thread {
    std::string name;  // "3/8-16", "M8x1.25"
    ThreadForm form = ThreadForm::inch;
    double diameter = 0;  // m
    double pitch = 0;     // m
    double stress_area() const { return rig::stress_area(diameter, pitch, form); }
};
// Inch coarse and fine 1/4 to 5/8 (ASME B1.1), metric coarse M5 to M16 (ISO 261).
const std::vector<Thread>& threads();
// Error: unknown thread, with the nearest known one.
Result<Thread> find_thread(std::string_view name);

struct BoltGrade {
    std::string name;  // "SAE grade 5"
    double proof = 0;  // Pa; for stainless the 0.2 % proof stress
    double tensile = 0;
    std::string source;
};
const std::vector<BoltGrade>& bolt_grades();
// Error: unknown grade, with the nearest known one.
Result<BoltGrade> find_bolt_grade(std::string_view name);

// Clamp load, N: share · proof · stress area; share 0.75 for joints that come apart again, 0.90 for
// permanent.
double clamp_load(double share, double proof, double stress_area);

// T = K·d·F, N·m, and back. Nut factor K about 0.20 dry zinc or plain, 0.18 oiled, 0.12 anti-seize (J.
// Shigley).
double torque_for_clamp(double nut_factor, double diameter, double clamp);
double clamp_of_torque(double nut_factor, double diameter, double torque);

// Nut factor from friction, J. Shigley, Mechanical Engineering Design, eq. 8-26 (worked example from memory):
// K = dm/(2d)·(tan l + mu·sec a)/(1 - mu·tan l·sec a) + 0.625·mu_collar, a = 30 deg.
struct ThreadFriction {
    double diameter = 0;
    double mean_diameter = 0;
    double pitch = 0;
    double thread_friction = 0;
    double collar_friction = 0;
};
double nut_factor(const ThreadFriction& friction);

// How far the nut turns to stretch a bolt, rad: F·L/(A·E) over the pitch (T. Wentzell, Machine Design, ch.
// 6).
struct StretchedBolt {
    double clamp = 0;
    double length = 0;
    double stress_area = 0;
    double elasticity = 0;  // Pa
    double pitch = 0;
};
double nut_turn_for_stretch(const StretchedBolt& bolt);

}  // namespace hardover::rig
