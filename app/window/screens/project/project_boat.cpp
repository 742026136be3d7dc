// The boat that is projected: sound, and beside it with its fault once that may be seen; both steered at
// once.
#include <algorithm>
#include <array>
#include <numbers>

#include "app/window/paint_drawing.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/project/project_parts.hpp"

namespace hardover::window {

namespace {

constexpr double press_step = 5 * std::numbers::pi / 180;

void draw_sheet(Kit& kit, const Box& box, const char* name, const BoatPage& page, Role line) {
    kit.fill(box, Role::card, 8);
    kit.outline(box, line, 2, 8);
    const float title = kit.theme().line_height(Type::strong) + kit.px(8);
    kit.line_in({box.x + kit.px(12), box.y + kit.px(2), box.w - kit.px(24), title}, name, Type::strong,
                Role::ink);
    const Box room{box.x + kit.px(4), box.y + title, box.w - kit.px(8), box.h - title - kit.px(4)};
    if (page.sketch) {
        paint_drawing(kit, room, page.sketch->above);
    } else {
        kit.inside(room.inset(kit.px(8)), [&] { kit.text(page.trouble, Type::body, Role::ink); });
    }
}

void steer_by(ProjectScene& scene, double by) {
    scene.ask(SteerProjected{scene.desk.sound_boat().page().setting.steer + by});
}

// What differs between the two, the most telling first as the gauges have them.
void draw_differences(ProjectScene& scene) {
    Kit& kit = scene.kit;
    const BoatDesk* faulty = scene.desk.faulty_boat();
    if (faulty == nullptr) {
        kit.text("The fault is hidden. The boat is drawn as it would be if it were sound.", Type::body,
                 Role::ink);
        kit.gap(8);
        const ButtonLook show{.label = "Show what is wrong", .face = Face::primary, .key = "Enter"};
        const Box row = kit.take(kit.px(52));
        const bool by_key = !kit.typing() && kit.take(Key::enter);
        if (kit.button("fault.show", {row.x, row.y, std::min(row.w, kit.button_width(show)), row.h}, show) ||
            by_key)
            scene.ask(ShowTheFault{});
        return;
    }
    for (const std::string& fault : scene.page().boat.faults) kit.text(fault, Type::h2, Role::right);
    kit.gap(6);
    bool any = false;
    for (const GaugeGroup& group : faulty->page().groups) {
        for (const BoatGauge& gauge : group.gauges) {
            if (!gauge.differs) continue;
            any = true;
            kit.text(gauge.name, Type::strong, Role::ink);
            kit.text(gauge.sound + " sound, " + gauge.faulty + " with the fault", Type::body, Role::ink);
            kit.gap(6);
        }
    }
    if (!any)
        kit.text("No gauge of the numeric boat tells this fault from a sound boat.", Type::body, Role::ink);
}

void draw_steering(ProjectScene& scene, const Box& row) {
    Kit& kit = scene.kit;
    struct Way {
        const char* id;
        const char* label;
        double by;
    };
    const float gap = kit.px(8), w = (row.w - 2 * gap) / 3;
    const double now = scene.desk.sound_boat().page().setting.steer;
    float x = row.x;
    for (const Way& way : {Way{"steer.port", "Port", -press_step}, Way{"steer.straight", "Straight", -now},
                           Way{"steer.starboard", "Starboard", press_step}}) {
        if (kit.button(way.id, {x, row.y, w, row.h}, {.label = way.label})) steer_by(scene, way.by);
        x += w + gap;
    }
}

}  // namespace

void draw_small_boat(ProjectScene& scene, const Box& box) {
    const bool shown = scene.desk.faulty_boat() != nullptr;
    const BoatDesk& desk = shown ? *scene.desk.faulty_boat() : scene.desk.sound_boat();
    draw_sheet(scene.kit, box, shown ? "The boat, with its fault" : "The boat, its fault hidden", desk.page(),
               Role::hairline);
}

void draw_projected_boat(ProjectScene& scene, const Box& box) {
    Kit& kit = scene.kit;
    const BoatDesk* faulty = scene.desk.faulty_boat();
    const bool wide = box.w >= kit.px(860);
    const float gap = kit.px(8), side = wide ? kit.px(330) : box.w * 0.42F;
    const Box lower{box.x + gap, box.bottom() - kit.px(60), box.w - side - 2 * gap, kit.px(52)};
    Box drawings{box.x + gap, box.y + gap, box.w - side - 2 * gap, lower.y - box.y - 2 * gap};
    const float half = faulty == nullptr ? drawings.w : (drawings.w - gap) / 2;
    const bool beside = faulty != nullptr && half >= kit.px(220);
    if (beside) {
        draw_sheet(kit, {drawings.x, drawings.y, half, drawings.h}, "Sound", scene.desk.sound_boat().page(),
                   Role::hairline);
        draw_sheet(kit, {drawings.x + half + gap, drawings.y, half, drawings.h}, "With the fault",
                   faulty->page(), Role::wrong);
    } else {
        draw_sheet(kit, drawings, faulty == nullptr ? "The boat" : "With the fault",
                   faulty == nullptr ? scene.desk.sound_boat().page() : faulty->page(),
                   faulty == nullptr ? Role::hairline : Role::wrong);
    }
    draw_steering(scene, lower);
    kit.pane("project.differences", {box.right() - side, box.y, side, box.h},
             {.fill = Role::panel, .pad_x = 16, .pad_y = 14, .main = true}, [&] { draw_differences(scene); });
}

}  // namespace hardover::window
