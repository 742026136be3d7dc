#include "app/window/screens/boat/boat_layout.hpp"

#include <algorithm>

namespace hardover::window {

namespace {

constexpr float tabs_height = 48;
constexpr float views_height = 52;
constexpr float tall_controls = 128;
constexpr float low_controls = 76;
constexpr float three_from_width = 700;
constexpr float three_from_height = 420;
constexpr float main_share = 0.62F;

}  // namespace

BoatBoxes boat_boxes(float width, float height) {
    // Header, keys and form are those of the job's screen.
    const ScreenBoxes frame = job_boxes(width, height, 0, 0);
    BoatBoxes boxes;
    boxes.form = frame.form;
    boxes.low = frame.low;
    boxes.header = frame.header;
    boxes.keys = frame.keys;
    const float top = frame.header.bottom();
    Box body{0, top, width, frame.keys.y - top};
    if (boxes.form == Form::compact) {
        boxes.tabs = {0, top, width, tabs_height};
        body.y += tabs_height;
        body.h -= tabs_height;
        boxes.side = body;
    } else {
        const float side = std::clamp(width * 0.34F, 344.0F, 620.0F);
        boxes.tabs = {width - side, top, side, tabs_height};
        boxes.side = {width - side, top + tabs_height, side, body.h - tabs_height};
        body.w -= side;
    }
    const float controls = boxes.low ? low_controls : tall_controls;
    boxes.controls = {body.x, body.bottom() - controls, body.w, controls};
    body.h -= controls;
    boxes.three = body.w >= three_from_width && body.h >= three_from_height;
    if (boxes.three) {
        const float main = body.w * main_share;
        boxes.drawings[0] = {body.x, body.y, main, body.h};
        boxes.drawings[1] = {body.x + main, body.y, body.w - main, body.h / 2};
        boxes.drawings[2] = {body.x + main, body.y + body.h / 2, body.w - main, body.h / 2};
        return boxes;
    }
    if (boxes.form == Form::compact) {
        boxes.drawings[0] = body;
        return boxes;
    }
    boxes.views = {body.x, body.y, body.w, views_height};
    boxes.drawings[0] = {body.x, body.y + views_height, body.w, body.h - views_height};
    return boxes;
}

}  // namespace hardover::window
