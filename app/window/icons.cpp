// The line drawings, on a grid of 24 x 24.
#include "app/window/icons.hpp"

#include <cmath>
#include <initializer_list>
#include <numbers>

namespace hardover::window {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

// Draws on the 24 x 24 grid of one icon.
class Pen {
  public:
    Pen(ImDrawList& list, const Box& box, ImU32 colour) : list_(list), colour_(colour) {
        const float side = std::min(box.w, box.h);
        unit_ = side / 24;
        x_ = box.middle_x() - side / 2;
        y_ = box.middle_y() - side / 2;
    }

    void line(std::initializer_list<ImVec2> points, bool closed = false) {
        for (const ImVec2& p : points) list_.PathLineTo(at(p));
        list_.PathStroke(colour_, closed ? ImDrawFlags_Closed : ImDrawFlags_None, width());
    }
    void circle(ImVec2 centre, float radius) {
        list_.AddCircle(at(centre), radius * unit_, colour_, 0, width());
    }
    void dot(ImVec2 centre, float radius) { list_.AddCircleFilled(at(centre), radius * unit_, colour_); }
    // Angles in degrees, clockwise from the right.
    void arc(ImVec2 centre, float radius, float from, float to) {
        list_.PathArcTo(at(centre), radius * unit_, from * pi / 180, to * pi / 180);
        list_.PathStroke(colour_, ImDrawFlags_None, width());
    }
    void half_disc(ImVec2 centre, float radius) {
        list_.PathArcTo(at(centre), radius * unit_, -pi / 2, pi / 2);
        list_.PathFillConvex(colour_);
    }
    void octagon(ImVec2 centre, float radius) {
        for (int i = 0; i < 8; ++i) {
            const float a = (22.5F + 45.0F * static_cast<float>(i)) * pi / 180;
            list_.PathLineTo(at({centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)}));
        }
        list_.PathStroke(colour_, ImDrawFlags_Closed, width());
    }
    // The wheel's six spokes, turned well past the middle, and a mark at the rim that shows it is hard over.
    void wheel() {
        circle({12, 12}, 7);
        for (int i = 0; i < 6; ++i) {
            const float a = (35.0F + 60.0F * static_cast<float>(i)) * pi / 180;
            const float reach = i == 4 ? 11.5F : 9.8F;
            line({{12 + 2.5F * std::cos(a), 12 + 2.5F * std::sin(a)},
                  {12 + reach * std::cos(a), 12 + reach * std::sin(a)}});
        }
        dot({12, 12}, 2.4F);
    }

  private:
    ImVec2 at(ImVec2 p) const { return {x_ + p.x * unit_, y_ + p.y * unit_}; }
    float width() const { return std::max(1.5F, 2.1F * unit_); }

    ImDrawList& list_;
    ImU32 colour_;
    float unit_ = 1;
    float x_ = 0;
    float y_ = 0;
};

}  // namespace

void draw_icon(ImDrawList& list, Icon icon, const Box& box, ImU32 colour) {
    Pen pen(list, box, colour);
    switch (icon) {
        case Icon::none:
            break;
        case Icon::menu:
            pen.line({{4, 6}, {20, 6}});
            pen.line({{4, 12}, {20, 12}});
            pen.line({{4, 18}, {20, 18}});
            break;
        case Icon::bench:
            pen.line({{2.5F, 9}, {21.5F, 9}});
            pen.line({{5, 9}, {5, 20}});
            pen.line({{19, 9}, {19, 20}});
            pen.line({{5, 15}, {19, 15}});
            pen.line({{14, 9}, {14, 4.5F}, {18, 4.5F}, {18, 9}});
            break;
        case Icon::wheel:
            pen.wheel();
            break;
        case Icon::back:
            pen.line({{14, 5}, {7, 12}, {14, 19}});
            break;
        case Icon::undo:
            pen.line({{9, 4}, {4, 9}, {9, 14}});
            pen.line({{4, 9}, {14, 9}});
            pen.arc({14, 14}, 5, -90, 90);
            pen.line({{14, 19}, {9, 19}});
            break;
        case Icon::caution:
            pen.line({{12, 3}, {22, 20.5F}, {2, 20.5F}}, true);
            pen.line({{12, 9}, {12, 14}});
            pen.dot({12, 17.3F}, 1.3F);
            break;
        case Icon::stop:
            pen.octagon({12, 12}, 10);
            pen.line({{12, 6.5F}, {12, 13.5F}});
            pen.dot({12, 17}, 1.4F);
            break;
        case Icon::tick:
            pen.line({{5, 12.5F}, {10, 17.5F}, {19, 7}});
            break;
        case Icon::cross:
            pen.line({{6, 6}, {18, 18}});
            pen.line({{18, 6}, {6, 18}});
            break;
        case Icon::half:
            pen.arc({12, 12}, 9, 0, 360);
            pen.half_disc({12, 12}, 9);
            break;
        case Icon::plus:
            pen.line({{12, 5}, {12, 19}});
            pen.line({{5, 12}, {19, 12}});
            break;
        case Icon::minus:
            pen.line({{5, 12}, {19, 12}});
            break;
        case Icon::search:
            pen.circle({10.5F, 10.5F}, 6);
            pen.line({{15, 15}, {20.5F, 20.5F}});
            break;
        case Icon::day_night:
            pen.circle({12, 12}, 8);
            pen.half_disc({12, 12}, 8);
            break;
        case Icon::larger:
        case Icon::smaller:
            pen.line({{2.5F, 19}, {8, 5}, {13.5F, 19}});
            pen.line({{4.7F, 14.3F}, {11.3F, 14.3F}});
            pen.line({{16.5F, 12}, {22.5F, 12}});
            if (icon == Icon::larger) pen.line({{19.5F, 9}, {19.5F, 15}});
            break;
        case Icon::open:
            pen.line({{5, 9}, {12, 16}, {19, 9}});
            break;
        case Icon::up:
            pen.line({{5, 15}, {12, 8}, {19, 15}});
            break;
        case Icon::study:
            pen.line({{12, 5}, {22, 10}, {12, 15}, {2, 10}}, true);
            pen.line({{6.5F, 12.5F}, {6.5F, 17}, {12, 19.5F}, {17.5F, 17}, {17.5F, 12.5F}});
            pen.line({{22, 10}, {22, 16}});
            break;
        case Icon::shut:
            pen.line({{9, 5}, {16, 12}, {9, 19}});
            break;
        case Icon::pencil:
            pen.line({{5, 19}, {6, 15}, {16, 5}, {19, 8}, {9, 18}}, true);
            break;
        case Icon::boat:
            pen.line({{3, 14}, {21, 14}, {17.5F, 19.5F}, {6.5F, 19.5F}}, true);
            pen.line({{12, 14}, {12, 4}, {18, 10.5F}, {12, 10.5F}});
            break;
        case Icon::hand_over:
            pen.line({{4, 12}, {19, 12}});
            pen.line({{13, 6}, {19, 12}, {13, 18}});
            break;
        case Icon::telephone:
            pen.line({{6, 3.5F},
                      {9.5F, 4},
                      {10.5F, 8.5F},
                      {8, 10.5F},
                      {13.5F, 16},
                      {15.5F, 13.5F},
                      {20, 14.5F},
                      {20.5F, 18},
                      {17.5F, 20.5F},
                      {11, 18},
                      {6, 13},
                      {3.5F, 6.5F}},
                     true);
            break;
        case Icon::clock:
            pen.circle({12, 12}, 8.5F);
            pen.line({{12, 7}, {12, 12}, {15.5F, 14}});
            break;
        case Icon::sheet:
            pen.line({{5.5F, 3.5F}, {14.5F, 3.5F}, {18.5F, 7.5F}, {18.5F, 20.5F}, {5.5F, 20.5F}}, true);
            pen.line({{8.5F, 10.5F}, {15.5F, 10.5F}});
            pen.line({{8.5F, 13.5F}, {15.5F, 13.5F}});
            pen.line({{8.5F, 16.5F}, {13, 16.5F}});
            break;
        case Icon::gear:
            pen.circle({12, 12}, 6);
            pen.circle({12, 12}, 2.2F);
            for (int i = 0; i < 8; ++i) {
                const float a = static_cast<float>(i) * pi / 4, x = std::cos(a), y = std::sin(a);
                pen.line({{12 + 6 * x, 12 + 6 * y}, {12 + 9 * x, 12 + 9 * y}});
            }
            break;
        case Icon::plot:
            pen.line({{4, 3.5F}, {4, 20}, {21, 20}});
            pen.line({{6.5F, 16}, {10, 10}, {14, 12.5F}, {20, 5}});
            break;
        case Icon::book:
            pen.line({{12, 6.5F}, {8, 4.5F}, {3, 4.5F}, {3, 18.5F}, {8, 18.5F}, {12, 20.5F}}, false);
            pen.line({{12, 6.5F}, {16, 4.5F}, {21, 4.5F}, {21, 18.5F}, {16, 18.5F}, {12, 20.5F}}, false);
            pen.line({{12, 6.5F}, {12, 20.5F}});
            break;
        case Icon::people:
            pen.circle({8.5F, 8}, 3.6F);
            pen.line({{2.5F, 20}, {3, 16.5F}, {6, 14.5F}, {11, 14.5F}, {14, 16.5F}, {14.5F, 20}});
            pen.circle({16.5F, 9.5F}, 2.8F);
            pen.line({{17.5F, 15}, {20, 16}, {21.5F, 19}});
            break;
    }
}

void draw_hatch(ImDrawList& list, const Box& box, float stripe, ImU32 colour) {
    list.PushClipRect({box.x, box.y}, {box.right(), box.bottom()}, true);
    for (float x = box.x - box.h; x < box.right(); x += 2 * stripe) {
        list.AddQuadFilled({x, box.bottom()}, {x + stripe, box.bottom()}, {x + stripe + box.h, box.y},
                           {x + box.h, box.y}, colour);
    }
    list.PopClipRect();
}

}  // namespace hardover::window
