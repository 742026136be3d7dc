// What the class's answers and boats come to: in words, as plots and as tables, and what goes out of it.
#include "app/window/plot.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"
#include "app/window/screens/study/study_parts.hpp"

namespace hardover::window {

using classroom::FigurePlot;
using classroom::FiguresPage;
using classroom::FigureTable;

namespace {

constexpr float two_plots_from = 900;  // dp of width

// A card whose heading opens and shuts it.
void draw_folded(ClassScene& scene, const std::string& id, const std::string& name,
                 const std::function<void()>& content) {
    Kit& kit = scene.kit;
    std::set<std::string>& open = scene.view().open;
    kit.card({.pad = 14}, [&] {
        if (kit.fold("figures." + id, name, open.contains(id)) && open.erase(id) == 0) open.insert(id);
        if (open.contains(id)) content();
    });
    kit.gap(10);
}

void draw_table(ClassScene& scene, const std::string& id, const FigureTable& table) {
    draw_folded(scene, id, table.name, [&] { draw_figure_table(scene.kit, table); });
}

void draw_figure_plot(ClassScene& scene, const std::string& id, const FigurePlot& plot) {
    draw_folded(scene, id, plot.name, [&] {
        if (plot.empty.empty()) {
            draw_plot(scene.kit, plot.plot);
        } else {
            scene.kit.text(plot.empty, Type::body, Role::ink);
        }
    });
}

void draw_in_short(Kit& kit, const FiguresPage& page) {
    kit.text(page.headline, Type::h2, Role::ink);
    for (const std::string& line : page.summary) {
        kit.gap(4);
        kit.text(line, Type::body, Role::ink);
    }
    kit.gap(12);
    if (page.to_look_at.empty()) return;
    kit.card({.pad = 16, .edge = Role::weigh_against}, [&] {
        kit.text("Worth a lesson, or a look at the question", Type::h2, Role::ink);
        for (const std::string& line : page.to_look_at) {
            kit.gap(6);
            kit.text(line, Type::body, Role::ink);
        }
    });
    kit.gap(12);
}

void draw_page(ClassScene& scene, const FiguresPage& page) {
    Kit& kit = scene.kit;
    draw_in_short(kit, page);
    const auto items = [&] { draw_figure_plot(scene, "item_map", page.item_map); };
    const auto abilities = [&] { draw_figure_plot(scene, "abilities", page.abilities); };
    if (kit.width() >= kit.px(two_plots_from)) {
        draw_columns(kit, 0.5F, items, abilities);
    } else {
        items();
        abilities();
    }
    draw_figure_plot(scene, "over_best", page.over_best);
    draw_table(scene, "learners", page.learners);
    draw_table(scene, "items", page.items);
    draw_table(scene, "topics", page.topics);
    draw_table(scene, "confusions", page.confusions);
    draw_table(scene, "causes", page.causes);
    draw_table(scene, "term", page.term);
}

void draw_ways_out(ClassScene& scene) {
    Kit& kit = scene.kit;
    ClassView& view = scene.view();
    const bool free = !scene.page().working;
    const auto by_key = [&](char key) { return free && !kit.typing() && take_command(kit, key); };
    const int pressed = draw_button_row(
        kit, {{"figures.work_out",
               {.label = scene.page().figures ? "Work out anew" : "Work out",
                .face = Face::primary,
                .enabled = free}},
              {"export.sheet", {.label = "Class sheet (PDF)", .icon = Icon::sheet, .enabled = free}},
              {"export.tables", {.label = "Tables (CSV)", .icon = Icon::plot, .enabled = free}}});
    if (pressed == 0 || by_key('w')) scene.ask(WorkOutFigures{});
    if (pressed == 1 || by_key('p')) scene.ask(ExportClass{ClassExport::sheet, view.with_names});
    if (pressed == 2) scene.ask(ExportClass{ClassExport::tables, view.with_names});
    kit.gap(8);
    kit.text("On the sheet and in the tables", Type::small, Role::ink);
    kit.gap(4);
    const int names = draw_choice_cells(kit, {"export.seats", "export.names"},
                                        {{.label = "Seats only", .selected = !view.with_names},
                                         {.label = "Seats with names", .selected = view.with_names}},
                                        2);
    if (names >= 0) view.with_names = names == 1;
    draw_told_at(scene, "figures");
    draw_told_at(scene, "export");
    kit.gap(14);
}

// For an instructor who has no results yet, and wants to know what they will look like.
void draw_invented(ClassScene& scene) {
    Kit& kit = scene.kit;
    kit.card({.pad = 16}, [&] {
        kit.text("No results yet?", Type::h2, Role::ink);
        kit.gap(4);
        kit.text(
            "Look at the figures of an invented class of 20. No person is in it, and nothing of it is kept.",
            Type::body, Role::ink2);
        kit.gap(8);
        const ButtonLook look{.label = "Show an invented class", .enabled = !scene.page().working};
        if (draw_small_button(kit, "figures.invent", look)) scene.ask(InventClass{});
        draw_told_at(scene, "invented");
    });
    kit.gap(12);
}

}  // namespace

void draw_class_figures(ClassScene& scene) {
    Kit& kit = scene.kit;
    const ClassPage& page = scene.page();
    const bool there = draw_class_first(scene);
    if (there) draw_ways_out(scene);
    if (there && !page.keys_open)
        draw_notice(kit, "Graded sets are left out until the passphrase is given at Sets.");
    for (const std::string& note : page.notes) draw_notice(kit, note);
    if (page.figures && page.invented)
        draw_notice(kit, "An invented class: seats, answers and boats are made up by a program.");
    kit.gap(8);
    if (page.figures) {
        draw_page(scene, *page.figures);
    } else {
        draw_invented(scene);
    }
}

}  // namespace hardover::window
