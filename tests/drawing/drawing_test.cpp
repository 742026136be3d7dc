// Shapes, placement, hatches and the rig drawn from the numeric boat.
#include "app/drawing/drawing.hpp"

#include <cmath>
#include <set>

#include "app/drawing/strokes.hpp"
#include "drawing_support.hpp"

using namespace hardover;
using namespace hardover::drawing;
using namespace hardover_tests;

TEST_CASE("A hatch covers a square evenly and leaves its hole alone") {
    const std::vector<Point> square = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    double inked = 0;
    for (const Outline& line : hatch_lines(square, 0.01)) {
        inked += std::hypot(line.points[1].x - line.points[0].x, line.points[1].y - line.points[0].y);
    }
    CHECK(inked * 0.01 == Approx(1).epsilon(0.01));  // length of lines times their spacing is the area
    // The same square with a hole of a quarter of it, joined by a cut.
    const std::vector<Point> ring = {{0, 0},       {1, 0},       {1, 1},       {0, 1},       {0, 0},
                                     {0.25, 0.25}, {0.25, 0.75}, {0.75, 0.75}, {0.75, 0.25}, {0.25, 0.25}};
    inked = 0;
    for (const Outline& line : hatch_lines(ring, 0.01)) {
        inked += std::hypot(line.points[1].x - line.points[0].x, line.points[1].y - line.points[0].y);
    }
    CHECK(inked * 0.01 == Approx(0.75).epsilon(0.01));
    CHECK(hatch_lines(square, 0).empty());
    CHECK(hatch_lines({{0, 0}, {1, 1}}, 0.1).empty());
}

TEST_CASE("A drawing is placed as large as fits, the right way up and not stretched") {
    const Bounds bounds{{-1, 0}, {1, 1}};
    const Placement placement = placed(bounds, {10, 20}, 100, 100);
    CHECK(placement.scale == Approx(50));
    CHECK(placement.on_page({-1, 0}).x == Approx(10));
    CHECK(placement.on_page({1, 1}).x == Approx(110));
    CHECK(placement.on_page({0, 1}).y == Approx(45));
    CHECK(placement.on_page({0, 0}).y == Approx(95));
    const Placement flat = placed({{0, 0}, {4, 0}}, {0, 0}, 100, 50);
    CHECK(flat.scale == Approx(25));
    CHECK(placed({}, {0, 0}, 100, 50).scale == Approx(1));
}

TEST_CASE("A dimension line runs to the left of its way") {
    const Outline line = line_of({{0, 0}, {2, 0}, 0.5, "", ""});
    CHECK(line.points.front() == Point{0, 0.5});
    CHECK(line.points.back() == Point{2, 0.5});
}

TEST_CASE("Port is lettered and hatched, starboard lettered and plain, in both views") {
    const RigSketch drawn = sketch(rig::Boat{}, 0);
    for (const Drawing& drawing : {drawn.behind, drawn.above}) {
        INFO(drawing.title);
        CHECK(hatched(drawing, "ram_port"));
        CHECK_FALSE(hatched(drawing, "ram_starboard"));
        CHECK(says(drawing, "ram_port", "P"));
        CHECK(says(drawing, "ram_starboard", "S"));
    }
}

TEST_CASE("From behind port is on the left, from above too with the bow up") {
    const RigSketch drawn = sketch(rig::Boat{}, 0);
    for (const Drawing& drawing : {drawn.behind, drawn.above}) {
        const Bounds all = bounds_of(drawing);
        for (const Circle& circle : forms_of<Circle>(drawing, "ram_port")) CHECK(circle.centre.x < 0);
        for (const Circle& circle : forms_of<Circle>(drawing, "ram_starboard")) CHECK(circle.centre.x > 0);
        CHECK(all.width() > 0.8);
        CHECK(all.width() < 3);
    }
}

TEST_CASE("A ram is drawn as long as the linkage says, at every steering angle") {
    const rig::Boat boat;
    const auto rams = rig::steered_drives(boat);
    REQUIRE_OK(rams);
    for (const double steer : {-0.5, -0.2, 0.0, 0.3, 0.5}) {
        const RigSketch drawn = sketch(boat, steer);
        CHECK(length(pin_to_pin(drawn.above, "ram_port")) ==
              Approx(rig::ram_length(rams.value().rams[0].linkage, steer, 0)));
        CHECK(length(pin_to_pin(drawn.above, "ram_starboard")) ==
              Approx(rig::ram_length(rams.value().rams[1].linkage, steer, 0)));
    }
    // Steering to starboard pushes the port ram out.
    CHECK(length(pin_to_pin(sketch(boat, 0.3).above, "ram_port")) >
          length(pin_to_pin(sketch(boat, 0).above, "ram_port")));
    // Half out: 1.5 strokes of 9 in and a dead length of 0.15 m are 19.4 in.
    CHECK(pin_to_pin(sketch(boat, 0).above, "ram_port").text == "19 3/8 in");
}

TEST_CASE("An angle beyond the rams' travel is refused, not drawn") {
    const Result<RigPlan> plan = plan_of(rig::Boat{});
    REQUIRE_OK(plan);
    const Result<RigSketch> drawn = rig_sketch(plan.value(), {.steer = 0.9});
    REQUIRE_FALSE(drawn.ok());
    CHECK(drawn.error().what.find("beyond its travel") != std::string::npos);
    CHECK_FALSE(rig_sketch(RigPlan{}, {}).ok());
}

TEST_CASE("Every shape belongs to a part, and every part has a place and words") {
    for (const auto helm : {rig::Boat::Helm::manual_pump, rig::Boat::Helm::cable_valve}) {
        for (const int rams : {1, 2}) {
            rig::Boat boat;
            boat.helm = helm;
            boat.rams = rams;
            const RigSketch drawn = sketch(boat, 0.2);
            for (const Drawing& drawing : {drawn.behind, drawn.above, drawn.side}) {
                std::set<std::string> ids;
                for (const Part& part : drawing.parts) {
                    CHECK(ids.insert(part.id).second);
                    CHECK_FALSE(part.place.empty());
                    CHECK_FALSE(part.words.empty());
                }
                for (const Shape& shape : drawing.shapes) CHECK(ids.count(shape.part) == 1);
            }
            CHECK((find_part(drawn.above, "ram_starboard") != nullptr) == (rams == 2));
            CHECK((find_part(drawn.above, "valve") != nullptr) == (helm == rig::Boat::Helm::cable_valve));
        }
    }
}

TEST_CASE("Each line reaches one end of each ram, crossed between the two") {
    const RigSketch drawn = sketch(rig::Boat{}, 0);
    const auto reaches = [&](const std::string& line, double side) {
        double y = 0;
        for (const Outline& outline : forms_of<Outline>(drawn.above, line)) {
            const Point& end = outline.points.back();
            if (outline.points.size() == 3 && end.x * side > 0) y = end.y;
        }
        return y;
    };
    // The line that steers to starboard feeds the port ram's bracket end, which is forward.
    CHECK(reaches("line_starboard", -1) > reaches("line_port", -1));
    CHECK(reaches("line_starboard", 1) < reaches("line_port", 1));
}

TEST_CASE("Two drives are tied by a bar and turn together") {
    rig::Boat boat;
    boat.drives = 2;
    boat.drive_spacing = 0.8;
    const Result<RigPlan> plan = plan_of(boat);
    REQUIRE_OK(plan);
    const Result<RigSketch> drawn = rig_sketch(plan.value(), {.steer = 0.3});
    REQUIRE_OK(drawn);
    CHECK(length(pin_to_pin(drawn.value().above, "tie_bar")) == Approx(0.8));
    const Part* starboard = find_part(drawn.value().above, "drive_starboard");
    REQUIRE(starboard != nullptr);
    CHECK(starboard->words == "Starboard drive, 17° to starboard; the ring is its steering axis");
    boat.tied = false;
    CHECK(find_part(sketch(boat, 0.3).above, "tie_bar") == nullptr);
}

TEST_CASE("The words say each part once, with its length and its side") {
    const std::vector<std::string> words = in_words(sketch(rig::Boat{}, 0).above);
    REQUIRE_FALSE(words.empty());
    CHECK(words.front() == "From above, drive straight ahead");
    const std::string port = "Port ram, marked P and hatched; pin to pin 19 3/8 in.";
    CHECK(std::count(words.begin(), words.end(), port) == 1);
    CHECK(std::count(words.begin(), words.end(), "Helm pump with its wheel.") == 1);
}

TEST_CASE("An area with a bay is cut into triangles that cover just it") {
    const std::vector<Point> bay = {{0, 0}, {4, 0}, {4, 3}, {3, 1}, {1, 1}, {0, 3}};
    const auto covered = [](const std::vector<Triangle>& cut) {
        double area = 0;
        for (const Triangle& t : cut)
            area +=
                std::abs((t[1].x - t[0].x) * (t[2].y - t[0].y) - (t[1].y - t[0].y) * (t[2].x - t[0].x)) / 2;
        return area;
    };
    CHECK(triangles(bay).size() == 4);
    CHECK(covered(triangles(bay)) == Approx(6));
    CHECK(covered(triangles({bay.rbegin(), bay.rend()})) == Approx(6));
    CHECK(triangles({{0, 0}, {1, 1}}).empty());
}

TEST_CASE("Dashes run over a corner, and together with their gaps are as long as the line") {
    const std::vector<std::vector<Point>> pieces = dashes({{0, 0}, {1, 0}, {1, 1}}, {0.45, 0.2});
    REQUIRE(pieces.size() == 4);
    REQUIRE(pieces[1].size() == 3);
    CHECK(pieces[1][1] == Point{1, 0});
    double drawn = 0;
    for (const auto& piece : pieces)
        for (std::size_t i = 0; i + 1 < piece.size(); ++i)
            drawn += std::hypot(piece[i + 1].x - piece[i].x, piece[i + 1].y - piece[i].y);
    CHECK(drawn == Approx(1.4));
    CHECK(dashes({{0, 0}, {1, 0}}, {}).size() == 1);
}
