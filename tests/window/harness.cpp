// Frames, keys and the pointer without a window.
#include "harness.hpp"

#include <catch2/catch.hpp>

#include "raster.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover::window;

Harness::Harness(float width, float height, float scale, Look look, Draw draw)
    : before_(ImGui::GetCurrentContext()),
      own_(ImGui::CreateContext()),
      draw_(std::move(draw)),
      width_(width),
      height_(height) {
    ImGui::SetCurrentContext(own_);
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {width, height};
    io.DeltaTime = 1.0F / 60;
    io.MousePos = {-1000, -1000};
    InputQueue::name_keys();
    REQUIRE_OK(theme_.build(look, scale, source_path("assets/fonts")));
    frames(4);
}

Harness::~Harness() {
    ImGui::DestroyContext(own_);
    ImGui::SetCurrentContext(before_);
}

void Harness::frames(int count) {
    for (int i = 0; i < count; ++i) {
        Kit kit(theme_, memory_);
        kit.begin_frame(width_, height_);
        draw_(kit);
        kit.end_frame();
    }
}

void Harness::resize(float width, float height) {
    width_ = width;
    height_ = height;
    ImGui::GetIO().DisplaySize = {width, height};
    frames(4);
}

void Harness::press(Key key, bool shift) {
    memory_.input.press({key, 0, shift});
    memory_.input.release(key);
    frames(8);
}

void Harness::queue(const KeyPress& press) {
    memory_.input.press(press);
    if (press.key != Key::character) memory_.input.release(press.key);
}

void Harness::type(const std::string& text) {
    for (const char letter : text) {
        memory_.input.press({Key::character, static_cast<char32_t>(static_cast<unsigned char>(letter))});
    }
    frames(8 + static_cast<int>(text.size()));
}

void Harness::click(const std::string& id) {
    const Mark& mark = get(id);
    INFO("clicking " << id << ", which must be in sight");
    REQUIRE_FALSE(mark.visible.empty());
    ImGuiIO& io = ImGui::GetIO();
    io.MousePos = {mark.visible.middle_x(), mark.visible.middle_y()};
    frames(2);
    io.MouseDown[0] = true;
    frames(2);
    io.MouseDown[0] = false;
    frames(2);
    io.MousePos = {-1000, -1000};
    frames(4);
}

void Harness::point_at(const std::string& id) {
    const Mark& mark = get(id);
    REQUIRE_FALSE(mark.visible.empty());
    ImGui::GetIO().MousePos = {mark.visible.middle_x(), mark.visible.middle_y()};
    frames(4);
}

void Harness::drag(float from_x, float from_y, float to_x, float to_y) {
    ImGuiIO& io = ImGui::GetIO();
    constexpr int steps = 10;
    io.MousePos = {from_x, from_y};
    frames(2);
    io.MouseDown[0] = true;
    frames(1);
    for (int i = 1; i <= steps; ++i) {
        const float part = static_cast<float>(i) / steps;
        io.MousePos = {from_x + (to_x - from_x) * part, from_y + (to_y - from_y) * part};
        frames(1);
    }
    io.MouseDown[0] = false;
    frames(2);
    io.MousePos = {-1000, -1000};
    frames(2);
}

const Mark& Harness::get(const std::string& id) const {
    std::string ids;
    for (const Mark& mark : marks()) {
        if (mark.control && mark.id == id) return mark;
        if (mark.control) ids += " " + mark.id;
    }
    FAIL("no control '" << id << "'; on screen:" << ids);
    return marks().front();
}

bool Harness::has(const std::string& id) const {
    for (const Mark& mark : marks()) {
        if (mark.control && mark.id == id) return true;
    }
    return false;
}

bool Harness::shows(const std::string& text) const {
    for (const Mark& mark : marks()) {
        if (mark.text.find(text) != std::string::npos) return true;
    }
    return false;
}

void Harness::save_picture(const std::string& path) const {
    const Rgb ground = colour_of(theme_.look(), Role::ground);
    REQUIRE_OK(save_png(*ImGui::GetDrawData(), {ground.r, ground.g, ground.b}, path));
}

}  // namespace hardover_tests
