// The three forms. Widths were found by reading the knowledge's longest texts in each column.
#include "app/window/layout.hpp"

namespace hardover::window {

namespace {

constexpr float header_height = 60;
constexpr float low_header_height = 52;
constexpr float track_height = 40;
constexpr float tabs_height = 48;
constexpr float keys_height = 36;
constexpr float rail = 92;
constexpr float rail_from_height = 560;
constexpr float wide_from = 1188;  // 1280 without the rail
constexpr float medium_from = 860;
constexpr float low_below = 700;
constexpr float one_button = 60;   // a dock with nothing in it is lower
constexpr float least_step = 190;  // below, nobody sees what the answers are about

void share_columns(ScreenBoxes& boxes, const Box& body) {
    const bool wide = boxes.form == Form::wide;
    const float known = wide ? std::clamp(body.w * 0.22F, 286.0F, 400.0F) : 0;
    const float side = std::clamp(body.w * (wide ? 0.28F : 0.36F), 330.0F, wide ? 520.0F : 380.0F);
    boxes.now = {body.x + known, body.y, body.w - known - side, body.h};
    boxes.ahead = {boxes.now.right(), body.y, side, body.h};
    if (wide) {
        boxes.known = {body.x, body.y, known, body.h};
        return;
    }
    boxes.tabs = {boxes.ahead.x, body.y, side, tabs_height};
    boxes.ahead.y += tabs_height;
    boxes.ahead.h -= tabs_height;
    boxes.known = boxes.ahead;
}

}  // namespace

float rail_width(float width, float height) {
    return width >= medium_from + rail && height >= rail_from_height ? rail : 0;
}

ScreenBoxes job_boxes(float width, float height, float stops_height, float dock_height) {
    ScreenBoxes boxes;
    boxes.form = width >= wide_from ? Form::wide : width >= medium_from ? Form::medium : Form::compact;
    boxes.low = height < low_below;
    float top = boxes.low ? low_header_height : header_height;
    boxes.header = {0, 0, width, top};
    boxes.keys = {0, height - keys_height, width, keys_height};
    if (!boxes.low && boxes.form != Form::compact) {
        boxes.track = {0, top, width, track_height};
        top += track_height;
    }
    if (stops_height > 0) {
        boxes.stops = {0, top, width, std::min(stops_height, height * 0.28F)};
        top += boxes.stops.h;
    }
    Box body{0, top, width, height - keys_height - top};
    if (boxes.form == Form::compact) {
        boxes.tabs = {0, top, width, tabs_height};
        body.y += tabs_height;
        body.h -= tabs_height;
        boxes.known = boxes.now = boxes.ahead = body;
    } else {
        share_columns(boxes, body);
    }
    // Where answers would leave the step no room they follow it instead.
    const bool crowded = dock_height > boxes.now.h * 0.58F ||
                         (dock_height > one_button && boxes.now.h - dock_height < least_step);
    boxes.dock_inside = crowded && boxes.form == Form::compact;
    const float dock = boxes.dock_inside ? 0 : std::min(dock_height, boxes.now.h * 0.58F);
    boxes.dock = {boxes.now.x, boxes.now.bottom() - dock, boxes.now.w, dock};
    boxes.now.h -= dock;
    return boxes;
}

BenchBoxes bench_boxes(float width, float height) {
    BenchBoxes boxes;
    boxes.header = {0, 0, width, header_height};
    boxes.keys = {0, height - keys_height, width, keys_height};
    boxes.body = {0, header_height, width, height - header_height - keys_height};
    return boxes;
}

}  // namespace hardover::window
