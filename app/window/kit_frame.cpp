// Kit: frames, keys, panes and the downward flow.
#include <algorithm>
#include <cmath>

#include <imgui_internal.h>
#include "app/window/kit.hpp"

namespace hardover::window {

namespace {

constexpr ImGuiWindowFlags screen_flags =
    ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
    ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoNav | ImGuiWindowFlags_NoScrollWithMouse;

constexpr float line_step = 60;  // dp the arrow keys scroll by

}  // namespace

ImDrawList& Kit::list() const {
    return *ImGui::GetWindowDrawList();
}

void Kit::begin_frame(float width_px, float height_px) {
    typing_ = memory_.typing;
    memory_.typing = memory_.moving = false;
    command_ = memory_.input.begin_frame(typing_);
    ImGui::NewFrame();
    memory_.focus.begin_frame();
    if (ImGui::IsMouseClicked(0)) memory_.focus.clear();
    marks_.clear();
    screen_ = {0, 0, width_px, height_px};
    flow_ = {0, 0, width_px};
    use_command();
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({width_px, height_px});
    ImGui::Begin("screen", nullptr, screen_flags);
}

void Kit::leave_room_for_rail(float width_px) {
    screen_ = {screen_.x + width_px, screen_.y, screen_.w - width_px, screen_.h};
}

void Kit::leave_room_at_top(float height_px) {
    screen_ = {screen_.x, screen_.y + height_px, screen_.w, screen_.h - height_px};
}

Box Kit::placed(const Box& dp) const {
    const Box box = dp.scaled(theme_.scale());
    return {screen_.x + box.x, screen_.y + box.y, box.w, box.h};
}

void Kit::end_frame() {
    if (ImGui::IsMouseReleased(0)) memory_.dragging = memory_.holding = false;
    memory_.grips = grips_;
    ImGui::End();
    if (floating_) draw_floating_card();
    ImGui::Render();
    memory_.marks = marks_;
}

// Tab, arrows, Enter and Space are the kit's own; everything else is left for the screen.
void Kit::use_command() {
    pressed_key_ = false;
    scroll_steps_ = 0;
    scroll_pages_ = false;
    if (!command_) return;
    const KeyPress press = *command_;
    switch (press.key) {
        case Key::tab:
            if (press.shift) {
                memory_.focus.previous();
            } else {
                memory_.focus.next();
            }
            if (typing_) ImGui::ClearActiveID();
            open_field(memory_.focus.focused());
            break;
        case Key::left:
        case Key::right:
            if (arrow_is_for_a_grip()) return;
            move_focus(press.key == Key::left ? Direction::left : Direction::right);
            break;
        case Key::up:
            move_focus(Direction::up);
            break;
        case Key::down:
            move_focus(Direction::down);
            break;
        case Key::page_up:
        case Key::page_down:
            scroll_pages_ = true;
            scroll_steps_ = press.key == Key::page_up ? -1 : 1;
            break;
        case Key::enter:
            pressed_key_ = !memory_.focus.focused().empty();
            break;
        case Key::character:
            pressed_key_ = press.character == U' ' && !memory_.focus.focused().empty();
            break;
        default:
            return;
    }
    if (press.key != Key::character && press.key != Key::enter) command_.reset();
    if (pressed_key_) command_.reset();
}

bool Kit::arrow_is_for_a_grip() const {
    if (typing_ || memory_.grips.empty()) return false;
    const std::string& focused = memory_.focus.focused();
    return focused.empty() ||
           std::find(memory_.grips.begin(), memory_.grips.end(), focused) != memory_.grips.end();
}

void Kit::move_focus(Direction direction) {
    if (typing_) ImGui::ClearActiveID();
    if (memory_.focus.toward(direction)) {
        memory_.scroll_to = memory_.focus.focused();
        return;
    }
    if (direction == Direction::up) scroll_steps_ = -1;
    if (direction == Direction::down) scroll_steps_ = 1;
}

void Kit::open_field(const std::string& id, std::optional<KeyPress> letter) {
    memory_.focus.set(id);
    memory_.scroll_to = id;
    memory_.open_field = id;
    if (letter) memory_.input.put_back(*letter);
    memory_.input.hold(4);  // the screen may show the field a frame later, and it opens two frames after that
}

bool Kit::take(Key key) {
    if (!command_ || command_->key != key) return false;
    command_.reset();
    return true;
}

bool Kit::take_letter(char32_t letter) {
    if (!command_ || command_->key != Key::character || command_->character != letter) return false;
    command_.reset();
    return true;
}

std::optional<KeyPress> Kit::take_digit() {
    if (!command_ || command_->key != Key::character) return std::nullopt;
    if (command_->character < U'0' || command_->character > U'9') return std::nullopt;
    const std::optional<KeyPress> digit = command_;
    command_.reset();
    return digit;
}

std::optional<int> Kit::take_place() {
    if (!command_ || command_->key != Key::place) return std::nullopt;
    const int digit = static_cast<int>(command_->character - U'0');
    command_.reset();
    return digit;
}

void Kit::pane(const char* id, const Box& box, const PaneLook& look, const std::function<void()>& content) {
    if (box.empty()) return;
    fill(box, look.fill);
    ImGui::SetCursorScreenPos({box.x, box.y});
    ImGuiWindowFlags flags = ImGuiWindowFlags_NoNav;
    if (!look.scrolls) flags |= ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
    ImGui::BeginChild(id, {box.w, box.h}, false, flags);
    const Flow outer = flow_;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float room = ImGui::GetContentRegionAvail().x;  // without the scroll bar
    flow_ = {start.x + px(look.pad_x), start.y + px(look.pad_y), room - 2 * px(look.pad_x)};
    content();
    ImGui::SetCursorScreenPos({start.x, flow_.y});
    ImGui::Dummy({1, px(look.pad_y)});
    if (look.scrolls) scroll_pane(box, look.main);
    flow_ = outer;
    ImGui::EndChild();
}

// Moves a pane by keys or by hand, and shades its lower edge while there is more below.
void Kit::scroll_pane(const Box& box, bool main) {
    const float most = ImGui::GetScrollMaxY();
    if (most <= 0) return;
    const ImGuiIO& io = ImGui::GetIO();
    if (main && scroll_steps_ != 0) {
        const float by = scroll_pages_ ? box.h - px(line_step) : px(line_step);
        ImGui::SetScrollY(ImGui::GetScrollY() + static_cast<float>(scroll_steps_) * by);
    }
    const ImVec2 from = io.MouseClickedPos[0];
    const bool started_here = from.x >= box.x && from.x < box.right() - ImGui::GetStyle().ScrollbarSize &&
                              from.y >= box.y && from.y < box.bottom();
    if (started_here && ImGui::IsMouseDragging(0, px(12)) && !typing_ && !memory_.holding) {
        memory_.dragging = true;
        ImGui::SetScrollY(ImGui::GetScrollY() - io.MouseDelta.y);
    }
    if (ImGui::GetScrollY() < most - 1) {
        const float h = px(22);
        const ImU32 none = theme_.colour(Role::ground, 0), shade = theme_.colour(Role::ground, 0.92F);
        list().AddRectFilledMultiColor({box.x, box.bottom() - h},
                                       {box.right() - ImGui::GetStyle().ScrollbarSize, box.bottom()}, none,
                                       none, shade, shade);
    }
}

void Kit::bring_into_sight(const std::string& id, const Box& box) {
    if (id != memory_.scroll_to) return;
    memory_.scroll_to.clear();
    const ImVec2 top = ImGui::GetWindowPos();
    const float margin = px(16);
    const float above = top.y + margin - box.y;
    const float below = box.bottom() - (top.y + ImGui::GetWindowHeight() - margin);
    if (above > 0) {
        ImGui::SetScrollY(ImGui::GetScrollY() - above);
    } else if (below > 0) {
        ImGui::SetScrollY(ImGui::GetScrollY() + below);
    }
}

Box Kit::take(float height_px) {
    const Box box{flow_.x, flow_.y, flow_.w, height_px};
    flow_.y += height_px;
    return box;
}

float Kit::inside(const Box& box, const std::function<void()>& content) {
    const Flow outer = flow_;
    flow_ = {box.x, box.y, box.w};
    content();
    const float used = flow_.y - box.y;
    flow_ = outer;
    return used;
}

}  // namespace hardover::window
