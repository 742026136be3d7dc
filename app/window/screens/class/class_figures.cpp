// What the class's answers and boats come to: in words, as tables and as plots, and what goes out of it.
#include <algorithm>

#include "app/window/plot.hpp"
#include "app/window/screens/class/class_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

using classroom::FigureColumn;
using classroom::FigurePlot;
using classroom::FigureRow;
using classroom::FiguresPage;
using classroom::FigureTable;

namespace {

constexpr float columns_from = 700;  // dp of width, for a table with columns
constexpr float cell_pad = 6;

bool unfolded(ClassScene& scene, const std::string& id, const std::string& label) {
    std::set<std::string>& open = scene.view().open;
    if (scene.kit.fold("figures." + id, label, open.contains(id)) && open.erase(id) == 0) open.insert(id);
    return open.contains(id);
}

// One line of cells over the table's width; gives its height.
void draw_cells(Kit& kit, const std::vector<FigureColumn>& columns, const std::vector<std::string>& cells,
                Type type, Role role) {
    float shares = 0;
    for (const FigureColumn& column : columns) shares += static_cast<float>(column.share);
    const float whole = kit.width(), pad = kit.px(cell_pad);
    float h = 0;
    std::vector<float> widths;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        widths.push_back(whole * static_cast<float>(columns[i].share) / std::max(0.01F, shares));
        if (i < cells.size()) h = std::max(h, kit.text_height(cells[i], type, widths[i] - pad));
    }
    const Box row = kit.take(h + pad);
    float x = row.x;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        if (i < cells.size())
            kit.inside({x, row.y, widths[i] - pad, 0}, [&] { kit.text(cells[i], type, role); });
        x += widths[i];
    }
}

void draw_row(Kit& kit, const FigureTable& table, const FigureRow& row, bool columns) {
    const Role role = row.look_at ? Role::weigh_against : Role::ink;
    if (columns) {
        draw_cells(kit, table.columns, row.cells, Type::small, role);
    } else {
        for (std::size_t i = 0; i < row.cells.size() && i < table.columns.size(); ++i) {
            kit.text(table.columns[i].name + ": " + row.cells[i], i == 0 ? Type::strong : Type::small, role);
        }
    }
    if (!row.note.empty()) kit.text(row.note, Type::small, Role::weigh_against);
    kit.gap(3);
    kit.hairline(kit.take(kit.px(1)));
    kit.gap(3);
}

void draw_table(ClassScene& scene, const std::string& id, const FigureTable& table) {
    Kit& kit = scene.kit;
    if (!unfolded(scene, id, table.name)) return;
    if (!table.note.empty()) kit.text(table.note, Type::small, Role::ink2);
    kit.gap(6);
    if (table.rows.empty()) kit.text(table.empty, Type::body, Role::ink);
    const bool columns = kit.width() >= kit.px(columns_from);
    if (columns && !table.rows.empty()) {
        std::vector<std::string> names;
        for (const FigureColumn& column : table.columns) names.push_back(column.name);
        draw_cells(kit, table.columns, names, Type::small, Role::ink2);
        kit.hairline(kit.take(kit.px(1)));
        kit.gap(3);
    }
    for (const FigureRow& row : table.rows) draw_row(kit, table, row, columns);
    kit.gap(10);
}

void draw_figure_plot(ClassScene& scene, const std::string& id, const FigurePlot& plot) {
    Kit& kit = scene.kit;
    if (!unfolded(scene, id, plot.name)) return;
    if (plot.empty.empty()) {
        draw_plot(kit, plot.plot);
    } else {
        kit.text(plot.empty, Type::body, Role::ink);
    }
    kit.gap(10);
}

void draw_page(ClassScene& scene, const FiguresPage& page) {
    Kit& kit = scene.kit;
    kit.text(page.headline, Type::h2, Role::ink);
    for (const std::string& line : page.summary) {
        kit.gap(4);
        kit.text(line, Type::body, Role::ink);
    }
    kit.gap(10);
    if (!page.to_look_at.empty()) {
        kit.card({.pad = 14, .edge = Role::weigh_against}, [&] {
            kit.text("Worth a lesson, or a look at the question", Type::strong, Role::ink);
            for (const std::string& line : page.to_look_at) {
                kit.gap(4);
                kit.text(line, Type::body, Role::ink);
            }
        });
        kit.gap(10);
    }
    draw_table(scene, "learners", page.learners);
    draw_table(scene, "items", page.items);
    draw_table(scene, "topics", page.topics);
    draw_table(scene, "confusions", page.confusions);
    draw_table(scene, "causes", page.causes);
    draw_table(scene, "term", page.term);
    draw_figure_plot(scene, "item_map", page.item_map);
    draw_figure_plot(scene, "abilities", page.abilities);
    draw_figure_plot(scene, "over_best", page.over_best);
}

void draw_exports(ClassScene& scene) {
    Kit& kit = scene.kit;
    kit.card({}, [&] {
        kit.text("Write out", Type::h2, Role::ink);
        kit.gap(6);
        struct Way {
            const char* id;
            const char* label;
            ClassExport what;
        };
        for (const Way& way :
             {Way{"export.tables", "Tables for a spreadsheet (CSV)", ClassExport::tables},
              Way{"export.questions", "Questions for other programs (QTI)", ClassExport::questions}}) {
            if (draw_small_button(kit, way.id, {.label = way.label, .icon = Icon::sheet}))
                scene.ask(ExportClass{way.what});
            kit.gap(6);
        }
        draw_told_at(scene, "export");
    });
    kit.gap(12);
}

}  // namespace

void draw_class_figures(ClassScene& scene) {
    if (!draw_class_first(scene)) return;
    Kit& kit = scene.kit;
    if (!scene.page().keys_open)
        kit.text("Graded sets are left out until the passphrase is given under Sets.", Type::small,
                 Role::ink2);
    kit.gap(6);
    if (draw_primary(scene, "figures.work_out", scene.page().figures ? "Work out anew" : "Work out"))
        scene.ask(WorkOutFigures{});
    draw_told_at(scene, "figures");
    kit.gap(10);
    for (const std::string& note : scene.page().notes) draw_notice(kit, note);
    if (scene.page().figures) draw_page(scene, *scene.page().figures);
    draw_exports(scene);
}

}  // namespace hardover::window
