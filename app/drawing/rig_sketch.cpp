// Where everything of a rig stands at a steering angle, before it is drawn.
#include "app/drawing/rig_sketch.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing {

using namespace rig_parts;

namespace {

constexpr double travel_slack = 0.0005;  // m, for rounding at the very end of the travel

RigPlan plan_without_drives(const rig::Boat& boat) {
    RigPlan plan;
    plan.helm = boat.helm;
    plan.bore = boat.bore;
    plan.rod = boat.rod;
    plan.balanced = boat.balanced;
    return plan;
}

Error cannot_draw(std::string what, std::string cure) {
    return {Error::Kind::bad_input, std::move(what), "rig sketch", std::move(cure)};
}

Result<StandingRam> standing(const PlannedDrive& drive, std::size_t number, double steer) {
    const PlannedRam& ram = drive.rams[number];
    const rig::RamTravel& travel = ram.mount.travel;
    StandingRam stands;
    stands.ram = &ram;
    stands.number = number;
    stands.length = rig::ram_length(ram.mount.linkage, steer, 0);
    const bool within = stands.length >= travel.closed - travel_slack &&
                        stands.length <= travel.closed + travel.stroke + travel_slack;
    if (!within) {
        return cannot_draw(std::string("the ") + (ram.port ? "port" : "starboard") +
                               " ram would be beyond its travel at this steering angle",
                           "draw it at an angle between both locks");
    }
    const Eigen::Vector3d offset(drive.offset, 0, 0);
    stands.anchor = ram.mount.linkage.anchor + offset;
    stands.pin = rig::pin_at(ram.mount.linkage, steer, 0) + offset;
    return stands;
}

Result<double> steer_of_drive(const RigPlan& plan, std::size_t drive, double steer) {
    if (drive == 0 || !plan.tie_bar) return steer;
    return rig::tied_steer(*plan.tie_bar, steer);
}

}  // namespace

namespace rig_parts {

double StandingRig::transom() const {
    double most = 0.1;
    for (const StandingRam& ram : rams) most = std::max(most, ram.anchor.y() + bracket_deep);
    return most;
}

double StandingRig::half_width() const {
    double most = 0;
    for (const PlannedDrive& drive : plan->drives) most = std::max(most, std::abs(drive.offset));
    for (const StandingRam& ram : rams) most = std::max(most, std::abs(ram.anchor.x()));
    return most + beyond_rams;
}

std::string StandingRig::length_text(double metres) const {
    const Unit inch = find_unit("in").value();
    return show(Quantity{metres, inch.dimension, 0}, inch, units);
}

std::string StandingRig::angle_text(double radians) const {
    const double degrees = radians * 180 / std::numbers::pi;
    if (std::abs(degrees) < 0.5) return "straight ahead";
    char text[40];
    std::snprintf(text, sizeof text, "%.0f° to %s", std::abs(degrees), degrees > 0 ? "starboard" : "port");
    return text;
}

std::string ram_name(const StandingRam& ram) {
    return ram.ram->port ? "Port ram" : "Starboard ram";
}

std::string ram_id(const StandingRam& ram) {
    return ram.ram->port ? "ram_port" : "ram_starboard";
}

std::string drive_id(const StandingRig& rig, std::size_t drive) {
    if (rig.plan->drives.size() == 1) return "drive";
    return drive == 0 ? "drive_port" : "drive_starboard";
}

std::vector<Point> strip(const Point& from, const Point& to, double half) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double x = length > 0 ? -(to.y - from.y) / length * half : 0;
    const double y = length > 0 ? (to.x - from.x) / length * half : half;
    return {{from.x + x, from.y + y}, {to.x + x, to.y + y}, {to.x - x, to.y - y}, {from.x - x, from.y - y}};
}

}  // namespace rig_parts

Result<RigPlan> plan_of(const rig::Boat& boat) {
    if (boat.mount != rig::Boat::Mount::sterndrive_external) {
        return cannot_draw("only rams beside a stern drive can be drawn", "");
    }
    const Result<rig::SteeredDrives> steered = rig::steered_drives(boat);
    if (!steered) return steered.error();
    const bool two = boat.drives == 2;
    RigPlan plan = plan_without_drives(boat);
    plan.drives.resize(two ? 2 : 1);
    if (two) {
        plan.drives[0].offset = -boat.drive_spacing / 2;
        plan.drives[1].offset = boat.drive_spacing / 2;
    }
    for (std::size_t i = 0; i < steered.value().rams.size(); ++i) {
        const std::size_t drive = steered.value().on_second[i] ? 1 : 0;
        plan.drives[drive].rams.push_back({steered.value().rams[i], i == 0});
    }
    if (steered.value().tie) {
        const double aft = -std::numbers::pi / 2;
        plan.tie_bar =
            rig::TieBar{boat.drive_spacing, boat.tie_arm, aft, boat.tie_arm, aft, steered.value().tie->bar};
    }
    return plan;
}

Result<RigSketch> rig_sketch(const RigPlan& plan, double steer, UnitSystem units) {
    if (plan.drives.empty() || plan.drives.size() > 2) {
        return cannot_draw("a rig is drawn with one drive or two", "");
    }
    StandingRig rig;
    rig.plan = &plan;
    rig.units = units;
    for (std::size_t i = 0; i < plan.drives.size(); ++i) {
        const Result<double> angle = steer_of_drive(plan, i, steer);
        if (!angle) return angle.error();
        rig.steer.push_back(angle.value());
        for (std::size_t ram = 0; ram < plan.drives[i].rams.size(); ++ram) {
            const Result<StandingRam> stands = standing(plan.drives[i], ram, angle.value());
            if (!stands) return stands.error();
            rig.rams.push_back(stands.value());
        }
    }
    return RigSketch{from_behind(rig), from_above(rig)};
}

}  // namespace hardover::drawing
