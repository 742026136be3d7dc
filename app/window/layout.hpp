// Where the parts of a screen stand, by window size. Pure numbers in dp (pixels at 100 %).
#pragma once

#include "app/window/geometry.hpp"

namespace hardover::window {

enum class Form {
    wide,    // known | now | ahead
    medium,  // now | one side column with tabs
    compact  // one column with tabs
};

struct ScreenBoxes {
    Form form = Form::wide;
    bool low = false;  // little height: smaller heading, no phase track
    Box header;
    Box track;  // phases of the job; empty when low or narrow
    Box stops;  // empty when there are none
    Box tabs;   // compact and medium; over the columns they switch
    Box known;  // what has been answered
    Box now;    // the step in hand
    Box dock;   // the answers to it, under `now`; empty when they go inside it
    bool dock_inside = false;
    Box ahead;  // causes and plan
    Box keys;   // list of keys along the bottom
};

// The rail of places stands at the left edge where there is room for it; else the list of places has a screen
// of its own. Gives its width, or 0.
float rail_width(float width, float height);

// `stops_height` and `dock_height` are what their contents ask for; both are limited so that the step keeps
// room: they scroll then, or, in a small window, the answers stand at the end of the step (`dock_inside`).
// In the compact form known, now and ahead share one place; the dock belongs to now.
ScreenBoxes job_boxes(float width, float height, float stops_height, float dock_height);

// The column for a screen with one body: at most 1180 dp wide, in the middle.
struct BenchBoxes {
    Box header;
    Box body;
    Box keys;
};
BenchBoxes bench_boxes(float width, float height);

}  // namespace hardover::window
