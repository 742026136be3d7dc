#include "app/rig/hose.hpp"

#include <cmath>
#include <limits>

namespace hardover::rig {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inch = 0.0254;                          // m
constexpr double pound_force_inch = 0.1129848290276167;  // N·m

}  // namespace

double size_of_dash(double dash) {
    return dash > 0 ? dash / 16 * inch : nan;
}

double dash_of_size(double size) {
    return size > 0 ? size / inch * 16 : nan;
}

double least_bend_radius(double bore) {
    struct Row {
        double bore;
        double radius;
    };
    constexpr Row rows[] = {{0.25, 4}, {0.3125, 4.5}, {0.375, 5}, {0.5, 7}};
    for (const Row& row : rows) {
        if (std::abs(bore - row.bore * inch) < 1e-6) return row.radius * inch;
    }
    return nan;
}

double bend_radius(double chord, double rise) {
    if (!(chord > 0 && rise > 0)) return nan;
    return chord * chord / (8 * rise) + rise / 2;
}

double bend_length(double inside_radius, double outside_diameter, double angle) {
    if (!(inside_radius > 0 && outside_diameter > 0 && angle >= 0)) return nan;
    return (inside_radius + outside_diameter / 2) * angle;
}

double hose_to_cut(double greatest_span, double shortening, double spare) {
    if (!(greatest_span > 0 && shortening >= 0 && shortening < 1 && spare >= 0)) return nan;
    return (greatest_span + spare) / (1 - shortening);
}

double hose_slack(double length, double shortening, double span) {
    if (!(length > 0 && shortening >= 0 && shortening < 1 && span > 0)) return nan;
    return length * (1 - shortening) - span;
}

double tube_working_pressure(double wall, double bore, double strength, double safety) {
    if (!(wall > 0 && bore > 0 && strength > 0 && safety >= 1)) return nan;
    return 2 * strength * wall / (bore * safety);
}

double npt_pitch_diameter(double outside_diameter, double pitch) {
    if (!(outside_diameter > 0 && pitch > 0)) return nan;
    return outside_diameter - (0.05 * outside_diameter / inch + 1.1) * pitch;
}

const std::vector<FlareThread>& flare_threads() {
    static const std::vector<FlareThread> all = {
        {4, "7/16-20", 0.4375 * inch}, {5, "1/2-20", 0.5 * inch},    {6, "9/16-18", 0.5625 * inch},
        {8, "3/4-16", 0.75 * inch},    {10, "7/8-14", 0.875 * inch}, {12, "1 1/16-12", 1.0625 * inch},
    };
    return all;
}

const std::vector<FlareTorque>& flare_torques() {
    static const std::vector<FlareTorque> all = [] {
        struct Row {
            int dash;
            double limits[6];  // aluminium tube, steel tube, hose: least and greatest, lbf·in
        };
        constexpr Row rows[] = {
            {4, {50, 65, 135, 150, 100, 120}},     {6, {100, 125, 270, 300, 210, 250}},
            {8, {210, 250, 450, 500, 340, 420}},   {10, {300, 350, 650, 700, 400, 480}},
            {12, {425, 500, 900, 1000, 725, 850}},
        };
        std::vector<FlareTorque> list;
        for (const Row& row : rows) {
            int column = 0;
            for (const FlareNut nut : {FlareNut::aluminium_tube, FlareNut::steel_tube, FlareNut::hose}) {
                list.push_back({row.dash, nut, row.limits[column] * pound_force_inch,
                                row.limits[column + 1] * pound_force_inch});
                column += 2;
            }
        }
        return list;
    }();
    return all;
}

const FlareTorque* flare_torque(int dash, FlareNut nut) {
    for (const FlareTorque& torque : flare_torques()) {
        if (torque.dash == dash && torque.nut == nut) return &torque;
    }
    return nullptr;
}

}  // namespace hardover::rig
