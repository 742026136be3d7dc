// Kit: buttons, answers, folds and text fields.
#include <imgui_internal.h>
#include <imgui_stdlib.h>

#include "app/window/kit.hpp"

namespace hardover::window {

namespace {

constexpr float cap_side = 30;   // dp
constexpr float icon_side = 22;  // dp
constexpr float choice_pad = 13;
constexpr float side_letter_side = 24;
constexpr float tick_room = 30;

// A text that names its unit itself, by letters or a sign such as ° or ", needs none behind it.
std::string_view unit_behind(std::string_view text, std::string_view unit) {
    const bool names_unit = text.find_first_not_of("0123456789 .,/-+\xC2\xB1") != std::string_view::npos;
    return names_unit || unit == "count" ? std::string_view() : unit;
}

}  // namespace

void Kit::register_control(const std::string& id, const Box& box, std::string_view text, bool enabled,
                           bool selected) {
    const ImVec2 low = list().GetClipRectMin(), high = list().GetClipRectMax();
    Mark mark;
    mark.id = id;
    mark.text = text;
    mark.box = box;
    mark.visible = box.meet({low.x, low.y, high.x - low.x, high.y - low.y});
    mark.control = true;
    mark.enabled = enabled;
    mark.focused = memory_.focus.is_focused(id);
    mark.selected = selected;
    marks_.push_back(mark);
    memory_.focus.add(id, box, enabled);
    if (start_next_ && enabled) {
        memory_.focus.start_at(id);
        start_next_ = false;
    }
    bring_into_sight(id, box);
}

void Kit::focus_ring(const Box& box, float round_dp) {
    outline(box.inset(-px(2)), Role::ring_outer, 5, round_dp + 2);
    outline(box.inset(-px(2)), Role::ring_inner, 2.5F, round_dp + 2);
}

Kit::Touch Kit::touch(const std::string& id, const Box& box, std::string_view text, bool enabled,
                      bool selected) {
    register_control(id, box, text, enabled, selected);
    Touch touch;
    touch.focused = memory_.focus.is_focused(id);
    if (memory_.open_field == id) memory_.open_field.clear();  // not a field
    if (!enabled) return touch;
    ImGui::SetCursorScreenPos({box.x, box.y});
    const bool clicked = ImGui::InvisibleButton(id.c_str(), {std::max(1.0F, box.w), std::max(1.0F, box.h)});
    touch.over = ImGui::IsItemHovered();
    touch.pressed = (clicked && !memory_.dragging) || (touch.focused && pressed_key_);
    if (clicked && !memory_.dragging) memory_.focus.set(id);
    return touch;
}

Kit::Grip Kit::grip(const std::string& id, const Box& box, std::string_view text) {
    const Touch t = touch(id, box, text);
    Grip grip;
    grip.over = t.over;
    grip.focused = t.focused;
    grip.held = ImGui::IsItemActive();
    grip.started = ImGui::IsItemActivated();
    const ImVec2 pointer = ImGui::GetIO().MousePos;
    grip.x = pointer.x;
    grip.y = pointer.y;
    if (grip.held) memory_.holding = true;
    const bool first = grips_.empty();
    grips_.push_back(id);
    if (!grip.focused && !(first && memory_.focus.focused().empty())) return grip;
    if (take(Key::left)) grip.steps = -1;
    if (take(Key::right)) grip.steps = 1;
    return grip;
}

float Kit::button_width(const ButtonLook& look) const {
    float w = px(28);
    if (look.icon != Icon::none) w += px(icon_side);
    if (!look.label.empty()) w += text_width(look.label, Type::strong);
    if (look.icon != Icon::none && !look.label.empty()) w += px(8);
    if (!look.key.empty()) w += px(10) + key_cap_width(look.key);
    return std::max(w, px(44));
}

bool Kit::button(const std::string& id, const Box& box, const ButtonLook& look) {
    const Touch t = touch(id, box, look.label.empty() ? look.name : look.label, look.enabled, look.selected);
    Role face = Role::raised, ink = Role::ink;
    switch (look.face) {
        case Face::plain:
            face = t.over ? Role::raised_over : Role::raised;
            break;
        case Face::primary:
            face = t.over ? Role::accent_over : Role::accent;
            ink = Role::on_accent;
            break;
        case Face::quiet:
            ink = Role::accent;
            break;
        case Face::bridge:
            face = Role::bridge_raised;
            ink = Role::on_bridge;
            break;
    }
    if (!look.enabled) {
        face = look.face == Face::bridge ? Role::bridge : Role::panel;
        ink = look.face == Face::bridge ? Role::on_bridge2 : Role::ink2;
    }
    const bool bare =
        (look.face == Face::quiet && !t.over) || (look.face == Face::bridge && !t.over && !look.selected);
    if (look.selected && look.face != Face::bridge) face = Role::accent_tint;
    if (!bare || look.selected) fill(box, face, 8);
    if (look.selected && look.face != Face::bridge) {
        outline(box, Role::accent, 2.5F, 8);
    } else if (look.face == Face::plain || (!look.enabled && look.face == Face::primary)) {
        outline(box, look.enabled ? Role::outline : Role::hairline, 1.5F, 8);
    }
    const float wanted = button_width(look) - px(28);
    float x = box.x + (look.spread ? px(14) : std::max(px(10), (box.w - wanted) / 2));
    if (look.icon != Icon::none) {
        icon({x, box.middle_y() - px(icon_side) / 2, px(icon_side), px(icon_side)}, look.icon, ink);
        x += px(icon_side + 8);
    }
    const float cap = look.key.empty() ? 0 : key_cap_width(look.key);
    const float end = box.right() - px(6) - (cap > 0 ? cap + px(6) : 0);
    if (!look.label.empty()) {
        const float w = std::min(end - x, text_width(look.label, Type::strong) + 1);
        line_in({x, box.y, w, box.h}, look.label, Type::strong, ink);
        x += w + px(10);
    }
    if (look.spread) x = box.right() - px(11) - cap;
    if (cap > 0) key_cap({x, box.middle_y() - px(13), cap, px(26)}, look.key, look.face == Face::primary);
    if (t.focused) focus_ring(box, 8);
    return t.pressed;
}

float Kit::choice_height(const ChoiceLook& look, float width_px) const {
    const float cap = look.cap.empty() ? 0 : std::max(px(cap_side), key_cap_width(look.cap)) + px(12);
    const float side = look.side == 0 ? 0 : px(side_letter_side + 10);
    const float tick = look.selected ? px(tick_room) : 0;
    const float room = width_px - 2 * px(choice_pad) - cap - side - tick;
    float h = text_height(look.label, Type::strong, room);
    if (!look.note.empty()) h += px(2) + text_height(look.note, Type::small, room);
    return std::max(px(56), h + 2 * px(choice_pad));
}

bool Kit::choice(const std::string& id, const Box& box, const ChoiceLook& look) {
    const Touch t = touch(id, box, look.label, true, look.selected);
    fill(box, look.selected ? Role::accent_tint : t.over ? Role::raised_over : Role::raised, 8);
    if (look.selected) {
        outline(box, Role::accent, 3, 8);
    } else {
        outline(box, look.quiet ? Role::hairline : Role::outline, look.quiet ? 1.5F : 2, 8);
    }
    float x = box.x + px(choice_pad);
    if (!look.cap.empty()) {
        const float w = std::max(px(cap_side), key_cap_width(look.cap));
        key_cap({x, box.middle_y() - px(cap_side) / 2, w, px(cap_side)}, look.cap);
        x += w + px(12);
    }
    if (look.side != 0) {
        const float side = px(side_letter_side);
        side_letter({x, box.middle_y() - side / 2, side, side}, look.side);
        x += side + px(10);
    }
    Box room{x, box.y, box.right() - px(choice_pad) - x, box.h};
    if (look.selected) {
        room.w -= px(tick_room);
        icon({box.right() - px(choice_pad + 22), box.middle_y() - px(11), px(22), px(22)}, Icon::tick,
             Role::accent);
    }
    if (look.note.empty()) {
        wrapped_in(room, look.label, look.quiet ? Type::body : Type::strong, Role::ink);
    } else {
        const float label = text_height(look.label, Type::strong, room.w);
        const float note = text_height(look.note, Type::small, room.w);
        const float top = box.middle_y() - (label + px(2) + note) / 2;
        wrapped_in({x, top, room.w, label}, look.label, Type::strong, Role::ink);
        wrapped_in({x, top + label + px(2), room.w, note}, look.note, Type::small, Role::ink2);
    }
    if (t.focused) focus_ring(box, 8);
    return t.pressed;
}

bool Kit::fold(const std::string& id, std::string_view label, bool open) {
    const Box box = take(std::max(px(44), text_height(label, Type::strong, width() - px(30)) + px(12)));
    const Touch t = touch(id, box, label, true, open);
    if (t.over) fill(box, Role::raised_over, 8);
    icon({box.x, box.middle_y() - px(9), px(18), px(18)}, open ? Icon::open : Icon::shut, Role::accent);
    wrapped_in({box.x + px(28), box.y, box.w - px(30), box.h}, label, Type::strong, Role::accent);
    if (t.focused) focus_ring(box, 8);
    return t.pressed;
}

std::string with_shown_unit(const std::string& text, std::string_view unit) {
    const std::string_view behind = unit_behind(text, unit);
    const bool number = text.find_first_of("0123456789") != std::string::npos;
    return number && !behind.empty() ? text + " " + std::string(behind) : text;
}

FieldEvent Kit::field(const std::string& id, const Box& box, std::string& text, const FieldLook& look) {
    register_control(id, box, look.name, true, false);
    const bool focused = memory_.focus.is_focused(id);
    FieldEvent event;
    fill(box, look.wrong ? Role::wrong_tint : Role::raised, 8);
    outline(box, look.wrong ? Role::wrong : Role::outline, look.wrong ? 2.5F : 2, 8);
    float left = px(12), right = px(12);
    if (look.icon != Icon::none) {
        icon({box.x + px(12), box.middle_y() - px(11), px(22), px(22)}, look.icon, Role::ink2);
        left += px(30);
    }
    const std::string_view unit = unit_behind(text, look.unit);
    if (!unit.empty()) right += text_width(unit, Type::body) + px(12);
    const std::string before = text;
    ImGui::PushFont(theme_.font(Type::body));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {0, (box.h - theme_.font(Type::body)->FontSize) / 2});
    ImGui::SetCursorScreenPos({box.x + left, box.y});
    ImGui::SetNextItemWidth(box.w - left - right);
    if (memory_.open_field == id || (focused && pressed_key_)) ImGui::SetKeyboardFocusHere();
    ImGui::PushID(id.c_str());
    const std::string hint(look.placeholder);
    ImGuiInputTextFlags flags = ImGuiInputTextFlags_EnterReturnsTrue;
    if (look.hidden) flags |= ImGuiInputTextFlags_Password;
    const bool entered = ImGui::InputTextWithHint("##text", hint.c_str(), &text, flags);
    ImGui::PopID();
    ImGui::PopStyleVar();
    ImGui::PopFont();
    event.edited = text != before;
    event.entered = entered;
    event.committed = entered || ImGui::IsItemDeactivatedAfterEdit();
    if (ImGui::IsItemActivated()) {
        memory_.focus.set(id);
        if (memory_.open_field == id) memory_.open_field.clear();
    }
    if (ImGui::IsItemActive()) {
        memory_.typing = true;
        if (take(Key::escape)) {
            ImGui::ClearActiveID();
            memory_.typing = false;
            event.cancelled = true;
            event.committed = false;
        }
    }
    if (!unit.empty()) {
        line_in({box.right() - right, box.y, right - px(12), box.h}, unit, Type::body, Role::ink2,
                Align::right);
    }
    if (memory_.focus.is_focused(id)) focus_ring(box, 8);
    return event;
}

}  // namespace hardover::window
