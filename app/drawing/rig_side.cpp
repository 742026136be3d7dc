// The rig from the starboard side, bow to the right: how the drive is trimmed and how high the rams stand.
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

using rig::Boat;

constexpr double hull_drawn = 0.50;  // of the boat forward of the transom
constexpr double leg = 0.92;         // of the line that shows the trim

void draw_hull(Pencil& pencil, const StandingRig& rig) {
    const double y = rig.transom();
    const double fore = rig.front() + hull_drawn;
    const bool outboard = rig.mount() == Boat::Mount::outboard_centre;
    const bool inboard = rig.mount() == Boat::Mount::inboard_tiller;
    const double rail = outboard ? -0.05 : 0.30, bottom = inboard ? -0.18 : -0.38;
    pencil.part("transom", "hull", "Hull from the starboard side, the bow to the right");
    pencil.area({{y, rail}, {y + transom_thick, rail}, {y + transom_thick, bottom}, {y, bottom}}, Pen::normal,
                Fill::light);
    pencil.tone(Tone::faint);
    pencil.line({{y + transom_thick, 0.30}, {fore, 0.30}}, Pen::dashed);
    pencil.line({{y, bottom}, {fore, bottom}}, Pen::normal);
    pencil.tone(Tone::plain);
    pencil.draw(Text{{fore - 0.06, 0.37}, "bow"});
}

void draw_ram(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = seen(ram.anchor, View::side), pin = seen(ram.pin, View::side);
    const double half = rig.boat().bore / 2 + wall;
    pencil.part(ram.id(), "rams", ram.name() + ram.marked());
    if (rig.mount() != Boat::Mount::sterndrive_external) {
        pencil.draw(Circle{rig.mount() == Boat::Mount::inboard_tiller ? pin : anchor, half, Pen::normal,
                           Fill::paper});
        pencil.draw(Circle{rig.mount() == Boat::Mount::inboard_tiller ? pin : anchor, rig.boat().rod / 2,
                           Pen::thin, Fill::none});
        return;
    }
    const double tube = ram.ram->travel.closed - 2 * end_fitting;
    // Lengths along it are shortened as they are seen.
    const double seen_share = std::hypot(pin.x - anchor.x, pin.y - anchor.y) / ram.length();
    const Point from = along(anchor, pin, end_fitting * seen_share),
                to = along(anchor, pin, (end_fitting + tube) * seen_share);
    pencil.area(strip(anchor, pin, rig.boat().rod / 2), Pen::thin, Fill::paper);
    pencil.area(strip(from, to, half), Pen::normal, Fill::paper);
    if (ram.hatched()) {
        pencil.tone(Tone::port);
        pencil.area(strip(from, to, half), Pen::normal, Fill::hatched);
        pencil.tone(Tone::plain);
    }
    for (const Point& end : {anchor, pin}) pencil.draw(Circle{end, eye, Pen::normal, Fill::paper});
}

// The leg's line when level, dashed, and as it stands.
void draw_trim(Pencil& pencil, const StandingRig& rig) {
    const StandingDrive& drive = rig.drives.front();
    pencil.part("trim", "drive", "Trim " + trim_text(drive.trim));
    const Eigen::Vector3d axis = drive.arm.trim_point;
    const Point pivot = seen(axis, View::side);
    pencil.tone(Tone::faint);
    pencil.line({pivot, {pivot.x, pivot.y - leg}}, Pen::dashed);
    pencil.tone(Tone::plain);
    StandingDrive ahead = drive;
    ahead.steer = 0;
    const Point foot = seen(ahead.at(axis.x(), axis.y(), axis.z() - leg), View::side);
    pencil.line({pivot, foot}, Pen::chain, 1.4);
    pencil.draw(Text{{pivot.x, pivot.y - leg - 0.06}, "trim " + trim_text(drive.trim), Align::middle, true});
}

}  // namespace

Drawing from_side(const StandingRig& rig) {
    const bool can_trim = trims(rig.boat());
    Pencil pencil("From the starboard side" +
                  (can_trim ? ", trim " + trim_text(rig.drives.front().trim) : std::string()));
    draw_hull(pencil, rig);
    // Of two, the starboard one stands nearer.
    draw_drive(pencil, rig, rig.drives.size() - 1, View::side);
    for (const StandingRam& ram : rig.rams) draw_ram(pencil, rig, ram);
    if (can_trim) draw_trim(pencil, rig);
    return std::move(pencil).drawing();
}

}  // namespace hardover::drawing::rig_parts
