// The rig as it is seen from astern, port on the left: where brackets and pins stand across the transom.
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

// Heights above the rams' brackets, m; the hull's and the drive's are symbols.
constexpr double rail = 0.30;
constexpr double chine = -0.28;
constexpr double keel = -0.40;
constexpr double plate = -0.30;  // the drive's plate above the propeller
constexpr double shaft = -0.52;
constexpr double propeller = 0.17;
constexpr double shaft_aft = 0.45;  // of the propeller behind the steering axis

Point seen(const Eigen::Vector3d& point) {
    return {point.x(), point.z()};
}

void draw_transom(Pencil& pencil, const StandingRig& rig) {
    const double half = rig.half_width();
    pencil.part("transom", "hull", "Transom seen from astern, port on the left");
    pencil.area({{-half, rail}, {half, rail}, {half * 0.94, chine}, {0, keel}, {-half * 0.94, chine}},
                Pen::normal, Fill::light);
    pencil.line({{0, rail + 0.1}, {0, shaft - propeller - 0.08}}, Pen::chain);
}

void draw_drive(Pencil& pencil, const StandingRig& rig, std::size_t drive) {
    const double x = rig.plan->drives[drive].offset;
    const double aft = x + shaft_aft * std::sin(rig.steer[drive]);
    const bool one = rig.plan->drives.size() == 1;
    pencil.part(drive_id(rig, drive), "drive",
                std::string(one          ? "Drive"
                            : drive == 0 ? "Port drive"
                                         : "Starboard drive") +
                    ", " + rig.angle_text(rig.steer[drive]) + ", its propeller below");
    pencil.area({{x - 0.09, 0.13}, {x + 0.09, 0.13}, {x + 0.09, plate}, {x - 0.09, plate}}, Pen::normal,
                Fill::paper);
    pencil.area({{x - 0.04, plate}, {x + 0.04, plate}, {aft + 0.03, shaft}, {aft - 0.03, shaft}}, Pen::normal,
                Fill::paper);
    pencil.area({{aft - 0.015, shaft}, {aft + 0.015, shaft}, {aft, shaft - propeller - 0.05}}, Pen::thin,
                Fill::paper);
    pencil.area({{x - 0.2, plate}, {x + 0.2, plate}, {x + 0.2, plate - 0.02}, {x - 0.2, plate - 0.02}},
                Pen::thin, Fill::paper);
    pencil.draw(Circle{{aft, shaft}, propeller, Pen::dashed, Fill::none});
    pencil.draw(Circle{{aft, shaft}, 0.045, Pen::normal, Fill::paper});
}

void draw_ram(Pencil& pencil, const StandingRig& rig, const StandingRam& ram) {
    const Point anchor = seen(ram.anchor);
    const Point pin = seen(ram.pin);
    const double x = rig.plan->drives[rig.plan->drives.size() > 1 && !ram.ram->port ? 1 : 0].offset;
    const double tube = rig.plan->bore / 2 + wall;
    const std::string side = ram.ram->port ? "port" : "starboard";
    pencil.part(ram_id(ram), "rams",
                ram_name(ram) + ", marked " + ram.letter() + " and " + (ram.ram->port ? "hatched" : "plain") +
                    ", seen end on");
    pencil.area(strip({x, pin.y}, pin, 0.018), Pen::thin, Fill::light);
    pencil.area(strip(anchor, pin, tube), Pen::thin, Fill::paper);
    pencil.draw(Circle{anchor, tube, Pen::normal, Fill::paper});
    if (ram.ram->port) pencil.draw(Circle{anchor, tube, Pen::normal, Fill::hatched});
    pencil.draw(Circle{pin, eye, Pen::normal, Fill::paper});
    pencil.mark({anchor.x + ram.side() * letter_off, anchor.y}, ram.letter());
    pencil.part("bracket_" + side, "brackets",
                (ram.ram->port ? "Port" : "Starboard") + std::string(" bracket"));
    pencil.area({{anchor.x - 0.03, anchor.y + 0.045},
                 {anchor.x + 0.03, anchor.y + 0.045},
                 {anchor.x + 0.03, anchor.y + 0.02},
                 {anchor.x - 0.03, anchor.y + 0.02}},
                Pen::normal, Fill::dark);
}

// Across the boat: bracket to bracket and pin to pin, or from the centre line where there is one ram.
void draw_widths(Pencil& pencil, const StandingRig& rig) {
    if (rig.rams.empty()) return;
    const StandingRam& first = rig.rams.front();
    pencil.part("across", "brackets", "Across the boat");
    const bool two = rig.rams.size() > 1;
    const Eigen::Vector3d anchor = two ? rig.rams[1].anchor : Eigen::Vector3d(0, 0, first.anchor.z());
    const Eigen::Vector3d pin = two ? rig.rams[1].pin : Eigen::Vector3d(0, 0, first.pin.z());
    pencil.draw(DimensionLine{seen(first.anchor), seen(anchor), rail + 0.07,
                              two ? "bracket to bracket" : "bracket to centre line",
                              rig.length_text(std::abs(anchor.x() - first.anchor.x()))});
    pencil.draw(DimensionLine{seen(first.pin), seen(pin), -0.17,
                              two ? "ram pin to ram pin" : "ram pin to centre line",
                              rig.length_text(std::abs(pin.x() - first.pin.x()))});
}

}  // namespace

Drawing from_behind(const StandingRig& rig) {
    Pencil pencil("From behind, drive " + rig.angle_text(rig.steer.front()));
    draw_transom(pencil, rig);
    for (std::size_t drive = 0; drive < rig.plan->drives.size(); ++drive) draw_drive(pencil, rig, drive);
    for (const StandingRam& ram : rig.rams) draw_ram(pencil, rig, ram);
    if (rig.plan->tie_bar) {
        pencil.part("tie_bar", "drive", "Tie bar between the two drives");
        pencil.area(strip({rig.plan->drives[0].offset, -0.06}, {rig.plan->drives[1].offset, -0.06}, 0.012),
                    Pen::normal, Fill::paper);
    }
    draw_widths(pencil, rig);
    return std::move(pencil).drawing();
}

}  // namespace hardover::drawing::rig_parts
