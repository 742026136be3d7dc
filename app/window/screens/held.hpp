// A band over every place while work beside the window has the records to itself: what is being done, how far
// it has come, what was refused because of it, and the way to stop it.
#pragma once

#include <optional>

#include "app/window/app_state.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

// Takes its room from the top of the screen. Nothing where the place in hand tells of the work itself and
// nothing was refused.
std::optional<Action> draw_held(Kit& kit, const AppState& state);

}  // namespace hardover::window
