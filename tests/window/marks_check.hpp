// What must be so of every screen: nothing cut, nothing on top of something else, nothing too small to be
// pressed with a glove.
#pragma once

#include "app/window/geometry.hpp"

namespace hardover_tests {

// Checks each of them, naming the control or text that is at fault. `scale`: pixels a dp.
void check_marks(const hardover::window::Marks& marks, float scale);

}  // namespace hardover_tests
