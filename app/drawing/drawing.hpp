// A drawing described once as shapes, for every painter: the printed sheet, the window and the words in the
// terminal. Its own units (a rig's are metres), x to the right, y upward. Knows no page, no pixel and no
// colour: what must be told apart differs by letter, pen or hatch.
#pragma once

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace hardover::drawing {

struct Point {
    double x = 0;
    double y = 0;
    friend bool operator==(const Point&, const Point&) = default;
};

enum class Pen {
    none,
    thin,
    normal,
    dashed,
    chain  // long and short dashes: centre lines, cables
};

enum class Fill {
    none,
    paper,  // covers what lies behind
    light,
    dark,
    hatched
};

// What a shape stands for where a painter has a colour for that. Whatever a tone tells is told by letter, pen
// or words as well.
enum class Tone { plain, faint, port, starboard, fault };

// A line, a polyline, a curve or, when closed, an area.
struct Outline {
    std::vector<Point> points;
    bool closed = false;
    Pen pen = Pen::normal;
    Fill fill = Fill::none;
    double weight = 1;  // times the pen's width
};

struct Circle {
    Point centre;
    double radius = 0;
    Pen pen = Pen::normal;
    Fill fill = Fill::none;
};

enum class Align { start, middle, end };

// Text stands upright, centred on the height of `at`; its size is the painter's.
struct Text {
    Point at;
    std::string text;
    Align align = Align::middle;
    bool strong = false;
    bool ringed = false;  // in a ring as large as the letter needs
};

// A measured distance: its line runs beside from-to, `offset` to the left of the way from `from` to `to`.
struct DimensionLine {
    Point from;
    Point to;
    double offset = 0;
    std::string name;  // "pin to pin"; only the painter in words says it
    std::string text;  // "19 1/2 in"
};

struct Shape {
    std::string part;  // id of the Part it belongs to
    std::variant<Outline, Circle, Text, DimensionLine> form;
    Tone tone = Tone::plain;
};

// One thing that is drawn, so that a finding can point at it and it can lead back to the findings.
struct Part {
    std::string id;     // "ram_port", once in a drawing
    std::string place;  // the part of the system it belongs to, by the knowledge's name for it: "rams"
    std::string words;  // what it is and where, one sentence
};

struct Drawing {
    std::string title;
    std::vector<Part> parts;
    std::vector<Shape> shapes;  // the later ones lie in front
};

struct Bounds {
    Point least;
    Point most;
    double width() const { return most.x - least.x; }
    double height() const { return most.y - least.y; }
};

// What all shapes cover, dimension lines included and the letters of texts left out; a point at the origin
// when there is no shape.
Bounds bounds_of(const Drawing& drawing);

// Both ends of a dimension's line.
Outline line_of(const DimensionLine& dimension);

// Lines at 45 degrees that fill an area (even-odd), `spacing` apart. Empty when spacing is not above zero.
std::vector<Outline> hatch_lines(const std::vector<Point>& area, double spacing);

// The points of a circle as an area, for painters that hatch it.
std::vector<Point> circle_points(const Circle& circle);

// Where a drawing lies on a page whose y runs downward: as large as fits, centred; or centred at a scale.
struct Placement {
    double scale = 1;  // page units per drawing unit
    Point origin;      // of the drawing, on the page
    Point on_page(const Point& point) const;
};
Placement placed(const Bounds& bounds, const Point& top_left, double width, double height);
Placement placed(const Bounds& bounds, const Point& top_left, double width, double height, double scale);

const Part* find_part(const Drawing& drawing, std::string_view id);

// Distance from a point to the nearest shape of a part, 0 inside an area; infinite when it has none. Texts
// and dimension lines do not count.
double distance_to(const Drawing& drawing, std::string_view part, const Point& point);
// The part a person means who points there: of those within `reach` the smallest, else the nearest. "" when
// none is within reach.
std::string part_at(const Drawing& drawing, const Point& point, double reach);

// A ring with "!" on each of these parts, in front of everything; ids that are not drawn are passed over.
void mark_faults(Drawing& drawing, const std::vector<std::string>& parts);

// The painter in words: the title, then for each part its sentence and its dimensions.
std::vector<std::string> in_words(const Drawing& drawing);

}  // namespace hardover::drawing
