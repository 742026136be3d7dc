// Sets taken on this PC: begun from a file, gone on with, handed in.
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

void draw_begin(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    kit.card({}, [&] {
        kit.text("Begin a set", Type::h2, Role::ink);
        kit.gap(6);
        bool entered =
            draw_text(scene, view.set_path,
                      {"take.path", "Its file", "From the instructor, on a stick or a shared folder.",
                       "/media/stick/S1.hardover-set"});
        draw_columns(
            kit, 0.4F,
            [&] {
                entered |= draw_text(scene, view.set_seat, {"take.seat", "Your seat", "", "A07"});
            },
            [&] {
                entered |= draw_text(
                    scene, view.start_code,
                    {"take.code", "Start code", "Only for a graded set; it is given out in the room."});
            });
        const bool whole = !view.set_path.empty() && !view.set_seat.empty();
        if (draw_primary(scene, "take.begin", "Begin", whole) || (entered && whole))
            scene.ask(BeginSet{view.set_path, view.set_seat, view.start_code});
        draw_told_at(scene, "take");
    });
    kit.gap(14);
}

bool is_handed_in(const classroom::TakenSet& set) {
    return set.handed_in > 0 && set.handed_in == set.records;
}

std::string state_of(const classroom::TakenSet& set) {
    if (set.purged) return "Handed in, and taken off this PC.";
    if (set.handed_in == 0) return "Not handed in yet.";
    return is_handed_in(set) ? "Handed in." : "Something was added since it was handed in.";
}

void draw_taken(ClassScene& scene, const classroom::TakenSet& set) {
    Kit& kit = scene.kit;
    kit.card({.pad = 14}, [&] {
        kit.text(set.set + " · " + set.title, Type::h2, Role::ink);
        kit.text("Seat " + set.seat + ". " + state_of(set), Type::body, Role::ink2);
        if (set.purged) return;
        kit.gap(8);
        const bool handed_in = is_handed_in(set);
        std::vector<RowButton> buttons{
            {"taken.go_on." + set.attempt,
             {.label = "Go on with it", .face = handed_in ? Face::plain : Face::primary}},
            {"taken.hand_in." + set.attempt,
             {.label = handed_in ? "Hand in again" : "Hand in", .icon = Icon::hand_over}}};
        if (handed_in)
            buttons.push_back({"taken.purge." + set.attempt, {.label = "Take my answers off this PC"}});
        const int pressed = draw_button_row(kit, buttons);
        if (pressed == 0) scene.ask(GoOnWithSet{set.attempt, scene.view().start_code});
        if (pressed == 1) scene.ask(HandInSet{set.attempt});
        if (pressed == 2) scene.ask(PurgeSet{set.attempt});
        draw_told_at(scene, "taken." + set.attempt);
    });
    kit.gap(10);
}

}  // namespace

void draw_my_sets(ClassScene& scene) {
    // What is not handed in yet comes before a new one.
    const auto draw_those = [&](bool done) {
        for (const classroom::TakenSet& set : scene.page().taken) {
            if ((set.purged || is_handed_in(set)) == done) draw_taken(scene, set);
        }
    };
    draw_those(false);
    draw_begin(scene);
    draw_those(true);
}

}  // namespace hardover::window
