// The job's time line, with the way back to every point of it, and the job sheet that was written.
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

// The last event that counts and is no taking back: how the job stands.
int standing_at(const JobPage& page) {
    int at = 0;
    for (const EventLine& event : page.events) {
        if (event.counts && event.kind == EventLine::Kind::happened) at = event.sequence;
    }
    return at;
}

// A dot on the line: full where the event counts, a ring where it was taken back.
void draw_dot(Kit& kit, const Box& box, const EventLine& event, bool here) {
    const float x = box.x + kit.px(13), side = here ? kit.px(20) : kit.px(14);
    kit.fill({x - kit.px(1), box.y, kit.px(2), box.h}, Role::outline);
    const Box dot{x - side / 2, box.y + kit.px(22) - side / 2, side, side};
    kit.fill(dot, event.counts ? Role::accent : Role::outline, 10);
    if (!event.counts) kit.fill(dot.inset(kit.px(3)), Role::card, 10);
}

// Taking back and bringing forward again: told small, between the things that happened.
void draw_turn_of_time(Kit& kit, const EventLine& event) {
    const float indent = kit.px(42), room = kit.width() - indent;
    const std::string text = shown_time(event.at) + " · " + event.text;
    const Box box = kit.take(kit.text_height(text, Type::small, room) + kit.px(10));
    kit.fill({box.x + kit.px(12), box.y, kit.px(2), box.h}, Role::outline);
    kit.wrapped_in({box.x + indent, box.y, room, box.h}, text, Type::small, Role::ink2);
}

void draw_event(JobScene& scene, const EventLine& event, int standing) {
    Kit& kit = scene.kit;
    const bool here = event.sequence == standing;
    const bool forward = event.sequence > standing;
    const ButtonLook go{.label = forward ? "Forward to here" : "Back to here",
                        .icon = forward ? Icon::hand_over : Icon::undo};
    const float indent = kit.px(42), button = here ? kit.px(120) : kit.button_width(go);
    const bool beside = kit.width() > indent + button + kit.px(260);
    const float room = kit.width() - indent - (beside ? button + kit.px(12) : 0);
    const Type type = event.counts ? Type::strong : Type::body;
    const std::string when = shown_time(event.at) + (event.counts ? "" : " · taken back");
    const float words =
        kit.text_height(when, Type::small, room) + kit.text_height(event.text, type, room) + kit.px(14);
    const Box box = kit.take(std::max(kit.px(54), words) + (beside ? 0 : kit.px(52)));
    draw_dot(kit, box, event, here);
    kit.inside({box.x + indent, box.y + kit.px(4), room, 0}, [&] {
        kit.text(when, Type::small, Role::ink2);
        kit.text(event.text, type, event.counts ? Role::ink : Role::ink2);
    });
    const Box end = beside ? Box{box.right() - button, box.y + kit.px(3), button, kit.px(46)}
                           : Box{box.x + indent, box.bottom() - kit.px(50), button, kit.px(46)};
    if (here) {
        kit.fill(end, Role::accent_tint, 8);
        kit.line_in(end, "NOW", Type::caps, Role::accent, Align::centre);
    } else if (kit.button("time." + std::to_string(event.sequence), end, go)) {
        scene.action = ReturnTo{event.sequence};
    }
}

}  // namespace

void draw_time_line(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = scene.low ? 16.0F : 22.0F, .edge = Role::accent}, [&] {
        kit.text("TIME LINE", Type::caps, Role::accent);
        kit.gap(5);
        kit.text("What happened to this job", scene.low ? Type::h2 : Type::h1, Role::ink);
        kit.gap(4);
        kit.text("The newest stands on top. Going back loses nothing: you can go forward again.", Type::body,
                 Role::ink2);
        kit.gap(14);
        const int standing = standing_at(scene.page);
        const auto& events = scene.page.events;
        for (auto event = events.rbegin(); event != events.rend(); ++event) {
            if (event->kind == EventLine::Kind::happened) {
                draw_event(scene, *event, standing);
            } else {
                draw_turn_of_time(kit, *event);
            }
        }
        kit.gap(10);
        const ButtonLook back{.label = "Back to the step in hand", .icon = Icon::back, .key = "Esc"};
        const Box line = kit.take(kit.px(46));
        if (kit.button("time.step", {line.x, line.y, std::min(line.w, kit.button_width(back)), line.h},
                       back)) {
            scene.action = Show{Showing::step, ""};
        }
    });
    kit.gap(14);
}

void draw_sheet_written(JobScene& scene) {
    Kit& kit = scene.kit;
    const SheetWritten& sheet = scene.view.sheet;
    if (!sheet.trouble.empty()) {
        kit.card({.fill = Role::wrong_tint, .line = Role::wrong, .pad = 14, .edge = Role::wrong}, [&] {
            kit.text("The job sheet", Type::strong, Role::ink);
            kit.text(sheet.trouble, Type::body, Role::ink);
        });
        kit.gap(12);
    }
    if (sheet.path.empty()) return;
    kit.card({.fill = Role::right_tint, .line = Role::right, .pad = 14, .edge = Role::right}, [&] {
        kit.text("The job sheet is written, beside the records", Type::strong, Role::ink);
        kit.text(sheet.path, Type::small, Role::ink);
        if (!sheet.remark.empty()) kit.text(sheet.remark, Type::small, Role::ink2);
        kit.gap(8);
        const ButtonLook open{.label = "Look at it", .icon = Icon::sheet};
        const Box line = kit.take(kit.px(46));
        if (kit.button("sheet.open", {line.x, line.y, kit.button_width(open), line.h}, open)) {
            scene.action = OpenOutside{sheet.path};
        }
    });
    kit.gap(12);
}

}  // namespace hardover::window
