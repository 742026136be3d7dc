// A worksheet's inputs, results and what a job takes over of them.
#include "app/jobs/sheet_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"
#include "rules/quantity/decimal_comma.hpp"
#include "rules/reading/reading.hpp"
#include "rules/reasoning/worksheets.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

const Worksheet& sheet_at(const Knowledge& knowledge, Index worksheet) {
    return knowledge.worksheets[static_cast<std::size_t>(worksheet)];
}

bool is_known(const Value& value) {
    return !std::holds_alternative<Unknown>(value);
}

// As read_input_value, but a bare number is taken in the unit that stands behind the field.
Result<Value> read_field(const WorksheetInput& input, const std::string& text, UnitSystem units) {
    if (input.choices.empty()) {
        const Result<Quantity> with_unit =
            read_quantity(with_decimal_points(text), shown_unit(input.unit, units).name);
        if (with_unit.ok() && with_unit.value().dimension == input.unit.dimension) {
            Quantity quantity = with_unit.value();
            if (quantity.spread == 0) quantity.spread = input.spread;
            return Value{quantity};
        }
    }
    return read_input_value(input, text);
}

// Why the job's rig would not take a value.
std::string rig_refuses(const Knowledge& knowledge, const WorksheetInput& input, const Value& value) {
    const Quantity* quantity = std::get_if<Quantity>(&value);
    if (input.rig_field == none || quantity == nullptr) return "";
    const RigField& field = knowledge.rig_fields[static_cast<std::size_t>(input.rig_field)];
    if (!field.unit) return "";
    const Result<RigValue> fits = read_rig_value(field, exact_text(*quantity, *field.unit));
    return fits ? "" : "No rig has that: " + fits.error().cure + ".";
}

std::string job_name(const Job& job) {
    return "job " + std::to_string(job.number);
}

std::string from_text(const WorksheetInput& input, const SheetInput& given, const Job* job,
                      UnitSystem units) {
    if (job == nullptr) return "";
    const std::string has = input_text(input, given.of_job, units);
    if (given.typed) {
        if (has.empty()) return "Entered here.";
        return fmt::format("Entered here. {} {} {}.", upper_first(job_name(*job)),
                           given.job_assumed ? "takes it as" : "has", has);
    }
    if (has.empty()) return "";
    if (given.job_assumed) return fmt::format("Assumed in {}, not measured on this boat.", job_name(*job));
    return fmt::format("From {}, {}.", job_name(*job), input.rig_field != none ? "the rig" : "measured");
}

SheetField field_of(const WorksheetInput& input, const SheetInput& given, const Job* job, UnitSystem units) {
    SheetField field;
    field.id = input.id;
    field.name = input.name;
    field.typed = given.typed;
    field.error = given.error;
    field.from = from_text(input, given, job, units);
    field.assumed = !given.typed && given.job_assumed && is_known(given.of_job);
    if (!input.choices.empty()) {
        const Choice* choice = std::get_if<Choice>(&given.value);
        for (const Word& word : input.choices) {
            const bool chosen = choice != nullptr && choice->possible == std::vector<std::string>{word.id};
            field.choices.push_back({word.id, word.text, chosen});
        }
        return field;
    }
    if (input.unit.name != "count") field.unit = shown_unit(input.unit, units).name;
    if (input.example) field.hint = "for example " + show(*input.example, input.unit, units);
    if (given.typed) {
        field.text = given.text;
    } else if (const auto quantity = quantity_of(given.of_job)) {
        field.text = editable_text(*quantity, input.unit, units);
    }
    return field;
}

std::vector<Value> values_of(const std::vector<SheetInput>& inputs) {
    std::vector<Value> values;
    for (const SheetInput& input : inputs) values.push_back(input.value);
    return values;
}

std::string waiting_for(const Worksheet& sheet, const std::vector<SheetInput>& inputs,
                        const WorkedSheet& worked) {
    const bool waits = std::any_of(worked.results.begin(), worked.results.end(),
                                   [](const Value& value) { return !is_known(value); });
    if (!waits || !worked.refused.empty()) return "";
    std::vector<std::string> names;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (!is_known(inputs[i].value)) names.push_back(lower_first(sheet.inputs[i].name));
    }
    return names.empty() ? "" : "Still needs: " + listed(names) + ".";
}

// One thing the job takes over, and how it is told.
struct Taken {
    Event event;
    std::string text;
};

bool same_value(const Value& a, const Value& b) {
    const auto number = quantity_of(a), other = quantity_of(b);
    if (number && other) return *number == *other;
    const Choice* choice = std::get_if<Choice>(&a);
    const Choice* chosen = std::get_if<Choice>(&b);
    return choice != nullptr && chosen != nullptr && *choice == *chosen;
}

bool job_knows(const Job& job, const WorksheetInput& input, const SheetInput& given) {
    return !given.job_assumed && is_known(given.of_job) && same_value(given.of_job, given.value) &&
           (input.rig_field == none || job.facts.rig.contains(input.rig_field));
}

std::string stored_text(const Value& value, const Unit& unit) {
    if (const auto quantity = quantity_of(value)) return exact_text(*quantity, unit);
    const Choice* choice = std::get_if<Choice>(&value);
    return choice == nullptr || choice->possible.empty() ? "" : choice->possible.front();
}

std::vector<Taken> taken_inputs(const Knowledge& knowledge, const Worksheet& sheet,
                                const std::vector<SheetInput>& inputs, const Job& job, UnitSystem units) {
    std::vector<Taken> taken;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const WorksheetInput& input = sheet.inputs[i];
        if (!inputs[i].typed || !inputs[i].error.empty() || !is_known(inputs[i].value)) continue;
        if (job_knows(job, input, inputs[i])) continue;
        const std::string text = fmt::format("{}: {}", input.name, input_text(input, inputs[i].value, units));
        if (input.rig_field != none) {
            const RigField& field = knowledge.rig_fields[static_cast<std::size_t>(input.rig_field)];
            const Unit unit = field.unit ? *field.unit : input.unit;
            taken.push_back({RigSet{field.id, stored_text(inputs[i].value, unit)}, text});
        } else if (input.finding != none) {
            const Finding& finding = knowledge.findings[static_cast<std::size_t>(input.finding)];
            const Unit unit = finding.unit ? *finding.unit : input.unit;
            taken.push_back({Answered{finding.id, stored_text(inputs[i].value, unit)}, text});
        }
    }
    return taken;
}

// The results a job works out by itself once it has the inputs it can keep.
WorkedSheet worked_in_job(const Knowledge& knowledge, Index worksheet,
                          const std::vector<SheetInput>& inputs) {
    const Worksheet& sheet = sheet_at(knowledge, worksheet);
    std::vector<Value> values;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const bool kept = sheet.inputs[i].rig_field != none || sheet.inputs[i].finding != none;
        values.push_back(kept ? inputs[i].value : Value(Unknown{}));
    }
    return work_out(knowledge, worksheet, values);
}

// Findings fed from a result that the job cannot work out, because some input has no place in it.
std::vector<Taken> taken_results(const Knowledge& knowledge, Index worksheet,
                                 const std::vector<SheetInput>& inputs, UnitSystem units) {
    const Worksheet& sheet = sheet_at(knowledge, worksheet);
    const WorkedSheet worked = work_out(knowledge, worksheet, values_of(inputs));
    const WorkedSheet in_job = worked_in_job(knowledge, worksheet, inputs);
    std::vector<Taken> taken;
    for (const Finding& finding : knowledge.findings) {
        if (!finding.from || finding.from->worksheet != worksheet || !finding.unit) continue;
        const auto r = static_cast<std::size_t>(finding.from->result);
        const auto quantity = quantity_of(worked.results[r]);
        if (!quantity || is_known(in_job.results[r])) continue;
        taken.push_back({Answered{finding.id, exact_text(*quantity, *finding.unit)},
                         fmt::format("{}: {}", finding.name, show(*quantity, sheet.results[r].unit, units))});
    }
    return taken;
}

std::vector<Taken> all_taken(const Knowledge& knowledge, Index worksheet,
                             const std::vector<SheetInput>& inputs, const Job& job, UnitSystem units) {
    std::vector<Taken> taken = taken_inputs(knowledge, sheet_at(knowledge, worksheet), inputs, job, units);
    const bool anything_typed =
        std::any_of(inputs.begin(), inputs.end(), [](const SheetInput& input) { return input.typed; });
    if (!anything_typed) return taken;
    for (Taken& each : taken_results(knowledge, worksheet, inputs, units)) taken.push_back(std::move(each));
    return taken;
}

void tell_job(const Knowledge& knowledge, Index worksheet, const std::vector<SheetInput>& inputs,
              const Job& job, UnitSystem units, SheetPage& page) {
    const Worksheet& sheet = sheet_at(knowledge, worksheet);
    page.take_over = "Use in " + job_name(job);
    for (const Taken& each : all_taken(knowledge, worksheet, inputs, job, units))
        page.taken.push_back(each.text);
    std::vector<std::string> names;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const WorksheetInput& input = sheet.inputs[i];
        if (inputs[i].typed && input.rig_field == none && input.finding == none)
            names.push_back(lower_first(input.name));
    }
    if (!names.empty()) {
        page.beside.push_back("Stays on this sheet only, a job does not ask for it: " + listed(names) + ".");
    }
}

}  // namespace

namespace jobs_detail {

std::vector<SheetInput> sheet_inputs(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                                     const Job* job, UnitSystem units) {
    const Worksheet& sheet = sheet_at(knowledge, worksheet);
    std::vector<SheetInput> inputs(sheet.inputs.size());
    const WorkedSheet* of_job =
        job == nullptr || static_cast<std::size_t>(worksheet) >= job->assessment.worksheets.size()
            ? nullptr
            : &job->assessment.worksheets[static_cast<std::size_t>(worksheet)];
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        const WorksheetInput& input = sheet.inputs[i];
        SheetInput& given = inputs[i];
        if (of_job != nullptr && i < of_job->inputs.size()) {
            given.of_job = of_job->inputs[i];
            given.job_assumed = i < of_job->input_assumed.size() && of_job->input_assumed[i];
        }
        const auto text = typed.find(input.id);
        given.typed = text != typed.end() && text->second.find_first_not_of(" \t") != std::string::npos;
        if (!given.typed) {
            given.value = given.of_job;
            continue;
        }
        given.text = text->second;
        const Result<Value> read = read_field(input, given.text, units);
        if (read) {
            given.value = read.value();
            if (job != nullptr) given.error = rig_refuses(knowledge, input, given.value);
        } else {
            given.error = upper_first(sentence(read.error().what));
            if (!read.error().cure.empty())
                add_sentence(given.error, upper_first(sentence(read.error().cure)));
        }
    }
    return inputs;
}

}  // namespace jobs_detail

SheetPage make_sheet_page(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                          const Job* job, UnitSystem units) {
    const Worksheet& sheet = sheet_at(knowledge, worksheet);
    const std::vector<SheetInput> inputs = sheet_inputs(knowledge, worksheet, typed, job, units);
    const WorkedSheet worked = work_out(knowledge, worksheet, values_of(inputs));
    const SheetText text = sheet_text(knowledge, worked, units);
    SheetPage page;
    page.id = sheet.id;
    page.name = sheet.name;
    page.about = sheet.about;
    page.topic = sheet_topic(sheet);
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        page.fields.push_back(field_of(sheet.inputs[i], inputs[i], job, units));
        page.any_typed = page.any_typed || inputs[i].typed;
    }
    page.results = text.results;
    page.advice = text.advice;
    page.refused = text.refused;
    page.waits = waiting_for(sheet, inputs, worked);
    for (const WorksheetGuard& guard : sheet.holds_when) {
        if (std::find(page.holds.begin(), page.holds.end(), guard.otherwise) == page.holds.end())
            page.holds.push_back(guard.otherwise);
    }
    page.source = text.source;
    for (const Deferral& deferral : knowledge.deferrals) {
        if (deferral.when.empty()) page.deferrals.push_back(deferral_text(deferral));
    }
    if (job != nullptr) tell_job(knowledge, worksheet, inputs, *job, units, page);
    return page;
}

std::vector<Event> sheet_events(const Knowledge& knowledge, Index worksheet, const SheetInputs& typed,
                                const Job& job, UnitSystem units) {
    std::vector<Event> events;
    const auto inputs = sheet_inputs(knowledge, worksheet, typed, &job, units);
    for (Taken& each : all_taken(knowledge, worksheet, inputs, job, units))
        events.push_back(std::move(each.event));
    return events;
}

void write_units(const Knowledge& knowledge, Index worksheet, UnitSystem units, SheetInputs& typed) {
    for (const WorksheetInput& input : sheet_at(knowledge, worksheet).inputs) {
        const auto text = typed.find(input.id);
        if (text == typed.end() || !input.choices.empty() || input.unit.dimension.is_number()) continue;
        const Result<Quantity> bare = read_quantity(with_decimal_points(text->second));
        if (bare && bare.value().dimension.is_number())
            text->second += " " + shown_unit(input.unit, units).name;
    }
}

std::vector<SheetRow> make_sheet_list(const Knowledge& knowledge, const Job* job) {
    std::vector<SheetRow> rows;
    for (std::size_t i = 0; i < knowledge.worksheets.size(); ++i) {
        const Worksheet& sheet = knowledge.worksheets[i];
        SheetRow row{sheet.id, sheet.name, sheet.about, sheet_topic(sheet), "", false};
        row.words = sheet.name + " " + sheet.about;
        for (const WorksheetInput& input : sheet.inputs) row.words += " " + input.name;
        for (const WorksheetOutput& result : sheet.results) row.words += " " + result.name;
        row.called_for = job != nullptr && i < job->assessment.worksheets.size() &&
                         job->assessment.worksheets[i].called_for;
        rows.push_back(row);
    }
    return rows;
}

}  // namespace hardover
