// Worksheets on the page: those worked out, and those that wait for the last number.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <optional>

#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

std::vector<std::string> missing_inputs(const Worksheet& sheet, const WorkedSheet& worked) {
    std::vector<std::string> names;
    for (std::size_t i = 0; i < sheet.inputs.size() && i < worked.inputs.size(); ++i) {
        if (input_text(sheet.inputs[i], worked.inputs[i]).empty())
            names.push_back(lower_first(sheet.inputs[i].name));
    }
    return names;
}

// A worksheet is shown once something was measured for it, or a rule asks for it.
bool belongs_to_job(const View& view, const WorkedSheet& worked) {
    if (worked.worksheet == none) return false;
    if (worked.called_for) return true;
    const Worksheet& sheet = view.knowledge.worksheets[worked.worksheet];
    for (const WorksheetInput& input : sheet.inputs) {
        const auto given = view.job.facts.answers.find(input.finding);
        const bool measured =
            given != view.job.facts.answers.end() && std::holds_alternative<Quantity>(given->second.given);
        if (measured) return true;
    }
    return false;
}

}  // namespace

namespace jobs_detail {

std::string input_text(const WorksheetInput& input, const Value& value, UnitSystem units) {
    if (const auto quantity = quantity_of(value)) return show(*quantity, input.unit, units);
    const Choice* choice = std::get_if<Choice>(&value);
    for (const Word& word : input.choices) {
        if (choice != nullptr && choice->possible == std::vector<std::string>{word.id}) return word.text;
    }
    return "";
}

std::string sheet_topic(const Worksheet& sheet) {
    std::string topic = std::filesystem::path(sheet.place.file).stem().string();
    const std::string kind = "worksheets";
    if (topic.rfind(kind, 0) == 0) topic = topic.substr(std::min(topic.size(), kind.size() + 1));
    return topic.empty() ? "Finding the fault" : upper_first(spoken_id(topic));
}

}  // namespace jobs_detail

SheetText sheet_text(const Knowledge& knowledge, const WorkedSheet& worked, UnitSystem units) {
    const Worksheet& sheet = knowledge.worksheets[worked.worksheet];
    SheetText text;
    text.id = sheet.id;
    text.name = sheet.name;
    text.advice = worked.advice;
    text.refused = worked.refused;
    text.source = source_text(knowledge, sheet.sources);
    for (std::size_t i = 0; i < sheet.inputs.size() && i < worked.inputs.size(); ++i) {
        const std::string value = input_text(sheet.inputs[i], worked.inputs[i], units);
        const bool assumed = i < worked.input_assumed.size() && worked.input_assumed[i];
        text.inputs.push_back({sheet.inputs[i].name, value.empty() ? "not known yet" : value,
                               !value.empty() && assumed, !value.empty()});
    }
    const auto missing = missing_inputs(sheet, worked);
    const std::string waits =
        missing.empty() ? "no value" : fmt::format("still needs: {}", fmt::join(missing, ", "));
    for (std::size_t r = 0; r < sheet.results.size() && r < worked.results.size(); ++r) {
        const auto quantity = quantity_of(worked.results[r]);
        const bool rests_on_assumption = std::find(worked.input_assumed.begin(), worked.input_assumed.end(),
                                                   true) != worked.input_assumed.end();
        text.results.push_back({sheet.results[r].name,
                                quantity ? show(*quantity, sheet.results[r].unit, units) : waits,
                                quantity.has_value() && rests_on_assumption, quantity.has_value()});
    }
    return text;
}

namespace jobs_detail {

std::vector<SheetText> sheet_texts(const View& view) {
    std::vector<SheetText> texts;
    for (const WorkedSheet& worked : view.job.assessment.worksheets) {
        if (belongs_to_job(view, worked)) texts.push_back(sheet_text(view.knowledge, worked, view.units()));
    }
    return texts;
}

}  // namespace jobs_detail

}  // namespace hardover
