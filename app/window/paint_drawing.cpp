#include "app/window/paint_drawing.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "app/drawing/strokes.hpp"

namespace hardover::window {

namespace {

using namespace drawing;

constexpr float thin = 1.2F, normal = 2;  // dp, of pens
constexpr double hatch_spacing = 7;       // dp
constexpr float side_room = 64;           // dp about a drawing for its texts
constexpr float end_room = 16;
constexpr float badge = 0.66F;  // radius of a letter in a ring, of its line's height
constexpr int circle_corners = 32;
constexpr double small_drawing = 120;     // dp for a unit of the drawing; below, only pressures and letters
constexpr double middling_drawing = 160;  // below, no names
constexpr double tiny_drawing = 110;      // below, only letters of the sides
constexpr double widest_badge = 0.11;     // units of the drawing, half of it: it hides no ram

// A text still to be set; the more important ones choose their place first.
struct Label {
    Point at;  // on the screen
    std::string text;
    drawing::Align align = drawing::Align::middle;
    Type type = Type::small;
    Tone tone = Tone::plain;
    bool ringed = false;
    int rank = 0;
};

Role role_of(Tone tone) {
    switch (tone) {
        case Tone::plain:
            return Role::ink;
        case Tone::faint:
            return Role::outline;
        case Tone::port:
            return Role::port_line;
        case Tone::starboard:
            return Role::starboard_line;
        case Tone::fault:
            break;
    }
    return Role::wrong;
}

class Painter {
  public:
    Painter(Kit& kit, const Box& box, const Placement& placement)
        : kit_(kit), list_(*ImGui::GetWindowDrawList()), box_(box), placement_(placement) {}

    void paint(const Shape& shape, bool lit) {
        tone_ = shape.tone;
        lit_ = lit;
        std::visit(*this, shape.form);
    }
    void operator()(const Outline& outline) {
        if (outline.points.empty()) return;
        fill(outline.points, outline.fill);
        std::vector<Point> line = outline.points;
        if (outline.closed) line.push_back(line.front());
        stroke(line, outline.pen, outline.weight);
    }
    void operator()(const Circle& circle) {
        const std::vector<Point> ring = circle_points(circle);
        fill(ring, circle.fill);
        std::vector<Point> line = ring;
        line.push_back(line.front());
        stroke(line, circle.pen, 1);
    }
    void operator()(const Text& text) {
        labels_.push_back({placement_.on_page(text.at), text.text, text.align,
                           text.strong ? Type::strong : Type::small, tone_, text.ringed,
                           text.ringed   ? 0
                           : text.strong ? 1
                                         : 3});
    }
    void operator()(const DimensionLine& dimension) {
        const Outline line = line_of(dimension);
        const ImU32 colour = kit_.theme().colour(lit_ ? Role::accent : Role::ink2);
        const auto at = [&](const Point& point) { return screen(point); };
        list_.AddLine(at(line.points[0]), at(line.points[1]), colour, kit_.px(thin));
        const float tick = kit_.px(4);
        const std::array<std::pair<Point, Point>, 2> ends{
            {{dimension.from, line.points[0]}, {dimension.to, line.points[1]}}};
        for (const auto& [from, to] : ends) {
            const ImVec2 end = at(to);
            list_.AddLine(at(from), end, kit_.theme().colour(Role::outline), kit_.px(1));
            list_.AddLine({end.x - tick, end.y + tick}, {end.x + tick, end.y - tick}, colour,
                          kit_.px(normal));
        }
        labels_.push_back({placement_.on_page({(line.points[0].x + line.points[1].x) / 2,
                                               (line.points[0].y + line.points[1].y) / 2}),
                           dimension.text, drawing::Align::middle, Type::small, Tone::plain, false, 2});
    }

    // All texts, each where it lies on no other and inside the box.
    void set_labels() {
        std::stable_sort(labels_.begin(), labels_.end(),
                         [](const Label& a, const Label& b) { return a.rank < b.rank; });
        std::vector<Box> taken;
        // What a small drawing has no room for only hides it.
        const double dp_per_metre = placement_.scale / kit_.theme().scale();
        const int least_rank = dp_per_metre < tiny_drawing       ? 0
                               : dp_per_metre < small_drawing    ? 1
                               : dp_per_metre < middling_drawing ? 2
                                                                 : 3;
        for (const Label& label : labels_) {
            if (label.rank > least_rank) continue;
            const std::optional<Box> place = free_place(label, taken);
            if (!place) continue;
            taken.push_back(*place);
            set(label, *place);
        }
    }

  private:
    ImVec2 screen(const Point& point) const {
        const Point at = placement_.on_page(point);
        return {static_cast<float>(at.x), static_cast<float>(at.y)};
    }

    void fill(const std::vector<Point>& area, Fill fill) {
        if (fill == Fill::none) return;
        if (fill == Fill::hatched) {
            const double spacing = hatch_spacing * kit_.theme().scale() / placement_.scale;
            for (const Outline& line : hatch_lines(area, spacing)) stroke(line.points, line.pen, 1);
            return;
        }
        const Role role = fill == Fill::paper   ? Role::card
                          : fill == Fill::light ? Role::bar_track
                                                : role_of(tone_);
        const ImU32 colour = kit_.theme().colour(role);
        // Smoothed edges would show as seams between the triangles.
        const ImDrawListFlags flags = list_.Flags;
        list_.Flags &= ~ImDrawListFlags_AntiAliasedFill;
        for (const Triangle& t : triangles(area))
            list_.AddTriangleFilled(screen(t[0]), screen(t[1]), screen(t[2]), colour);
        list_.Flags = flags;
    }

    void stroke(const std::vector<Point>& line, Pen pen, double weight) {
        if (pen == Pen::none) return;
        const bool fine = pen == Pen::thin || pen == Pen::chain;
        const float width =
            kit_.px(fine ? thin : normal) * static_cast<float>(weight) + (lit_ ? kit_.px(1.5F) : 0);
        const ImU32 colour = kit_.theme().colour(lit_ ? Role::accent : role_of(tone_));
        const double dp = kit_.theme().scale() / placement_.scale;
        std::vector<double> pattern;
        if (pen == Pen::dashed) pattern = {(7 + 2 * weight) * dp, (4 + weight) * dp};
        if (pen == Pen::chain) pattern = {16 * dp, 4 * dp, 3 * dp, 4 * dp};
        for (const std::vector<Point>& piece : dashes(line, pattern)) {
            std::vector<ImVec2> points;
            points.reserve(piece.size());
            for (const Point& point : piece) points.push_back(screen(point));
            list_.AddPolyline(points.data(), static_cast<int>(points.size()), colour, 0, width);
        }
    }

    Box box_of(const Label& label) const {
        const float h = kit_.theme().line_height(label.type);
        const auto x = static_cast<float>(label.at.x), y = static_cast<float>(label.at.y);
        if (label.ringed) {
            const float r = std::min(h * badge, static_cast<float>(widest_badge * placement_.scale));
            return {x - r, y - r, 2 * r, 2 * r};
        }
        const float w = kit_.text_width(label.text, label.type) + kit_.px(6);
        const float left = label.align == drawing::Align::start ? x
                           : label.align == drawing::Align::end ? x - w
                                                                : x - w / 2;
        return {left, y - h / 2, w, h};
    }

    std::optional<Box> free_place(const Label& label, const std::vector<Box>& taken) const {
        const Box first = box_of(label);
        const float w = first.w * 0.6F + kit_.px(4), h = first.h;
        const std::array<ImVec2, 13> steps{{{0, 0},
                                            {0, -h},
                                            {0, h},
                                            {w, 0},
                                            {-w, 0},
                                            {w, -h},
                                            {-w, -h},
                                            {w, h},
                                            {-w, h},
                                            {0, -2 * h},
                                            {0, 2 * h},
                                            {2 * w, 0},
                                            {-2 * w, 0}}};
        for (const ImVec2& step : steps) {
            const Box place{first.x + step.x, first.y + step.y, first.w, first.h};
            const bool inside = place.x >= box_.x && place.y >= box_.y && place.right() <= box_.right() &&
                                place.bottom() <= box_.bottom();
            const bool is_free = std::none_of(taken.begin(), taken.end(),
                                              [&](const Box& other) { return !other.meet(place).empty(); });
            if (inside && is_free) return place;
        }
        return std::nullopt;
    }

    void set(const Label& label, const Box& place) {
        if (label.ringed) {
            const ImVec2 middle{place.middle_x(), place.middle_y()};
            const bool side = label.tone == Tone::port || label.tone == Tone::starboard;
            list_.AddCircleFilled(middle, place.w / 2,
                                  kit_.theme().colour(label.tone == Tone::port        ? Role::port
                                                      : label.tone == Tone::starboard ? Role::starboard
                                                                                      : Role::wrong),
                                  circle_corners);
            kit_.line_in(place, label.text, label.type, side ? Role::on_side : Role::card,
                         window::Align::centre);
            return;
        }
        list_.AddRectFilled({place.x, place.y}, {place.right(), place.bottom()},
                            kit_.theme().colour(Role::card, 0.88F), kit_.px(3));
        kit_.line_in(place, label.text, label.type, label.rank == 3 ? Role::ink2 : Role::ink,
                     window::Align::centre);
    }

    Kit& kit_;
    ImDrawList& list_;
    Box box_;
    Placement placement_;
    std::vector<Label> labels_;
    Tone tone_ = Tone::plain;
    bool lit_ = false;
};

}  // namespace

drawing::Placement placement_in(const Kit& kit, const Box& box, const drawing::Drawing& drawing) {
    const double across = std::min(kit.px(side_room), box.w * 0.12F);
    const double down = std::min(kit.px(end_room), box.h * 0.04F);
    return placed(bounds_of(drawing), {box.x + across, box.y + down}, std::max(1.0, box.w - 2 * across),
                  std::max(1.0, box.h - 2 * down));
}

void paint_drawing(Kit& kit, const Box& box, const drawing::Drawing& drawing,
                   const std::vector<std::string>& lit) {
    Painter painter(kit, box, placement_in(kit, box, drawing));
    for (const Shape& shape : drawing.shapes)
        painter.paint(shape, std::find(lit.begin(), lit.end(), shape.part) != lit.end());
    painter.set_labels();
}

void paint_drawing(Kit& kit, const Box& box, const drawing::Drawing& drawing, const std::string& lit) {
    paint_drawing(kit, box, drawing, lit.empty() ? std::vector<std::string>{} : std::vector{lit});
}

}  // namespace hardover::window
