// Settings kept at once: the shop's in the records, the window's own by whoever holds the preferences file.
#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "app/window/app_state.hpp"
#include "app/window/records_desk.hpp"
#include "app/window/settings_page.hpp"

namespace hardover::window {

namespace {

std::string folder_of(const std::string& file) {
    return std::filesystem::path(file).parent_path().string();
}

// The choices of a rig field, the one settled on chosen; first that it is left open.
std::vector<ChoiceText> settled_choices(const Knowledge& knowledge, const char* field,
                                        const std::string& settled) {
    const Index at = find(knowledge.rig_fields, field);
    if (at == none) return {};
    std::vector<ChoiceText> choices{{"", "Asked for each job", settled.empty()}};
    for (const Word& word : knowledge.rig_fields[at].choices) {
        choices.push_back({word.id, word.text, word.id == settled});
    }
    return choices;
}

struct Apply {
    AppState& state;

    void keep(const ShopSettings& shop) const {
        const Result<void> kept = keep_shop(state.store, shop);
        state.settings_view.trouble = kept ? "" : kept.error().text();
        take_shop(state);
    }
    void operator()(const SetShop& action) const { keep(action.shop); }
    void operator()(const SetRate& action) const {
        const Result<double> rate = read_rate(action.text);
        if (!rate) {
            state.settings_view.drafts.refuse("rate", action.text, rate.error().text());
            return;
        }
        state.settings_view.drafts.drop("rate");
        ShopSettings shop = state.shop;
        shop.ways.rate = rate.value();
        keep(shop);
    }
    void operator()(const ChooseLook& action) const { state.preferences.look = action.look; }
    void operator()(const KeepStill& action) const { state.preferences.still = action.still; }
    void operator()(const ChooseTextSize& action) const {
        state.preferences.text_percent = std::clamp(action.percent, least_text, most_text);
    }
    void operator()(const OpenFolder& action) const {
        if (!state.open_outside) return;
        const Result<void> opened = state.open_outside(action.path);
        state.settings_view.folder_trouble = opened ? "" : opened.error().text();
    }
};

}  // namespace

SettingsPage make_settings_page(const AppState& state) {
    SettingsPage page;
    page.preferences = state.preferences;
    page.shop = state.shop;
    page.usual_rate = fmt::format("{}", state.knowledge.settings.shop_rate);
    page.waters = settled_choices(state.knowledge, "waters", state.shop.waters);
    page.uses = settled_choices(state.knowledge, "vessel_use", state.shop.vessel_use);
    page.records_file = state.store.path();
    page.records_folder = folder_of(page.records_file);
    page.working = state.records->page.working;
    if (state.records->page.told.at == "backup") page.backup_stopped = state.records->page.told.lines.front();
    return page;
}

void take_shop(AppState& state) {
    const Result<ShopSettings> shop = read_shop(state.store);
    if (!shop) {
        state.settings_view.trouble = shop.error().text();
        return;
    }
    // What was typed on a worksheet stays what it was.
    if (state.shop.ways.units != shop.value().ways.units) {
        for (auto& [sheet, typed] : state.sheets.typed) {
            const Index index = find(state.knowledge.worksheets, sheet);
            if (index != none) write_units(state.knowledge, index, state.shop.ways.units, typed);
        }
    }
    state.shop = shop.value();
    if (!state.job || state.job->shop == state.shop.ways) return;
    state.job = replay(state.prepared, state.job->number, state.job->events, state.shop.ways);
    forget_turning(state);
    show_job(state);
}

void carry_out_on_settings(AppState& state, const SettingsAction& action) {
    std::visit(Apply{state}, action);
}

}  // namespace hardover::window
