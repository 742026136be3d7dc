// The rig from above, bow up the page: the true lengths and angles of rams and drives are seen here.
#include <algorithm>
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

constexpr double hull_drawn = 0.56;  // of the boat forward of the transom
constexpr double helm_forward = 0.40;
constexpr double valve_forward = 0.25;
constexpr double starboard_run = 0.09;  // of the hoses along the transom, forward of it
constexpr double port_run = 0.14;
constexpr double drive_long = 0.42;
constexpr double drive_half = 0.065;

Point flat(const Eigen::Vector3d& point) {
    return {point.x(), point.y()};
}

// A point of a drive, given straight ahead from its steering axis, at its steering angle.
Point on_drive(const StandingRig& rig, std::size_t drive, double x, double y) {
    const double angle = rig.steer[drive];
    return {rig.plan->drives[drive].offset + x * std::cos(angle) - y * std::sin(angle),
            x * std::sin(angle) + y * std::cos(angle)};
}

Point along(const Point& from, const Point& to, double distance) {
    const double length = std::hypot(to.x - from.x, to.y - from.y);
    const double share = length > 0 ? distance / length : 0;
    return {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
}

void draw_hull(Pencil& pencil, const StandingRig& rig) {
    const double half = rig.half_width();
    const double y = rig.transom();
    pencil.part("transom", "hull", "Transom seen from above, the bow up the page");
    pencil.area({{-half, y}, {half, y}, {half, y + transom_thick}, {-half, y + transom_thick}}, Pen::normal,
                Fill::light);
    for (const double side : {-1.0, 1.0}) {
        pencil.line({{side * half, y + transom_thick}, {side * half, y + hull_drawn}}, Pen::dashed);
    }
    pencil.line({{0, -drive_long - 0.10}, {0, y + hull_drawn}}, Pen::chain);
    pencil.draw(Text{{0, y + hull_drawn + 0.06}, "bow"});
}

void draw_drive(Pencil& pencil, const StandingRig& rig, std::size_t drive) {
    const auto at = [&](double x, double y) { return on_drive(rig, drive, x, y); };
    const bool one = rig.plan->drives.size() == 1;
    pencil.part(drive_id(rig, drive), "drive",
                std::string(one          ? "Drive"
                            : drive == 0 ? "Port drive"
                                         : "Starboard drive") +
                    ", " + rig.angle_text(rig.steer[drive]) + "; the ring is its steering axis");
    const double x = rig.plan->drives[drive].offset;
    pencil.area({{x - 0.1, rig.transom()}, {x + 0.1, rig.transom()}, {x + 0.045, 0}, {x - 0.045, 0}},
                Pen::thin, Fill::paper);
    pencil.area({at(-drive_half, 0.03), at(drive_half, 0.03), at(drive_half, -0.24), at(0.035, -drive_long),
                 at(-0.035, -drive_long), at(-drive_half, -0.24)},
                Pen::normal, Fill::paper);
    pencil.area({at(-0.17, -drive_long), at(0.17, -drive_long), at(0.17, -drive_long - 0.03),
                 at(-0.17, -drive_long - 0.03)},
                Pen::thin, Fill::light);
    for (const PlannedRam& ram : rig.plan->drives[drive].rams) {
        const Eigen::Vector3d& pin = ram.mount.linkage.pin;
        pencil.area(strip(at(0, 0), at(pin.x(), pin.y()), 0.018), Pen::normal, Fill::light);
    }
    pencil.draw(Circle{at(0, 0), 0.028, Pen::normal, Fill::paper});
    pencil.draw(Circle{at(0, 0), 0.006, Pen::normal, Fill::dark});
}

void draw_tie_bar(Pencil& pencil, const StandingRig& rig) {
    if (!rig.plan->tie_bar) return;
    const rig::TieBar& tie = *rig.plan->tie_bar;
    const auto end = [&](std::size_t drive, double arm, double angle) {
        const double turned = angle + rig.steer[drive];
        return Point{rig.plan->drives[drive].offset + arm * std::cos(turned), arm * std::sin(turned)};
    };
    const Point one = end(0, tie.arm_one, tie.angle_one);
    const Point two = end(1, tie.arm_two, tie.angle_two);
    pencil.part("tie_bar", "drive", "Tie bar between the two drives");
    pencil.area(strip(one, two, 0.012), Pen::normal, Fill::paper);
    for (const Point& point : {one, two}) pencil.draw(Circle{point, eye, Pen::normal, Fill::paper});
    pencil.draw(DimensionLine{one, two, -0.06, "pin to pin", rig.length_text(tie.bar)});
}

void draw_ram(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = flat(ram.anchor);
    const Point pin = flat(ram.pin);
    const double tube = ram.ram->mount.travel.closed - 2 * end_fitting;
    const Point tube_start = along(anchor, pin, end_fitting);
    const Point tube_end = along(anchor, pin, end_fitting + tube);
    pencil.part(ram_id(ram), "rams",
                ram_name(ram) + ", marked " + ram.letter() + " and " + (ram.ram->port ? "hatched" : "plain"));
    const double rod = rig.plan->rod / 2;
    pencil.area(strip(rig.plan->balanced ? anchor : tube_end, pin, rod), Pen::thin, Fill::paper);
    pencil.area(strip(anchor, tube_start, rod * 1.4), Pen::thin, Fill::light);
    pencil.area(strip(tube_start, tube_end, rig.plan->bore / 2 + wall), Pen::normal, Fill::paper);
    if (ram.ram->port) {
        pencil.area(strip(tube_start, tube_end, rig.plan->bore / 2 + wall), Pen::normal, Fill::hatched);
    }
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    // Port rams lie to the left of the way aft, seen from above with the bow up: outboard is the other side.
    const double outboard = ram.ram->port ? -0.15 : 0.15;
    pencil.draw(DimensionLine{anchor, pin, outboard, "pin to pin", rig.length_text(ram.length)});
    pencil.mark({anchor.x + ram.side() * letter_off, anchor.y - 0.10}, ram.letter());

    pencil.part("bracket_" + std::string(ram.ram->port ? "port" : "starboard"), "brackets",
                std::string(ram.ram->port ? "Port" : "Starboard") + " bracket on the transom, " +
                    rig.length_text(std::abs(ram.anchor.x())) + " from the centre line");
    const double y = rig.transom();
    pencil.area({{anchor.x - 0.03, y},
                 {anchor.x + 0.03, y},
                 {anchor.x + 0.012, anchor.y},
                 {anchor.x - 0.012, anchor.y}},
                Pen::normal, Fill::dark);
    pencil.draw(Circle{anchor, eye, Pen::normal, Fill::paper});
}

void draw_helm(Pencil& pencil, const StandingRig& rig, const Point& at) {
    const bool manual = rig.plan->helm == rig::Boat::Helm::manual_pump;
    pencil.part("helm", "wheel_and_helm", manual ? "Helm pump with its wheel" : "Helm with its wheel");
    pencil.draw(Circle{at, 0.075, Pen::normal, Fill::paper});
    pencil.line({{at.x - 0.075, at.y}, {at.x + 0.075, at.y}}, Pen::thin);
    pencil.line({{at.x, at.y - 0.075}, {at.x, at.y + 0.075}}, Pen::thin);
    pencil.draw(Circle{at, 0.03, Pen::normal, Fill::paper});
    pencil.draw(Text{{at.x, at.y + 0.12}, "helm"});
}

void draw_reservoir(Pencil& pencil, const Point& at) {
    pencil.part("reservoir", "oil", "Reservoir");
    const auto tank = [&](double top) {
        return std::vector<Point>{{at.x - 0.07, at.y - 0.07},
                                  {at.x + 0.07, at.y - 0.07},
                                  {at.x + 0.07, at.y + top},
                                  {at.x - 0.07, at.y + top}};
    };
    pencil.area(tank(0.03), Pen::none, Fill::light);
    pencil.area(tank(0.07), Pen::normal, Fill::none);
    pencil.draw(Text{{at.x, at.y + 0.12}, "reservoir"});
}

// What feeds the rams of a power-assist valve worked by a cable.
void draw_power_assist(Pencil& pencil, const Point& helm, const Point& tank, const Point& valve) {
    const Point pump{-0.15, tank.y};
    pencil.part("pump", "pump_and_drive_belt", "Engine-driven pump with its line to the control valve");
    pencil.line({{tank.x + 0.07, pump.y}, pump, {pump.x, valve.y + 0.02}, {valve.x, valve.y + 0.02}},
                Pen::thin);
    pencil.draw(Circle{pump, 0.045, Pen::normal, Fill::paper});
    pencil.draw(Text{{pump.x, pump.y + 0.12}, "pump"});
    pencil.part("return_line", "hoses_and_fittings", "Return line from the control valve to the reservoir");
    pencil.line({{valve.x, valve.y - 0.02}, {tank.x, valve.y - 0.02}, {tank.x, tank.y - 0.07}}, Pen::thin);
    pencil.part("cable", "cable", "Cable from the helm to the control valve");
    pencil.line({{helm.x - 0.075, helm.y}, {valve.x, helm.y}, valve}, Pen::chain);
    pencil.part("valve", "control_valve", "Control valve");
    pencil.area(strip({valve.x - 0.08, valve.y}, {valve.x + 0.08, valve.y}, 0.045), Pen::normal, Fill::paper);
    pencil.draw(Text{{valve.x + 0.1, valve.y}, "valve", Align::start});
}

// Helm, reservoir and what lies between as symbols. Gives where the two lines to the rams begin: the
// starboard line first.
std::pair<Point, Point> draw_supply(Pencil& pencil, const StandingRig& rig) {
    const double aside = rig.half_width() * 0.6;
    const Point helm{aside, rig.transom() + helm_forward};
    const Point tank{-aside, helm.y};
    draw_helm(pencil, rig, helm);
    draw_reservoir(pencil, tank);
    if (rig.plan->helm == rig::Boat::Helm::manual_pump) {
        pencil.part("suction", "hoses_and_fittings", "Line from the reservoir to the helm pump");
        pencil.line({{tank.x + 0.07, tank.y}, {helm.x - 0.075, helm.y}}, Pen::thin);
        return {{helm.x + 0.04, helm.y - 0.065}, {helm.x - 0.04, helm.y - 0.065}};
    }
    const Point valve{0, rig.transom() + valve_forward};
    draw_power_assist(pencil, helm, tank, valve);
    return {{0.04, valve.y - 0.045}, {-0.04, valve.y - 0.045}};
}

// One of the two lines, from the helm or valve along the transom to a port of every ram. The line that steers
// to starboard feeds the port ram's bracket end and the starboard ram's rod end; the other line the other
// ends.
void draw_line(Pencil& pencil, const StandingRig& rig, const Point& start, bool to_starboard) {
    const double run = rig.transom() + (to_starboard ? starboard_run : port_run);
    const Pen pen = to_starboard ? Pen::normal : Pen::dashed;
    double least = start.x;
    double most = start.x;
    for (const StandingRam& ram : rig.rams) {
        const Point anchor = flat(ram.anchor);
        const Point pin = flat(ram.pin);
        const bool bracket_end = to_starboard == ram.ram->port;
        const double tube = ram.ram->mount.travel.closed - 2 * end_fitting;
        const Point port = along(anchor, pin, end_fitting + (bracket_end ? 0.02 : tube - 0.02));
        const double x = anchor.x - ram.side() * (bracket_end ? 0.07 : 0.12);  // inboard
        const double tube_side = -ram.side() * (rig.plan->bore / 2 + wall);
        pencil.line({{x, run}, {x, port.y}, {port.x + tube_side, port.y}}, pen);
        least = std::min(least, x);
        most = std::max(most, x);
    }
    pencil.line({start, {start.x, run}}, pen);
    if (most > least) pencil.line({{least, run}, {most, run}}, pen);
}

void draw_scale(Pencil& pencil, const StandingRig& rig) {
    constexpr double foot = 0.3048;  // m
    const Point left{-rig.half_width(), -drive_long};
    pencil.part("scale", "hull", "Scale");
    pencil.draw(DimensionLine{left, {left.x + foot, left.y}, 0, "the bar is", rig.length_text(foot)});
}

}  // namespace

Drawing from_above(const StandingRig& rig) {
    Pencil pencil("From above, drive " + rig.angle_text(rig.steer.front()));
    draw_hull(pencil, rig);
    for (std::size_t drive = 0; drive < rig.plan->drives.size(); ++drive) draw_drive(pencil, rig, drive);
    draw_tie_bar(pencil, rig);
    const auto [starboard, port] = draw_supply(pencil, rig);
    pencil.part("line_starboard", "hoses_and_fittings", "Line that steers to starboard, drawn full");
    draw_line(pencil, rig, starboard, true);
    pencil.part("line_port", "hoses_and_fittings", "Line that steers to port, drawn dashed");
    draw_line(pencil, rig, port, false);
    for (const StandingRam& ram : rig.rams) draw_ram(pencil, rig, ram);
    draw_scale(pencil, rig);
    return std::move(pencil).drawing();
}

}  // namespace hardover::drawing::rig_parts
