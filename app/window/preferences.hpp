// How this person likes the window: theme and text size, kept in a small file.
#pragma once

#include <string>

#include "app/window/theme.hpp"
#include "rules/result/result.hpp"

namespace hardover::window {

inline constexpr int least_text = 100;  // percent
inline constexpr int most_text = 250;

struct Preferences {
    Look look = Look::light;
    int text_percent = 100;
    int projector_percent = 200;  // while a boat is projected to the class
    bool still = false;           // nothing on the screen moves by itself

    friend bool operator==(const Preferences&, const Preferences&) = default;
};

// A missing file gives the defaults. Error bad_input: not a preferences file; the window then starts with the
// defaults, says so, and puts the file aside under another name when the next choice is kept.
Result<Preferences> read_preferences(const std::string& path);

// The same of a file's text; `path` is for the error, which names line and column.
Result<Preferences> preferences_of(const std::string& text, const std::string& path);

// Makes the folder when missing. Error: cannot be written.
Result<void> write_preferences(const std::string& path, const Preferences& preferences);

}  // namespace hardover::window
