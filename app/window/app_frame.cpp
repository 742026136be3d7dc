// Chooses the screen, and reads the keys for theme and text size.
#include "app/window/app_frame.hpp"

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"

namespace hardover::window {

std::optional<Action> draw_app(Kit& kit, AppState& state) {
    std::optional<Action> action;
    if (state.job) {
        const StepCard* looked_at = state.looked_at ? &*state.looked_at : nullptr;
        action = draw_job(kit, {state.page, looked_at, state.look_up}, state.view);
    } else {
        action = draw_bench(kit, state.bench, state.bench_view);
    }
    if (kit.take(Key::f5)) action = ReloadKnowledge{};
    if (kit.take(Key::f6)) action = SwitchLook{};
    if (kit.take(Key::larger)) action = ChangeTextSize{25};
    if (kit.take(Key::smaller)) action = ChangeTextSize{-25};
    if (kit.take(Key::normal)) action = ChangeTextSize{0};
    return action;
}

}  // namespace hardover::window
