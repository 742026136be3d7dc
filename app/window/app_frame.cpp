// Chooses the screen, and reads the keys that work everywhere.
#include "app/window/app_frame.hpp"

#include "app/window/screens/bench.hpp"
#include "app/window/screens/boat/boat.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/knowledge.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/settings.hpp"
#include "app/window/screens/study/study.hpp"
#include "app/window/screens/worksheets.hpp"

namespace hardover::window {

namespace {

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
            return draw_settings(kit, make_settings_page(state), state.settings_view);
        case Place::worksheets:
            return draw_worksheets(kit, state.sheets);
        case Place::knowledge:
            return draw_knowledge(kit, state.known);
        case Place::study:
            return draw_study(kit, state.study.page(), state.study_view);
        case Place::bench:
            break;
    }
    return draw_bench(kit, state.bench, state.bench_view);
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

std::optional<Action> draw_app(Kit& kit, AppState& state) {
    const RailLook look{state.place, state.job.has_value()};
    const std::optional<Action> rail = draw_rail(kit, look);
    std::optional<Action> action;
    if (state.listed == Listed::keys) {
        action = draw_key_list(kit, look);
    } else if (state.listed == Listed::places) {
        action = draw_place_list(kit, look);
    } else {
        action = draw_place(kit, state);
    }
    if (rail) action = rail;
    if (const auto key = key_for_everywhere(kit)) action = key;
    return action;
}

}  // namespace hardover::window
