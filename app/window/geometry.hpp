// Boxes on the screen and what a person can see in them. Plain numbers: knows no drawing library.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

namespace hardover::window {

// A box by its top left corner and size. The unit is the user's: dp in layout, pixels in the kit.
struct Box {
    float x = 0;
    float y = 0;
    float w = 0;
    float h = 0;

    float right() const { return x + w; }
    float bottom() const { return y + h; }
    float middle_x() const { return x + w / 2; }
    float middle_y() const { return y + h / 2; }
    bool empty() const { return w <= 0 || h <= 0; }

    Box inset(float by) const { return {x + by, y + by, w - 2 * by, h - 2 * by}; }
    Box scaled(float by) const { return {x * by, y * by, w * by, h * by}; }
    Box meet(const Box& other) const {
        const float left = std::max(x, other.x), top = std::max(y, other.y);
        const float r = std::min(right(), other.right()), b = std::min(bottom(), other.bottom());
        return {left, top, std::max(0.0F, r - left), std::max(0.0F, b - top)};
    }
};

// What stands on the screen at one place: the same facts a person sees. Tests read these.
struct Mark {
    std::string id;  // of a control; empty for plain text
    std::string text;
    Box box;      // whole, also where scrolled out of sight
    Box visible;  // the part inside its pane
    bool control = false;
    bool enabled = true;
    bool focused = false;
    bool selected = false;
    bool cut = false;  // text shortened with an ellipsis, or running out of its box
};

using Marks = std::vector<Mark>;

}  // namespace hardover::window
