// The list of worksheets, and the one in hand: what goes in at the left, what comes out at the right.
#include "app/window/screens/worksheets.hpp"

#include "app/window/layout.hpp"
#include "app/window/plot.hpp"
#include "app/window/screens/bars.hpp"
#include "app/window/screens/choices.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

constexpr float side_by_side_from = 760;  // dp

struct Scene {
    Kit& kit;
    SheetsState& sheets;
    std::optional<Action> action;
};

void draw_row(Scene& scene, const SheetRow& row) {
    Kit& kit = scene.kit;
    const float pad = kit.px(14), room = kit.width() - 2 * pad;
    const std::string called = row.called_for ? "The job in hand calls for it" : "";
    const float name = kit.text_height(row.name, Type::strong, room);
    const float about = kit.text_height(row.about, Type::small, room);
    const float tag = called.empty() ? 0 : kit.theme().line_height(Type::small);
    const Box box = kit.take(name + about + tag + 2 * pad + kit.px(4));
    const Kit::Touch t = kit.touch("sheet." + row.id, box, row.name);
    kit.fill(box, t.over ? Role::raised_over : Role::card, 8);
    kit.outline(box, t.focused ? Role::accent : Role::hairline, t.focused ? 3 : 1.5F, 8);
    kit.inside({box.x + pad, box.y + pad, room, 0}, [&] {
        kit.text(row.name, Type::strong, Role::ink);
        kit.text(called, Type::small, Role::accent);
        kit.gap(4);
        kit.text(row.about, Type::small, Role::ink2);
    });
    if (t.pressed) scene.action = SheetAction{OpenSheet{row.id}};
    kit.gap(10);
}

void draw_list(Scene& scene) {
    Kit& kit = scene.kit;
    SheetsState& sheets = scene.sheets;
    kit.tab_starts_here();
    if (draw_search_field(kit, "sheets.filter", sheets.view.filter, "Find a worksheet",
                          "Find by a word: turns, hose, torque ...")) {
        scene.action = SheetAction{FilterSheets{sheets.view.filter}};
    }
    kit.gap(8);
    if (sheets.rows.empty()) {
        kit.text("No worksheet has all of these words. Try one of them alone.", Type::body, Role::ink2);
        return;
    }
    for (std::size_t first = 0; first < sheets.rows.size();) {
        std::size_t end = first;
        while (end < sheets.rows.size() && sheets.rows[end].topic == sheets.rows[first].topic) ++end;
        kit.gap(12);
        kit.text(sheets.rows[first].topic, Type::h2, Role::ink);
        kit.gap(6);
        draw_in_columns(kit, end - first, 330, 3,
                        [&](std::size_t i) { draw_row(scene, sheets.rows[first + i]); });
        first = end;
    }
}

void draw_choice_field(Scene& scene, const SheetField& field) {
    Kit& kit = scene.kit;
    kit.text(field.name, Type::small, Role::ink);
    kit.gap(4);
    std::vector<std::string> ids;
    std::vector<ChoiceLook> looks;
    for (const ChoiceText& choice : field.choices) {
        ids.push_back("input." + field.id + "." + choice.id);
        looks.push_back({.label = choice.text, .selected = choice.chosen});
    }
    const int pressed = draw_choice_cells(kit, ids, looks, 3);
    if (pressed >= 0) {
        const ChoiceText& choice = field.choices[static_cast<std::size_t>(pressed)];
        const bool take_back = choice.chosen && field.typed;
        scene.action = SheetAction{EnterInput{field.id, take_back ? "" : choice.id}};
    }
    kit.gap(4);
    kit.text(field.from, Type::small, field.assumed ? Role::weigh_against : Role::ink2);
    kit.gap(10);
}

void draw_field(Scene& scene, const SheetField& field) {
    if (!field.choices.empty()) return draw_choice_field(scene, field);
    Draft& draft = scene.sheets.view.drafts.of(field.id, field.text);
    if (!draft.changed) draft.error = field.error;
    std::string hint = field.from;
    if (field.text.empty() && !field.hint.empty()) hint += (hint.empty() ? "" : " ") + field.hint;
    const FieldEvent event =
        draw_number_field(scene.kit, {"input." + field.id, field.name, field.unit, hint}, draft);
    if (event.cancelled) scene.sheets.view.drafts.drop(field.id);
    if (event.committed && draft.changed) scene.action = SheetAction{EnterInput{field.id, draft.text}};
}

void draw_form(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPage& page = scene.sheets.page;
    kit.card({.pad = 18, .edge = Role::accent}, [&] {
        kit.text("WHAT GOES IN", Type::caps, Role::accent);
        kit.gap(8);
        kit.tab_starts_here();
        for (const SheetField& field : page.fields) {
            if (!field.choices.empty()) draw_field(scene, field);
        }
        std::vector<const SheetField*> numbers;
        for (const SheetField& field : page.fields) {
            if (field.choices.empty()) numbers.push_back(&field);
        }
        draw_in_columns(kit, numbers.size(), 180, 2, [&](std::size_t i) { draw_field(scene, *numbers[i]); });
        if (page.any_typed) {
            if (draw_small_button(kit, "sheets.clear",
                                  {.label = "Clear what was entered", .icon = Icon::cross}))
                scene.action = SheetAction{ClearSheet{}};
        }
    });
    kit.gap(14);
}

void draw_result(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPage& page = scene.sheets.page;
    kit.card({.pad = 18}, [&] {
        kit.text("WHAT COMES OUT", Type::caps, Role::accent);
        kit.gap(8);
        if (!page.refused.empty()) {
            kit.text("It does not hold for these numbers. " + page.refused, Type::strong, Role::wrong);
            return;
        }
        if (!page.waits.empty()) {
            kit.text(page.waits, Type::body, Role::ink);
            kit.gap(6);
        }
        for (const SheetLine& line : page.results) {
            if (line.known) draw_sheet_line(kit, line, Type::strong);
        }
        for (const std::string& advice : page.advice) {
            kit.gap(6);
            kit.text(advice, Type::body, Role::ink);
        }
    });
    kit.gap(14);
}

void draw_take_over(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPage& page = scene.sheets.page;
    if (page.take_over.empty()) return;
    kit.card({.fill = Role::panel, .pad = 18}, [&] {
        kit.text("FOR THE JOB IN HAND", Type::caps, Role::accent);
        kit.gap(6);
        if (page.taken.empty()) {
            kit.text("Nothing was entered here that the job does not have already.", Type::body, Role::ink2);
        } else {
            kit.text("The job would take over:", Type::body, Role::ink);
            for (const std::string& line : page.taken) kit.text(line, Type::strong, Role::ink);
        }
        for (const std::string& line : page.beside) {
            kit.gap(4);
            kit.text(line, Type::small, Role::ink2);
        }
        if (page.taken.empty()) return;
        kit.gap(10);
        const ButtonLook look{.label = page.take_over, .icon = Icon::tick, .face = Face::primary, .key = "U"};
        if (kit.button("sheets.use", kit.take(kit.px(56)), look)) scene.action = SheetAction{UseInJob{}};
    });
    kit.gap(14);
}

int draw_picks(Kit& kit, const std::string& prefix, const std::vector<ChoiceText>& choices) {
    std::vector<std::string> ids;
    std::vector<ChoiceLook> looks;
    for (const ChoiceText& choice : choices) {
        ids.push_back(prefix + choice.id);
        looks.push_back({.label = choice.text, .selected = choice.chosen});
    }
    return draw_choice_cells(kit, ids, looks, 3);
}

void draw_plot_card(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPlot& made = scene.sheets.plot;
    kit.card({.pad = 18}, [&] {
        kit.text("HOW IT CHANGES", Type::caps, Role::accent);
        kit.gap(6);
        if (!made.plot) {
            kit.text(made.why_not, Type::body, Role::ink2);
            return;
        }
        draw_plot(kit, *made.plot);
        if (made.results.size() + made.against.size() < 3) return;
        kit.gap(6);
        bool& open = scene.sheets.view.choosing_plot;
        if (kit.fold("sheets.choose", "Draw something else", open)) open = !open;
        if (!open) return;
        kit.text("Result", Type::small, Role::ink2);
        kit.gap(4);
        const int result = draw_picks(kit, "draw.", made.results);
        if (result >= 0)
            scene.action = SheetAction{DrawResult{made.results[static_cast<std::size_t>(result)].id}};
        kit.gap(10);
        kit.text("Against", Type::small, Role::ink2);
        kit.gap(4);
        const int against = draw_picks(kit, "against.", made.against);
        if (against >= 0)
            scene.action = SheetAction{DrawAgainst{made.against[static_cast<std::size_t>(against)].id}};
    });
    kit.gap(14);
}

void draw_small_print(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPage& page = scene.sheets.page;
    if (!page.holds.empty()) {
        kit.text("It holds only so far", Type::strong, Role::ink);
        for (const std::string& line : page.holds) kit.text(line, Type::small, Role::ink2);
        kit.gap(8);
    }
    kit.text(page.source, Type::small, Role::ink2);
    for (const std::string& line : page.deferrals) {
        kit.gap(4);
        kit.text(line, Type::small, Role::ink2);
    }
}

void draw_sheet(Scene& scene) {
    Kit& kit = scene.kit;
    const SheetPage& page = scene.sheets.page;
    if (draw_small_button(kit, "sheets.back", {.label = "All worksheets", .icon = Icon::back, .key = "Esc"}))
        scene.action = SheetAction{OpenSheet{""}};
    kit.gap(10);
    draw_notice(kit, scene.sheets.view.notice);
    draw_trouble(kit, scene.sheets.view.trouble);
    kit.text(page.name, Type::h1, Role::ink);
    kit.gap(4);
    kit.text(page.about, Type::body, Role::ink2);
    kit.gap(14);
    const auto out = [&] {
        draw_result(scene);
        draw_plot_card(scene);
        draw_take_over(scene);
        draw_small_print(scene);
    };
    if (kit.width() < kit.px(side_by_side_from)) {
        draw_form(scene);
        out();
        return;
    }
    draw_columns(
        kit, 0.4F, [&] { draw_form(scene); }, out);
}

void use_keys(Scene& scene) {
    Kit& kit = scene.kit;
    const bool open = !scene.sheets.open.empty();
    if (kit.take(Key::escape)) {
        if (open) {
            scene.action = SheetAction{OpenSheet{""}};
        } else {
            scene.action = GoBack{};
        }
    }
    if (kit.take_letter(U'/')) {
        if (open) scene.action = SheetAction{OpenSheet{""}};
        kit.open_field("sheets.filter");
    }
    const bool can_use = open && !scene.sheets.page.taken.empty();
    if (can_use && (kit.take_letter(U'u') || kit.take_letter(U'U'))) scene.action = SheetAction{UseInJob{}};
}

}  // namespace

std::optional<Action> draw_worksheets(Kit& kit, SheetsState& sheets) {
    Scene scene{kit, sheets, std::nullopt};
    const float scale = kit.px(1);
    const BenchBoxes boxes = bench_boxes(kit.screen().w / scale, kit.screen().h / scale);
    const bool open = !sheets.open.empty();
    if (auto pressed = draw_header(kit, kit.placed(boxes.header),
                                   {"Worksheets", open ? sheets.page.topic : "", false})) {
        scene.action = pressed;
    }
    const float spare = std::max(0.0F, boxes.body.w - 1320) / 2;
    const std::string name = "sheets." + sheets.open;
    kit.pane(name.c_str(), kit.placed(boxes.body), {.pad_x = 20 + spare, .pad_y = 16, .main = true},
             [&] { open ? draw_sheet(scene) : draw_list(scene); });
    std::vector<KeyHint> hints{{"/", "find a worksheet"}, {"Esc", "back"}};
    if (open && !sheets.page.taken.empty()) hints.insert(hints.begin(), {"U", "use in the job"});
    draw_keys(kit, kit.placed(boxes.keys), hints);
    use_keys(scene);
    return scene.action;
}

}  // namespace hardover::window
