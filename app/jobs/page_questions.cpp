// Questions as a person sees them: choices, and fields for every number that is still wanted.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"

namespace hardover::jobs_detail {

namespace {

std::string example_hint(const WorksheetInput* input, UnitSystem units) {
    if (input == nullptr || !input->example) return "";
    return fmt::format("for example {}", show(*input->example, input->unit, units));
}

MeasureField finding_measure(const View& view, Index index, const WorksheetInput* input) {
    const Finding& finding = view.knowledge.findings[index];
    MeasureField field;
    field.id = finding.id;
    field.name = finding.name;
    field.unit = shown_unit(*finding.unit, view.units()).name;
    field.hint = example_hint(input, view.units());
    if (finding.spread > 0 && field.hint.empty()) {
        Unit of_difference = shown_unit(*finding.unit, view.units());
        of_difference.offset = 0;  // 5 F of spread are 5 degrees, not a temperature
        field.hint = fmt::format("read to within ± {} unless you say otherwise",
                                 show({finding.spread, finding.unit->dimension, 0}, of_difference));
    }
    const auto given = view.job.facts.answers.find(index);
    if (given != view.job.facts.answers.end()) {
        const Quantity* quantity = std::get_if<Quantity>(&given->second.given);
        if (quantity != nullptr) field.text = editable_text(*quantity, *finding.unit, view.units());
    }
    return field;
}

// The measured numbers a worksheet takes, then the figures of the rig that are not known yet.
std::vector<MeasureField> worksheet_fields(const View& view, const Worksheet& sheet) {
    std::vector<MeasureField> fields;
    for (const WorksheetInput& input : sheet.inputs) {
        if (input.finding != none) fields.push_back(finding_measure(view, input.finding, &input));
    }
    for (const WorksheetInput& input : sheet.inputs) {
        // A choice of the rig is answered with the rig, not as a number.
        if (input.rig_field == none || !input.choices.empty() || view.job.facts.rig.count(input.rig_field))
            continue;
        MeasureField field = rig_measure(view.knowledge, view.job, input.rig_field);
        if (field.hint.empty()) field.hint = example_hint(&input, view.units());
        fields.push_back(std::move(field));
    }
    return fields;
}

bool open_here(View& view, Index finding) {
    const Expression& possible = view.knowledge.findings[finding].possible_when;
    return !known_answer(view, finding) && view.situation.holds(possible) != Truth::no;
}

// Findings that a worksheet gives from this plain measurement.
std::vector<Index> worked_out_from(const Knowledge& knowledge, Index measured) {
    std::vector<Index> findings;
    for (std::size_t i = 0; i < knowledge.findings.size(); ++i) {
        const auto& from = knowledge.findings[i].from;
        if (!from) continue;
        const auto& inputs = knowledge.worksheets[from->worksheet].inputs;
        const bool takes_it = std::any_of(inputs.begin(), inputs.end(), [measured](const WorksheetInput& in) {
            return in.finding == measured;
        });
        if (takes_it) findings.push_back(static_cast<Index>(i));
    }
    return findings;
}

// Findings to ask for, each once, and each worksheet once.
class Wanted {
  public:
    explicit Wanted(View& view) : view_(view) {}

    void add(Index finding) {
        const auto& from = view_.knowledge.findings[finding].from;
        if (from && !worksheets_.insert(from->worksheet).second) return;
        if (std::find(findings_.begin(), findings_.end(), finding) == findings_.end()) {
            findings_.push_back(finding);
        }
    }

    // A plain measurement is asked for as a field of what is worked out from it, where that is still open.
    void add_with_worksheet(Index finding) {
        for (const Index worked_out : worked_out_from(view_.knowledge, finding)) {
            const int sheet = view_.knowledge.findings[worked_out].from->worksheet;
            if (worksheets_.count(sheet)) return;
            if (open_here(view_, worked_out)) return add(worked_out);
        }
        add(finding);
    }

    const std::vector<Index>& findings() const { return findings_; }

  private:
    View& view_;
    std::vector<Index> findings_;
    std::set<Index> worksheets_;
};

}  // namespace

std::string editable_text(const Quantity& quantity, const Unit& unit, UnitSystem units) {
    const std::string shown = show(quantity, unit, units);
    const auto again = read_quantity_of(shown, unit);
    const auto near = [](double a, double b) { return std::abs(a - b) <= 1e-9 * std::abs(b); };
    const bool same = again.ok() && near(again.value().value, quantity.value) &&
                      near(again.value().spread, quantity.spread);
    return same ? shown : exact_text(quantity, shown_unit(unit, units));
}

MeasureField rig_measure(const Knowledge& knowledge, const Job& job, Index index) {
    const RigField& entry = knowledge.rig_fields[index];
    MeasureField field;
    field.id = entry.id;
    field.name = entry.name;
    field.unit = shown_unit(*entry.unit, job.shop.units).name;
    field.of_rig = true;
    const auto given = job.facts.rig.find(index);
    if (given != job.facts.rig.end()) {
        const Quantity* quantity = std::get_if<Quantity>(&given->second);
        if (quantity != nullptr) field.text = editable_text(*quantity, *entry.unit, job.shop.units);
    } else if (const Quantity* assumed = std::get_if<Quantity>(&entry.assumed)) {
        field.hint =
            fmt::format("taken as {} until you say otherwise", show(*assumed, *entry.unit, job.shop.units));
    }
    return field;
}

QuestionText question_text(View& view, Index index) {
    const Finding& finding = view.knowledge.findings[index];
    QuestionText question;
    question.finding = finding.id;
    question.name = finding.name;
    question.ask = finding.ask;
    const auto given = view.job.facts.answers.find(index);
    // What was answered before the last remedy is told with the question, not chosen: it may have changed.
    const int* chosen =
        answered_now(view.job.facts, index) ? std::get_if<int>(&given->second.given) : nullptr;
    for (std::size_t r = 0; r < finding.readings.size(); ++r) {
        question.choices.push_back({finding.readings[r].id, finding.readings[r].text,
                                    chosen != nullptr && *chosen == static_cast<int>(r)});
    }
    if (finding.from) {
        question.fields = worksheet_fields(view, view.knowledge.worksheets[finding.from->worksheet]);
    } else if (finding.unit) {
        question.fields.push_back(finding_measure(view, index, nullptr));
    }
    if (const auto known = known_answer(view, index)) {
        const std::string answer = answer_text(view.knowledge, index, known->answer, view.units());
        const bool before_the_work =
            given != view.job.facts.answers.end() && !answered_now(view.job.facts, index);
        if (before_the_work) {
            question.ask += fmt::format(" Before the work: {}.", quoted(answer));
        } else {
            question.answer = answer;
        }
    }
    return question;
}

std::vector<QuestionText> question_texts(View& view, const std::vector<Index>& first, Index check) {
    Wanted wanted(view);
    for (const Index finding : first) wanted.add_with_worksheet(finding);
    if (check != none) {
        for (const Index finding : view.knowledge.checks[check].gets) {
            if (open_here(view, finding)) wanted.add_with_worksheet(finding);
        }
    }
    std::vector<QuestionText> questions;
    for (const Index finding : wanted.findings()) questions.push_back(question_text(view, finding));
    return questions;
}

}  // namespace hardover::jobs_detail
