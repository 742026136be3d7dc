// The painter of drawings on paper.
#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "app/reports/typeset.hpp"

namespace hardover::typeset {

namespace {

using namespace drawing;

constexpr double letter_size = 6.5;
constexpr double hatch_spacing = 2.4;
constexpr double tick = 2.2;
constexpr double ring = 6;     // about a letter
constexpr double margin = 12;  // for letters that reach beyond the shapes
constexpr double title_height = 12;

class Painter {
  public:
    Painter(cairo_t* cairo, const Typesetter& typesetter, const Placement& placement)
        : cairo_(cairo), typesetter_(typesetter), placement_(placement) {}

    void operator()(const Outline& outline) const {
        if (outline.points.empty()) return;
        trace(outline);
        fill(outline.fill, outline.points);
        trace(outline);
        stroke(outline.pen, outline.weight);
    }
    void operator()(const Circle& circle) const {
        const Point centre = placement_.on_page(circle.centre);
        const auto ring = [&] {
            cairo_new_path(cairo_);
            cairo_arc(cairo_, centre.x, centre.y, circle.radius * placement_.scale, 0, 2 * M_PI);
        };
        ring();
        fill(circle.fill, circle_points(circle));
        ring();
        stroke(circle.pen);
    }
    void operator()(const Text& text) const {
        if (text.ringed) {
            const Point middle = placement_.on_page(text.at);
            cairo_new_path(cairo_);
            cairo_arc(cairo_, middle.x, middle.y, ring, 0, 2 * M_PI);
            cairo_set_source_rgb(cairo_, 1, 1, 1);
            cairo_fill_preserve(cairo_);
            stroke(Pen::normal);
        }
        letters(placement_.on_page(text.at), text.strong ? bold(text.text) : plain(text.text), text.align,
                false);
    }
    void operator()(const DimensionLine& dimension) const {
        const Outline line = line_of(dimension);
        const Point from = placement_.on_page(line.points[0]);
        const Point to = placement_.on_page(line.points[1]);
        extension(placement_.on_page(dimension.from), from);
        extension(placement_.on_page(dimension.to), to);
        (*this)(line);
        for (const Point& end : {from, to}) {
            cairo_move_to(cairo_, end.x - tick, end.y + tick);
            cairo_line_to(cairo_, end.x + tick, end.y - tick);
            stroke(Pen::normal);
        }
        const double length = std::abs(to.x - from.x);
        const bool across = length > std::abs(to.y - from.y);
        const double needed = typesetter_.set(plain(dimension.text), 200, {letter_size}).width() + 4 * tick;
        if (across && length < needed) {  // no room between its ends
            letters({std::max(from.x, to.x) + 2 * tick, from.y}, plain(dimension.text), Align::start, true);
        } else {
            letters({(from.x + to.x) / 2, (from.y + to.y) / 2}, plain(dimension.text), Align::middle, true);
        }
    }

  private:
    void trace(const Outline& outline) const {
        cairo_new_path(cairo_);
        for (const Point& point : outline.points) {
            const Point at = placement_.on_page(point);
            cairo_line_to(cairo_, at.x, at.y);
        }
        if (outline.closed) cairo_close_path(cairo_);
    }

    void fill(Fill fill, const std::vector<Point>& area) const {
        const double grey = fill == Fill::light ? 0.9 : fill == Fill::dark ? 0.25 : 1;
        if (fill == Fill::paper || fill == Fill::light || fill == Fill::dark) {
            cairo_set_source_rgb(cairo_, grey, grey, grey);
            cairo_fill(cairo_);
        }
        if (fill != Fill::hatched) return;
        for (const Outline& line : hatch_lines(area, hatch_spacing / placement_.scale)) {
            trace(line);
            stroke(line.pen);
        }
    }

    void stroke(Pen pen, double weight = 1) const {
        if (pen == Pen::none) {
            cairo_new_path(cairo_);
            return;
        }
        static constexpr std::array<double, 2> dashed{3, 1.8};
        static constexpr std::array<double, 4> chain{8, 2, 1.5, 2};
        if (pen == Pen::dashed) cairo_set_dash(cairo_, dashed.data(), dashed.size(), 0);
        if (pen == Pen::chain) cairo_set_dash(cairo_, chain.data(), chain.size(), 0);
        const bool fine = pen == Pen::thin || pen == Pen::chain;
        cairo_set_line_width(cairo_, (fine ? 0.45 : 0.9) * weight);
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        cairo_stroke(cairo_);
        cairo_set_dash(cairo_, nullptr, 0, 0);
    }

    // From what is measured to its dimension line, with a gap.
    void extension(const Point& from, const Point& to) const {
        const double length = std::hypot(to.x - from.x, to.y - from.y);
        if (length < 6) return;
        const double gap = 4 / length;
        cairo_move_to(cairo_, from.x + (to.x - from.x) * gap, from.y + (to.y - from.y) * gap);
        cairo_line_to(cairo_, to.x, to.y);
        cairo_set_line_width(cairo_, 0.3);
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        cairo_stroke(cairo_);
    }

    void letters(const Point& at, const std::string& markup, Align align, bool on_paper) const {
        const Block block = typesetter_.set(markup, 200, {letter_size});
        const double width = block.width();
        const double x = align == Align::start ? at.x : align == Align::end ? at.x - width : at.x - width / 2;
        const double y = at.y - block.height() / 2;
        if (on_paper) {
            cairo_rectangle(cairo_, x - 1.5, y, width + 3, block.height());
            cairo_set_source_rgb(cairo_, 1, 1, 1);
            cairo_fill(cairo_);
        }
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        block.draw(cairo_, x, y);
    }

    cairo_t* cairo_;
    const Typesetter& typesetter_;
    const Placement& placement_;
};

}  // namespace

double scale_to_fit(const drawing::Drawing& drawing, double width, double height) {
    return placed(bounds_of(drawing), {}, width - 2 * margin, height - title_height - margin).scale;
}

drawing::Placement placement_in(const drawing::Drawing& drawing, const drawing::Point& top_left, double width,
                                double height, double scale) {
    return placed(bounds_of(drawing), {top_left.x, top_left.y + title_height}, width, height - title_height,
                  scale);
}

void paint(cairo_t* cairo, const Typesetter& typesetter, const drawing::Drawing& drawing,
           const drawing::Point& top_left, double width, double height, double scale) {
    const Block title = typesetter.set(plain(drawing.title), width, {letter_size + 0.5, PANGO_ALIGN_CENTER});
    cairo_set_source_rgb(cairo, 0, 0, 0);
    title.draw(cairo, top_left.x, top_left.y);
    const Placement placement = placement_in(drawing, top_left, width, height, scale);
    const Painter painter(cairo, typesetter, placement);
    for (const Shape& shape : drawing.shapes) std::visit(painter, shape.form);
}

}  // namespace hardover::typeset
