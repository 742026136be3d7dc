// The roster: seats with a name where wanted, added one by one or from a table.
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

namespace {

void draw_seat_form(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    const bool changing = !view.changing.empty();
    kit.card({}, [&] {
        kit.text(changing ? "Seat " + view.changing : "Add a seat", Type::h2, Role::ink);
        kit.text("Results carry the seat alone. A name stays on this PC, and may be left out.", Type::small,
                 Role::ink2);
        kit.gap(8);
        bool entered = false;
        if (!changing) entered |= draw_text(scene, view.seat, {"seat.code", "Seat", "", "A07"});
        entered |= draw_text(scene, view.seat_name, {"seat.name", "Name", ""});
        entered |= draw_text(scene, view.seat_group, {"seat.group", "Group", "", "Tuesday"});
        if (changing) {
            if (draw_primary(scene, "seat.keep", "Keep") || entered)
                scene.ask(ChangeSeat{view.changing, view.seat_name, view.seat_group});
            kit.gap(6);
            if (draw_small_button(kit, "seat.remove", {.label = "Take this seat off the roster"}))
                scene.ask(RemoveSeat{view.changing});
            kit.gap(6);
            if (draw_small_button(kit, "seat.leave", {.label = "Leave it as it is", .face = Face::quiet})) {
                view.changing.clear();
                view.seat_name.clear();
            }
        } else if (draw_primary(scene, "seat.add", "Add", !view.seat.empty()) ||
                   (entered && !view.seat.empty())) {
            scene.ask(AddSeat{view.seat, view.seat_name, view.seat_group});
        }
        draw_told_at(scene, "seat");
    });
    kit.gap(12);
}

void draw_import(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    kit.card({}, [&] {
        kit.text("From a table", Type::h2, Role::ink);
        kit.gap(6);
        const bool entered = draw_text(
            scene, view.roster_path,
            {"roster.path", "Its file", "A CSV with the columns seat, name and group in its first row.",
             "/media/stick/roster.csv"});
        const bool there = !view.roster_path.empty();
        if (draw_primary(scene, "roster.import", "Take over", there) || (entered && there))
            scene.ask(ImportRoster{view.roster_path});
        draw_told_at(scene, "import");
    });
    kit.gap(12);
}

void draw_seats(ClassScene& scene) {
    Kit& kit = scene.kit;
    const auto& seats = scene.page().seats;
    kit.text(std::to_string(seats.size()) + (seats.size() == 1 ? " seat" : " seats"), Type::h2, Role::ink);
    kit.gap(6);
    if (seats.empty())
        kit.text("Nobody yet. Add seats one by one, or take over a table.", Type::body, Role::ink);
    draw_in_columns(kit, seats.size(), 260, 3, [&](std::size_t i) {
        const classroom::Seat& seat = seats[i];
        RowLook look;
        look.title = seat.code;
        look.note = seat.name + (seat.name.empty() || seat.group.empty() ? "" : ", ") + seat.group;
        look.selected = scene.view().changing == seat.code;
        if (!draw_study_row(kit, "roster.seat." + seat.code, look)) return;
        scene.view().changing = seat.code;
        scene.view().seat_name = seat.name;
        scene.view().seat_group = seat.group;
    });
}

}  // namespace

void draw_roster(ClassScene& scene) {
    if (!draw_class_first(scene)) return;
    draw_columns(
        scene.kit, 0.5F, [&] { draw_seat_form(scene); }, [&] { draw_import(scene); });
    draw_told_at(scene, "roster");
    draw_seats(scene);
}

}  // namespace hardover::window
