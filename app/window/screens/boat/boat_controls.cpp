// Wheel, trim and speed: to be pulled by hand, pressed by button or worked by keys.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "app/window/screens/boat/boat_parts.hpp"

namespace hardover::window {

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double knot = 1852.0 / 3600;
constexpr double key_step = 2 * degree;  // of steering, for a key
constexpr double press_step = 5 * degree;
constexpr double trim_step = 2 * degree;
constexpr double speed_step = 2 * knot;
constexpr int spokes = 3;

void turn_by(BoatScene& scene, double by) {
    scene.act(TurnTo{scene.page().setting.steer + by});
}

void trim_by(BoatScene& scene, double by) {
    scene.act(TrimTo{scene.page().setting.trim + by});
}

void speed_by(BoatScene& scene, double by) {
    scene.act(GoAt{scene.page().setting.speed + by});
}

// The wheel as the one who steers sees it: clockwise is to starboard. One spoke is marked.
void draw_wheel(Kit& kit, const Box& box, double turned, bool lit) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImVec2 middle{box.middle_x(), box.middle_y()};
    const float rim = box.w / 2 - kit.px(4);
    const ImU32 ink = kit.theme().colour(lit ? Role::accent : Role::ink);
    list.AddCircleFilled(middle, rim, kit.theme().colour(Role::card), 48);
    list.AddCircle(middle, rim, ink, 48, kit.px(6));
    for (int spoke = 0; spoke < spokes; ++spoke) {
        const double angle = turned - std::numbers::pi / 2 + spoke * 2 * std::numbers::pi / spokes;
        const ImVec2 end{middle.x + rim * static_cast<float>(std::cos(angle)),
                         middle.y + rim * static_cast<float>(std::sin(angle))};
        list.AddLine(middle, end, ink, kit.px(4));
        if (spoke == 0) list.AddCircleFilled(end, kit.px(7), kit.theme().colour(Role::accent), 20);
    }
    list.AddCircleFilled(middle, rim * 0.22F, ink, 24);
}

// Pulled round its middle the wheel turns by as much; left and right turn it by key.
void draw_wheel_control(BoatScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    const Kit::Grip grip = kit.grip("boat.wheel", box, scene.page().wheel_text);
    const double angle = std::atan2(grip.y - box.middle_y(), grip.x - box.middle_x());
    if (grip.held && !grip.started) {
        const double by = std::remainder(angle - scene.view.grip, 2 * std::numbers::pi);
        if (std::abs(by) > 1e-6) scene.act(TurnWheel{scene.page().wheel + by});
    }
    if (grip.held) scene.view.grip = angle;
    if (grip.steps != 0) turn_by(scene, grip.steps * key_step);
    draw_wheel(kit, box, scene.page().wheel, grip.held || grip.over);
    if (grip.focused) kit.focus_ring(box, 8);
}

// What it stands at over a bar that can be pulled. Gives the share it was pulled to.
std::optional<double> draw_slider(Kit& kit, const std::string& id, const Box& box, const std::string& text,
                                  std::optional<double> share, int& steps) {
    const Kit::Grip grip = kit.grip(id, box, text);
    const float line = kit.theme().line_height(Type::small);
    kit.fill(box, Role::raised, 8);
    kit.outline(box, grip.held ? Role::accent : Role::outline, 1.5F, 8);
    kit.line_in({box.x + kit.px(4), box.y + kit.px(3), box.w - kit.px(8), line}, text, Type::small, Role::ink,
                Align::centre);
    const Box track{box.x + kit.px(14), box.bottom() - kit.px(15), box.w - kit.px(28), kit.px(6)};
    kit.fill(track, Role::bar_track, 3);
    if (share) {
        const float x = track.x + track.w * static_cast<float>(std::clamp(*share, 0.0, 1.0));
        kit.fill({track.x, track.y, x - track.x, track.h}, Role::accent, 3);
        ImGui::GetWindowDrawList()->AddCircleFilled({x, track.middle_y()}, kit.px(8),
                                                    kit.theme().colour(Role::accent), 24);
    }
    if (grip.focused) kit.focus_ring(box, 8);
    steps = grip.steps;
    if (!grip.held || track.w <= 0) return std::nullopt;
    return std::clamp(static_cast<double>((grip.x - track.x) / track.w), 0.0, 1.0);
}

struct Group {
    const char* id;
    std::string text;
    std::string short_text;
    double least, most, now, step;
    const char* less;  // label of the button
    const char* more;
    const char* less_name;  // read out
    const char* more_name;
    bool enabled = true;
};

// Less, the slider, more. Gives what is wanted now.
std::optional<double> draw_group(Kit& kit, const Box& box, const Group& group) {
    const std::string id = std::string("boat.") + group.id;
    const float side = kit.px(52), gap = kit.px(4);
    std::optional<double> wanted;
    const ButtonLook less{.label = group.less, .enabled = group.enabled, .name = group.less_name};
    const ButtonLook more{.label = group.more, .enabled = group.enabled, .name = group.more_name};
    if (kit.button(id + ".less", {box.x, box.y, side, box.h}, less)) wanted = group.now - group.step;
    const double range = group.most - group.least;
    std::optional<double> share;
    if (range > 0) share = (group.now - group.least) / range;
    int steps = 0;
    const Box middle{box.x + side + gap, box.y, box.w - 2 * (side + gap), box.h};
    const bool roomy = kit.text_width(group.text, Type::small) < middle.w - kit.px(10);
    const std::string& text = roomy ? group.text : group.short_text;
    const auto pulled = draw_slider(kit, id, middle, text, share, steps);
    if (pulled) wanted = group.least + *pulled * range;
    if (steps != 0) wanted = group.now + steps * group.step;
    if (kit.button(id + ".more", {box.right() - side, box.y, side, box.h}, more))
        wanted = group.now + group.step;
    return wanted;
}

void draw_sliders(BoatScene& scene, const Box& box, bool stacked) {
    Kit& kit = scene.kit;
    const BoatPage& page = scene.page();
    const float gap = kit.px(8), h = kit.px(52);
    const bool trims = page.most_trim > page.least_trim;
    const float w = stacked ? box.w : (box.w - gap) / 2;
    const Box first{box.x, stacked ? box.middle_y() - h - gap / 2 : box.middle_y() - h / 2, w, h};
    const Box second = stacked ? Box{box.x, first.bottom() + gap, w, h} : Box{box.x + w + gap, first.y, w, h};
    const Group trim{"trim",
                     trims ? page.trim_text : "No trim",
                     trims ? page.trim_short : "None",
                     page.least_trim,
                     page.most_trim,
                     page.setting.trim,
                     trim_step,
                     "\xE2\x96\xBC",
                     "\xE2\x96\xB2",
                     "Trim down",
                     "Trim up",
                     trims};
    const Group speed{"speed",    page.speed_text, page.speed_short,
                      0,          page.most_speed, page.setting.speed,
                      speed_step, "\xE2\x88\x92",  "+",
                      "Slower",   "Faster"};
    if (const auto wanted = draw_group(kit, first, trim); wanted && trims) scene.act(TrimTo{*wanted});
    if (const auto wanted = draw_group(kit, second, speed)) scene.act(GoAt{*wanted});
}

bool side_button(BoatScene& scene, const Box& box, const char* id, char letter, const char* name) {
    Kit& kit = scene.kit;
    const Kit::Touch touch = kit.touch(id, box, name);
    kit.fill(box, touch.over ? Role::raised_over : Role::raised, 8);
    kit.outline(box, Role::outline, 1.5F, 8);
    const float side = kit.px(24);
    const bool port = letter == 'P';
    const float middle = box.middle_x(), y = box.middle_y();
    kit.side_letter({port ? middle - kit.px(4) : middle - kit.px(20), y - side / 2, side, side}, letter);
    const float base = port ? middle - kit.px(8) : middle + kit.px(8);
    const float tip = port ? base - kit.px(12) : base + kit.px(12);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddTriangleFilled({base, y - kit.px(9)}, {base, y + kit.px(9)}, {tip, y},
                           kit.theme().colour(Role::ink));
    if (touch.focused) kit.focus_ring(box, 8);
    return touch.pressed;
}

}  // namespace

void draw_boat_controls(BoatScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    const BoatPage& page = scene.page();
    kit.fill(box, Role::panel);
    kit.hairline({box.x, box.y, box.w, kit.px(1)});
    const Box room{box.x + kit.px(10), box.y + kit.px(6), box.w - kit.px(20), box.h - kit.px(12)};
    const bool tall = box.h > kit.px(100);
    const float wheel = room.h, side = kit.px(tall ? 64 : 52), gap = kit.px(8);
    const float button = kit.px(tall ? 64 : 52), top = room.middle_y() - button / 2;
    kit.tab_starts_here();
    draw_wheel_control(scene, {room.x + side + gap, room.y, wheel, wheel});
    if (side_button(scene, {room.x, top, side, button}, "boat.port", 'P', "Steer 5° to port"))
        turn_by(scene, -press_step);
    if (side_button(scene, {room.x + side + gap + wheel + gap, top, side, button}, "boat.starboard", 'S',
                    "Steer 5° to starboard"))
        turn_by(scene, press_step);
    float x = room.x + 2 * (side + gap) + wheel + gap;
    const float words = std::min(kit.px(200), room.right() - x - kit.px(300));
    if (tall && words > kit.px(150)) {
        kit.inside({x, room.y + kit.px(4), words, 0}, [&] {
            kit.text(page.steer_text, Type::strong, Role::ink);
            kit.text(page.wheel_text, Type::small, Role::ink2);
            kit.gap(4);
            kit.text(page.doing, Type::small, Role::ink2);
        });
        x += words + gap;
    }
    draw_sliders(scene, {x, room.y, room.right() - x, room.h}, tall);
}

void use_boat_keys(BoatScene& scene) {
    Kit& kit = scene.kit;
    if (kit.typing()) return;
    const auto letter = [&](char32_t small, char32_t large) {
        return kit.take_letter(small) || kit.take_letter(large);
    };
    if (letter(U'a', U'A')) scene.act(TurnTo{0});
    if (letter(U'u', U'U')) trim_by(scene, trim_step);
    if (letter(U'd', U'D')) trim_by(scene, -trim_step);
    if (letter(U'f', U'F')) speed_by(scene, speed_step);
    if (letter(U's', U'S')) speed_by(scene, -speed_step);
    if (letter(U'h', U'H')) scene.act(HoldWheel{});
    if (letter(U'x', U'X')) scene.act(TakeFaultOut{});
    if (kit.take_letter(U'/')) {
        scene.view.tab = BoatTab::faults;
        kit.open_field("boat.filter");
    }
    if (kit.take(Key::escape)) {
        if (!scene.desk.place().part.empty()) {
            scene.act(LookAtPart{});
        } else if (scene.view.tab != BoatTab::drawing) {
            scene.view.tab = BoatTab::drawing;
        } else {
            scene.action = Action{GoBack{}};
        }
    }
}

}  // namespace hardover::window
