// What the place Settings shows, in words: how things stand, and what can be chosen. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/page.hpp"
#include "app/jobs/shop.hpp"
#include "app/window/beside_records.hpp"
#include "app/window/preferences.hpp"

namespace hardover::window {

struct AppState;

struct SettingsPage {
    Preferences preferences;
    ShopSettings shop;
    std::string usual_rate;          // the knowledge's price of an hour: "120"
    std::vector<ChoiceText> waters;  // empty: this knowledge does not ask for it
    std::vector<ChoiceText> uses;
    std::string records_file;
    std::string records_folder;
    std::optional<WorkShown> working;  // long work on the records that is being done
    std::string backup_stopped;        // what came of a backup that was stopped; "": none was
};

SettingsPage make_settings_page(const AppState& state);

}  // namespace hardover::window
