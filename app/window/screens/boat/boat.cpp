// Puts the boat screen together: boxes, tabs, panes.
#include "app/window/screens/boat/boat.hpp"

#include <array>

#include "app/window/screens/bars.hpp"
#include "app/window/screens/boat/boat_parts.hpp"

namespace hardover::window {

namespace {

struct TabName {
    BoatTab tab;
    const char* id;
    const char* label;
};
constexpr std::array tabs{TabName{BoatTab::gauges, "boat.tab.gauges", "Gauges"},
                          TabName{BoatTab::faults, "boat.tab.faults", "Faults"},
                          TabName{BoatTab::place, "boat.tab.place", "Place"},
                          TabName{BoatTab::rig, "boat.tab.rig", "Rig"}};

// Beside the drawing its own tab is the gauges'.
BoatTab tab_shown(const BoatScene& scene) {
    const bool beside = scene.boxes.form != Form::compact;
    return beside && scene.view.tab == BoatTab::drawing ? BoatTab::gauges : scene.view.tab;
}

bool draw_tab(Kit& kit, const std::string& id, const char* label, const Box& box, bool open) {
    const bool pressed = kit.button(id, box.inset(kit.px(2)), {.label = label, .face = Face::quiet});
    if (open) kit.fill({box.x, box.bottom() - kit.px(4), box.w, kit.px(4)}, Role::accent, 2);
    return pressed;
}

// In the compact form each view of the boat is a tab too.
void draw_tabs(BoatScene& scene) {
    Kit& kit = scene.kit;
    const Box& box = scene.boxes.tabs;
    const std::size_t views = scene.boxes.form == Form::compact ? boat_views.size() : 0;
    kit.fill(box, Role::panel);
    const float w = box.w / static_cast<float>(tabs.size() + views);
    Box at{box.x, box.y, w, box.h};
    for (std::size_t i = 0; i < views; ++i, at.x += w) {
        const bool open = tab_shown(scene) == BoatTab::drawing && scene.view.drawing == static_cast<int>(i);
        if (!draw_tab(kit, std::string("boat.view.") + boat_views[i].id, boat_views[i].tab, at, open))
            continue;
        scene.view.tab = BoatTab::drawing;
        scene.view.drawing = static_cast<int>(i);
    }
    for (const TabName& tab : tabs) {
        if (draw_tab(kit, tab.id, tab.label, at, tab_shown(scene) == tab.tab)) scene.view.tab = tab.tab;
        at.x += w;
    }
    kit.hairline({box.x, box.bottom() - kit.px(1), box.w, kit.px(1)});
}

void draw_side(BoatScene& scene, BoatTab tab) {
    // A pane of its own for each list, so that each keeps where it was scrolled to.
    const std::string name = "boat.side." + std::to_string(static_cast<int>(tab));
    scene.kit.pane(name.c_str(), scene.boxes.side,
                   {.fill = Role::panel, .pad_x = 14, .pad_y = 14, .main = true}, [&] {
                       switch (tab) {
                           case BoatTab::faults:
                               return draw_boat_faults(scene);
                           case BoatTab::place:
                               return draw_boat_place(scene);
                           case BoatTab::rig:
                               return draw_boat_rig(scene);
                           case BoatTab::drawing:
                           case BoatTab::gauges:
                               return draw_boat_gauges(scene);
                       }
                   });
}

void place(Kit& kit, BoatBoxes& boxes) {
    for (Box* box : {&boxes.header, &boxes.tabs, &boxes.views, &boxes.drawings[0], &boxes.drawings[1],
                     &boxes.drawings[2], &boxes.controls, &boxes.side, &boxes.keys}) {
        if (!box->empty()) *box = kit.placed(*box);
    }
}

}  // namespace

std::optional<Action> draw_boat(Kit& kit, const BoatDesk& desk, BoatView& view) {
    const float scale = kit.px(1);
    BoatScene scene{kit, desk, view, boat_boxes(kit.screen().w / scale, kit.screen().h / scale),
                    std::nullopt};
    place(kit, scene.boxes);
    if (auto pressed = draw_header(kit, scene.boxes.header, {"The boat", scene.page().title, false}))
        scene.action = pressed;
    const BoatTab tab = tab_shown(scene);
    if (scene.boxes.form == Form::compact) draw_tabs(scene);
    if (scene.boxes.form != Form::compact || tab == BoatTab::drawing) {
        draw_boat_drawings(scene);
        draw_boat_controls(scene, scene.boxes.controls);
    }
    if (scene.boxes.form != Form::compact) draw_tabs(scene);
    if (scene.boxes.form != Form::compact || tab != BoatTab::drawing) draw_side(scene, tab);
    if (scene.boxes.form != Form::compact)
        kit.hairline({scene.boxes.side.x, scene.boxes.tabs.y, kit.px(1),
                      scene.boxes.side.bottom() - scene.boxes.tabs.y});
    draw_keys(kit, scene.boxes.keys,
              {{"Left", "to port"},
               {"Right", "to starboard"},
               {"A", "straight ahead"},
               {"U", "trim up"},
               {"D", "trim down"},
               {"F", "faster"},
               {"S", "slower"},
               {"H", "hold the wheel"},
               {"/", "put a fault in"},
               {"X", "take faults out"}});
    use_boat_keys(scene);
    return scene.action;
}

}  // namespace hardover::window
