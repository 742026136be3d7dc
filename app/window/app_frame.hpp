// One frame of whatever screen is shown, with the keys that work everywhere.
#pragma once

#include <optional>

#include "app/window/app_state.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

// How large letters are: as the person likes them, and while a boat is projected so large that they are read
// across a room, however many pixels the projector has. `size` in pixels.
float text_scale(const AppState& state, float content_scale, ImVec2 size);

std::optional<Action> draw_app(Kit& kit, AppState& state);

}  // namespace hardover::window
