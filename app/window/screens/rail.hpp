// The rail of places along the left edge, and the lists that have the whole screen: all places (where there
// is no room for the rail) and all keys.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

struct RailLook {
    Place here = Place::bench;
    bool job_in_hand = false;
};

// Draws the rail where the window has room for it, and leaves the rest of the screen to the place.
std::optional<Action> draw_rail(Kit& kit, const RailLook& look);

std::optional<Action> draw_place_list(Kit& kit, const RailLook& look);

std::optional<Action> draw_key_list(Kit& kit, const RailLook& look);

}  // namespace hardover::window
