// Which part of a drawing a person points at, and rings around parts that are at fault.
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "app/drawing/drawing.hpp"

namespace hardover::drawing {

namespace {

constexpr double far = std::numeric_limits<double>::infinity();

double to_segment(const Point& point, const Point& a, const Point& b) {
    const double x = b.x - a.x, y = b.y - a.y;
    const double square = x * x + y * y;
    const double share =
        square > 0 ? std::clamp(((point.x - a.x) * x + (point.y - a.y) * y) / square, 0.0, 1.0) : 0;
    return std::hypot(point.x - a.x - share * x, point.y - a.y - share * y);
}

bool inside(const std::vector<Point>& area, const Point& point) {
    bool is_inside = false;
    for (std::size_t i = 0; i < area.size(); ++i) {
        const Point& a = area[i];
        const Point& b = area[(i + 1) % area.size()];
        if ((a.y > point.y) == (b.y > point.y)) continue;
        if (point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y)) is_inside = !is_inside;
    }
    return is_inside;
}

struct Distance {
    Point point;
    double operator()(const Outline& outline) const {
        if (outline.closed && inside(outline.points, point)) return 0;
        double least = far;
        const std::size_t count = outline.points.size();
        for (std::size_t i = 0; i + (outline.closed ? 0 : 1) < count; ++i)
            least = std::min(least, to_segment(point, outline.points[i], outline.points[(i + 1) % count]));
        return least;
    }
    double operator()(const Circle& circle) const {
        return std::max(0.0,
                        std::hypot(point.x - circle.centre.x, point.y - circle.centre.y) - circle.radius);
    }
    double operator()(const Text&) const { return far; }
    double operator()(const DimensionLine&) const { return far; }
};

// What a part covers, texts and dimension lines left out.
Bounds solid_bounds(const Drawing& drawing, const std::string& part) {
    Drawing alone;
    for (const Shape& shape : drawing.shapes) {
        const bool solid =
            std::holds_alternative<Outline>(shape.form) || std::holds_alternative<Circle>(shape.form);
        if (solid && shape.part == part) alone.shapes.push_back(shape);
    }
    return bounds_of(alone);
}

// A point on a part: the middle of its longest line, or of its first area.
std::optional<Point> point_on(const Drawing& drawing, const std::string& part) {
    std::optional<Point> found;
    double longest = 0;
    for (const Shape& shape : drawing.shapes) {
        if (shape.part != part) continue;
        if (const Circle* circle = std::get_if<Circle>(&shape.form)) return circle->centre;
        const Outline* outline = std::get_if<Outline>(&shape.form);
        if (outline == nullptr || outline->points.empty()) continue;
        if (outline->closed) {
            Point middle;
            for (const Point& point : outline->points) {
                middle.x += point.x / static_cast<double>(outline->points.size());
                middle.y += point.y / static_cast<double>(outline->points.size());
            }
            return middle;
        }
        for (std::size_t i = 0; i + 1 < outline->points.size(); ++i) {
            const Point& a = outline->points[i];
            const Point& b = outline->points[i + 1];
            const double length = std::hypot(b.x - a.x, b.y - a.y);
            if (length <= longest) continue;
            longest = length;
            found = Point{(a.x + b.x) / 2, (a.y + b.y) / 2};
        }
    }
    return found;
}

}  // namespace

const Part* find_part(const Drawing& drawing, std::string_view id) {
    const auto found = std::find_if(drawing.parts.begin(), drawing.parts.end(),
                                    [&](const Part& part) { return part.id == id; });
    return found == drawing.parts.end() ? nullptr : &*found;
}

double distance_to(const Drawing& drawing, std::string_view part, const Point& point) {
    double least = far;
    for (const Shape& shape : drawing.shapes)
        if (shape.part == part) least = std::min(least, std::visit(Distance{point}, shape.form));
    return least;
}

std::string part_at(const Drawing& drawing, const Point& point, double reach) {
    std::string best;
    double best_size = far;
    for (const Part& part : drawing.parts) {
        if (distance_to(drawing, part.id, point) > reach) continue;
        const Bounds bounds = solid_bounds(drawing, part.id);
        const double size = (bounds.width() + reach) * (bounds.height() + reach);
        if (size >= best_size) continue;
        best_size = size;
        best = part.id;
    }
    return best;
}

void mark_faults(Drawing& drawing, const std::vector<std::string>& parts) {
    for (const std::string& part : parts) {
        const std::optional<Point> at = point_on(drawing, part);
        if (!at) continue;
        drawing.shapes.push_back({part, Text{*at, "!", Align::middle, true, true}, Tone::fault});
    }
}

}  // namespace hardover::drawing
