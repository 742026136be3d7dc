// The rig as it is seen from astern, port on the left: where brackets and pins stand across the boat.
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

using rig::Boat;

// Heights above the rams' brackets, m; the hull's are symbols.
constexpr double rail = 0.30;
constexpr double keel_line = -0.92;  // how far down the centre line is drawn

void draw_hull(Pencil& pencil, const StandingRig& rig) {
    const double half = rig.half_width();
    const bool inboard = rig.mount() == Boat::Mount::inboard_tiller;
    pencil.part("transom", "hull",
                inboard ? "Hull at the rudder, seen from astern, port on the left"
                        : "Transom seen from astern, port on the left");
    const double chine = inboard ? -0.08 : -0.28, keel = inboard ? -0.20 : -0.40;
    std::vector<Point> hull{
        {-half, rail}, {half, rail}, {half * 0.94, chine}, {0, keel}, {-half * 0.94, chine}};
    if (rig.mount() == Boat::Mount::outboard_centre) {
        // Cut down where the outboards hang.
        const double cut = half - 0.12;
        hull = {{-half, rail}, {-cut - 0.04, rail},  {-cut, -0.07}, {cut, -0.07},         {cut + 0.04, rail},
                {half, rail},  {half * 0.94, chine}, {0, keel},     {-half * 0.94, chine}};
    }
    pencil.area(hull, Pen::normal, Fill::light);
    pencil.tone(Tone::faint);
    pencil.line({{0, rail + 0.1}, {0, keel_line}}, Pen::chain);
    pencil.tone(Tone::plain);
}

std::string side_words(const StandingRam& ram) {
    return ram.port ? "port" : "starboard";
}

void draw_letter(Pencil& pencil, const StandingRam& ram, const Point& at) {
    if (ram.alone) return;
    pencil.tone(ram.tone());
    pencil.mark(at, ram.letter());
    pencil.tone(Tone::plain);
}

void hatch(Pencil& pencil, const StandingRam& ram, const std::vector<Point>& area) {
    if (!ram.hatched()) return;
    pencil.tone(Tone::port);
    pencil.area(area, Pen::normal, Fill::hatched);
    pencil.tone(Tone::plain);
}

// Beside a stern drive a ram is seen end on.
void draw_end_on(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = seen(ram.anchor, View::behind), pin = seen(ram.pin, View::behind);
    const double tube = rig.boat().bore / 2 + wall;
    pencil.part(ram.id(), "rams", ram.name() + ram.marked() + ", seen end on");
    pencil.area(strip(anchor, pin, tube), Pen::thin, Fill::paper);
    pencil.draw(Circle{anchor, tube, Pen::normal, Fill::paper});
    if (ram.hatched()) {
        pencil.tone(Tone::port);
        pencil.draw(Circle{anchor, tube, Pen::normal, Fill::hatched});
        pencil.tone(Tone::plain);
    }
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    draw_letter(pencil, ram, {anchor.x + ram.side() * letter_off, anchor.y});
    pencil.part("bracket_" + side_words(ram), "brackets",
                (ram.port ? "Port" : "Starboard") + std::string(" bracket"));
    pencil.area({{anchor.x - 0.03, anchor.y + 0.045},
                 {anchor.x + 0.03, anchor.y + 0.045},
                 {anchor.x + 0.03, anchor.y + 0.02},
                 {anchor.x - 0.03, anchor.y + 0.02}},
                Pen::normal, Fill::dark);
}

// At a tiller a ram lies across the boat.
void draw_athwart(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = seen(ram.anchor, View::behind), pin = seen(ram.pin, View::behind);
    const double tube = ram.ram->travel.closed - 2 * end_fitting;
    const Point from = along(anchor, pin, end_fitting), to = along(anchor, pin, end_fitting + tube);
    const double half = rig.boat().bore / 2 + wall;
    pencil.part(ram.id(), "rams", ram.name() + ram.marked());
    pencil.area(strip(anchor, pin, rig.boat().rod / 2), Pen::thin, Fill::paper);
    pencil.area(strip(from, to, half), Pen::normal, Fill::paper);
    hatch(pencil, ram, strip(from, to, half));
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    draw_letter(pencil, ram, {anchor.x + ram.side() * 0.10, anchor.y + 0.02});
    pencil.part("bracket_" + side_words(ram), "brackets",
                (ram.port ? "Port" : "Starboard") + std::string(" bracket"));
    pencil.area({{anchor.x - 0.025, anchor.y - 0.05},
                 {anchor.x + 0.025, anchor.y - 0.05},
                 {anchor.x + 0.025, anchor.y + 0.03},
                 {anchor.x - 0.025, anchor.y + 0.03}},
                Pen::normal, Fill::dark);
}

void draw_sliding(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const double half = ram.ram->travel.closed / 2, stroke = ram.ram->travel.stroke;
    const double middle = ram.anchor.x() + stroke / 2 - ram.out;
    const Point port_end{ram.anchor.x() - half - stroke / 2, ram.anchor.z()};
    const Point starboard_end{ram.anchor.x() + half + stroke / 2, ram.anchor.z()};
    const double tube = rig.boat().bore / 2 + wall;
    pencil.part("bracket_" + side_words(ram), "brackets",
                "Rod ends of the " + std::string(ram.alone ? "cylinder" : side_words(ram) + " cylinder"));
    for (const Point& end : {port_end, starboard_end})
        pencil.area(strip({end.x - 0.018, end.y}, {end.x + 0.018, end.y}, 0.04), Pen::normal, Fill::dark);
    pencil.part(ram.id(), "rams", ram.name() + ram.marked());
    pencil.area(strip(port_end, starboard_end, rig.boat().rod / 2), Pen::thin, Fill::paper);
    const auto body = strip({middle - half, ram.anchor.z()}, {middle + half, ram.anchor.z()}, tube);
    pencil.area(body, Pen::normal, Fill::paper);
    hatch(pencil, ram, body);
    draw_letter(pencil, ram, {ram.port ? port_end.x - 0.09 : starboard_end.x + 0.09, ram.anchor.z()});
}

// Across the boat: bracket to bracket and pin to pin, or from the centre line where there is one ram.
void draw_widths(Pencil& pencil, const StandingRig& rig) {
    const StandingRam& first = rig.rams.front();
    if (slides(*first.ram)) return;
    pencil.part("across", "brackets", "Across the boat");
    const bool two = rig.rams.size() > 1;
    const Eigen::Vector3d anchor = two ? rig.rams[1].anchor : Eigen::Vector3d(0, 0, first.anchor.z());
    pencil.draw(DimensionLine{seen(first.anchor, View::behind), seen(anchor, View::behind), rail + 0.07,
                              two ? "bracket to bracket" : "bracket to centre line",
                              rig.length_text(std::abs(anchor.x() - first.anchor.x()))});
    if (rig.mount() == Boat::Mount::inboard_tiller) return;
    const Eigen::Vector3d pin = two ? rig.rams[1].pin : Eigen::Vector3d(0, 0, first.pin.z());
    pencil.draw(DimensionLine{seen(first.pin, View::behind), seen(pin, View::behind), -0.17,
                              two ? "ram pin to ram pin" : "ram pin to centre line",
                              rig.length_text(std::abs(pin.x() - first.pin.x()))});
}

}  // namespace

Drawing from_behind(const StandingRig& rig) {
    Pencil pencil("From behind");
    draw_hull(pencil, rig);
    const bool sliding = slides(*rig.rams.front().ram);
    if (sliding)  // behind the outboard
        for (const StandingRam& ram : rig.rams) draw_sliding(pencil, rig, ram);
    for (std::size_t drive = 0; drive < rig.drives.size(); ++drive)
        draw_drive(pencil, rig, drive, View::behind);
    for (const StandingRam& ram : rig.rams) {
        if (rig.mount() == Boat::Mount::sterndrive_external) draw_end_on(pencil, rig, ram);
        if (rig.mount() == Boat::Mount::inboard_tiller) draw_athwart(pencil, rig, ram);
    }
    draw_tie_bar(pencil, rig, View::behind);
    draw_widths(pencil, rig);
    return std::move(pencil).drawing();
}

}  // namespace hardover::drawing::rig_parts
