// Small pictures drawn with lines: no files, sharp at every size. Knows nothing of what they are used for.
#pragma once

#include <imgui.h>

#include "app/window/geometry.hpp"

namespace hardover::window {

enum class Icon {
    none,
    menu,   // three lines
    bench,  // a workbench
    wheel,  // a wheel put hard over
    back,
    undo,
    caution,  // triangle
    stop,     // octagon
    tick,
    cross,
    half,  // a disc, one half of it empty
    plus,
    minus,
    search,
    day_night,
    larger,
    smaller,
    open,   // chevron down
    shut,   // chevron right
    up,     // chevron up
    study,  // a square cap
    pencil,
    boat,
    hand_over,
    telephone,
    clock,
    sheet,  // a page with lines
    gear,
    plot,  // a curve over two axes
    book,
    people  // two heads
};

// Draws into the box (square, centred) with one colour; lines are a tenth of the box wide.
void draw_icon(ImDrawList& list, Icon icon, const Box& box, ImU32 colour);

// Slanted stripes over a box, for cautions and stops.
void draw_hatch(ImDrawList& list, const Box& box, float stripe, ImU32 colour);

}  // namespace hardover::window
