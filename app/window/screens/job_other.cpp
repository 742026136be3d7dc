// What can stand in the middle instead of the step: the list of all findings, and handing the boat back.
#include <algorithm>

#include "app/window/hand_back.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/job_parts.hpp"

namespace hardover::window {

namespace {

void draw_row(JobScene& scene, const LookUpRow& row) {
    Kit& kit = scene.kit;
    const float pad = kit.px(12), room = kit.width() - 2 * pad;
    const float name = kit.text_height(row.name, Type::strong, room);
    const float ask = kit.text_height(row.ask, Type::small, room);
    const float answer =
        row.answer.empty() ? 0 : kit.text_height(row.answer, Type::strong, room - kit.px(28));
    const Box box = kit.take(name + ask + answer + 2 * pad);
    const Kit::Touch t = kit.touch("find." + row.finding, box, row.name);
    kit.fill(box, t.over ? Role::raised_over : Role::raised, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    kit.inside({box.x + pad, box.y + pad, room, 0}, [&] {
        kit.text(row.name, Type::strong, Role::ink);
        kit.text(row.ask, Type::small, Role::ink2);
        if (row.answer.empty()) return;
        const Box line = kit.take(0);
        kit.icon({line.x, line.y + kit.px(1), kit.px(20), kit.px(20)}, Icon::tick, Role::right);
        kit.inside({line.x + kit.px(28), line.y, line.w - kit.px(28), 0},
                   [&] { kit.text(row.answer, Type::strong, Role::right); });
    });
    if (t.pressed) scene.action = Show{Showing::finding, row.finding};
    kit.gap(8);
}

constexpr const char* not_listed_name = "Something not on this list";

bool is_among(const std::vector<std::string>& causes, const std::string& cause) {
    return std::find(causes.begin(), causes.end(), cause) != causes.end();
}

void tick(JobView& view, std::vector<std::string> ticked, const std::string& cause) {
    if (std::erase(ticked, cause) == 0) ticked.push_back(cause);
    view.hand_back_causes = std::move(ticked);
}

// The causes as picks, the likely ones or those ruled out. What was proved and put right comes first.
void draw_cause_picks(JobScene& scene, bool ruled_out) {
    const std::vector<std::string> ticked = causes_ticked(scene.view, scene.page);
    std::vector<std::string> ids, causes;
    std::vector<ChoiceLook> looks;
    const auto add = [&](const std::string& cause, std::string_view name, std::string_view note) {
        if (is_among(causes, cause)) return;
        ids.push_back("hand_back." + cause);
        causes.push_back(cause);
        looks.push_back({.label = name, .note = note, .selected = is_among(ticked, cause)});
    };
    const auto add_lines = [&](const std::vector<CauseLine>& lines, bool all) {
        for (const CauseLine& cause : lines) {
            if (!all && is_out(cause) != ruled_out) continue;
            add(cause.id, cause.name, cause.state.empty() ? cause.percent : cause.state);
        }
    };
    if (!ruled_out) add_lines(scene.page.put_right, true);
    add_lines(scene.page.causes, false);
    if (!ruled_out) add("not_listed", not_listed_name, "");
    const int what = draw_choice_cells(scene.kit, ids, looks, 2);
    if (what >= 0) tick(scene.view, ticked, causes[static_cast<std::size_t>(what)]);
}

// What its check has proved is told; of the other causes ticked it is asked, one by one.
void draw_how_sure(JobScene& scene) {
    Kit& kit = scene.kit;
    JobView& view = scene.view;
    for (const std::string& cause : causes_ticked(view, scene.page)) {
        const CauseLine* line = cause_shown(scene.page, cause);
        const std::string name = line == nullptr ? not_listed_name : line->name;
        kit.gap(8);
        if (line != nullptr && line->proved) {
            kit.text(name + ": proved by its check.", Type::body, Role::right);
            continue;
        }
        const auto told = view.hand_back_seen.find(cause);
        const bool open = told == view.hand_back_seen.end();
        kit.text(name, Type::body, Role::ink);
        kit.gap(6);
        const int sure = draw_choice_cells(kit, {"hand_back.proved." + cause, "hand_back.assumed." + cause},
                                           {{.label = "Seen and proved",
                                             .note = "measured, or found on the part",
                                             .selected = !open && told->second},
                                            {.label = "Assumed",
                                             .note = "the boat is right, the cause was not seen",
                                             .selected = !open && !told->second}},
                                           2);
        if (sure >= 0) view.hand_back_seen[cause] = sure == 0;
    }
}

void draw_what_it_was(JobScene& scene) {
    draw_cause_picks(scene, false);
    const bool any_out = std::any_of(scene.page.causes.begin(), scene.page.causes.end(), is_out);
    if (!any_out) return;
    scene.kit.gap(6);
    const bool open = scene.view.is_open("hand_back_out");
    if (scene.kit.fold("fold.hand_back_out", "It was one that had been ruled out", open)) {
        scene.view.fold("hand_back_out");
    }
    if (open) draw_cause_picks(scene, true);
}

}  // namespace

void draw_look_up(JobScene& scene) {
    Kit& kit = scene.kit;
    kit.text("Answer something else", scene.low ? Type::h2 : Type::h1, Role::ink);
    kit.text("Anything you have seen counts, in any order.", Type::body, Role::ink2);
    kit.gap(10);
    kit.field("look_up.filter", kit.take(kit.px(52)), scene.view.filter,
              {.name = "Find by a word",
               .placeholder = "Find by a word: oil, noise, ram ...",
               .icon = Icon::search});
    kit.gap(14);
    std::size_t found = 0;
    for (const LookUpRow& row : scene.look_up) {
        if (!matches(row, scene.view.filter)) continue;
        ++found;
        draw_row(scene, row);
    }
    if (found == 0)
        kit.text("Nothing has all of these words. Try one of them alone.", Type::body, Role::ink2);
}

void draw_hand_back(JobScene& scene) {
    Kit& kit = scene.kit;
    JobView& view = scene.view;
    kit.card({.pad = scene.low ? 16.0F : 22.0F, .edge = Role::right}, [&] {
        kit.text("HANDING BACK", Type::caps, Role::accent);
        kit.gap(5);
        kit.text("What was it?", scene.low ? Type::h2 : Type::h1, Role::ink);
        kit.text("The shop learns from this, so say only what you know. Tick each fault that was there.",
                 Type::body, Role::ink2);
        kit.gap(12);
        draw_what_it_was(scene);
        kit.gap(18);
        if (!causes_ticked(view, scene.page).empty()) {
            kit.text("How sure is that?", Type::strong, Role::ink);
            draw_how_sure(scene);
            kit.gap(18);
        }
        kit.text("A note for the file", Type::strong, Role::ink);
        kit.gap(6);
        Draft& note = view.drafts.of("hand_back.note", "");
        if (kit.field("hand_back.note", kit.take(kit.px(52)), note.text,
                      {.name = "A note for the file", .placeholder = "Not needed"})
                .edited) {
            note.changed = true;
        }
    });
}

}  // namespace hardover::window
