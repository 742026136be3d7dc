// Keys and letters in the order they were pressed, fed to the screen so slowly that none is lost: the drawing
// library keeps only a key's last state per frame, so a scanner or a fast typist would lose letters.
// Knows no screen.
#pragma once

#include <deque>
#include <optional>

namespace hardover::window {

enum class Key {
    none,
    character,  // a letter, digit or space: see KeyPress::character
    backspace,
    remove,
    tab,
    enter,
    escape,
    left,
    right,
    up,
    down,
    page_up,
    page_down,
    home,
    end,
    f1,
    f5,
    f6,
    larger,   // Ctrl +
    smaller,  // Ctrl -
    normal,   // Ctrl 0
    place,    // Ctrl 1 to Ctrl 9: see KeyPress::character
    quit,     // Ctrl Q
    a,        // with Ctrl, inside a text field: select all, copy, paste, cut, redo, undo
    c,
    v,
    x,
    y,
    z,
    count
};

struct KeyPress {
    Key key = Key::none;
    char32_t character = 0;
    bool shift = false;
    bool ctrl = false;
};

class InputQueue {
  public:
    // Tells the drawing library which of our keys is which. Once per context.
    static void name_keys();

    void press(const KeyPress& press) { items_.push_back({press, true}); }
    void release(Key key) { items_.push_back({{key}, false}); }
    // A letter that arrived before the field it belongs to was open: comes first again.
    void put_back(const KeyPress& press) { items_.push_front({press, true}); }

    // Feeds what this frame can take. `typing`: a text field is open, letters belong to it. Gives at most one
    // command.
    std::optional<KeyPress> begin_frame(bool typing);

    // Keeps everything waiting for some frames, because a text field opens only then.
    void hold(int frames) { hold_ = frames; }
    bool waiting() const { return !items_.empty(); }

  private:
    struct Item {
        KeyPress press;
        bool down = true;
    };
    std::deque<Item> items_;
    int hold_ = 0;
};

}  // namespace hardover::window
