// Where everything of a rig stands at a steering angle and a trim, before it is drawn.
#include "app/drawing/rig_sketch.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing {

using namespace rig_parts;
using rig::Boat;

namespace {

constexpr double travel_slack = 0.0005;  // m, for rounding at the very end of the travel
constexpr double in_degrees = 180 / std::numbers::pi;

Error cannot_draw(std::string what, std::string cure) {
    return {Error::Kind::bad_input, std::move(what), "rig sketch", std::move(cure)};
}

Result<StandingRam> standing(const StandingRig& rig, std::size_t number) {
    const rig::SteeredDrives& steered = rig.plan->steered;
    StandingRam stands;
    stands.ram = &steered.rams[number];
    stands.drive = steered.on_second[number] ? 1 : 0;
    stands.port = number == 0;
    stands.alone = slides(*stands.ram) && steered.rams.size() == 1 && rig.drives.size() == 1;
    const StandingDrive& drive = rig.drives[stands.drive];
    stands.out = rig::rod_out(*stands.ram, drive.steer, drive.trim);
    const bool within = stands.out >= -travel_slack && stands.out <= stands.ram->travel.stroke + travel_slack;
    if (!within) {
        return cannot_draw("the " + std::string(stands.port ? "port" : "starboard") +
                               " ram would be beyond its travel at this steering angle",
                           "draw it at an angle between both locks");
    }
    const Eigen::Vector3d offset(drive.offset, 0, 0);
    stands.anchor = stands.ram->linkage.anchor + offset;
    stands.pin = rig::pin_at(stands.ram->linkage, drive.steer, drive.trim) + offset;
    return stands;
}

// The axes of a drive: a ram's on it, else those of the other drive's.
rig::SteeringArm arm_of(const rig::SteeredDrives& steered, std::size_t drive) {
    for (std::size_t i = 0; i < steered.rams.size(); ++i)
        if (steered.on_second[i] == (drive == 1)) return steered.rams[i].linkage;
    return steered.rams.front().linkage;
}

}  // namespace

namespace rig_parts {

std::string StandingRam::name() const {
    const char* what = slides(*ram) ? "cylinder" : "ram";
    if (alone) return "Cylinder";
    return std::string(port ? "Port " : "Starboard ") + what;
}

std::string StandingRam::id() const {
    return port ? "ram_port" : "ram_starboard";
}

std::string StandingRam::marked() const {
    if (alone) return "";
    return ", marked " + letter() + " and " + (port ? "hatched" : "plain");
}

Eigen::Vector3d StandingDrive::at(double x, double y, double z) const {
    return rig::carried_by_drive(arm, {x, y, z}, steer, trim) + Eigen::Vector3d(offset, 0, 0);
}

double StandingRig::transom() const {
    if (mount() == Boat::Mount::outboard_centre) return rams.front().anchor.y() - 0.10;
    if (mount() == Boat::Mount::inboard_tiller) return -0.62;
    double most = 0.1;
    for (const StandingRam& ram : rams) most = std::max(most, ram.anchor.y() + bracket_deep);
    return most;
}

double StandingRig::front() const {
    double most = transom() + transom_thick;
    if (mount() == Boat::Mount::sterndrive_external) return most;
    for (const StandingRam& ram : rams) most = std::max({most, ram.anchor.y() + 0.06, 0.12});
    return most;
}

double StandingRig::half_width() const {
    double most = 0;
    for (const StandingDrive& drive : drives) most = std::max(most, std::abs(drive.offset));
    for (const StandingRam& ram : rams) {
        const double rod = slides(*ram.ram) ? (ram.ram->travel.closed + ram.ram->travel.stroke) / 2 : 0;
        most = std::max(most, std::abs(ram.anchor.x()) + rod);
    }
    return most + (mount() == Boat::Mount::sterndrive_external ? beyond_rams : 0.2);
}

std::string StandingRig::length_text(double metres) const {
    const Unit inch = find_unit("in").value();
    return show(Quantity{metres, inch.dimension, 0}, inch, units);
}

std::string StandingRig::pressure_text(double pascal) const {
    const Unit psi = find_unit("psi").value();
    // A line that is all but empty of pressure needs no third figure.
    const double rounded = std::abs(pascal) < 3500 ? 0 : pascal;
    return show(Quantity{rounded, psi.dimension, 0}, psi, units, 2);
}

std::string StandingRig::drive_name(std::size_t drive) const {
    const char* what = mount() == Boat::Mount::sterndrive_external ? "drive"
                       : mount() == Boat::Mount::outboard_centre   ? "outboard"
                                                                   : "rudder";
    if (two_drives()) return std::string(drive == 0 ? "Port " : "Starboard ") + what;
    std::string name = what;
    name.front() = static_cast<char>(name.front() - 'a' + 'A');
    return name;
}

std::string StandingRig::drive_id(std::size_t drive) const {
    if (!two_drives()) return "drive";
    return drive == 0 ? "drive_port" : "drive_starboard";
}

Point seen(const Eigen::Vector3d& point, View view) {
    switch (view) {
        case View::above:
            return {point.x(), point.y()};
        case View::behind:
            return {point.x(), point.z()};
        case View::side:
            break;
    }
    return {point.y(), point.z()};
}

std::vector<Point> strip(const Point& from, const Point& to, double half) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double x = length > 0 ? -(to.y - from.y) / length * half : 0;
    const double y = length > 0 ? (to.x - from.x) / length * half : half;
    return {{from.x + x, from.y + y}, {to.x + x, to.y + y}, {to.x - x, to.y - y}, {from.x - x, from.y - y}};
}

Point along(const Point& from, const Point& to, double distance) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double share = length > 0 ? distance / length : 0;
    return {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
}

}  // namespace rig_parts

std::string steer_text(double radians) {
    const double degrees = radians * in_degrees;
    if (std::abs(degrees) < 0.5) return "straight ahead";
    char text[40];
    std::snprintf(text, sizeof text, "%.0f° to %s", std::abs(degrees), degrees > 0 ? "starboard" : "port");
    return text;
}

std::string trim_text(double radians) {
    const double degrees = radians * in_degrees;
    if (std::abs(degrees) < 0.5) return "level";
    char text[40];
    std::snprintf(text, sizeof text, "%.0f° %s", std::abs(degrees), degrees > 0 ? "up" : "down");
    return text;
}

bool trims(const Boat& boat) {
    return boat.mount != Boat::Mount::inboard_tiller;
}

Result<RigPlan> plan_of(const Boat& boat) {
    const Result<rig::BoatAtWork> at_work = rig::BoatAtWork::of(boat, {});
    if (!at_work) return at_work.error();
    return plan_of(at_work.value());
}

RigPlan plan_of(const rig::BoatAtWork& at_work) {
    RigPlan plan{at_work.boat(), at_work.drives(), at_work.port_lock(), at_work.starboard_lock(), false, 1};
    plan.second_ram_crossed = at_work.faults().rams_swapped >= 0.5 && plan.steered.rams.size() > 1;
    plan.reservoir_level = at_work.faults().reservoir_level;
    return plan;
}

Result<RigSketch> rig_sketch(const RigPlan& plan, const Pose& pose, UnitSystem units) {
    if (plan.steered.rams.empty()) return cannot_draw("a rig is drawn with one ram or two", "");
    StandingRig rig;
    rig.plan = &plan;
    rig.pose = &pose;
    rig.units = units;
    const bool two = plan.boat.drives == 2;
    const double trim = trims(plan.boat) ? pose.trim : 0;
    for (std::size_t i = 0; i < (two ? 2U : 1U); ++i) {
        const double steer = i == 0 ? pose.steer : rig::second_steer(plan.steered, pose.steer, trim);
        if (!std::isfinite(steer))
            return cannot_draw("the tie bar does not reach at this steering angle",
                               "draw it at an angle between both locks");
        const double offset = two ? plan.boat.drive_spacing * (i == 0 ? -0.5 : 0.5) : 0;
        rig.drives.push_back({arm_of(plan.steered, i), offset, steer, trim});
    }
    for (std::size_t i = 0; i < plan.steered.rams.size(); ++i) {
        const Result<StandingRam> stands = standing(rig, i);
        if (!stands) return stands.error();
        rig.rams.push_back(stands.value());
    }
    return RigSketch{from_behind(rig), from_above(rig), from_side(rig)};
}

}  // namespace hardover::drawing
