// Chooses the screen, and reads the keys that work everywhere.
#include "app/window/app_frame.hpp"

#include "app/window/screens/bench.hpp"
#include "app/window/screens/boat/boat.hpp"
#include "app/window/screens/class/class.hpp"
#include "app/window/screens/held.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/knowledge.hpp"
#include "app/window/screens/project/project.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/records/records.hpp"
#include "app/window/screens/settings.hpp"
#include "app/window/screens/study/study.hpp"
#include "app/window/screens/worksheets.hpp"

namespace hardover::window {

namespace {

// At 200 % a projected page has at most so many dp, whatever the projector's pixels.
constexpr float projected_width = 1066;
constexpr float projected_height = 600;

// A place that has something of the records below its own.
template <typename Records, typename Place>
std::optional<Action> with_records(Kit& kit, AppState& state, Records records, Place place) {
    std::optional<Action> of_records;
    std::optional<Action> action = place([&] { of_records = records(kit, state); });
    return action ? action : of_records;
}

std::optional<Action> draw_place(Kit& kit, AppState& state) {
    switch (state.place) {
        case Place::job:
            return draw_job(kit,
                            {state.page, state.looked_at ? &*state.looked_at : nullptr, state.look_up,
                             &state.outlook, state.turning ? &*state.turning : nullptr,
                             state.background != nullptr && state.background->working_on(turning_work)},
                            state.view);
        case Place::boat:
            return draw_boat(kit, state.boat, state.boat_view);
        case Place::settings:
            return with_records(
                kit, state, draw_records_in_settings, [&](const std::function<void()>& below) {
                    return draw_settings(kit, make_settings_page(state), state.settings_view, below);
                });
        case Place::worksheets:
            return draw_worksheets(kit, state.sheets);
        case Place::knowledge:
            return draw_knowledge(kit, state.known);
        case Place::study:
            return draw_study(kit, state.study.page(), state.study_view);
        case Place::classroom:
            return draw_class(kit, state);
        case Place::bench:
            break;
    }
    return with_records(kit, state, draw_records_on_bench, [&](const std::function<void()>& below) {
        return draw_bench(kit, state.bench, state.bench_view, below);
    });
}

std::optional<Action> key_for_everywhere(Kit& kit) {
    if (const auto digit = kit.take_place()) {
        const auto at = static_cast<std::size_t>(*digit - 1);
        if (at < places().size()) return GoTo{places()[at].place};
    }
    if (kit.take(Key::f1)) return SwitchKeyList{};
    if (kit.take(Key::f5)) return ReloadKnowledge{};
    if (kit.take(Key::f6)) return SwitchLook{};
    if (kit.take(Key::larger)) return ChangeTextSize{25};
    if (kit.take(Key::smaller)) return ChangeTextSize{-25};
    if (kit.take(Key::normal)) return ChangeTextSize{0};
    return std::nullopt;
}

}  // namespace

float text_scale(const AppState& state, float content_scale, ImVec2 size) {
    const auto share = [](int percent) { return static_cast<float>(percent) / 100; };
    float wanted = content_scale * share(state.preferences.text_percent);
    if (is_projecting(state)) {
        const float projected = share(state.preferences.projector_percent);
        const float page = std::min(size.x / projected_width, size.y / projected_height);
        wanted = std::max({wanted, content_scale * projected, page * projected / 2});
    }
    return scale_for(wanted, size.x, size.y);
}

std::optional<Action> draw_app(Kit& kit, AppState& state) {
    const bool projecting = is_projecting(state) && state.listed == Listed::nothing;
    if (projecting) {
        const std::optional<Action> held = draw_held(kit, state);
        std::optional<Action> action =
            draw_project(kit, state.project, state.project_view, state.preferences.still);
        if (held) action = held;
        if (const auto key = key_for_everywhere(kit)) action = key;
        return action;
    }
    const RailLook look{state.place, state.job.has_value()};
    const std::optional<Action> rail = draw_rail(kit, look);
    const std::optional<Action> held = draw_held(kit, state);
    std::optional<Action> action;
    if (state.listed == Listed::keys) {
        action = draw_key_list(kit, look);
    } else if (state.listed == Listed::places) {
        action = draw_place_list(kit, look);
    } else {
        action = draw_place(kit, state);
    }
    if (rail) action = rail;
    if (held) action = held;
    if (const auto key = key_for_everywhere(kit)) action = key;
    return action;
}

}  // namespace hardover::window
