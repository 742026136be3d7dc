// The ram in space, the tie bar and the flare nut's torque limits, under their names for the formulas.
// In space: x aft, y out to the ram's side, z up, from the point where the steering axis crosses the trim
// axis.
#include <limits>

#include "app/rig/clearance.hpp"
#include "app/rig/function_table.hpp"
#include "app/rig/hose.hpp"
#include "app/rig/linkage.hpp"
#include "app/rig/tie_bar.hpp"

namespace hardover::rig::function_table {

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

// Steering axis upright, trim axis level and athwart. A positive steer angle swings the aft end of the drive
// towards the ram's side, which shortens the ram; a positive trim angle lifts the aft end.
Linkage ram_in_space(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                     double pin_aft, double pin_up) {
    Linkage linkage;
    linkage.anchor = {bracket_aft, bracket_out, bracket_up};
    linkage.pin = {pin_aft, pin_out, pin_up};
    linkage.steer_point = Eigen::Vector3d::Zero();
    linkage.steer_direction = Eigen::Vector3d::UnitZ();
    linkage.trim_point = Eigen::Vector3d::Zero();
    linkage.trim_direction = -Eigen::Vector3d::UnitY();
    return linkage;
}

double space_ram_length(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                        double pin_aft, double pin_up, double steer, double trim) {
    return ram_length(ram_in_space(bracket_out, bracket_aft, bracket_up, pin_out, pin_aft, pin_up), steer,
                      trim);
}

double space_moment_arm(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                        double pin_aft, double pin_up, double steer, double trim) {
    return moment_arm(ram_in_space(bracket_out, bracket_aft, bracket_up, pin_out, pin_aft, pin_up), steer,
                      trim);
}

double space_steer_at_length(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                             double pin_aft, double pin_up, double length, double trim) {
    const Result<double> steer = steer_at_length(
        ram_in_space(bracket_out, bracket_aft, bracket_up, pin_out, pin_aft, pin_up), length, trim);
    return steer ? steer.value() : nan;
}

// Least room about the ram between both stops and over the trim range, and where it is.
double least(double Closest::*what, const Linkage& linkage, double thickness, const KeepOut& keep_out,
             double stop, double trim_down, double trim_up) {
    const Result<Closest> found =
        least_clearance(MountedRam{linkage, {}}, thickness / 2, keep_out, {-stop, stop, trim_down, trim_up});
    return found ? found.value().*what : nan;
}

// From a box: a swim platform, say.
template <double Closest::*what>
double least_from_box(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                      double pin_aft, double pin_up, double thickness, double low_out, double high_out,
                      double low_aft, double high_aft, double low_up, double high_up, double stop,
                      double trim_down, double trim_up) {
    return least(what, ram_in_space(bracket_out, bracket_aft, bracket_up, pin_out, pin_aft, pin_up),
                 thickness, KeepOutBox{{low_aft, low_out, low_up}, {high_aft, high_out, high_up}}, stop,
                 trim_down, trim_up);
}

// From a trim cylinder, pinned to the transom and to the drive.
template <double Closest::*what>
double least_from_cylinder(double bracket_out, double bracket_aft, double bracket_up, double pin_out,
                           double pin_aft, double pin_up, double thickness, double transom_out,
                           double transom_aft, double transom_up, double drive_out, double drive_aft,
                           double drive_up, double cylinder, double stop, double trim_down, double trim_up) {
    const KeepOutBar bar{{{transom_aft, transom_out, transom_up}, false},
                         {{drive_aft, drive_out, drive_up}, true},
                         cylinder / 2};
    return least(what, ram_in_space(bracket_out, bracket_aft, bracket_up, pin_out, pin_aft, pin_up),
                 thickness, bar, stop, trim_down, trim_up);
}

double tie_bar_for_toe(double spacing, double arm_one, double angle_one, double arm_two, double angle_two,
                       double toe) {
    return bar_for_toe({spacing, arm_one, angle_one, arm_two, angle_two, 0}, toe);
}

double tied_steer_by_bar(double spacing, double arm_one, double angle_one, double arm_two, double angle_two,
                         double bar, double steer) {
    const Result<double> second = tied_steer({spacing, arm_one, angle_one, arm_two, angle_two, bar}, steer);
    return second ? second.value() : nan;
}

// NaN for a dash number that is not in the table.
template <FlareNut nut, double FlareTorque::*limit>
double flare_limit(double dash) {
    if (!(dash >= 0 && dash <= 100)) return nan;
    const FlareTorque* torque = flare_torque(static_cast<int>(dash), nut);
    return torque != nullptr && torque->dash == dash ? torque->*limit : nan;
}

}  // namespace

void add_linkage_functions(Functions& functions) {
    const std::string vectors = "vector geometry, Rodrigues' rotation";
    add(functions, "space_ram_length", space_ram_length,
        {length, length, length, length, length, length, angle, angle}, length, vectors);
    add(functions, "space_moment_arm", space_moment_arm,
        {length, length, length, length, length, length, angle, angle}, length, vectors);
    add(functions, "space_steer_at_length", space_steer_at_length,
        {length, length, length, length, length, length, length, angle}, angle, vectors);

    const std::string nearest = "vector geometry, least distance of two bars or of a bar and a box";
    add(functions, "room_from_box", least_from_box<&Closest::room>,
        {length, length, length, length, length, length, length, length, length, length, length, length,
         length, angle, angle, angle},
        length, nearest);
    add(functions, "room_from_box_steer", least_from_box<&Closest::steer>,
        {length, length, length, length, length, length, length, length, length, length, length, length,
         length, angle, angle, angle},
        angle, nearest);
    add(functions, "room_from_cylinder", least_from_cylinder<&Closest::room>,
        {length, length, length, length, length, length, length, length, length, length, length, length,
         length, length, angle, angle, angle},
        length, nearest);
    add(functions, "room_from_cylinder_steer", least_from_cylinder<&Closest::steer>,
        {length, length, length, length, length, length, length, length, length, length, length, length,
         length, length, angle, angle, angle},
        angle, nearest);

    const std::string four_bar = "plane geometry of a four-bar linkage";
    add(functions, "tie_bar_for_toe", tie_bar_for_toe, {length, length, angle, length, angle, angle}, length,
        four_bar);
    add(functions, "tied_steer", tied_steer_by_bar, {length, length, angle, length, angle, length, angle},
        angle, four_bar);

    const std::string nuts = "US Army TM 55-1520-240-23-1, lubricated threads; aircraft practice";
    using enum FlareNut;
    add(functions, "flare_torque_least_hose", flare_limit<hose, &FlareTorque::least>, {number}, torque, nuts);
    add(functions, "flare_torque_most_hose", flare_limit<hose, &FlareTorque::greatest>, {number}, torque,
        nuts);
    add(functions, "flare_torque_least_steel", flare_limit<steel_tube, &FlareTorque::least>, {number}, torque,
        nuts);
    add(functions, "flare_torque_most_steel", flare_limit<steel_tube, &FlareTorque::greatest>, {number},
        torque, nuts);
    add(functions, "flare_torque_least_aluminium", flare_limit<aluminium_tube, &FlareTorque::least>, {number},
        torque, nuts);
    add(functions, "flare_torque_most_aluminium", flare_limit<aluminium_tube, &FlareTorque::greatest>,
        {number}, torque, nuts);
}

}  // namespace hardover::rig::function_table
