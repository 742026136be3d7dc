// What is known of the practice boat: the clock, the customer, what was found and thought, the rig.
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

void draw_found_line(Kit& kit, const practice::WorkLine& line) {
    const float w = kit.text_width(line.minutes, Type::small) + kit.px(8);
    const Box start = kit.take(0);
    const float used =
        kit.inside({start.x, start.y, start.w - w, 0}, [&] { kit.text(line.text, Type::small, Role::ink2); });
    kit.line_in({start.right() - w, start.y, w, kit.theme().line_height(Type::small)}, line.minutes,
                Type::small, Role::ink2, Align::right);
    kit.take(used);
    kit.text(line.found, Type::strong, Role::ink);
    kit.gap(8);
}

}  // namespace

void draw_boat_known(StudyScene& scene) {
    Kit& kit = scene.kit;
    if (!scene.page.boat) return;
    const practice::Page& boat = *scene.page.boat;
    const Box clock = kit.take(kit.theme().line_height(Type::h2));
    kit.icon({clock.x, clock.y, kit.px(26), kit.px(26)}, Icon::clock, Role::accent);
    kit.line_in({clock.x + kit.px(36), clock.y, clock.w - kit.px(36), clock.h}, boat.clock, Type::h2,
                Role::ink);
    kit.gap(2);
    kit.text(boat.phase, Type::small, Role::ink2);
    kit.gap(10);
    const Box start = kit.take(0);
    const float used = kit.inside({start.x + kit.px(16), start.y, start.w - kit.px(16), 0}, [&] {
        kit.text("The customer says", Type::small, Role::ink2);
        kit.text(boat.customer, Type::strong, Role::ink);
        kit.gap(3);
        kit.text(boat.complaint + ". " + boat.history + ".", Type::small, Role::ink);
    });
    kit.fill({start.x, start.y, kit.px(4), used}, Role::accent, 2);
    kit.take(used);
    kit.gap(14);
    kit.text("Found so far", Type::h2, Role::ink);
    kit.gap(4);
    if (boat.work.empty()) kit.text("Nothing yet.", Type::body, Role::ink2);
    for (const practice::WorkLine& line : boat.work) draw_found_line(kit, line);
    if (!boat.statements.empty()) {
        kit.gap(6);
        kit.text("You thought", Type::h2, Role::ink);
        for (const std::string& statement : boat.statements) kit.text(statement, Type::body, Role::ink);
    }
    kit.gap(10);
    const bool open = scene.view.is_open("rig");
    if (kit.fold("boat.rig", "The yard's sheet of the boat", open)) scene.view.fold("rig");
    if (open) {
        for (const SheetLine& line : boat.rig) draw_sheet_line(kit, line, Type::body);
    }
    kit.gap(8);
    kit.text(boat.guidance, Type::small, Role::ink2);
}

}  // namespace hardover::window
