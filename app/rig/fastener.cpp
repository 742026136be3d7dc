#include "app/rig/fastener.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "app/rig/named.hpp"

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inch = 0.0254;            // m
constexpr double ksi = 6894757.293168361;  // Pa
constexpr double megapascal = 1e6;
constexpr double millimetre = 1e-3;

}  // namespace

double stress_area(double diameter, double pitch, ThreadForm form) {
    const double factor =
        form == ThreadForm::inch ? 9 * std::numbers::sqrt3 / 16 : 13 * std::numbers::sqrt3 / 24;
    const double core = diameter - factor * pitch;
    if (!(diameter > 0 && pitch > 0 && core > 0)) return nan;
    return std::numbers::pi / 4 * core * core;
}

const std::vector<Thread>& threads() {
    static const std::vector<Thread> all = [] {
        std::vector<Thread> list;
        const auto add_inch = [&](const char* name, double diameter, double per_inch) {
            list.push_back({name, ThreadForm::inch, diameter * inch, inch / per_inch});
        };
        add_inch("1/4-20", 0.25, 20);
        add_inch("5/16-18", 0.3125, 18);
        add_inch("3/8-16", 0.375, 16);
        add_inch("7/16-14", 0.4375, 14);
        add_inch("1/2-13", 0.5, 13);
        add_inch("9/16-12", 0.5625, 12);
        add_inch("5/8-11", 0.625, 11);
        add_inch("1/4-28", 0.25, 28);
        add_inch("5/16-24", 0.3125, 24);
        add_inch("3/8-24", 0.375, 24);
        add_inch("7/16-20", 0.4375, 20);
        add_inch("1/2-20", 0.5, 20);
        add_inch("9/16-18", 0.5625, 18);
        add_inch("5/8-18", 0.625, 18);
        const auto add_metric = [&](const char* name, double diameter, double pitch) {
            list.push_back({name, ThreadForm::metric, diameter * millimetre, pitch * millimetre});
        };
        add_metric("M5x0.8", 5, 0.8);
        add_metric("M6x1", 6, 1);
        add_metric("M8x1.25", 8, 1.25);
        add_metric("M10x1.5", 10, 1.5);
        add_metric("M12x1.75", 12, 1.75);
        add_metric("M14x2", 14, 2);
        add_metric("M16x2", 16, 2);
        return list;
    }();
    return all;
}

Result<Thread> find_thread(std::string_view name) {
    return find_named(threads(), name, "thread");
}

const std::vector<BoltGrade>& bolt_grades() {
    static const std::vector<BoltGrade> all = {
        {"SAE grade 2", 55 * ksi, 74 * ksi, "SAE J429, 1/4 to 3/4 in, as quoted in secondary tables"},
        {"SAE grade 5", 85 * ksi, 120 * ksi, "SAE J429, 1/4 to 1 in, as quoted in secondary tables"},
        {"SAE grade 8", 120 * ksi, 150 * ksi,
         "SAE J429, 1/4 to 1-1/2 in, as quoted in secondary tables; tensile from memory"},
        {"ISO 8.8", 580 * megapascal, 800 * megapascal, "ISO 898-1, up to M16"},
        {"ISO 10.9", 830 * megapascal, 1040 * megapascal, "ISO 898-1; tensile from memory"},
        {"ISO 12.9", 970 * megapascal, 1220 * megapascal, "ISO 898-1; tensile from memory"},
        {"A2/A4-50", 210 * megapascal, 500 * megapascal, "ISO 3506-1"},
        {"A2/A4-70", 450 * megapascal, 700 * megapascal, "ISO 3506-1"},
        {"A2/A4-80", 600 * megapascal, 800 * megapascal, "ISO 3506-1"},
        {"304/316 CW1", 65 * ksi, 100 * ksi, "ASTM F593, 1/4 to 5/8 in; from memory"},
    };
    return all;
}

Result<BoltGrade> find_bolt_grade(std::string_view name) {
    return find_named(bolt_grades(), name, "bolt grade");
}

double clamp_load(double share, double proof, double stress_area) {
    if (!(share > 0 && share <= 1 && proof > 0)) return nan;
    return share * proof * stress_area;
}

double torque_for_clamp(double nut_factor, double diameter, double clamp) {
    return nut_factor > 0 && diameter > 0 ? nut_factor * diameter * clamp : nan;
}

double clamp_of_torque(double nut_factor, double diameter, double torque) {
    return nut_factor > 0 && diameter > 0 ? torque / (nut_factor * diameter) : nan;
}

double nut_factor(const ThreadFriction& f) {
    if (!(f.diameter > 0 && f.mean_diameter > 0 && f.pitch > 0)) return nan;
    const double lead = f.pitch / (std::numbers::pi * f.mean_diameter);
    const double flank = f.thread_friction / std::cos(std::numbers::pi / 6);
    return f.mean_diameter / (2 * f.diameter) * (lead + flank) / (1 - flank * lead) +
           0.625 * f.collar_friction;
}

double nut_turn_for_stretch(const StretchedBolt& bolt) {
    if (!(bolt.stress_area > 0 && bolt.elasticity > 0 && bolt.pitch > 0)) return nan;
    const double stretch = bolt.clamp * bolt.length / (bolt.stress_area * bolt.elasticity);
    return 2 * std::numbers::pi * stretch / bolt.pitch;
}

}  // namespace hardover::rig
