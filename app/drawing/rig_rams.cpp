// Rams with their brackets from above, where their true lengths are seen: pinned at both ends, or sliding on
// a rod across an outboard. The piston is drawn inside the tube.
#include <algorithm>
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

constexpr double piston = 0.016;  // half of its length

void draw_tube(Pencil& pencil, const StandingRig& rig, const StandingRam& ram, const Point& from,
               const Point& to) {
    const double half = rig.boat().bore / 2 + wall;
    pencil.area(strip(from, to, half), Pen::normal, Fill::paper);
    if (!ram.hatched()) return;
    pencil.tone(Tone::port);
    pencil.area(strip(from, to, half), Pen::normal, Fill::hatched);
    pencil.tone(Tone::plain);
}

void draw_letter(Pencil& pencil, const StandingRam& ram, const Point& at) {
    if (ram.alone) return;
    pencil.tone(ram.tone());
    pencil.mark(at, ram.letter());
    pencil.tone(Tone::plain);
}

std::string side_words(const StandingRam& ram) {
    return ram.port ? "port" : "starboard";
}

void draw_pinned(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = seen(ram.anchor, View::above);
    const Point pin = seen(ram.pin, View::above);
    const double tube = ram.ram->travel.closed - 2 * end_fitting;
    const Point tube_start = along(anchor, pin, end_fitting);
    const Point tube_end = along(anchor, pin, end_fitting + tube);
    const double rod = rig.boat().rod / 2;
    const bool athwart = std::abs(pin.x - anchor.x) > std::abs(pin.y - anchor.y);
    pencil.part(ram.id(), "rams", ram.name() + ram.marked());
    pencil.area(strip(rig.boat().balanced ? anchor : tube_end, pin, rod), Pen::thin, Fill::paper);
    pencil.area(strip(anchor, tube_start, rod * 1.4), Pen::thin, Fill::light);
    draw_tube(pencil, rig, ram, tube_start, tube_end);
    // The piston runs the tube from end to end over the stroke.
    const double way =
        std::max(0.0, tube - 2 * piston) * std::clamp(ram.out / ram.ram->travel.stroke, 0.0, 1.0);
    pencil.area(strip(along(tube_start, tube_end, way), along(tube_start, tube_end, way + 2 * piston),
                      rig.boat().bore / 2),
                Pen::thin, Fill::dark);
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    const double off = athwart ? -0.10 : 0.15;
    pencil.draw(
        DimensionLine{anchor, pin, ram.port ? -off : off, "pin to pin", rig.length_text(ram.length())});
    draw_letter(pencil, ram,
                athwart ? Point{anchor.x + ram.side() * 0.11, anchor.y}
                        : Point{anchor.x + ram.side() * letter_off, anchor.y - 0.10});

    pencil.part("bracket_" + side_words(ram), "brackets",
                std::string(ram.port ? "Port" : "Starboard") + " bracket" +
                    (athwart ? "" : " on the transom") + ", " + rig.length_text(std::abs(ram.anchor.x())) +
                    " from the centre line");
    if (athwart) {
        pencil.area({{anchor.x - 0.03, anchor.y - 0.05},
                     {anchor.x + 0.03, anchor.y - 0.05},
                     {anchor.x + 0.03, anchor.y + 0.05},
                     {anchor.x - 0.03, anchor.y + 0.05}},
                    Pen::normal, Fill::dark);
    } else {
        const double y = rig.transom();
        pencil.area({{anchor.x - 0.03, y},
                     {anchor.x + 0.03, y},
                     {anchor.x + 0.012, anchor.y},
                     {anchor.x - 0.012, anchor.y}},
                    Pen::normal, Fill::dark);
    }
    pencil.draw(Circle{anchor, eye, Pen::normal, Fill::paper});
}

// A cylinder that slides on a rod fixed across the boat and takes the tiller's pin along. What rod is left at
// either end is what the drive can still be steered by.
void draw_sliding(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point pin = seen(ram.pin, View::above);
    const double rod_y = ram.anchor.y();
    const double half = ram.ram->travel.closed / 2;
    const double stroke = ram.ram->travel.stroke;
    const double middle = ram.anchor.x() + stroke / 2 - ram.out;  // rod out counts to port
    const double port_end = ram.anchor.x() - half - stroke / 2;
    const double starboard_end = ram.anchor.x() + half + stroke / 2;
    pencil.part("bracket_" + side_words(ram), "brackets",
                "Rod ends of the " +
                    std::string(ram.alone  ? "cylinder"
                                : ram.port ? "port cylinder"
                                           : "starboard cylinder") +
                    ", fixed to the outboard's clamps");
    for (const auto& [from, to] :
         {std::pair{port_end - 0.035, port_end}, {starboard_end, starboard_end + 0.035}})
        pencil.area({{from, rod_y - 0.035}, {to, rod_y - 0.035}, {to, rod_y + 0.035}, {from, rod_y + 0.035}},
                    Pen::normal, Fill::dark);
    pencil.part(ram.id(), "rams", ram.name() + ram.marked() + ", sliding on its rod across the outboard");
    pencil.area(strip({port_end, rod_y}, {starboard_end, rod_y}, rig.boat().rod / 2), Pen::thin, Fill::paper);
    // The lug that holds the tiller's pin swings with it.
    pencil.area(strip({middle, rod_y}, pin, 0.022), Pen::normal, Fill::light);
    draw_tube(pencil, rig, ram, {middle - half, rod_y}, {middle + half, rod_y});
    pencil.area(
        strip({ram.anchor.x() - piston, rod_y}, {ram.anchor.x() + piston, rod_y}, rig.boat().bore / 2),
        Pen::thin, Fill::dark);
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    pencil.draw(DimensionLine{{port_end, rod_y},
                              {middle - half, rod_y},
                              0.09,
                              "rod left to port",
                              rig.length_text(stroke - ram.out)});
    pencil.draw(DimensionLine{{middle + half, rod_y},
                              {starboard_end, rod_y},
                              0.09,
                              "rod left to starboard",
                              rig.length_text(ram.out)});
    draw_letter(pencil, ram, {ram.port ? port_end - 0.09 : starboard_end + 0.09, rod_y});
}

}  // namespace

void draw_rams_above(Pencil& pencil, const StandingRig& rig) {
    for (const StandingRam& ram : rig.rams) {
        if (slides(*ram.ram)) {
            draw_sliding(pencil, rig, ram);
        } else {
            draw_pinned(pencil, rig, ram);
        }
    }
}

}  // namespace hardover::drawing::rig_parts
