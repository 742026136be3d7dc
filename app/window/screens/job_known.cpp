// What is known so far: answers in order, each to be changed or taken back, then rules and notes.
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

// Answers hang on a line like marks on a log: a dot each, a ring where the customer said it.
void draw_answer(JobScene& scene, const AnswerLine& line, bool last) {
    Kit& kit = scene.kit;
    const float indent = kit.px(30), pad = kit.px(8);
    const float room = kit.width() - indent - kit.px(26);
    // That it was answered goes without saying; told, measured or worked out does not.
    const bool plain = line.origin.empty() || line.origin == "answered";
    const std::string above = plain ? line.name : line.name + " · " + line.origin;
    const float name = kit.text_height(above, Type::small, room);
    const float answer = kit.text_height(line.answer, Type::strong, room);
    const Box box = kit.take(std::max(kit.px(52), name + answer + 2 * pad));
    const std::string id = "known." + line.finding;
    const bool shown = scene.view.showing == Showing::finding && scene.view.finding == line.finding;
    bool pressed = false;
    if (line.changeable) {
        const Kit::Touch t = kit.touch(id, box, line.name, true, shown);
        if (t.over || shown) kit.fill(box, shown ? Role::accent_tint : Role::raised_over, 8);
        if (t.focused) kit.outline(box, Role::accent, 3, 8);
        kit.icon({box.right() - kit.px(24), box.y + pad + kit.px(2), kit.px(18), kit.px(18)}, Icon::pencil,
                 Role::ink2);
        pressed = t.pressed;
    }
    const float x = box.x + kit.px(12);
    if (!last) kit.fill({x - kit.px(1), box.y + kit.px(20), kit.px(2), box.h}, Role::hairline);
    const Box dot{x - kit.px(6), box.y + pad + kit.px(4), kit.px(12), kit.px(12)};
    kit.fill(dot, Role::accent, 6);
    if (!line.changeable) kit.fill(dot.inset(kit.px(3)), Role::panel, 3);
    kit.inside({box.x + indent, box.y + pad, room, 0}, [&] {
        kit.text(above, Type::small, Role::ink2);
        kit.text(line.answer, Type::strong, Role::ink);
    });
    if (pressed) scene.action = Show{Showing::finding, line.finding};
}

bool wide_button(Kit& kit, const std::string& id, const ButtonLook& look) {
    const bool pressed = kit.button(id, kit.take(kit.px(48)), look);
    kit.gap(8);
    return pressed;
}

void draw_fold(JobScene& scene, const std::string& name, const std::string& label,
               const std::vector<std::string>& lines) {
    if (lines.empty()) return;
    Kit& kit = scene.kit;
    const bool open = scene.view.is_open(name);
    if (kit.fold("fold." + name, label + " (" + std::to_string(lines.size()) + ")", open))
        scene.view.fold(name);
    if (!open) return;
    for (const std::string& line : lines) {
        kit.text(line, Type::small, Role::ink2);
        kit.gap(6);
    }
}

void draw_note(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.gap(10);
    Draft& note = scene.view.drafts.of("note", "");
    const FieldEvent event =
        kit.field("note", kit.take(kit.px(48)), note.text,
                  {.name = "Add a note", .placeholder = "Add a note", .icon = Icon::pencil});
    if (event.edited) note.changed = true;
    if (event.cancelled) {
        scene.view.drafts.drop("note");
    } else if (event.committed && !note.text.empty()) {
        scene.action = AddNote{note.text};
    }
}

}  // namespace

void draw_ways(JobScene& scene) {
    Kit& kit = scene.kit;
    if (wide_button(kit, "known.look_up",
                    {.label = "Any other finding", .icon = Icon::search, .key = "/", .spread = true})) {
        scene.action = Show{Showing::look_up, ""};
        kit.open_field("look_up.filter");
    }
    if (wide_button(kit, "known.boat",
                    {.label = "The boat", .icon = Icon::boat, .key = "B", .spread = true})) {
        scene.action = Show{Showing::intake, ""};
    }
    if (wide_button(kit, "known.time_line",
                    {.label = "Time line", .icon = Icon::clock, .key = "L", .spread = true})) {
        scene.action = Show{Showing::time_line, ""};
    }
    if (wide_button(kit, "known.sheet",
                    {.label = "Job sheet", .icon = Icon::sheet, .key = "S", .spread = true})) {
        scene.action = WriteSheet{};
    }
    if (wide_button(kit, "known.hand_back",
                    {.label = "Hand back", .icon = Icon::hand_over, .key = "H", .spread = true})) {
        scene.action = Show{Showing::hand_back, ""};
    }
}

void draw_known(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.text("Known so far", Type::h2, Role::ink);
    kit.gap(6);
    if (scene.page.answers.empty()) kit.text("Nothing has been answered yet.", Type::body, Role::ink2);
    for (std::size_t i = 0; i < scene.page.answers.size(); ++i) {
        draw_answer(scene, scene.page.answers[i], i + 1 == scene.page.answers.size());
    }
    kit.gap(10);
    draw_fold(scene, "trace", "Rules that spoke", scene.page.trace);
    draw_fold(scene, "notes", "Notes", scene.page.notes);
    draw_note(scene);
}

}  // namespace hardover::window
