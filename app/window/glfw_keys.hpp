// The system's keys as ours.
#pragma once

#include "app/window/input.hpp"

namespace hardover::window {

// Key::none when the key means nothing here. `key` and `mods` as GLFW gives them. With Ctrl the letter
// printed on the key counts, whatever the layout.
Key key_from_glfw(int key, int scancode, int mods);

}  // namespace hardover::window
