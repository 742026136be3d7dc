// The plot's parts from back to front: hatch, spread, bars, limits, curve, marks, the point one is at; words
// beside them.
#include "app/window/plot.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::window {

namespace {

constexpr float labels_beside_from = 560;  // dp; narrower, what the limits mean stands under the picture
constexpr float labels_width = 210;

std::string axis_title(const PlotAxis& axis) {
    return axis.unit.empty() ? axis.name : axis.name + " (" + axis.unit + ")";
}

class Painter {
  public:
    Painter(Kit& kit, const Plot& plot) : kit_(kit), plot_(plot) {}

    void draw() {
        const bool beside = kit_.width() >= kit_.px(labels_beside_from) && !plot_.bands.empty();
        kit_.text(axis_title(plot_.y), Type::small, Role::ink2);
        kit_.gap(6);
        const float line = kit_.theme().line_height(Type::small);
        const Box whole = kit_.take(std::clamp(kit_.width() * 0.5F, kit_.px(230), kit_.px(400)));
        float ticks = kit_.px(20);
        for (const PlotTick& tick : plot_.y.ticks)
            ticks = std::max(ticks, kit_.text_width(tick.text, Type::small));
        const float left = ticks + kit_.px(10);
        const float right = beside ? kit_.px(labels_width) : kit_.px(10);
        area_ = {whole.x + left, whole.y + line / 2, whole.w - left - right, whole.h - line * 2 - kit_.px(4)};
        kit_.fill(area_, Role::card);
        kit_.within(area_, [&] {
            draw_gaps();
            draw_spread();
        });
        draw_grid(left);
        kit_.within(area_, [&] {
            draw_bars();
            draw_limits();
            draw_curves();
            draw_marks();
        });
        draw_here();
        if (beside) label_bands_beside({area_.right() + kit_.px(8), area_.y, right - kit_.px(8), area_.h});
        const std::string title = axis_title(plot_.x);
        kit_.text(title, Type::small, Role::ink2);
        if (!beside) list_bands();
    }

  private:
    float x_of(double x) const {
        return area_.x + area_.w * static_cast<float>((x - plot_.x.low) / (plot_.x.high - plot_.x.low));
    }
    // Held near the picture, so that a value far outside is no number the painter cannot take.
    float y_of(double y) const {
        const double share = std::clamp((y - plot_.y.low) / (plot_.y.high - plot_.y.low), -2.0, 3.0);
        return area_.bottom() - area_.h * static_cast<float>(share);
    }

    void draw_gaps() {
        for (const PlotGap& gap : plot_.gaps) {
            kit_.hatch({x_of(gap.low), area_.y, x_of(gap.high) - x_of(gap.low), area_.h}, 4, Role::hairline);
        }
    }

    void draw_spread() {
        for (const auto& piece : plot_.curves) {
            for (std::size_t i = 1; i < piece.size(); ++i) {
                const PlotPoint &a = piece[i - 1], &b = piece[i];
                if (a.spread <= 0 && b.spread <= 0) continue;
                kit_.shape({{x_of(a.x), y_of(a.y + a.spread)},
                            {x_of(b.x) + 1, y_of(b.y + b.spread)},
                            {x_of(b.x) + 1, y_of(b.y - b.spread)},
                            {x_of(a.x), y_of(a.y - a.spread)}},
                           Role::accent_tint);
            }
        }
    }

    void draw_grid(float left) {
        const float line = kit_.theme().line_height(Type::small);
        for (const PlotTick& tick : plot_.y.ticks) {
            const float y = std::round(y_of(tick.at));
            kit_.fill({area_.x, y, area_.w, std::max(1.0F, kit_.px(1))}, Role::hairline);
            kit_.line_in({area_.x - left, y - line / 2, left - kit_.px(8), line}, tick.text, Type::small,
                         Role::ink2, Align::right);
        }
        float widest = 0;
        for (const PlotTick& tick : plot_.x.ticks)
            widest = std::max(widest, kit_.text_width(tick.text, Type::small));
        const float apart = area_.w / std::max(1.0F, static_cast<float>(plot_.x.ticks.size()));
        const auto every =
            static_cast<std::size_t>(std::max(1.0F, std::ceil((widest + kit_.px(10)) / apart)));
        const float bottom = area_.bottom();
        for (std::size_t i = 0; i < plot_.x.ticks.size(); ++i) {
            const float x = std::round(x_of(plot_.x.ticks[i].at));
            kit_.fill({x, bottom, std::max(1.0F, kit_.px(1)), kit_.px(6)}, Role::outline);
            if (i % every != 0) continue;
            const float w = widest + kit_.px(4);
            kit_.line_in({x - w / 2, bottom + line / 2 + kit_.px(3), w, line}, plot_.x.ticks[i].text,
                         Type::small, Role::ink2, Align::centre);
        }
        kit_.fill({area_.x, bottom, area_.w, std::max(1.0F, kit_.px(1.5F))}, Role::outline);
        kit_.fill({area_.x, area_.y, std::max(1.0F, kit_.px(1.5F)), area_.h}, Role::outline);
    }

    // Dashed, across the whole picture.
    void draw_limits() {
        for (const PlotBand& band : plot_.bands) {
            if (!std::isfinite(band.low) || band.low <= plot_.y.low || band.low >= plot_.y.high) continue;
            const float y = std::round(y_of(band.low));
            for (float x = area_.x; x < area_.right(); x += kit_.px(12)) {
                kit_.fill({x, y, kit_.px(7), std::max(1.0F, kit_.px(2))}, Role::ink2);
            }
        }
    }

    void draw_curves() {
        for (const auto& piece : plot_.curves) {
            std::vector<ImVec2> points;
            for (const PlotPoint& point : piece) points.push_back({x_of(point.x), y_of(point.y)});
            kit_.stroke(points, Role::accent, 3);
        }
    }

    void draw_bars() {
        for (const PlotBar& bar : plot_.bars) {
            const float top = y_of(std::max(bar.low, bar.high)), left = x_of(bar.from);
            const Box box{left, top, x_of(bar.to) - left, y_of(std::min(bar.low, bar.high)) - top};
            if (bar.hatched) {
                kit_.hatch(box, 4, Role::ink2);
            } else {
                kit_.fill(box, Role::accent);
            }
            kit_.outline(box, Role::ink2, 1, 0);
        }
    }

    void draw_marks() {
        const float line = kit_.theme().line_height(Type::small);
        for (const PlotMark& mark : plot_.marks) {
            const float x = x_of(mark.x), y = y_of(mark.y);
            if (mark.spread > 0) {
                const float top = y_of(mark.y + mark.spread), low = y_of(mark.y - mark.spread);
                kit_.fill({x - kit_.px(0.75F), top, kit_.px(1.5F), low - top}, Role::ink2);
            }
            kit_.disc({x, y}, mark.ringed ? 6 : 4, Role::ink);
            if (!mark.ringed) continue;
            kit_.disc({x, y}, 3.5F, Role::card);
            const float width = kit_.text_width(mark.text, Type::small);
            const bool left = x + kit_.px(9) + width > area_.right();
            kit_.line_in({left ? x - kit_.px(9) - width : x + kit_.px(9), y - line / 2, width, line},
                         mark.text, Type::small, Role::ink);
        }
    }

    void draw_here() {
        if (!plot_.here) return;
        const PlotPoint& here = *plot_.here;
        const float x = x_of(here.x), y = y_of(here.y);
        kit_.within(area_.inset(-kit_.px(8)), [&] {
            for (float at = y; at < area_.bottom(); at += kit_.px(8)) {
                kit_.fill({x - kit_.px(0.75F), at, kit_.px(1.5F), kit_.px(4)}, Role::ink);
            }
            if (here.spread > 0) {
                const float top = y_of(here.y + here.spread), low = y_of(here.y - here.spread);
                kit_.fill({x - kit_.px(1), top, kit_.px(2), low - top}, Role::ink);
                for (const float end : {top, low}) {
                    kit_.fill({x - kit_.px(6), end - kit_.px(1), kit_.px(12), kit_.px(2)}, Role::ink);
                }
            }
            kit_.disc({x, y}, 7, Role::ink);
            kit_.disc({x, y}, 4, Role::card);
        });
        const float h = kit_.theme().line_height(Type::strong) + kit_.px(6);
        const float w =
            std::min(area_.w - kit_.px(8), kit_.text_width(plot_.here_text, Type::strong) + kit_.px(16));
        Box plate{x + kit_.px(14), y - h - kit_.px(10), w, h};
        if (plate.right() > area_.right() - kit_.px(4)) plate.x = x - w - kit_.px(14);
        plate.x =
            std::clamp(plate.x, area_.x + kit_.px(4), std::max(area_.x + kit_.px(4), area_.right() - w));
        plate.y = std::clamp(plate.y, area_.y + kit_.px(4), area_.bottom() - h - kit_.px(4));
        kit_.fill(plate, Role::card, 6);
        kit_.outline(plate, Role::outline, 1.5F, 6);
        kit_.line_in(plate.inset(kit_.px(3)), plot_.here_text, Type::strong, Role::ink, Align::centre);
    }

    struct BandLabel {
        const PlotBand* band;
        float y;  // wanted middle
        float h;
        float top;
    };

    // Beside its band each, moved apart where bands are thinner than their words.
    void label_bands_beside(const Box& room) {
        std::vector<BandLabel> labels;
        const float indent = kit_.px(16);
        for (const PlotBand& band : plot_.bands) {
            const double low = std::max(band.low, plot_.y.low), high = std::min(band.high, plot_.y.high);
            if (low >= high) continue;
            const float h = kit_.text_height(words_of(band), type_of(band), room.w - indent);
            labels.push_back({&band, y_of((low + high) / 2), h, 0});
        }
        float next = room.y - kit_.px(8);
        for (BandLabel& label : labels) {
            label.top = std::max(next, label.y - label.h / 2);
            next = label.top + label.h + kit_.px(6);
        }
        float last = room.bottom() + kit_.px(30);
        for (auto label = labels.rbegin(); label != labels.rend(); ++label) {
            label->top = std::min(label->top, last - label->h);
            last = label->top - kit_.px(6);
        }
        for (const BandLabel& label : labels) {
            const float middle = label.top + label.h / 2;
            kit_.stroke({{area_.right(), label.y}, {room.x + indent - kit_.px(5), middle}},
                        label.band->here ? Role::accent : Role::outline, label.band->here ? 3 : 1.5F);
            kit_.wrapped_in({room.x + indent, label.top, room.w - indent, label.h}, words_of(*label.band),
                            type_of(*label.band), label.band->here ? Role::accent : Role::ink2);
        }
    }

    void list_bands() {
        for (const PlotBand& band : plot_.bands) {
            kit_.gap(4);
            kit_.text(words_of(band), type_of(band), band.here ? Role::accent : Role::ink2);
        }
    }

    static std::string words_of(const PlotBand& band) { return band.range + ": " + band.text; }
    static Type type_of(const PlotBand& band) { return band.here ? Type::strong : Type::small; }

    Kit& kit_;
    const Plot& plot_;
    Box area_;
};

}  // namespace

void draw_plot(Kit& kit, const Plot& plot) {
    Painter(kit, plot).draw();
    for (const std::string& note : plot.notes) {
        kit.gap(4);
        kit.text(note, Type::small, Role::ink2);
    }
}

}  // namespace hardover::window
