// Helm, wheel, reservoir, what feeds the rams, and the two lines to them, from above. All symbols; only which
// line ends at which port, how full the reservoir is, how far the wheel is turned and how hard the oil
// presses are true.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/drawing/rig_sketch_parts.hpp"
#include "app/drawing/wheel_words.hpp"

namespace hardover::drawing::rig_parts {

namespace {

using rig::Boat;

constexpr double helm_forward = 0.46;  // of the front of the steering gear
constexpr double valve_forward = 0.30;
constexpr double starboard_run = 0.09;  // of the lines athwart
constexpr double port_run = 0.15;
constexpr double wheel = 0.085;
constexpr double heaviest = 4;  // pen weights of a line at the relief pressure more than of an idle one

struct Places {
    Point helm, second_helm, tank, valve;
};

Places places_of(const StandingRig& rig) {
    const double half = rig.half_width();
    const double y = rig.front() + helm_forward;
    return {{half * 0.42, y}, {-half * 0.12, y}, {-half * 0.66, y}, {0, rig.front() + valve_forward}};
}

bool manual(const StandingRig& rig) {
    return rig.boat().helm == Boat::Helm::manual_pump;
}

// A wheel as the one who steers sees it: clockwise is to starboard. One spoke is marked.
void draw_wheel(Pencil& pencil, const Point& at, double turned) {
    pencil.draw(Circle{at, wheel, Pen::normal, Fill::paper});
    for (int spoke = 0; spoke < 3; ++spoke) {
        const double angle = std::numbers::pi / 2 - turned + spoke * 2 * std::numbers::pi / 3;
        const Point rim{at.x + wheel * std::cos(angle), at.y + wheel * std::sin(angle)};
        pencil.line({at, rim}, Pen::normal);
        if (spoke == 0) pencil.draw(Circle{rim, 0.014, Pen::thin, Fill::dark});
    }
    pencil.draw(Circle{at, 0.024, Pen::normal, Fill::paper});
}

std::string wheel_words(double turned) {
    const std::string turns = turns_words(turned);
    return turns.empty() ? "" : ", turned " + turns;
}

void draw_helms(Pencil& pencil, const StandingRig& rig, const Places& places) {
    const std::string what = manual(rig) ? "elm pump with its wheel" : "elm with its wheel";
    pencil.part("helm", "wheel_and_helm", "H" + what + wheel_words(rig.pose->wheel));
    draw_wheel(pencil, places.helm, rig.pose->wheel);
    pencil.draw(Text{{places.helm.x, places.helm.y + wheel + 0.05}, "helm"});
    if (rig.boat().helms < 2) return;
    pencil.part("second_helm", "wheel_and_helm", "Second h" + what);
    draw_wheel(pencil, places.second_helm, 0);
    pencil.draw(Text{{places.second_helm.x, places.second_helm.y + wheel + 0.05}, "helm 2"});
}

void draw_reservoir(Pencil& pencil, const StandingRig& rig, const Point& at) {
    const double level = rig.plan->reservoir_level;
    const char* how = level > 0.95    ? "oil at the full mark"
                      : level > 0.05  ? "oil below the full mark"
                      : level > -0.95 ? "oil at or below the low mark"
                                      : "no oil to be seen";
    pencil.part("reservoir", "oil", std::string("Reservoir, ") + how);
    const auto tank = [&](double top) {
        return std::vector<Point>{{at.x - 0.075, at.y - 0.08},
                                  {at.x + 0.075, at.y - 0.08},
                                  {at.x + 0.075, at.y + top},
                                  {at.x - 0.075, at.y + top}};
    };
    const auto height = [](double mark) { return -0.08 + 0.13 * std::clamp((mark + 1) / 2, 0.0, 1.0); };
    if (level > -1) pencil.area(tank(height(level)), Pen::thin, Fill::light);
    for (const double mark : {0.0, 1.0})
        pencil.line({{at.x + 0.035, at.y + height(mark)}, {at.x + 0.075, at.y + height(mark)}}, Pen::thin);
    pencil.area(tank(0.08), Pen::normal, Fill::none);
    pencil.draw(Text{{at.x, at.y + wheel + 0.05}, "reservoir"});
}

// What feeds the rams of a power-assist valve worked by a cable.
void draw_power_assist(Pencil& pencil, const Places& places) {
    const auto& [helm, second, tank, valve] = places;
    const Point pump{(tank.x + helm.x) / 2 - 0.05, tank.y};
    pencil.part("pump", "pump_and_drive_belt", "Engine-driven pump with its line to the control valve");
    pencil.line({{tank.x + 0.075, pump.y}, pump, {pump.x, valve.y + 0.02}, {valve.x, valve.y + 0.02}},
                Pen::thin);
    pencil.draw(Circle{pump, 0.05, Pen::normal, Fill::paper});
    pencil.area({{pump.x - 0.02, pump.y - 0.01}, {pump.x + 0.02, pump.y - 0.01}, {pump.x, pump.y - 0.05}},
                Pen::thin, Fill::dark);
    pencil.draw(Text{{pump.x, pump.y + wheel + 0.05}, "pump"});
    pencil.part("return_line", "hoses_and_fittings", "Return line from the control valve to the reservoir");
    pencil.line({{valve.x, valve.y - 0.02}, {tank.x, valve.y - 0.02}, {tank.x, tank.y - 0.08}}, Pen::thin);
    pencil.part("cable", "cable", "Cable from the helm to the control valve");
    pencil.line({{helm.x, helm.y - wheel}, {helm.x, valve.y}, {valve.x + 0.08, valve.y}}, Pen::chain, 1.5);
    pencil.part("valve", "control_valve", "Control valve");
    pencil.area(strip({valve.x - 0.08, valve.y}, {valve.x + 0.08, valve.y}, 0.045), Pen::normal, Fill::paper);
    pencil.draw(Text{valve, "valve"});
}

void draw_hand_helm(Pencil& pencil, const StandingRig& rig, const Places& places) {
    pencil.part("suction", "hoses_and_fittings", "Line from the reservoir to the helm pump");
    pencil.line({{places.tank.x + 0.075, places.tank.y - 0.05}, {places.helm.x, places.tank.y - 0.05}},
                Pen::thin);
    if (rig.boat().assist != Boat::Assist::none) {
        const bool electric = rig.boat().assist == Boat::Assist::electric_pump;
        const Point at{places.helm.x + 0.22, places.helm.y};
        pencil.part(
            "assist", "pump_and_drive_belt",
            electric ? "Electric pump that helps the hand" : "Engine-driven pump that helps the hand");
        pencil.line({{places.helm.x, at.y}, at}, Pen::thin);
        pencil.draw(Circle{at, 0.05, Pen::normal, Fill::paper});
        pencil.draw(Text{at, electric ? "M" : "E"});
        pencil.draw(Text{{at.x, at.y - 0.085}, "assist"});
    }
}

// Where one of the two lines ends on a ram. The line that steers to starboard feeds the port ram's bracket
// end and the starboard ram's rod end, and of a sliding cylinder the end on the port side; the other line the
// others.
struct Port {
    Point drop;  // where it leaves the run athwart, y not yet set
    Point at;
};
Port port_of(const StandingRig& rig, const StandingRam& ram, bool to_starboard) {
    const bool crossed = rig.plan->second_ram_crossed && !ram.port;
    const bool starboard_line = to_starboard != crossed;
    const double tube_side = rig.boat().bore / 2 + wall;
    if (slides(*ram.ram)) {
        const double middle = ram.anchor.x() + ram.ram->travel.stroke / 2 - ram.out;
        const double end = ram.ram->travel.closed / 2 - 0.03;
        const double x = middle + (starboard_line ? -end : end);
        return {{x, 0}, {x, ram.anchor.y() + tube_side}};
    }
    const Point anchor = seen(ram.anchor, View::above), pin = seen(ram.pin, View::above);
    const bool bracket_end = starboard_line == ram.port;
    const double tube = ram.ram->travel.closed - 2 * end_fitting;
    const Point on_ram = along(anchor, pin, end_fitting + (bracket_end ? 0.02 : tube - 0.02));
    if (std::abs(pin.x - anchor.x) > std::abs(pin.y - anchor.y))
        return {{on_ram.x, 0}, {on_ram.x, on_ram.y + tube_side}};
    const double x = anchor.x - ram.side() * (bracket_end ? 0.07 : 0.12);  // inboard
    return {{x, on_ram.y}, {on_ram.x - ram.side() * tube_side, on_ram.y}};
}

// An arrow head that points down the page or up.
void draw_arrow(Pencil& pencil, const Point& at, bool down) {
    const double tip = down ? -0.03 : 0.03;
    pencil.area({{at.x - 0.02, at.y - tip}, {at.x + 0.02, at.y - tip}, {at.x, at.y + tip}}, Pen::thin,
                Fill::dark);
}

std::string line_words(const StandingRig& rig, bool to_starboard) {
    std::string words =
        to_starboard ? "Line that steers to starboard, drawn full" : "Line that steers to port, drawn dashed";
    if (rig.plan->second_ram_crossed) words += "; it sits on the wrong port of the starboard ram";
    if (!rig.pose->pressure) return words;
    const rig::Sides& lines = rig.pose->pressure->lines;
    return words + ", " + rig.pressure_text(to_starboard ? lines.starboard : lines.port);
}

void draw_line(Pencil& pencil, const StandingRig& rig, const std::vector<Point>& starts, bool to_starboard) {
    pencil.part(to_starboard ? "line_starboard" : "line_port", "hoses_and_fittings",
                line_words(rig, to_starboard));
    const std::optional<LinePressures>& pressure = rig.pose->pressure;
    double weight = 1;
    if (pressure) {
        const double here = to_starboard ? pressure->lines.starboard : pressure->lines.port;
        weight = 1.5 + heaviest * std::clamp(here / rig.boat().relief_pressure, 0.0, 1.0);
    }
    const double run = rig.front() + (to_starboard ? starboard_run : port_run);
    const Pen pen = to_starboard ? Pen::normal : Pen::dashed;
    pencil.tone(to_starboard ? Tone::starboard : Tone::port);
    double least = starts.front().x, most = least;
    std::vector<Point> tees;
    for (const StandingRam& ram : rig.rams) {
        Port port = port_of(rig, ram, to_starboard);
        const Point tee{port.drop.x, run};
        if (port.drop.y == 0) {
            pencil.line({tee, port.at}, pen, weight);
        } else {
            pencil.line({tee, port.drop, port.at}, pen, weight);
        }
        tees.push_back(tee);
        least = std::min(least, tee.x);
        most = std::max(most, tee.x);
    }
    for (const Point& start : starts) {
        pencil.line({start, {start.x, run}}, pen, weight);
        tees.push_back({start.x, run});
        least = std::min(least, start.x);
        most = std::max(most, start.x);
    }
    if (most > least) pencil.line({{least, run}, {most, run}}, pen, weight);
    for (const Point& tee : tees) {
        if (tee.x > least && tee.x < most) pencil.draw(Circle{tee, 0.010, Pen::thin, Fill::dark});
    }
    if (pressure) {
        const double here = to_starboard ? pressure->lines.starboard : pressure->lines.port;
        const Point start = starts.front();
        const double y = (start.y + rig.front() + port_run) / 2;
        const bool out = (pressure->way == rig::Way::to_starboard) == to_starboard;
        if (pressure->way != rig::Way::held) draw_arrow(pencil, {start.x, y}, out);
        pencil.draw(Text{{start.x + (to_starboard ? 0.035 : -0.035), y},
                         (to_starboard ? "S " : "P ") + rig.pressure_text(here),
                         to_starboard ? Align::start : Align::end,
                         true});
    }
    pencil.tone(Tone::plain);
}

void draw_pilot(Pencil& pencil, const StandingRig& rig) {
    if (!rig.boat().autopilot) return;
    const Point at{-rig.half_width() * 0.4, rig.front() + 0.27};
    pencil.part("pilot", "pilot", "Autopilot pump, teed into both lines");
    pencil.line({{at.x - 0.03, at.y}, {at.x - 0.03, rig.front() + starboard_run}}, Pen::thin);
    pencil.line({{at.x + 0.03, at.y}, {at.x + 0.03, rig.front() + port_run}}, Pen::thin);
    pencil.area(strip({at.x - 0.07, at.y}, {at.x + 0.07, at.y}, 0.04), Pen::normal, Fill::paper);
    pencil.draw(Text{at, "pilot"});
}

}  // namespace

void draw_supply(Pencil& pencil, const StandingRig& rig) {
    const Places places = places_of(rig);
    std::vector<Point> starboard, port;
    const auto begin = [&](const Point& at, double below, double apart) {
        starboard.push_back({at.x + apart, at.y - below});
        port.push_back({at.x - apart, at.y - below});
    };
    if (manual(rig)) {
        draw_hand_helm(pencil, rig, places);
        begin(places.helm, wheel, 0.035);
        if (rig.boat().helms > 1) begin(places.second_helm, wheel, 0.035);
    } else {
        draw_power_assist(pencil, places);
        begin(places.valve, 0.045, 0.045);
    }
    draw_line(pencil, rig, starboard, true);
    draw_line(pencil, rig, port, false);
    draw_pilot(pencil, rig);
    draw_reservoir(pencil, rig, places.tank);
    draw_helms(pencil, rig, places);
}

}  // namespace hardover::drawing::rig_parts
