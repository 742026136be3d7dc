// The rail and the two lists.
#include "app/window/screens/rail.hpp"

#include "app/window/layout.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/choices.hpp"

namespace hardover::window {

namespace {

constexpr float mark_height = 60;   // the program's mark, as high as the header
constexpr float entry_height = 64;  // at the most

bool can_go(const RailLook& look, Place place) {
    return place != Place::job || look.job_in_hand;
}

void draw_entry(Kit& kit, const Box& box, const PlaceRow& row, const RailLook& look,
                std::optional<Action>& action) {
    const bool here = row.place == look.here, enabled = can_go(look, row.place);
    const Kit::Touch touch = kit.touch("place." + row.id, box, row.label, enabled, here);
    if (here || touch.over) kit.fill(box.inset(kit.px(4)), Role::bridge_raised, 8);
    if (here) kit.fill({box.x, box.y + kit.px(8), kit.px(4), box.h - kit.px(16)}, Role::on_bridge, 2);
    const Role ink = enabled ? Role::on_bridge : Role::on_bridge2;
    const float line = kit.theme().line_height(Type::caps);
    const float icon = kit.px(24), top = box.y + (box.h - icon - line) / 2 - kit.px(1);
    kit.icon({box.middle_x() - icon / 2, top, icon, icon}, row.icon, ink);
    kit.line_in({box.x + kit.px(2), top + icon + kit.px(2), box.w - kit.px(4), line}, row.label, Type::caps,
                ink, Align::centre);
    if (touch.pressed) action = GoTo{row.place};
}

// A list that has the screen to itself: header, body, keys.
template <typename Content>
std::optional<Action> draw_list(Kit& kit, const char* title, Content content) {
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    std::optional<Action> action = draw_header(kit, kit.placed(boxes.header), {title, "", false});
    const float spare = std::max(0.0F, boxes.body.w - 900) / 2;
    kit.pane(title, kit.placed(boxes.body), {.pad_x = 20 + spare, .pad_y = 20, .main = true},
             [&] { content(action); });
    return action;
}

// In as many columns as there is room for, read downwards.
void draw_hints(Kit& kit, const std::vector<KeyHint>& hints) {
    const float cap = kit.px(120), line = kit.px(38);
    const auto columns = static_cast<std::size_t>(std::max(1.0F, kit.width() / kit.px(400)));
    const std::size_t lines = (hints.size() + columns - 1) / columns;
    const Box all = kit.take(static_cast<float>(lines) * line);
    const float w = all.w / static_cast<float>(columns);
    for (std::size_t i = 0; i < hints.size(); ++i) {
        const Box at{all.x + static_cast<float>(i / lines) * w, all.y + static_cast<float>(i % lines) * line,
                     w, line};
        kit.key_cap({at.x, at.middle_y() - kit.px(14), kit.key_cap_width(hints[i].key), kit.px(28)},
                    hints[i].key);
        kit.line_in({at.x + cap, at.y, at.w - cap - kit.px(8), at.h}, hints[i].does, Type::body, Role::ink);
    }
}

}  // namespace

std::optional<Action> draw_rail(Kit& kit, const RailLook& look) {
    std::optional<Action> action;
    const Box screen = kit.screen();
    const float w = kit.px(rail_width(screen.w / kit.px(1), screen.h / kit.px(1)));
    if (w == 0) return action;
    kit.fill({screen.x, screen.y, w, screen.h}, Role::bridge);
    kit.icon({screen.x + w / 2 - kit.px(17), screen.y + kit.px(13), kit.px(34), kit.px(34)}, Icon::wheel,
             Role::on_bridge);
    const auto count = static_cast<float>(places().size());
    const float room = screen.h - kit.px(mark_height + 8);
    const float h = std::min(kit.px(entry_height), room / count);
    float y = screen.y + kit.px(mark_height);
    for (const PlaceRow& row : places()) {
        draw_entry(kit, {screen.x, y, w, h}, row, look, action);
        y += h;
    }
    kit.leave_room_for_rail(w);
    return action;
}

std::optional<Action> draw_place_list(Kit& kit, const RailLook& look) {
    std::vector<std::string> ids;
    std::vector<ChoiceLook> looks;
    std::vector<Place> open;
    for (std::size_t i = 0; i < places().size(); ++i) {
        const PlaceRow& row = places()[i];
        if (!can_go(look, row.place)) continue;
        ids.push_back("list." + row.id);
        looks.push_back({.label = row.label, .selected = row.place == look.here});
        open.push_back(row.place);
    }
    std::optional<Action> action = draw_list(kit, "All places", [&](std::optional<Action>& pressed) {
        kit.tab_starts_here();
        const int place = draw_choice_cells(kit, ids, looks, 2);
        if (place >= 0) pressed = GoTo{open[static_cast<std::size_t>(place)]};
    });
    const BenchBoxes boxes = bench_boxes(kit.screen().w / kit.px(1), kit.screen().h / kit.px(1));
    draw_keys(kit, kit.placed(boxes.keys), {{"Esc", "back"}});
    if (kit.take(Key::escape)) action = GoTo{look.here};
    return action;
}

std::optional<Action> draw_key_list(Kit& kit, const RailLook& look) {
    std::optional<Action> action = draw_list(kit, "All keys", [&](std::optional<Action>& pressed) {
        const ButtonLook back{.label = "Back", .icon = Icon::back, .face = Face::primary, .key = "Esc"};
        const Box top = kit.take(kit.px(52));
        kit.tab_starts_here();
        if (kit.button("keys.back", {top.x, top.y, kit.button_width(back), top.h}, back)) {
            pressed = SwitchKeyList{};
        }
        kit.gap(12);
        kit.text("At the place “" + row_of(look.here).label + "” and everywhere", Type::h2, Role::ink);
        kit.gap(8);
        draw_hints(kit, kit.hints());
    });
    if (kit.take(Key::escape)) action = SwitchKeyList{};
    return action;
}

}  // namespace hardover::window
