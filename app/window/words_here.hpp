// Refusals of the boxes below name the command that helps; in the window the same help is a button. Knows no
// screen.
#pragma once

#include <string>

namespace hardover::window {

// The text with every command in it replaced by the place in the window that does the same; any other text as
// it is.
std::string words_here(const std::string& text);

}  // namespace hardover::window
