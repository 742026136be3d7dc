// The rig's views on every mount: true lengths, mirror images, trim, pressures, crossed hoses, and pointing.
#include <set>

#include "drawing_support.hpp"

using namespace hardover;
using namespace hardover::drawing;
using namespace hardover_tests;
using rig::Boat;

namespace {

Boat boat_on(Boat::Mount mount, int drives = 1) {
    Boat boat;
    boat.mount = mount;
    boat.drives = drives;
    if (mount == Boat::Mount::outboard_centre) {
        boat.balanced = true;
        boat.rams = drives;
    }
    return boat;
}

constexpr Boat::Mount mounts[] = {Boat::Mount::sterndrive_external, Boat::Mount::outboard_centre,
                                  Boat::Mount::inboard_tiller};

std::vector<Point> solid_points(const Drawing& drawing, const std::string& part) {
    std::vector<Point> points;
    for (const Outline& outline : forms_of<Outline>(drawing, part))
        points.insert(points.end(), outline.points.begin(), outline.points.end());
    for (const Circle& circle : forms_of<Circle>(drawing, part)) points.push_back(circle.centre);
    return points;
}

double to_nearest(const std::vector<Point>& points, const Point& point) {
    double least = 1e9;
    for (const Point& other : points)
        least = std::min(least, std::hypot(other.x - point.x, other.y - point.y));
    return least;
}

}  // namespace

TEST_CASE("Every mount is drawn in three views, each part once, with a place and words") {
    for (const Boat::Mount mount : mounts) {
        for (const int drives : {1, 2}) {
            Boat boat = boat_on(mount, drives);
            boat.helms = 2;
            boat.autopilot = true;
            boat.assist = Boat::Assist::electric_pump;
            const RigSketch drawn = sketch(boat, Pose{.steer = 0.3, .trim = 0.1});
            for (const Drawing& drawing : {drawn.behind, drawn.above, drawn.side}) {
                INFO(drawing.title << ", mount " << static_cast<int>(mount) << ", drives " << drives);
                std::set<std::string> ids;
                for (const Part& part : drawing.parts) {
                    INFO(part.id);
                    CHECK(ids.insert(part.id).second);
                    CHECK_FALSE(part.place.empty());
                    CHECK_FALSE(part.words.empty());
                }
                for (const Shape& shape : drawing.shapes) CHECK(ids.count(shape.part) == 1);
                CHECK(bounds_of(drawing).width() < 4);
                CHECK(bounds_of(drawing).height() < 3);
            }
            for (const char* part : {"second_helm", "pilot", "assist", "line_port", "reservoir"})
                CHECK(find_part(drawn.above, part) != nullptr);
            CHECK((find_part(drawn.above, "tie_bar") != nullptr) == (drives == 2));
        }
    }
}

TEST_CASE("A rudder's rams are drawn pin to pin as long as the linkage says") {
    const Boat boat = boat_on(Boat::Mount::inboard_tiller);
    const auto rams = rig::steered_drives(boat);
    REQUIRE_OK(rams);
    for (const double steer : {-0.5, 0.0, 0.4}) {
        const RigSketch drawn = sketch(boat, steer);
        CHECK(length(pin_to_pin(drawn.above, "ram_port")) ==
              Approx(rig::ram_length(rams.value().rams[0].linkage, steer, 0)));
        CHECK(length(pin_to_pin(drawn.above, "ram_starboard")) ==
              Approx(rig::ram_length(rams.value().rams[1].linkage, steer, 0)));
    }
}

TEST_CASE("Beside an outboard's cylinder as much rod is drawn as is left each way") {
    const Boat boat = boat_on(Boat::Mount::outboard_centre);
    const auto rams = rig::steered_drives(boat);
    REQUIRE_OK(rams);
    for (const double steer : {-0.5, 0.0, 0.35}) {
        const RigSketch drawn = sketch(boat, steer);
        const std::vector<DimensionLine> left = forms_of<DimensionLine>(drawn.above, "ram_port");
        REQUIRE(left.size() == 2);
        const double out = rig::rod_out(rams.value().rams[0], steer, 0);
        CHECK(length(left[1]) == Approx(out));
        CHECK(length(left[0]) + length(left[1]) == Approx(boat.stroke));
        CHECK(left[0].from.x < left[1].from.x);
    }
    // The tiller points forward: steered to starboard the cylinder goes to port.
    const auto rod_to_port = [&](double steer) {
        return length(forms_of<DimensionLine>(sketch(boat, steer).above, "ram_port")[0]);
    };
    CHECK(rod_to_port(0.3) < rod_to_port(0));
    CHECK_FALSE(hatched(sketch(boat, 0).above, "ram_port"));  // one cylinder is on neither side
}

TEST_CASE("A trimmed ram is drawn as long as the linkage says, and trimming up raises the propeller") {
    const Boat boat;
    const auto rams = rig::steered_drives(boat);
    REQUIRE_OK(rams);
    const RigSketch up = sketch(boat, Pose{.steer = 0.2, .trim = 0.26});
    const RigSketch level = sketch(boat, Pose{.steer = 0.2});
    CHECK(
        pin_to_pin(up.above, "ram_port").text ==
        show(Quantity{rig::ram_length(rams.value().rams[0].linkage, 0.2, 0.26), Dimension{1, 0, 0, 0, 0}, 0},
             find_unit("in").value()));
    for (const Boat::Mount mount : {Boat::Mount::sterndrive_external, Boat::Mount::outboard_centre}) {
        const auto lowest = [&](double trim) {
            const RigSketch drawn = sketch(boat_on(mount), Pose{.trim = trim});
            double least = 0;
            for (const Point& point : solid_points(drawn.side, "drive")) least = std::min(least, point.y);
            return least;
        };
        CHECK(lowest(0.26) > lowest(0) + 0.01);
    }
    CHECK(find_part(up.side, "trim")->words == "Trim 15° up");
    CHECK(find_part(sketch(boat_on(Boat::Mount::inboard_tiller), 0).side, "trim") == nullptr);
}

TEST_CASE("Steered as far to port as to starboard, the gear is drawn as its mirror image") {
    for (const Boat::Mount mount : mounts) {
        for (const int drives : {1, 2}) {
            const Boat boat = boat_on(mount, drives);
            const RigSketch port = sketch(boat, -0.35), starboard = sketch(boat, 0.35);
            const bool cylinder_alone = mount == Boat::Mount::outboard_centre && drives == 1;
            for (const bool above : {true, false}) {
                const Drawing& one = above ? port.above : port.behind;
                const Drawing& other = above ? starboard.above : starboard.behind;
                const std::vector<Point> ram = solid_points(one, "ram_port");
                const std::vector<Point> mirror =
                    solid_points(other, cylinder_alone ? "ram_port" : "ram_starboard");
                INFO("mount " << static_cast<int>(mount) << " drives " << drives << " above " << above);
                REQUIRE_FALSE(ram.empty());
                // Twin drives follow the first, through a bar that is not quite symmetrical.
                const double near = drives == 2 ? 0.01 : 1e-6;
                for (const Point& point : ram) CHECK(to_nearest(mirror, {-point.x, point.y}) < near);
            }
        }
    }
}

TEST_CASE("Each line's pressure is told by a number with its letter, and by its weight") {
    const Boat boat;
    Pose pose;
    pose.pressure = LinePressures{rig::Way::to_starboard, {7e4, 3.5e6}};
    const Drawing drawn = sketch(boat, pose).above;
    CHECK(says(drawn, "line_starboard", "S 510 psi"));
    CHECK(says(drawn, "line_port", "P 10 psi"));
    const auto weight = [&](const char* part) { return forms_of<Outline>(drawn, part).front().weight; };
    CHECK(weight("line_starboard") > weight("line_port") + 1);
    CHECK(find_part(drawn, "line_starboard")->words.find("510 psi") != std::string::npos);
    const Result<RigPlan> plan = plan_of(boat);
    REQUIRE_OK(plan);
    const Result<RigSketch> metric = rig_sketch(plan.value(), pose, UnitSystem::metric);
    REQUIRE_OK(metric);
    CHECK(says(metric.value().above, "line_starboard", "S 35 bar"));
}

TEST_CASE("Crossed hoses are drawn crossed, at the second ram only") {
    rig::Faults faults;
    faults.rams_swapped = 1;
    const auto crossed_boat = rig::BoatAtWork::of(Boat{}, faults);
    REQUIRE_OK(crossed_boat);
    const Result<RigSketch> crossed = rig_sketch(plan_of(crossed_boat.value()), {});
    REQUIRE_OK(crossed);
    const RigSketch sound = sketch(Boat{}, 0);
    const auto ends = [](const Drawing& drawing, const char* line, double side) {
        std::vector<Point> points;
        for (const Outline& outline : forms_of<Outline>(drawing, line))
            if (outline.points.size() == 3 && outline.points.back().x * side > 0)
                points.push_back(outline.points.back());
        REQUIRE(points.size() == 1);
        return points.front();
    };
    const Drawing& above = crossed.value().above;
    CHECK(ends(above, "line_starboard", 1) == ends(sound.above, "line_port", 1));
    CHECK(ends(above, "line_port", 1) == ends(sound.above, "line_starboard", 1));
    CHECK(ends(above, "line_port", -1) == ends(sound.above, "line_port", -1));
}

TEST_CASE("Faults move what is drawn: a misplaced bracket, an empty reservoir") {
    rig::Faults faults;
    faults.bracket_offset.port = 0.02;
    faults.reservoir_level = -1;
    const auto boat = rig::BoatAtWork::of(Boat{}, faults);
    REQUIRE_OK(boat);
    const Result<RigSketch> drawn = rig_sketch(plan_of(boat.value()), {});
    REQUIRE_OK(drawn);
    CHECK(length(pin_to_pin(drawn.value().above, "ram_port")) ==
          Approx(length(pin_to_pin(sketch(Boat{}, 0).above, "ram_port")) + 0.02));
    CHECK(find_part(drawn.value().above, "reservoir")->words == "Reservoir, no oil to be seen");
}

TEST_CASE("Whoever points at a thing gets the smallest part there, and nothing far from all") {
    const Drawing drawn = sketch(Boat{}, 0).above;
    const DimensionLine ram = pin_to_pin(drawn, "ram_port");
    const Point middle{(ram.from.x + ram.to.x) / 2, (ram.from.y + ram.to.y) / 2};
    CHECK(part_at(drawn, middle, 0.01) == "ram_port");
    CHECK(part_at(drawn, ram.from, 0.005) == "bracket_port");
    CHECK(part_at(drawn, {50, 50}, 0.05).empty());
    CHECK(distance_to(drawn, "ram_port", {middle.x - 1, middle.y}) > 0.5);
    CHECK(std::isinf(distance_to(drawn, "no_such_part", middle)));
}

TEST_CASE("A marked part gets a ring with a sign in front of everything, an unknown one none") {
    Drawing drawn = sketch(Boat{}, 0).above;
    const std::size_t before = drawn.shapes.size();
    mark_faults(drawn, {"line_port", "no_such_part"});
    CHECK(drawn.shapes.size() == before + 1);
    CHECK(says(drawn, "line_port", "!"));
    CHECK(drawn.shapes.back().tone == Tone::fault);
}

TEST_CASE("How far the locks are is told beside the arc, clear of its lines however large the letters are") {
    for (const Boat::Mount mount : mounts) {
        const RigSketch drawn = sketch(boat_on(mount), 0);
        std::size_t told = 0;
        for (const Text& text : forms_of<Text>(drawn.above, "drive")) {
            if (text.text.find("lock") == std::string::npos) continue;
            ++told;
            INFO(text.text);
            const bool to_the_left = text.align == Align::end;
            // The arc and the marks at its ends: what is drawn as far aft as the letters can reach.
            for (const Outline& line : forms_of<Outline>(drawn.above, "drive")) {
                for (const Point& point : line.points) {
                    if (std::abs(point.y - text.at.y) > 0.2) continue;
                    CHECK((to_the_left ? point.x - text.at.x : text.at.x - point.x) > 0.02);
                }
            }
        }
        CHECK(told == 2);
    }
}
