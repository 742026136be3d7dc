// The bar along the top and the list of keys along the bottom, the same on every screen. Without a rail at
// its side the bar begins with the way to the list of places.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

struct HeaderLook {
    std::string title;
    std::string beside;  // after the title, fainter
    bool can_undo = false;
};

std::optional<Action> draw_header(Kit& kit, const Box& box, const HeaderLook& look);

// The screen's own keys and those that work everywhere. Shows as many as fit, the first ones first; F1 lists
// all.
void draw_keys(Kit& kit, const Box& box, std::vector<KeyHint> hints);

}  // namespace hardover::window
