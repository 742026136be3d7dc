// A screen without a window: draws frames into memory, presses keys and the pointer, reads the marks.
// Needs no display and no graphics card.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "app/window/kit.hpp"

struct ImGuiContext;

namespace hardover_tests {

class Harness {
  public:
    using Draw = std::function<void(hardover::window::Kit&)>;

    Harness(float width, float height, float scale, hardover::window::Look look, Draw draw);
    ~Harness();
    Harness(const Harness&) = delete;
    Harness& operator=(const Harness&) = delete;

    void frames(int count);
    // The window pulled to another size, then settled; the views stay as they are.
    void resize(float width, float height);
    // A key that is no letter, pressed and let go, then settled.
    void press(hardover::window::Key key, bool shift = false);
    // A press as it comes from the keyboard, without a frame in between.
    void queue(const hardover::window::KeyPress& press);
    // Letters, spaces and digits as typed.
    void type(const std::string& text);
    void click(const std::string& id);
    // Leaves the pointer on it.
    void point_at(const std::string& id);
    // Presses at one place, moves to the other, lets go.
    void drag(float from_x, float from_y, float to_x, float to_y);

    const hardover::window::Marks& marks() const { return memory_.marks; }
    // The control of this id; fails the test with all ids on screen when there is none.
    const hardover::window::Mark& get(const std::string& id) const;
    bool has(const std::string& id) const;
    bool shows(const std::string& text) const;  // a text that contains it, anywhere on the screen
    std::string focused() const { return memory_.focus.focused(); }

    // The last frame as a picture file (PNG).
    void save_picture(const std::string& path) const;

  private:
    ImGuiContext* before_;  // of a harness around this one, which goes on after it
    ImGuiContext* own_;
    hardover::window::Theme theme_;
    hardover::window::KitMemory memory_;
    Draw draw_;
    float width_;
    float height_;
};

}  // namespace hardover_tests
