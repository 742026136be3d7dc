// One frame of whatever screen is shown, with the keys that work everywhere.
#pragma once

#include <optional>

#include "app/window/app_state.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

std::optional<Action> draw_app(Kit& kit, AppState& state);

}  // namespace hardover::window
