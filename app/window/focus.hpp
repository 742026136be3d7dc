// The order in which Tab visits the controls, and where the arrow keys lead. Knows boxes and names only.
#pragma once

#include <string>
#include <vector>

#include "app/window/geometry.hpp"

namespace hardover::window {

enum class Direction { left, right, up, down };

// Controls register while a frame is drawn; keys move along the order of the frame before, which is complete.
class FocusOrder {
  public:
    // Starts a new frame. The focus is dropped when its control was not drawn any more.
    void begin_frame();
    void add(const std::string& id, const Box& box, bool enabled);

    const std::string& focused() const { return focused_; }
    bool is_focused(const std::string& id) const { return !id.empty() && id == focused_; }

    void set(const std::string& id) { focused_ = id; }
    void clear() { focused_.clear(); }

    // The control that Tab goes to first while nothing has the focus.
    void start_at(const std::string& id) { start_ = id; }

    // Moves to the next or the previous enabled control, around the ends. Nothing focused: the starting one,
    // or the first or last.
    void next();
    void previous();

    // Moves to the nearest control that way. False when there is none: the caller may scroll instead.
    bool toward(Direction direction);

  private:
    struct Stop {
        std::string id;
        Box box;
    };
    void step(int by);

    std::vector<Stop> drawn_;   // this frame, so far
    std::vector<Stop> before_;  // the frame before
    std::string focused_;
    std::string start_;
};

}  // namespace hardover::window
