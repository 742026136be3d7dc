// The bench: jobs in hand, jobs handed back, and starting a new one. The first thing seen.
#pragma once

#include <optional>

#include "app/window/kit.hpp"
#include "app/window/pages.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

std::optional<Action> draw_bench(Kit& kit, const BenchPage& page, BenchView& view,
                                 const std::function<void()>& below = {});

}  // namespace hardover::window
