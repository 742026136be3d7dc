// Settings: units, theme, text size, the shop, new jobs, the records. Everything is kept at once.
#pragma once

#include <optional>

#include "app/window/actions.hpp"
#include "app/window/kit.hpp"
#include "app/window/settings_page.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

std::optional<Action> draw_settings(Kit& kit, const SettingsPage& page, SettingsView& view,
                                    const std::function<void()>& below = {});

}  // namespace hardover::window
