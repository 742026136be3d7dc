// Lays buttons for choices out side by side, as many as leave every label on at most two lines.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "app/window/kit.hpp"

namespace hardover::window {

struct ChoiceCells {
    std::size_t across = 1;
    float w = 0;
    std::vector<float> heights;  // of each line
    float whole = 0;             // of all lines with the gaps between them
};

ChoiceCells choice_cells(Kit& kit, const std::vector<ChoiceLook>& looks, float width_px,
                         std::size_t most_across);

// Draws them into the flow; gives the place of the one pressed, or -1.
int draw_choice_cells(Kit& kit, const std::vector<std::string>& ids, const std::vector<ChoiceLook>& looks,
                      std::size_t most_across);

}  // namespace hardover::window
