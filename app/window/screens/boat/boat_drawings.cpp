// The drawings, each a place to press on a part, with what is true of them all above.
#include <algorithm>

#include "app/window/paint_drawing.hpp"
#include "app/window/screens/boat/boat_parts.hpp"

namespace hardover::window {

namespace {

constexpr float finger = 16;  // dp around a part that still count as on it

void draw_view_buttons(BoatScene& scene) {
    Kit& kit = scene.kit;
    const Box box = scene.boxes.views;
    const float gap = kit.px(8);
    const float w = (box.w - 4 * gap) / 3;
    for (std::size_t i = 0; i < boat_views.size(); ++i) {
        const Box at{box.x + gap + static_cast<float>(i) * (w + gap), box.y + kit.px(4), w, kit.px(44)};
        const ButtonLook look{.label = boat_views[i].label,
                              .selected = scene.view.drawing == static_cast<int>(i)};
        if (kit.button(std::string("boat.view.") + boat_views[i].id, at, look))
            scene.view.drawing = static_cast<int>(i);
    }
}

void draw_one(BoatScene& scene, const BoatViewName& named, const Box& box) {
    Kit& kit = scene.kit;
    const Box sheet = box.inset(kit.px(5));
    const drawing::Drawing& drawing = (*scene.page().sketch).*named.drawing;
    const Kit::Touch touch = kit.touch(std::string("boat.drawing.") + named.id, sheet, drawing.title);
    kit.fill(sheet, Role::card, 8);
    kit.outline(sheet, touch.focused ? Role::accent : Role::hairline, touch.focused ? 3 : 1, 8);
    const bool named_here = scene.boxes.form != Form::compact;
    const Box room = drawing_room(kit, sheet, named_here);
    if (named_here)
        kit.line_in({sheet.x + kit.px(12), sheet.y, sheet.w - kit.px(24), room.y - sheet.y}, named.label,
                    Type::small, Role::ink2);
    const drawing::Placement placement = placement_in(kit, room, drawing);
    std::string lit = scene.desk.place().part;
    if (touch.over || touch.pressed) {
        const ImVec2 pointer = ImGui::GetIO().MousePos;
        const drawing::Point at{(pointer.x - placement.origin.x) / placement.scale,
                                (placement.origin.y - pointer.y) / placement.scale};
        const std::string under = drawing::part_at(drawing, at, kit.px(finger) / placement.scale);
        if (touch.pressed) {
            // By key there is no place pointed at: the list of all parts opens.
            scene.act(LookAtPart{touch.over ? under : ""});
            scene.view.tab = BoatTab::place;
        } else if (!under.empty()) {
            lit = under;
        }
    }
    paint_drawing(kit, room, drawing, lit);
}

}  // namespace

Box drawing_room(const Kit& kit, const Box& sheet, bool named) {
    const float line = named ? kit.theme().line_height(Type::small) + kit.px(8) : kit.px(4);
    return {sheet.x + kit.px(4), sheet.y + line, sheet.w - kit.px(8), sheet.h - line - kit.px(4)};
}

void draw_boat_drawings(BoatScene& scene) {
    Kit& kit = scene.kit;
    if (!scene.page().sketch) {
        const Box box = scene.boxes.drawings[0];
        kit.inside({box.x + kit.px(16), box.y + kit.px(16), box.w - kit.px(32), 0}, [&] {
            kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 14, .edge = Role::wrong},
                     [&] { kit.text(scene.page().trouble, Type::body, Role::ink); });
        });
        return;
    }
    if (scene.boxes.three) {
        for (std::size_t i = 0; i < 3; ++i) draw_one(scene, boat_views[i], scene.boxes.drawings[i]);
        return;
    }
    if (!scene.boxes.views.empty()) draw_view_buttons(scene);
    draw_one(scene, boat_views[static_cast<std::size_t>(std::clamp(scene.view.drawing, 0, 2))],
             scene.boxes.drawings[0]);
}

}  // namespace hardover::window
