// Header and key list.
#include "app/window/screens/bars.hpp"

namespace hardover::window {

namespace {

// A button at the right end of what is left of the header.
bool end_button(Kit& kit, Box& room, const std::string& id, const ButtonLook& look) {
    const float w = kit.button_width(look);
    const Box box{room.right() - w, room.middle_y() - kit.px(22), w, kit.px(44)};
    room.w -= w + kit.px(4);
    return kit.button(id, box, look);
}

}  // namespace

std::optional<Action> draw_header(Kit& kit, const Box& box, const HeaderLook& look) {
    std::optional<Action> action;
    kit.fill(box, Role::bridge);
    Box room{box.x + kit.px(10), box.y, box.w - kit.px(20), box.h};
    const bool roomy = box.w > kit.px(900);
    if (box.x == 0) {
        const ButtonLook list{.icon = Icon::menu, .face = Face::bridge, .name = "All places"};
        if (kit.button("bar.places", {room.x, room.middle_y() - kit.px(22), kit.px(44), kit.px(44)}, list))
            action = ListPlaces{};
        room.x += kit.px(52);
        room.w -= kit.px(52);
    } else {
        room.x += kit.px(8);
        room.w -= kit.px(8);
    }
    if (look.can_undo) {
        const ButtonLook undo{.label = roomy ? "Undo" : "",
                              .icon = Icon::undo,
                              .face = Face::bridge,
                              .name = "Undo the last entry"};
        const float w = kit.button_width(undo);
        // Keeps its place left of the fixed three, and comes before them in Tab order.
        const Box at{room.right() - 3 * kit.px(54) - w, room.middle_y() - kit.px(22), w, kit.px(44)};
        if (kit.button("bar.undo", at, undo)) action = UndoLast{};
    }
    Box end = room;
    if (end_button(kit, end, "bar.look",
                   {.icon = Icon::day_night, .face = Face::bridge, .name = "Another theme"})) {
        action = SwitchLook{};
    }
    if (end_button(kit, end, "bar.larger",
                   {.icon = Icon::larger, .face = Face::bridge, .name = "Larger text"})) {
        action = ChangeTextSize{25};
    }
    if (end_button(kit, end, "bar.smaller",
                   {.icon = Icon::smaller, .face = Face::bridge, .name = "Smaller text"})) {
        action = ChangeTextSize{-25};
    }
    if (look.can_undo) end.w -= kit.px(roomy ? 130 : 54);
    const float title = std::min(end.w, kit.text_width(look.title, Type::h2) + 1);
    kit.line_in({end.x, end.y, title, end.h}, look.title, Type::h2, Role::on_bridge);
    const float left = end.w - title - kit.px(16);
    if (!look.beside.empty() && left > kit.px(120)) {
        kit.line_in({end.x + title + kit.px(16), end.y + kit.px(1), left, end.h}, look.beside, Type::body,
                    Role::on_bridge2);
    }
    return action;
}

void draw_keys(Kit& kit, const Box& box, std::vector<KeyHint> hints) {
    for (const KeyHint& everywhere :
         {KeyHint{"F1", "all keys"}, KeyHint{"Tab", "next"}, KeyHint{"Enter", "press"},
          KeyHint{"Ctrl 1-9", "another place"}, KeyHint{"F6", "another theme"}, KeyHint{"Ctrl +", "larger"},
          KeyHint{"Ctrl -", "smaller"}, KeyHint{"Ctrl 0", "normal size"},
          KeyHint{"F5", "read knowledge anew"}, KeyHint{"Page down", "further down"},
          KeyHint{"Ctrl Q", "close"}}) {
        hints.push_back(everywhere);
    }
    kit.set_hints(hints);
    kit.fill(box, Role::panel);
    kit.hairline({box.x, box.y, box.w, kit.px(1)});
    float x = box.x + kit.px(16);
    for (const KeyHint& hint : hints) {
        const float cap = kit.key_cap_width(hint.key);
        const float word = kit.text_width(hint.does, Type::small) + 1;
        if (x + cap + kit.px(8) + word > box.right() - kit.px(8)) break;
        kit.key_cap({x, box.middle_y() - kit.px(13), cap, kit.px(26)}, hint.key);
        x += cap + kit.px(8);
        kit.line_in({x, box.y, word, box.h}, hint.does, Type::small, Role::ink2);
        x += word + kit.px(20);
    }
}

}  // namespace hardover::window
