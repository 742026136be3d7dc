// Numbers to be written down, other findings of the same check, and worksheets worked out beside them.
#include "app/window/screens/choices.hpp"
#include "app/window/screens/job_parts.hpp"
#include "app/window/screens/parts.hpp"

namespace hardover::window {

namespace {

// One finding that can be answered on the way: its question and a button for each reading.
void draw_other(JobScene& scene, const QuestionText& question) {
    Kit& kit = scene.kit;
    kit.card({.pad = 16}, [&] {
        kit.text(question.name, Type::caps, Role::ink2);
        kit.gap(3);
        kit.text(question.ask, Type::strong, Role::ink);
        kit.gap(8);
        for (const MeasureField& field : question.fields) draw_number(scene, field);
        std::vector<ChoiceText> choices = question.choices;
        choices.push_back({"cannot_tell", "Can't tell", question.answer == "Can't tell"});
        std::vector<std::string> ids;
        std::vector<ChoiceLook> looks;
        for (const ChoiceText& choice : choices) {
            ids.push_back("other." + question.finding + "." + choice.id);
            looks.push_back({.label = choice.text,
                             .selected = choice.chosen,
                             .quiet = choice.id == "cannot_tell",
                             .side = side_of(choice.id)});
        }
        const int pressed = draw_choice_cells(kit, ids, looks, 4);
        if (pressed >= 0)
            scene.action = GiveAnswer{question.finding, choices[static_cast<std::size_t>(pressed)].id};
    });
    kit.gap(10);
}

void draw_sheet(JobScene& scene, const SheetText& sheet) {
    Kit& kit = scene.kit;
    kit.card({.pad = 16}, [&] {
        kit.text("WORKSHEET", Type::caps, Role::ink2);
        kit.gap(2);
        kit.text(sheet.name, Type::h2, Role::ink);
        kit.gap(6);
        for (const SheetLine& line : sheet.inputs) draw_sheet_line(kit, line, Type::body);
        if (!sheet.results.empty()) {
            kit.gap(4);
            const Box line = kit.take(kit.px(2));
            kit.fill(line, Role::accent);
            kit.gap(4);
        }
        for (const SheetLine& line : sheet.results) draw_sheet_line(kit, line, Type::strong);
        if (!sheet.refused.empty()) {
            kit.gap(6);
            kit.text(sheet.refused, Type::body, Role::wrong);
        }
        for (const std::string& advice : sheet.advice) {
            kit.gap(6);
            kit.text(advice, Type::body, Role::ink);
        }
        if (!sheet.source.empty()) {
            kit.gap(8);
            kit.text(sheet.source, Type::small, Role::ink2);
        }
    });
    kit.gap(10);
}

}  // namespace

void draw_number(JobScene& scene, const MeasureField& field) {
    Draft& draft = scene.view.drafts.of(field.id, field.text);
    const FieldEvent event =
        draw_number_field(scene.kit, {"number." + field.id, field.name, field.unit, field.hint}, draft);
    if (event.cancelled) scene.view.drafts.drop(field.id);
    if (event.committed && draft.changed) {
        scene.action = GiveNumber{field.id, with_shown_unit(draft.text, field.unit), field.of_rig};
    }
}

void draw_questions(JobScene& scene) {
    Kit& kit = scene.kit;
    const auto& questions = scene.card.questions;
    if (!questions.empty() && questions.front().fields.size() > 1) {
        kit.card({.pad = 16}, [&] {
            kit.text("WRITE DOWN", Type::caps, Role::accent);
            kit.gap(6);
            const bool two = kit.width() > kit.px(480);
            const float gap = kit.px(16);
            const float w = two ? (kit.width() - gap) / 2 : kit.width();
            const auto& fields = questions.front().fields;
            for (std::size_t i = 0; i < fields.size(); i += two ? 2 : 1) {
                const Box start = kit.take(0);
                float h = kit.inside({start.x, start.y, w, 0}, [&] { draw_number(scene, fields[i]); });
                if (two && i + 1 < fields.size()) {
                    h = std::max(h, kit.inside({start.x + w + gap, start.y, w, 0},
                                               [&] { draw_number(scene, fields[i + 1]); }));
                }
                kit.take(h);
            }
        });
        kit.gap(14);
    }
    if (questions.size() > 1) {
        kit.text("To be seen on the way", Type::h2, Role::ink);
        kit.gap(8);
        for (std::size_t i = 1; i < questions.size(); ++i) draw_other(scene, questions[i]);
    }
}

void draw_sheets(JobScene& scene) {
    for (const SheetText& sheet : scene.page.sheets) draw_sheet(scene, sheet);
}

}  // namespace hardover::window
