// Feeding keys: to an open text field one change per key and frame, to the screen one command per frame.
#include "app/window/input.hpp"

#include <imgui.h>

#include <cfloat>
#include <set>

namespace hardover::window {

namespace {

bool belongs_to_field(const KeyPress& press) {
    switch (press.key) {
        case Key::character:
        case Key::backspace:
        case Key::remove:
        case Key::enter:
        case Key::left:
        case Key::right:
        case Key::home:
        case Key::end:
            return true;
        case Key::a:
        case Key::c:
        case Key::v:
        case Key::x:
        case Key::y:
        case Key::z:
            return press.ctrl;
        default:
            return false;
    }
}

}  // namespace

void InputQueue::name_keys() {
    ImGuiIO& io = ImGui::GetIO();
    for (int& key : io.KeyMap) key = -1;
    const auto name = [&](ImGuiKey theirs, Key ours) { io.KeyMap[theirs] = static_cast<int>(ours); };
    name(ImGuiKey_Backspace, Key::backspace);
    name(ImGuiKey_Delete, Key::remove);
    name(ImGuiKey_Enter, Key::enter);
    name(ImGuiKey_LeftArrow, Key::left);
    name(ImGuiKey_RightArrow, Key::right);
    name(ImGuiKey_Home, Key::home);
    name(ImGuiKey_End, Key::end);
    name(ImGuiKey_A, Key::a);
    name(ImGuiKey_C, Key::c);
    name(ImGuiKey_V, Key::v);
    name(ImGuiKey_X, Key::x);
    name(ImGuiKey_Y, Key::y);
    name(ImGuiKey_Z, Key::z);
    io.KeyRepeatDelay = FLT_MAX;  // a held key repeats as the system says: each repeat comes as a press
}

std::optional<KeyPress> InputQueue::begin_frame(bool typing) {
    if (hold_ > 0) {
        --hold_;
        return std::nullopt;
    }
    ImGuiIO& io = ImGui::GetIO();
    std::set<Key> changed;
    bool fed = false;  // the field has something to take in before a command may close it
    while (!items_.empty()) {
        const Item item = items_.front();
        const KeyPress& press = item.press;
        const bool is_key = press.key != Key::character;
        if (!item.down || (typing && belongs_to_field(press))) {
            if (!is_key) {
                if (!changed.empty()) break;  // the letter was typed after a key of this frame
                io.AddInputCharacter(static_cast<unsigned>(press.character));
            } else {
                if (!changed.insert(press.key).second) break;
                io.KeysDown[static_cast<int>(press.key)] = item.down;
                io.KeyCtrl = press.ctrl;
                io.KeyShift = press.shift;
            }
            fed = true;
            items_.pop_front();
            continue;
        }
        if (fed) break;
        const KeyPress command = press;
        items_.pop_front();
        return command;
    }
    return std::nullopt;
}

}  // namespace hardover::window
