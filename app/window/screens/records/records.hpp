// The shop's records on two screens: on the bench jobs found among many, photos, files going out and coming
// in; in the settings backups and a look through everything.
#pragma once

#include <optional>

#include "app/window/app_state.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

// Both draw into the pane they are called in.
std::optional<Action> draw_records_on_bench(Kit& kit, AppState& state);
std::optional<Action> draw_records_in_settings(Kit& kit, AppState& state);

}  // namespace hardover::window
