// The rig from above, bow up the page: the true lengths and angles of rams and drives are seen here.
#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

using rig::Boat;

constexpr double hull_drawn = 0.62;  // of the boat forward of the steering gear
constexpr double aft_drawn = -0.66;  // of the centre line

void draw_hull(Pencil& pencil, const StandingRig& rig) {
    const double half = rig.half_width();
    const double y = rig.transom();
    const double top = rig.front() + hull_drawn;
    pencil.part("transom", "hull", "Transom seen from above, the bow up the page");
    pencil.area({{-half, y}, {half, y}, {half, y + transom_thick}, {-half, y + transom_thick}}, Pen::normal,
                Fill::light);
    pencil.tone(Tone::faint);
    for (const double side : {-1.0, 1.0})
        pencil.line({{side * half, y + transom_thick}, {side * half, top}}, Pen::dashed);
    pencil.line({{0, aft_drawn}, {0, top}}, Pen::chain);
    pencil.tone(Tone::plain);
    pencil.draw(Text{{0, top + 0.05}, "bow"});
}

void draw_scale(Pencil& pencil, const StandingRig& rig) {
    constexpr double foot = 0.3048;  // m
    const Point left{-rig.half_width(), -0.72};
    pencil.part("scale", "hull", "Scale");
    pencil.draw(DimensionLine{left, {left.x + foot, left.y}, 0, "the bar is", rig.length_text(foot)});
}

}  // namespace

Drawing from_above(const StandingRig& rig) {
    Pencil pencil("From above, " +
                  std::string(rig.mount() == Boat::Mount::inboard_tiller    ? "rudder "
                              : rig.mount() == Boat::Mount::outboard_centre ? "outboard "
                                                                            : "drive ") +
                  steer_text(rig.drives.front().steer));
    draw_hull(pencil, rig);
    // An outboard's cowl lies over its cylinder's pin, a drive under the rams.
    for (std::size_t drive = 0; drive < rig.drives.size(); ++drive)
        draw_drive(pencil, rig, drive, View::above);
    draw_tie_bar(pencil, rig, View::above);
    draw_supply(pencil, rig);
    draw_rams_above(pencil, rig);
    draw_scale(pencil, rig);
    return std::move(pencil).drawing();
}

}  // namespace hardover::drawing::rig_parts
