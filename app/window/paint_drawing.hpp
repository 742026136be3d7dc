// The painter of drawings on the screen. Texts stand where there is room for them: one that would lie on
// another moves aside, or is left out where the drawing is too small for all of them; the list of parts has
// them all in words. Knows drawings and the kit, no boat.
#pragma once

#include <string>
#include <vector>

#include "app/drawing/drawing.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

// Where a drawing lies in a box that has room around it for its texts.
drawing::Placement placement_in(const Kit& kit, const Box& box, const drawing::Drawing& drawing);

// Paints it there; the parts named are lit.
void paint_drawing(Kit& kit, const Box& box, const drawing::Drawing& drawing,
                   const std::vector<std::string>& lit);
void paint_drawing(Kit& kit, const Box& box, const drawing::Drawing& drawing, const std::string& lit = "");

}  // namespace hardover::window
