// The boat: its drawing to be steered, trimmed and pressed on, the gauges of the sound boat beside those with
// a fault, faults to put in, and the findings and causes at a part. Everything shown is the desk's.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

std::optional<Action> draw_boat(Kit& kit, const BoatDesk& desk, BoatView& view);

}  // namespace hardover::window
