// The place Worksheets: all of them by topic, or one to be filled in with its result and its plot.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/sheets_state.hpp"

namespace hardover::window {

// Changes nothing of the state but what is being typed and what is unfolded.
std::optional<Action> draw_worksheets(Kit& kit, SheetsState& sheets);

}  // namespace hardover::window
