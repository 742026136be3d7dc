// The bar along the top and the list of keys along the bottom, the same on every screen.
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
    bool can_go_back = false;
    bool can_undo = false;
};

std::optional<Action> draw_header(Kit& kit, const Box& box, const HeaderLook& look);

struct KeyHint {
    std::string key;
    std::string does;
};

// Shows as many as fit, the first ones first.
void draw_keys(Kit& kit, const Box& box, const std::vector<KeyHint>& hints);

}  // namespace hardover::window
