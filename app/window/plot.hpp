// Draws a plot: axes, curve with its spread, limits with their meaning beside them, and the point one is at.
#pragma once

#include "app/jobs/plot.hpp"
#include "app/window/kit.hpp"

namespace hardover::window {

// Into the flow, over its whole width.
void draw_plot(Kit& kit, const Plot& plot);

}  // namespace hardover::window
