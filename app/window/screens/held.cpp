#include "app/window/screens/held.hpp"

#include <algorithm>

#include "app/window/records_held.hpp"

namespace hardover::window {

std::optional<Action> draw_held(Kit& kit, const AppState& state) {
    const WorkShown* work = work_that_holds(state);
    if (work == nullptr || (state.place == shown_at(*work) && state.held_up.empty())) return std::nullopt;
    const std::string what = work->what + (work->progress.empty() ? "" : ", " + work->progress);
    const std::string said =
        state.held_up.empty() ? "Answers are taken again when this has ended." : state.held_up;
    const ButtonLook stop{.label = "Stop it"};
    const float pad = kit.px(12), button = work->can_stop ? kit.button_width(stop) + pad : 0;
    const float room = kit.screen().w - 2 * pad - button;
    const float first = kit.text_height(what, Type::strong, room);
    const float second = kit.text_height(said, Type::body, room);
    const float h = std::max(kit.px(48), first + second) + 2 * kit.px(8);
    const Box band{kit.screen().x, kit.screen().y, kit.screen().w, h};
    kit.leave_room_at_top(h);
    kit.fill(band, Role::safety_tint);
    kit.fill({band.x, band.y, kit.px(4), band.h}, Role::safety);
    kit.hairline({band.x, band.bottom() - kit.px(1), band.w, kit.px(1)});
    const float top = band.y + (band.h - first - second) / 2;
    kit.wrapped_in({band.x + pad, top, room, first}, what, Type::strong, Role::ink);
    kit.wrapped_in({band.x + pad, top + first, room, second}, said, Type::body, Role::ink);
    const Box at{band.right() - button, band.middle_y() - kit.px(24), button - pad, kit.px(48)};
    if (!work->can_stop || !kit.button("held.stop", at, stop)) return std::nullopt;
    return RecordsAction{StopRecordsWork{}};
}

}  // namespace hardover::window
