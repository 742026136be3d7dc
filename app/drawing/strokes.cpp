#include "app/drawing/strokes.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::drawing {

namespace {

// Twice the area of a triangle, positive when its corners run anticlockwise.
double turn(const Point& a, const Point& b, const Point& c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool within(const Triangle& triangle, const Point& point) {
    for (std::size_t i = 0; i < 3; ++i)
        if (turn(triangle[i], triangle[(i + 1) % 3], point) < 0) return false;
    return true;
}

// Whether the corner at i can be cut off: it does not turn inward, and no other corner lies in it.
bool is_ear(const std::vector<Point>& corners, std::size_t i) {
    const std::size_t count = corners.size();
    const Triangle ear{corners[(i + count - 1) % count], corners[i], corners[(i + 1) % count]};
    if (turn(ear[0], ear[1], ear[2]) < 0) return false;
    return std::none_of(corners.begin(), corners.end(), [&](const Point& corner) {
        return corner != ear[0] && corner != ear[1] && corner != ear[2] && within(ear, corner);
    });
}

}  // namespace

std::vector<Triangle> triangles(const std::vector<Point>& area) {
    std::vector<Triangle> cut;
    if (area.size() < 3) return cut;
    std::vector<Point> left = area;
    double twice = 0;
    for (std::size_t i = 0; i < left.size(); ++i) twice += turn({}, left[i], left[(i + 1) % left.size()]);
    if (twice < 0) std::reverse(left.begin(), left.end());
    while (left.size() > 3) {
        std::size_t ear = 0;
        while (ear < left.size() && !is_ear(left, ear)) ++ear;
        if (ear == left.size()) break;  // it crosses itself: what is left stays empty
        const std::size_t count = left.size();
        cut.push_back({left[(ear + count - 1) % count], left[ear], left[(ear + 1) % count]});
        left.erase(left.begin() + static_cast<std::ptrdiff_t>(ear));
    }
    if (left.size() == 3) cut.push_back({left[0], left[1], left[2]});
    return cut;
}

std::vector<std::vector<Point>> dashes(const std::vector<Point>& line, const std::vector<double>& pattern) {
    double whole = 0;
    for (const double length : pattern) whole += length;
    if (!(whole > 0) || line.size() < 2) return {line};
    std::vector<std::vector<Point>> pieces;
    std::size_t at = 0;
    double left = pattern.front();
    bool drawn = true;
    std::vector<Point> piece{line.front()};
    const auto finish = [&] {
        if (drawn && piece.size() > 1) pieces.push_back(piece);
    };
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        Point from = line[i];
        const Point& to = line[i + 1];
        double length = std::hypot(to.x - from.x, to.y - from.y);
        while (length > left) {
            const double share = left / length;
            from = {from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share};
            piece.push_back(from);
            finish();
            length -= left;
            at = (at + 1) % pattern.size();
            left = pattern[at];
            drawn = !drawn;
            piece = {from};
        }
        left -= length;
        piece.push_back(to);
    }
    finish();
    return pieces;
}

}  // namespace hardover::drawing
