// How the published and computed linkage examples are computed with the rig's formulas.
#include "app/rig/mounted_ram.hpp"
#include "reference_checks.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover::rig;
using Check = ReferenceCheck;

namespace {

PlanarLinkage window(const Check& c) {
    return {c("a"), c("r"), c("gamma")};
}

PlanarLinkage planar(const Check& c) {
    return {c("a"), c("r"), c("gamma0")};
}

// The ram drives the angle at v/m; that rate changes because the moment arm does.
double angular_acceleration(const Check& c) {
    const double arm = moment_arm(window(c), 0);
    const double rate = c("actuator_speed") / arm;
    return -moment_arm_slope(window(c), 0) / arm * rate * rate;
}

double angle_of_triangle(const Check& c) {
    const auto angle = angle_at_length(c("b"), c("c"), c("a"));
    REQUIRE_OK(angle);
    return angle.value();
}

Eigen::Vector3d vector(const Check& c, const std::string& name) {
    const std::vector<double>& list = c.list(name);
    REQUIRE(list.size() == 3);
    return {list[0], list[1], list[2]};
}

Linkage spatial(const Check& c) {
    const SteeringArm arm{vector(c, "arm_end"), vector(c, "steer_axis_point"), vector(c, "steer_axis_dir"),
                          vector(c, "trim_axis_point"), vector(c, "trim_axis_dir")};
    return {arm, vector(c, "anchor")};
}

// A centre-mounted cylinder at a tiller as long as the check's bar: its pin's way along the rod and its
// moment arm are the two legs of the right triangle.
MountedRam across(double bar) {
    MountedRam ram;
    ram.linkage = {{{0, bar, 0}, {0, 0, 0}, {0, 0, 1}, {0, bar, 0}, {1, 0, 0}}, {0, bar, 0}};
    ram.slides_along = {-1, 0, 0};
    return ram;
}

}  // namespace

ReferenceFormulas linkage_formulas() {
    return {
        {"LNK-006", [](const Check& c) { return rod_out(across(c("hyp")), c("angle"), 0); }},
        {"LNK-007", [](const Check& c) { return moment_arm(across(c("hyp")), c("angle"), 0); }},
        {"LNK-008", [](const Check& c) { return moment_arm(across(c("boom")), c("angle"), 0); }},
        {"LNK-001", [](const Check& c) { return ram_length(window(c), 0); }},
        {"LNK-002", [](const Check& c) { return c("actuator_speed") / moment_arm(window(c), 0); }},
        {"LNK-003", angular_acceleration},
        {"LNK-004",
         [](const Check& c) {
             return ram_length(PlanarLinkage{c("b"), c("c"), c("A")}, 0);
         }},
        {"LNK-005", angle_of_triangle},
        // Two forces laid end to end form a triangle whose third side is the resultant.
        {"LNK-013",
         [](const Check& c) {
             return ram_length(PlanarLinkage{c("f1"), c("f2"), c("angle")}, 0);
         }},
        {"LNK-014",
         [](const Check& c) {
             return ram_length(PlanarLinkage{c("R"), c("F2"), c("angle")}, 0);
         }},
        {"planar ram length", [](const Check& c) { return ram_length(planar(c), c("delta")); }},
        {"planar moment arm", [](const Check& c) { return moment_arm(planar(c), c("delta")); }},
        {"3D ram length with trim",
         [](const Check& c) { return ram_length(spatial(c), c("steer"), c("trim")); }},
        {"3D moment arm about steering axis",
         [](const Check& c) { return moment_arm(spatial(c), c("steer"), c("trim")); }},
    };
}

}  // namespace hardover_tests
