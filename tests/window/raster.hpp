// Draws what the screen would show into memory and writes it as a picture, without a graphics card.
// Knows triangles and the font atlas only.
#pragma once

#include <imgui.h>

#include <string>

#include "rules/result/result.hpp"

namespace hardover_tests {

struct PictureColour {
    int r = 0;
    int g = 0;
    int b = 0;
};

// Error: the file cannot be written.
hardover::Result<void> save_png(const ImDrawData& data, const PictureColour& ground, const std::string& path);

}  // namespace hardover_tests
