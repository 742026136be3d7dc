// Where the parts of the boat screen stand, by window size. Pure numbers in dp.
#pragma once

#include <array>

#include "app/window/layout.hpp"

namespace hardover::window {

struct BoatBoxes {
    Form form = Form::wide;
    bool low = false;
    bool three = false;  // all views have room at once; else one, chosen by buttons in `views` or by tabs
    Box header;
    Box tabs;   // over the side column, or over everything in the compact form
    Box views;  // empty with three, and in the compact form
    std::array<Box, 3>
        drawings;  // from above, behind, the side; without `three` the first is for the one shown
    Box controls;  // wheel, trim and speed, under the drawings
    Box side;      // gauges, faults, place, rig; in the compact form instead of the drawing
    Box keys;
};

BoatBoxes boat_boxes(float width, float height);

}  // namespace hardover::window
