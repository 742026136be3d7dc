// What every painter needs of a drawing: how far it reaches, where it goes on a page, hatches and dimension
// lines.
#include "app/drawing/drawing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace hardover::drawing {

namespace {

constexpr int circle_corners = 32;

class Reach {
  public:
    void operator()(const Outline& outline) {
        for (const Point& point : outline.points) add(point);
    }
    void operator()(const Circle& circle) {
        add({circle.centre.x - circle.radius, circle.centre.y - circle.radius});
        add({circle.centre.x + circle.radius, circle.centre.y + circle.radius});
    }
    void operator()(const Text& text) { add(text.at); }
    void operator()(const DimensionLine& dimension) { (*this)(line_of(dimension)); }

    Bounds bounds() const { return any_ ? bounds_ : Bounds{}; }

  private:
    void add(const Point& point) {
        if (!any_) bounds_ = {point, point};
        any_ = true;
        bounds_.least = {std::min(bounds_.least.x, point.x), std::min(bounds_.least.y, point.y)};
        bounds_.most = {std::max(bounds_.most.x, point.x), std::max(bounds_.most.y, point.y)};
    }

    bool any_ = false;
    Bounds bounds_;
};

// Where the line x - y = level crosses the area's edge, as x.
std::vector<double> crossings(const std::vector<Point>& area, double level) {
    std::vector<double> found;
    for (std::size_t i = 0; i < area.size(); ++i) {
        const Point& a = area[i];
        const Point& b = area[(i + 1) % area.size()];
        const double at_a = a.x - a.y - level;
        const double at_b = b.x - b.y - level;
        if ((at_a < 0) == (at_b < 0)) continue;
        found.push_back(a.x + (b.x - a.x) * at_a / (at_a - at_b));
    }
    std::sort(found.begin(), found.end());
    return found;
}

}  // namespace

Bounds bounds_of(const Drawing& drawing) {
    Reach reach;
    for (const Shape& shape : drawing.shapes) std::visit(reach, shape.form);
    return reach.bounds();
}

Outline line_of(const DimensionLine& dimension) {
    const double x = dimension.to.x - dimension.from.x;
    const double y = dimension.to.y - dimension.from.y;
    const double length = std::hypot(x, y);
    const double left_x = length > 0 ? -y / length * dimension.offset : 0;
    const double left_y = length > 0 ? x / length * dimension.offset : 0;
    return {{{dimension.from.x + left_x, dimension.from.y + left_y},
             {dimension.to.x + left_x, dimension.to.y + left_y}},
            false,
            Pen::thin,
            Fill::none};
}

std::vector<Outline> hatch_lines(const std::vector<Point>& area, double spacing) {
    std::vector<Outline> lines;
    if (!(spacing > 0) || area.size() < 3) return lines;
    double least = area.front().x - area.front().y;
    double most = least;
    for (const Point& point : area) {
        least = std::min(least, point.x - point.y);
        most = std::max(most, point.x - point.y);
    }
    const double step = spacing * std::numbers::sqrt2;
    for (double level = least + step / 2; level < most; level += step) {
        const std::vector<double> at = crossings(area, level);
        for (std::size_t i = 0; i + 1 < at.size(); i += 2) {
            lines.push_back(
                {{{at[i], at[i] - level}, {at[i + 1], at[i + 1] - level}}, false, Pen::thin, Fill::none});
        }
    }
    return lines;
}

std::vector<Point> circle_points(const Circle& circle) {
    std::vector<Point> points;
    for (int i = 0; i < circle_corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / circle_corners;
        points.push_back({circle.centre.x + circle.radius * std::cos(angle),
                          circle.centre.y + circle.radius * std::sin(angle)});
    }
    return points;
}

Point Placement::on_page(const Point& point) const {
    return {origin.x + point.x * scale, origin.y - point.y * scale};
}

Placement placed(const Bounds& bounds, const Point& top_left, double width, double height) {
    double scale = 1;
    if (bounds.width() > 0 || bounds.height() > 0) {
        const double none = std::numeric_limits<double>::infinity();
        const double across = bounds.width() > 0 ? width / bounds.width() : none;
        scale = std::min(across, bounds.height() > 0 ? height / bounds.height() : none);
    }
    return placed(bounds, top_left, width, height, scale);
}

Placement placed(const Bounds& bounds, const Point& top_left, double width, double height, double scale) {
    const Point middle{(bounds.least.x + bounds.most.x) / 2, (bounds.least.y + bounds.most.y) / 2};
    return {scale, {top_left.x + width / 2 - middle.x * scale, top_left.y + height / 2 + middle.y * scale}};
}

std::vector<std::string> in_words(const Drawing& drawing) {
    std::vector<std::string> lines{drawing.title};
    for (const Part& part : drawing.parts) {
        std::string line = part.words;
        for (const Shape& shape : drawing.shapes) {
            const DimensionLine* dimension = std::get_if<DimensionLine>(&shape.form);
            if (dimension == nullptr || shape.part != part.id) continue;
            line += (line.empty() ? "" : "; ") + dimension->name + " " + dimension->text;
        }
        lines.push_back(line + ".");
    }
    return lines;
}

}  // namespace hardover::drawing
