// A stern drive, an outboard or a rudder as flat shapes that the drive carries round its steering and trim
// axes. Symbols: the rig tells none of their sizes; from memory of small craft.
#include <cmath>

#include "app/drawing/rig_sketch_parts.hpp"

namespace hardover::drawing::rig_parts {

namespace {

using rig::Boat;

using Flat = std::vector<Point>;  // in the plane of a view

// A closed shape in the plane of a view, at a depth along what the view does not show.
struct Piece {
    Flat points;
    double depth = 0;
    Pen pen = Pen::normal;
    Fill fill = Fill::paper;
};

// Where a propeller sits on the drive, and its radius.
struct Propeller {
    double y = 0, z = 0, radius = 0;
};

Propeller propeller_of(Boat::Mount mount) {
    if (mount == Boat::Mount::outboard_centre) return {-0.34, -0.62, 0.15};
    return {-0.45, -0.52, 0.17};
}

std::vector<Piece> from_above_of(Boat::Mount mount) {
    switch (mount) {
        case Boat::Mount::sterndrive_external:
            return {{{{-0.17, -0.42}, {0.17, -0.42}, {0.17, -0.45}, {-0.17, -0.45}},
                     -0.52,
                     Pen::thin,
                     Fill::light},
                    {{{-0.065, 0.03},
                      {0.065, 0.03},
                      {0.065, -0.24},
                      {0.035, -0.42},
                      {-0.035, -0.42},
                      {-0.065, -0.24}},
                     0}};
        case Boat::Mount::outboard_centre:
            return {{{{-0.13, 0.10},
                      {0.13, 0.10},
                      {0.18, 0.02},
                      {0.19, -0.30},
                      {0.15, -0.46},
                      {0.07, -0.52},
                      {-0.07, -0.52},
                      {-0.15, -0.46},
                      {-0.19, -0.30},
                      {-0.18, 0.02}},
                     0.3},
                    {{{-0.09, -0.08}, {0.09, -0.08}, {0.10, -0.34}, {0, -0.42}, {-0.10, -0.34}},
                     0.3,
                     Pen::thin,
                     Fill::light}};
        case Boat::Mount::inboard_tiller:
            break;
    }
    return {{{{0, 0.10}, {0.028, 0.04}, {0.030, -0.06}, {0, -0.34}, {-0.030, -0.06}, {-0.028, 0.04}},
             -0.4,
             Pen::dashed,
             Fill::light}};
}

std::vector<Piece> from_behind_of(Boat::Mount mount) {
    switch (mount) {
        case Boat::Mount::sterndrive_external:
            return {{{{-0.09, 0.13}, {0.09, 0.13}, {0.09, -0.30}, {-0.09, -0.30}}, -0.12},
                    {{{-0.04, -0.30}, {0.04, -0.30}, {0.03, -0.52}, {-0.03, -0.52}}, -0.40},
                    {{{-0.015, -0.52}, {0.015, -0.52}, {0, -0.74}}, -0.40, Pen::thin},
                    {{{-0.2, -0.30}, {0.2, -0.30}, {0.2, -0.32}, {-0.2, -0.32}}, -0.36, Pen::thin}};
        case Boat::Mount::outboard_centre:
            return {
                {{{-0.19, 0.12},
                  {0.19, 0.12},
                  {0.20, 0.40},
                  {0.16, 0.56},
                  {0.08, 0.62},
                  {-0.08, 0.62},
                  {-0.16, 0.56},
                  {-0.20, 0.40}},
                 -0.30},
                {{{-0.12, 0.22}, {0.12, 0.22}, {0.11, 0.44}, {-0.11, 0.44}}, -0.50, Pen::thin, Fill::light},
                {{{-0.065, 0.12}, {0.065, 0.12}, {0.045, -0.45}, {-0.045, -0.45}}, -0.12},
                {{{-0.035, -0.45}, {0.035, -0.45}, {0.03, -0.62}, {-0.03, -0.62}}, -0.30},
                {{{-0.015, -0.62}, {0.015, -0.62}, {0, -0.84}}, -0.25, Pen::thin},
                {{{-0.16, -0.45}, {0.16, -0.45}, {0.16, -0.47}, {-0.16, -0.47}}, -0.26, Pen::thin}};
        case Boat::Mount::inboard_tiller:
            break;
    }
    return {{{{-0.028, -0.20}, {0.028, -0.20}, {0.02, -0.66}, {-0.02, -0.66}}, -0.30},
            {{{-0.018, 0.06}, {0.018, 0.06}, {0.018, -0.20}, {-0.018, -0.20}}, 0, Pen::thin, Fill::light}};
}

std::vector<Piece> from_side_of(Boat::Mount mount) {
    switch (mount) {
        case Boat::Mount::sterndrive_external:
            return {{{{0.03, 0.13},   {-0.20, 0.13},  {-0.25, 0.06},  {-0.27, -0.26}, {-0.46, -0.29},
                      {-0.46, -0.32}, {-0.28, -0.32}, {-0.27, -0.45}, {-0.42, -0.48}, {-0.45, -0.52},
                      {-0.42, -0.56}, {-0.29, -0.58}, {-0.28, -0.74}, {-0.20, -0.74}, {-0.14, -0.58},
                      {0.00, -0.54},  {0.02, -0.51},  {-0.10, -0.46}, {-0.10, -0.30}, {0.00, -0.27},
                      {0.03, -0.10}},
                     0}};
        case Boat::Mount::outboard_centre:
            return {{{{0.11, 0.12},
                      {0.12, 0.46},
                      {0.06, 0.58},
                      {-0.12, 0.64},
                      {-0.42, 0.58},
                      {-0.52, 0.44},
                      {-0.52, 0.16},
                      {-0.40, 0.10}},
                     0},
                    {{{0.04, 0.12},
                      {-0.24, 0.12},
                      {-0.18, -0.42},
                      {-0.40, -0.44},
                      {-0.40, -0.47},
                      {-0.18, -0.47},
                      {-0.18, -0.57},
                      {-0.30, -0.58},
                      {-0.34, -0.62},
                      {-0.30, -0.66},
                      {-0.18, -0.67},
                      {-0.18, -0.84},
                      {-0.10, -0.84},
                      {-0.05, -0.67},
                      {0.10, -0.64},
                      {0.12, -0.61},
                      {0.02, -0.57},
                      {0.02, -0.44}},
                     0}};
        case Boat::Mount::inboard_tiller:
            break;
    }
    return {
        {{{0.10, -0.20}, {-0.30, -0.20}, {-0.34, -0.62}, {-0.30, -0.66}, {0.06, -0.66}, {0.09, -0.60}}, 0},
        {{{0.02, 0.06}, {-0.02, 0.06}, {-0.02, -0.20}, {0.02, -0.20}}, 0, Pen::thin, Fill::light}};
}

Flat carried(const StandingDrive& drive, const Piece& piece, View view) {
    Flat points;
    for (const Point& point : piece.points) {
        const Eigen::Vector3d stands = view == View::above    ? drive.at(point.x, point.y, piece.depth)
                                       : view == View::behind ? drive.at(point.x, piece.depth, point.y)
                                                              : drive.at(piece.depth, point.x, point.y);
        points.push_back(seen(stands, view));
    }
    return points;
}

void draw_propeller(Pencil& pencil, const StandingRig& rig, const StandingDrive& drive, View view) {
    if (rig.mount() == Boat::Mount::inboard_tiller || view == View::above) return;
    const Propeller propeller = propeller_of(rig.mount());
    if (view == View::behind) {
        const Point hub = seen(drive.at(0, propeller.y, propeller.z), view);
        pencil.draw(Circle{hub, propeller.radius, Pen::dashed, Fill::none});
        pencil.draw(Circle{hub, 0.04, Pen::normal, Fill::paper});
        return;
    }
    const double thick = 0.015;
    Flat blades;
    for (const auto& [y, z] : {std::pair{-thick, propeller.radius},
                               {thick, propeller.radius},
                               {thick, -propeller.radius},
                               {-thick, -propeller.radius}})
        blades.push_back(seen(drive.at(0, propeller.y + y, propeller.z + z), view));
    pencil.area(blades, Pen::thin, Fill::light);
}

// From the steering axis to each ram's pin.
void draw_arms(Pencil& pencil, const StandingRig& rig, std::size_t drive, View view) {
    const Eigen::Vector3d axis = rig.drives[drive].at(0, 0, 0);
    for (const StandingRam& ram : rig.rams) {
        if (ram.drive != drive) continue;
        const Eigen::Vector3d root = view == View::behind && rig.mount() == Boat::Mount::sterndrive_external
                                         ? Eigen::Vector3d(axis.x(), axis.y(), ram.pin.z())
                                         : axis;
        pencil.area(strip(seen(root, view), seen(ram.pin, view), 0.018), Pen::normal, Fill::light);
    }
}

// What holds the drive to the boat.
void draw_seat(Pencil& pencil, const StandingRig& rig, std::size_t drive, View view) {
    const double x = rig.drives[drive].offset;
    const double transom = rig.transom();
    if (rig.mount() == Boat::Mount::inboard_tiller) return;
    if (view == View::above) {
        if (rig.mount() == Boat::Mount::sterndrive_external) {
            pencil.area({{x - 0.1, transom}, {x + 0.1, transom}, {x + 0.045, 0}, {x - 0.045, 0}}, Pen::thin,
                        Fill::paper);
            return;
        }
        const double rod = rig.rams.front().anchor.y();
        for (const double side : {-1.0, 1.0}) {
            pencil.area({{x + side * 0.08, 0.02},
                         {x + side * 0.12, 0.02},
                         {x + side * 0.12, rod + 0.02},
                         {x + side * 0.08, rod + 0.02}},
                        Pen::thin, Fill::light);
        }
        return;
    }
    if (view != View::side) return;
    if (rig.mount() == Boat::Mount::sterndrive_external) {
        pencil.area({{transom, 0.16}, {0.0, 0.10}, {0.0, -0.24}, {transom, -0.30}}, Pen::thin, Fill::light);
        return;
    }
    const double rod = rig.rams.front().anchor.y();
    pencil.area({{rod + 0.04, 0.05},
                 {rod - 0.14, 0.05},
                 {rod - 0.16, -0.30},
                 {rod - 0.11, -0.34},
                 {rod - 0.09, -0.10},
                 {rod + 0.04, -0.06}},
                Pen::thin, Fill::light);
}

std::string words_of(const StandingRig& rig, std::size_t drive, View view) {
    const std::string stands = rig.drive_name(drive) + ", " + steer_text(rig.drives[drive].steer);
    switch (view) {
        case View::above:
            return stands + "; the ring is its steering axis";
        case View::behind:
            return stands + (trims(rig.boat()) ? ", its propeller below" : ", below the hull");
        case View::side:
            break;
    }
    return trims(rig.boat()) ? stands + ", trim " + trim_text(rig.drives[drive].trim) : stands;
}

void draw_locks(Pencil& pencil, const StandingRig& rig, std::size_t drive) {
    constexpr double reach = 0.60;
    constexpr double tick_end = reach + 0.05;
    constexpr double clear_of_line = 0.03;
    const double x = rig.drives[drive].offset;
    const auto at = [&](double steer, double radius) {
        return Point{x + radius * std::sin(steer), -radius * std::cos(steer)};
    };
    const double port = rig.plan->port_lock, starboard = rig.plan->starboard_lock;
    pencil.tone(Tone::faint);
    Flat arc;
    for (int step = 0; step <= 24; ++step) arc.push_back(at(port + (starboard - port) * step / 24, reach));
    pencil.line(arc, Pen::thin);
    for (const double lock : {port, starboard})
        pencil.line({at(lock, reach - 0.05), at(lock, tick_end)}, Pen::normal);
    const double steer = rig.drives[drive].steer;
    pencil.tone(Tone::plain);
    pencil.line({at(steer, reach - 0.08), at(steer, reach + 0.03)}, Pen::normal, 1.6);
    const auto degrees = [](double radians) {
        return std::to_string(std::lround(std::abs(radians) * 57.29577951)) + "°";
    };
    // Further to the side than any of the lines: letters as large as the painter likes stay clear of them.
    const Point left = at(port, tick_end), right = at(starboard, tick_end);
    pencil.draw(Text{{left.x - clear_of_line, left.y}, "lock " + degrees(port), Align::end});
    pencil.draw(Text{{right.x + clear_of_line, right.y}, degrees(starboard) + " lock", Align::start});
}

}  // namespace

void draw_drive(Pencil& pencil, const StandingRig& rig, std::size_t drive, View view) {
    pencil.part(rig.drive_id(drive), "drive", words_of(rig, drive, view));
    const StandingDrive& stands = rig.drives[drive];
    draw_seat(pencil, rig, drive, view);
    const auto pieces = view == View::above    ? from_above_of(rig.mount())
                        : view == View::behind ? from_behind_of(rig.mount())
                                               : from_side_of(rig.mount());
    if (view == View::side) draw_propeller(pencil, rig, stands, view);
    for (const Piece& piece : pieces) pencil.area(carried(stands, piece, view), piece.pen, piece.fill);
    if (view == View::behind) draw_propeller(pencil, rig, stands, view);
    draw_arms(pencil, rig, drive, view);
    if (view == View::behind) return;
    const Point axis = seen(stands.at(0, 0, 0), view);
    if (view == View::above) {
        pencil.draw(Circle{axis, 0.028, Pen::normal, Fill::paper});
        pencil.draw(Circle{axis, 0.006, Pen::normal, Fill::dark});
        if (drive == 0) draw_locks(pencil, rig, drive);
        return;
    }
    if (!trims(rig.boat())) return;
    pencil.draw(Circle{seen(stands.arm.trim_point, view), 0.022, Pen::normal, Fill::paper});
}

void draw_tie_bar(Pencil& pencil, const StandingRig& rig, View view) {
    if (!rig.plan->steered.tie) return;
    const rig::TieBarInSpace& tie = *rig.plan->steered.tie;
    const Eigen::Vector3d shift(rig.drives[0].offset, 0, 0);
    const Point one = seen(pin_at(tie.one, rig.drives[0].steer, rig.drives[0].trim) + shift, view);
    const Point two = seen(pin_at(tie.two, rig.drives[1].steer, rig.drives[1].trim) + shift, view);
    pencil.part(
        "tie_bar", "tie_bar",
        "Tie bar between the two " + std::string(rig.mount() == Boat::Mount::inboard_tiller    ? "rudders"
                                                 : rig.mount() == Boat::Mount::outboard_centre ? "outboards"
                                                                                               : "drives"));
    pencil.area(strip(one, two, 0.012), Pen::normal, Fill::paper);
    for (const Point& point : {one, two}) pencil.draw(Circle{point, eye, Pen::normal, Fill::paper});
    if (view != View::above) return;
    pencil.draw(DimensionLine{one, two, -0.06, "pin to pin", rig.length_text(tie.bar)});
}

}  // namespace hardover::drawing::rig_parts
