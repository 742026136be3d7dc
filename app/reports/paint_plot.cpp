#include "app/reports/paint_plot.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::reports_detail {

namespace {

using drawing::Point;
using typeset::bold;
using typeset::plain;

constexpr double letter_size = 6.5;
constexpr double line_height = 9;
constexpr double hatch_spacing = 2.4;
constexpr double dot = 1.7;
constexpr double ring = 3;

class PlotPainter {
  public:
    PlotPainter(cairo_t* cairo, const typeset::Typesetter& typesetter, const Plot& plot)
        : cairo_(cairo), typesetter_(typesetter), plot_(plot) {}

    void paint(const std::string& name, const Point& top_left, double width, double height) {
        double top = top_left.y + write(bold(name), {top_left.x, top_left.y}, width, 8.5) + 1;
        top += write(plain(title_of(plot_.y)), {top_left.x, top}, width, letter_size) + 4;
        std::string notes;
        for (const std::string& note : plot_.notes) notes += (notes.empty() ? "" : " ") + note;
        const typeset::Block below = typesetter_.set(plain(notes), width, {letter_size});
        double ticks = 0;
        for (const PlotTick& tick : plot_.y.ticks) ticks = std::max(ticks, width_of(tick.text));
        left_ = top_left.x + ticks + 5;
        right_ = top_left.x + width - 6;
        top_ = top;
        bottom_ = top_left.y + height - below.height() - 2 * line_height - 6;
        draw_grid();
        cairo_save(cairo_);
        cairo_rectangle(cairo_, left_, top_ - ring, right_ - left_ + 6, bottom_ - top_ + 2 * ring);
        cairo_clip(cairo_);
        draw_bars();
        draw_curves();
        draw_marks();
        cairo_restore(cairo_);
        const typeset::Block title =
            typesetter_.set(plain(title_of(plot_.x)), right_ - left_, {letter_size, PANGO_ALIGN_CENTER});
        title.draw(cairo_, left_, bottom_ + line_height + 3);
        below.draw(cairo_, top_left.x, top_left.y + height - below.height());
    }

  private:
    static std::string title_of(const PlotAxis& axis) {
        return axis.unit.empty() ? axis.name : axis.name + " (" + axis.unit + ")";
    }
    double x_of(double x) const {
        return left_ + (right_ - left_) * (x - plot_.x.low) / (plot_.x.high - plot_.x.low);
    }
    double y_of(double y) const {
        const double share = std::clamp((y - plot_.y.low) / (plot_.y.high - plot_.y.low), -2.0, 3.0);
        return bottom_ - (bottom_ - top_) * share;
    }
    double width_of(const std::string& text) const {
        return typesetter_.set(plain(text), 200, {letter_size}).width();
    }

    // Gives the height.
    double write(const std::string& markup, const Point& at, double width, double size) const {
        const typeset::Block block = typesetter_.set(markup, width, {size});
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        block.draw(cairo_, at.x, at.y);
        return block.height();
    }

    void line(const Point& from, const Point& to, double thick, double grey = 0) const {
        cairo_set_source_rgb(cairo_, grey, grey, grey);
        cairo_set_line_width(cairo_, thick);
        cairo_move_to(cairo_, from.x, from.y);
        cairo_line_to(cairo_, to.x, to.y);
        cairo_stroke(cairo_);
    }

    void draw_grid() const {
        for (const PlotTick& tick : plot_.y.ticks) {
            const double y = y_of(tick.at);
            line({left_, y}, {right_, y}, std::abs(tick.at) < 1e-12 ? 0.6 : 0.25,
                 std::abs(tick.at) < 1e-12 ? 0 : 0.6);
            const typeset::Block text = typesetter_.set(plain(tick.text), 60, {letter_size});
            cairo_set_source_rgb(cairo_, 0, 0, 0);
            text.draw(cairo_, left_ - 4 - text.width(), y - text.height() / 2);
        }
        double widest = 0;
        for (const PlotTick& tick : plot_.x.ticks) widest = std::max(widest, width_of(tick.text));
        double last = left_ - widest;
        for (const PlotTick& tick : plot_.x.ticks) {
            const double x = x_of(tick.at);
            line({x, bottom_}, {x, bottom_ + 2.5}, 0.5);
            const typeset::Block text = typesetter_.set(plain(tick.text), 60, {letter_size});
            if (x - text.width() / 2 < last + 3) continue;  // no room beside the one before
            text.draw(cairo_, x - text.width() / 2, bottom_ + 3);
            last = x + text.width() / 2;
        }
        line({left_, bottom_}, {right_, bottom_}, 0.7);
        line({left_, top_}, {left_, bottom_}, 0.7);
    }

    void draw_bars() const {
        for (const PlotBar& bar : plot_.bars) {
            const double left = x_of(bar.from), right = x_of(bar.to), low = y_of(bar.low),
                         high = y_of(bar.high);
            cairo_rectangle(cairo_, left, std::min(low, high), right - left, std::abs(high - low));
            const double grey = bar.hatched ? 1 : 0.25;
            cairo_set_source_rgb(cairo_, grey, grey, grey);
            cairo_fill_preserve(cairo_);
            cairo_set_source_rgb(cairo_, 0, 0, 0);
            cairo_set_line_width(cairo_, 0.6);
            cairo_stroke(cairo_);
            if (!bar.hatched) continue;
            const std::vector<Point> area{{left, low}, {right, low}, {right, high}, {left, high}};
            for (const drawing::Outline& stripe : drawing::hatch_lines(area, hatch_spacing)) {
                line(stripe.points[0], stripe.points[1], 0.4);
            }
        }
    }

    void draw_curves() const {
        for (const auto& piece : plot_.curves) {
            for (std::size_t i = 1; i < piece.size(); ++i) {
                line({x_of(piece[i - 1].x), y_of(piece[i - 1].y)}, {x_of(piece[i].x), y_of(piece[i].y)}, 1);
            }
        }
    }

    void disc(const Point& at, double radius, double grey) const {
        cairo_new_path(cairo_);
        cairo_arc(cairo_, at.x, at.y, radius, 0, 2 * M_PI);
        cairo_set_source_rgb(cairo_, grey, grey, grey);
        cairo_fill_preserve(cairo_);
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        cairo_set_line_width(cairo_, 0.8);
        cairo_stroke(cairo_);
    }

    void draw_marks() const {
        for (const PlotMark& mark : plot_.marks) {
            if (mark.spread <= 0) continue;
            const double x = x_of(mark.x);
            line({x, y_of(mark.y - mark.spread)}, {x, y_of(mark.y + mark.spread)}, 0.6);
        }
        for (const PlotMark& mark : plot_.marks) {
            if (!mark.ringed) disc({x_of(mark.x), y_of(mark.y)}, dot, 0.25);
        }
        for (const PlotMark& mark : plot_.marks) {
            if (mark.ringed) disc({x_of(mark.x), y_of(mark.y)}, ring, 1);
        }
        std::vector<Words> placed;
        for (const PlotMark& mark : plot_.marks) {
            if (mark.ringed) label(mark, placed);
        }
    }

    // Where the words of a mark stand.
    struct Words {
        double x;
        double y;
        double width;
        double height;
        bool covers(const Words& other) const {
            return x < other.x + other.width && other.x < x + width && y < other.y + other.height &&
                   other.y < y + height;
        }
    };

    // Beside, above or below its ring, the first place that covers no other words; else where it is.
    void label(const PlotMark& mark, std::vector<Words>& placed) const {
        const typeset::Block text = typesetter_.set(bold(mark.text), 60, {letter_size});
        const double x = x_of(mark.x), y = y_of(mark.y), width = text.width(), height = text.height();
        const double away = ring + 1.5;
        const Words places[] = {{x + away, y - height / 2, width, height},
                                {x - away - width, y - height / 2, width, height},
                                {x - width / 2, y - away - height, width, height},
                                {x - width / 2, y + away, width, height},
                                {x - width / 2, y - away - 2 * height, width, height},
                                {x - width / 2, y + away + height, width, height}};
        const Words* best = &places[0];
        for (const Words& place : places) {
            const bool outside = place.x < left_ || place.x + width > right_ + 6;
            const bool taken = std::any_of(placed.begin(), placed.end(),
                                           [&](const Words& other) { return other.covers(place); }) ||
                               covers_a_ring(place);
            if (outside || taken) continue;
            best = &place;
            break;
        }
        placed.push_back(*best);
        cairo_set_source_rgb(cairo_, 0, 0, 0);
        text.draw(cairo_, best->x, best->y);
    }

    bool covers_a_ring(const Words& place) const {
        return std::any_of(plot_.marks.begin(), plot_.marks.end(), [&](const PlotMark& mark) {
            if (!mark.ringed) return false;
            return place.covers({x_of(mark.x) - ring, y_of(mark.y) - ring, 2 * ring, 2 * ring});
        });
    }

    cairo_t* cairo_;
    const typeset::Typesetter& typesetter_;
    const Plot& plot_;
    double left_ = 0;
    double right_ = 0;
    double top_ = 0;
    double bottom_ = 0;
};

}  // namespace

void paint_plot(cairo_t* cairo, const typeset::Typesetter& typesetter, const std::string& name,
                const Plot& plot, const drawing::Point& top_left, double width, double height) {
    PlotPainter(cairo, typesetter, plot).paint(name, top_left, width, height);
}

}  // namespace hardover::reports_detail
