// The place Class: a boat worked together, the roster, sets, what was handed in and its figures, and a set
// being taken on this PC.
#pragma once

#include <optional>

#include "app/window/app_state.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

std::optional<Action> draw_class(Kit& kit, AppState& state);

}  // namespace hardover::window
