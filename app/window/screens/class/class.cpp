// Puts the place Class together: its parts as tabs, and keys.
#include "app/window/screens/class/class.hpp"

#include <array>

#include "app/window/layout.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

constexpr float most_wide = 980;  // dp, of what is read
constexpr float tabs_height = 48;

struct TabRow {
    ClassTab tab;
    const char* id;
    const char* label;
    char key;
    void (*draw)(ClassScene&);
};
constexpr std::array tabs{TabRow{ClassTab::together, "together", "Together", 't', draw_together},
                          TabRow{ClassTab::roster, "roster", "Roster", 'r', draw_roster},
                          TabRow{ClassTab::sets, "sets", "Sets", 's', draw_sets},
                          TabRow{ClassTab::collect, "collect", "Hand-ins", 'h', draw_collect},
                          TabRow{ClassTab::figures, "figures", "Figures", 'f', draw_class_figures},
                          TabRow{ClassTab::take, "take", "My sets", 'm', draw_my_sets}};

void draw_tabs(ClassScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    kit.fill(box, Role::panel);
    const float w = box.w / static_cast<float>(tabs.size());
    float x = box.x;
    for (const TabRow& row : tabs) {
        const Box at{x, box.y, w, box.h};
        const bool open = scene.view().tab == row.tab;
        const bool pressed = kit.button(std::string("class.tab.") + row.id, at.inset(kit.px(2)),
                                        {.label = row.label, .face = Face::quiet, .selected = false});
        if (open) kit.fill({at.x, at.bottom() - kit.px(4), at.w, kit.px(4)}, Role::accent, 2);
        if (pressed || (!kit.typing() && take_command(kit, row.key))) scene.ask(ShowClassTab{row.tab});
        x += w;
    }
    kit.hairline({box.x, box.bottom() - kit.px(1), box.w, kit.px(1)});
}

}  // namespace

std::optional<Action> draw_class(Kit& kit, AppState& state) {
    ClassScene scene{kit, state, std::nullopt};
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    const Box tabs_box{boxes.body.x, boxes.body.y, boxes.body.w, tabs_height};
    const Box body{boxes.body.x, tabs_box.bottom(), boxes.body.w, boxes.body.h - tabs_height};
    scene.action = draw_header(kit, kit.placed(boxes.header), {"Class", scene.page().name, false});
    draw_tabs(scene, kit.placed(tabs_box));
    const auto& working = scene.page().working;
    const bool elsewhere = working && scene.page().working_tab != scene.view().tab;
    const float pad = 20 + std::max(0.0F, body.w - most_wide) / 2;
    for (const TabRow& row : tabs) {
        if (row.tab != scene.view().tab) continue;
        const std::string name = std::string("class.") + row.id;
        kit.pane(name.c_str(), kit.placed(body), {.pad_x = pad, .pad_y = 18, .main = true}, [&] {
            if (elsewhere) {
                draw_class_work(scene);
                kit.gap(14);
            }
            row.draw(scene);
        });
    }
    std::vector<KeyHint> keys;
    if (scene.view().tab == ClassTab::together) {
        keys = {{"1-5", "begin a boat of this level"}};
        if (!state.project.page().unfinished.empty()) keys.push_back({"G", "go on"});
    }
    if (scene.view().tab == ClassTab::figures && !scene.page().name.empty())
        keys = {{"W", "work out"}, {"P", "class sheet"}};
    for (const TabRow& row : tabs)
        keys.push_back({std::string(1, static_cast<char>(row.key - 32)), row.label});
    if (working && working->can_stop) {
        keys.insert(keys.begin(), {"Esc", "stop the work"});
        if (!kit.typing() && kit.take(Key::escape)) scene.ask(StopClassWork{});
    }
    draw_keys(kit, kit.placed(boxes.keys), keys);
    return scene.action;
}

}  // namespace hardover::window
