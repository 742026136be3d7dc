// The assessment, worksheets and counts as JSON.
#include "app/jobs/json.hpp"

#include <algorithm>
#include <optional>

#include "app/jobs/page.hpp"
#include "app/jobs/page_parts.hpp"
#include "app/jobs/replay.hpp"

namespace hardover {

using nlohmann::ordered_json;
using namespace jobs_detail;

namespace {

template <typename E>
std::string id_at(const std::vector<E>& entries, Index index) {
    return index == none ? "" : entries[index].id;
}

// The reading that was answered, or the one a measurement speaks for most.
std::string weight_text(const Knowledge& knowledge, const Assessment& assessment, const Weight& weight) {
    if (weight.kind == Weight::Kind::remedy) return "What became of the remedies that were tried";
    if (weight.kind == Weight::Kind::rule) return knowledge.rules[weight.index].why;
    const Finding& finding = knowledge.findings[weight.index];
    int reading = weight.reading;
    const auto evidence = assessment.evidence.find(weight.index);
    if (reading < 0 && !weight.earlier && evidence != assessment.evidence.end()) {
        const auto& likelihood = evidence->second;
        reading =
            static_cast<int>(std::max_element(likelihood.begin(), likelihood.end()) - likelihood.begin());
    }
    if (reading < 0 || static_cast<std::size_t>(reading) >= finding.readings.size()) return finding.name;
    return finding.name + ": " + finding.readings[reading].text;
}

ordered_json weights_json(const Knowledge& knowledge, const Assessment& assessment,
                          const std::vector<Weight>& weights, bool in_favour) {
    ordered_json list = ordered_json::array();
    for (const Weight& weight : weights) {
        if (weight.decibans == 0 || (weight.decibans > 0) != in_favour) continue;
        list.push_back({{"text", weight_text(knowledge, assessment, weight)},
                        {"id", weight_id(knowledge, weight)},
                        {"decibans", weight.decibans},
                        {"after", weight.stage}});
    }
    return list;
}

std::string state_id(const RankedCause& ranked) {
    if (ranked.impossible_here) return "not_on_this_rig";
    if (ranked.ruled_out_by != none) return "ruled_out";
    return ranked.proved ? "proved" : "";
}

ordered_json ranking_json(const Knowledge& knowledge, const Assessment& assessment) {
    ordered_json list = ordered_json::array();
    for (const RankedCause& ranked : assessment.ranking) {
        const Cause& cause = knowledge.causes[ranked.cause];
        list.push_back({{"cause", cause.id},
                        {"name", cause.name},
                        {"probability", ranked.probability},
                        {"for", weights_json(knowledge, assessment, ranked.weights, true)},
                        {"against", weights_json(knowledge, assessment, ranked.weights, false)},
                        {"state", state_id(ranked)}});
    }
    return list;
}

std::string step_kind(NextStep::Kind kind) {
    switch (kind) {
        case NextStep::Kind::ask:
            return "ask";
        case NextStep::Kind::check:
            return "check";
        case NextStep::Kind::prove:
            return "prove";
        case NextStep::Kind::remedy:
            return "remedy";
        case NextStep::Kind::stop_asking:
            return "stop_asking";
        case NextStep::Kind::done:
            return "done";
    }
    return "";
}

std::string step_id(const Knowledge& knowledge, const NextStep& step) {
    switch (step.kind) {
        case NextStep::Kind::ask:
            return id_at(knowledge.findings, step.index);
        case NextStep::Kind::check:
        case NextStep::Kind::prove:
            return id_at(knowledge.checks, step.index);
        case NextStep::Kind::remedy:
            return id_at(knowledge.remedies, step.index);
        case NextStep::Kind::stop_asking:
        case NextStep::Kind::done:
            return "";
    }
    return "";
}

std::string step_text(const Knowledge& knowledge, const NextStep& step) {
    if (step.kind == NextStep::Kind::ask) return knowledge.findings[step.index].ask;
    return step_line(knowledge, step);
}

// Entries by index, each through `form`.
template <typename E, typename Form>
ordered_json list_json(const std::vector<E>& entries, const std::vector<Index>& indices, const Form& form) {
    ordered_json list = ordered_json::array();
    for (const Index index : indices) list.push_back(form(entries[index]));
    return list;
}

ordered_json assumption_json(const RigField& field) {
    ordered_json assumption = {{"field", field.id}, {"name", field.name}, {"text", ""}};
    if (const Quantity* quantity = std::get_if<Quantity>(&field.assumed)) {
        assumption["text"] = rig_value_text(field, *quantity);
    } else if (const std::string* choice = std::get_if<std::string>(&field.assumed)) {
        assumption["text"] = rig_value_text(field, *choice);
    }
    return assumption;
}

ordered_json value_json(const Value& value, const Unit& unit) {
    const auto quantity = quantity_of(value);
    if (!quantity) return {{"value", nullptr}, {"unit", unit.name}, {"text", ""}};
    return {{"value", in_unit(*quantity, unit)}, {"unit", unit.name}, {"text", show(*quantity, unit)}};
}

// A choice has its id for a value.
ordered_json input_json(const WorksheetInput& input, const Value& value) {
    if (input.choices.empty()) return value_json(value, input.unit);
    const Choice* choice = std::get_if<Choice>(&value);
    if (choice == nullptr || choice->possible.empty()) return {{"value", nullptr}, {"text", ""}};
    return {{"value", choice->possible.front()}, {"text", input_text(input, value)}};
}

}  // namespace

std::string json_text(const nlohmann::ordered_json& json) {
    return json.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

ordered_json assessment_json(const Knowledge& knowledge, const Assessment& assessment) {
    const NextStep& next = assessment.next;
    ordered_json worksheets = ordered_json::array();
    for (const WorkedSheet& sheet : assessment.worksheets) {
        if (sheet.worksheet != none) worksheets.push_back(sheet_json(knowledge, sheet));
    }
    ordered_json rules = ordered_json::array();
    for (const FiredRule& fired : assessment.fired) {
        const Rule& rule = knowledge.rules[fired.rule];
        rules.push_back({{"id", rule.id}, {"because", fired.because}, {"why", rule.why}});
    }
    ordered_json barred = ordered_json::array();
    for (const Index need : assessment.barred) barred.push_back(knowledge.needs[need].id);
    return {
        {"ranking", ranking_json(knowledge, assessment)},
        {"not_listed", assessment.not_listed},
        {"several", assessment.several},
        {"next",
         {{"kind", step_kind(next.kind)},
          {"id", step_id(knowledge, next)},
          {"text", step_text(knowledge, next)},
          {"minutes", next.minutes},
          {"minutes_after", next.minutes_after},
          {"ahead_of", id_at(knowledge.causes, next.ahead_of)},
          {"again", next.again},
          {"narrows", next.narrows}}},
        {"cautions",
         list_json(knowledge.cautions, assessment.cautions,
                   [](const Caution& c) -> ordered_json {
                       return {{"id", c.id}, {"name", c.name}, {"hurts", c.hurts}, {"avoid", c.avoid}};
                   })},
        {"deferrals", list_json(knowledge.deferrals, assessment.deferrals,
                                [](const Deferral& d) -> ordered_json {
                                    return {{"id", d.id}, {"name", d.name}, {"text", d.text}, {"to", d.to}};
                                })},
        {"worksheets", worksheets},
        {"stops", list_json(knowledge.stops, assessment.stops,
                            [](const Stop& s) -> ordered_json {
                                return {{"id", s.id}, {"name", s.name}, {"text", s.text}};
                            })},
        {"barred", barred},
        {"assumptions", list_json(knowledge.rig_fields, assessment.assumed, assumption_json)},
        {"rules", rules},
        {"bound", assessment.bound},
        {"conflict", assessment.conflict},
    };
}

ordered_json sheet_json(const Knowledge& knowledge, const WorkedSheet& sheet) {
    const Worksheet& worksheet = knowledge.worksheets[sheet.worksheet];
    ordered_json inputs = ordered_json::object();
    for (std::size_t i = 0; i < worksheet.inputs.size() && i < sheet.inputs.size(); ++i) {
        ordered_json input = input_json(worksheet.inputs[i], sheet.inputs[i]);
        input["assumed"] = i < sheet.input_assumed.size() && sheet.input_assumed[i];
        inputs[worksheet.inputs[i].id] = std::move(input);
    }
    ordered_json results = ordered_json::object();
    for (std::size_t r = 0; r < worksheet.results.size() && r < sheet.results.size(); ++r) {
        results[worksheet.results[r].id] = value_json(sheet.results[r], worksheet.results[r].unit);
    }
    return {{"id", worksheet.id},
            {"name", worksheet.name},
            {"inputs", inputs},
            {"results", results},
            {"advice", sheet.advice},
            {"refused", sheet.refused},
            {"source", source_text(knowledge, worksheet.sources)}};
}

ordered_json figures_json(const Knowledge& knowledge) {
    std::size_t readings = 0;
    for (const Finding& finding : knowledge.findings) readings += finding.readings.size();
    std::size_t shown = 0;
    for (const Cause& cause : knowledge.causes) shown += cause.shows.size();
    const auto published =
        std::count_if(knowledge.sources.begin(), knowledge.sources.end(),
                      [](const Source& source) { return source.kind == Source::Kind::published; });
    return {{"complaints", knowledge.complaints.size()}, {"same_words", knowledge.same_words.size()},
            {"findings", knowledge.findings.size()},     {"readings", readings},
            {"causes", knowledge.causes.size()},         {"findings_shown_by_causes", shown},
            {"same_cures", knowledge.same_cures.size()}, {"checks", knowledge.checks.size()},
            {"remedies", knowledge.remedies.size()},     {"rules", knowledge.rules.size()},
            {"worksheets", knowledge.worksheets.size()}, {"cautions", knowledge.cautions.size()},
            {"deferrals", knowledge.deferrals.size()},   {"stops", knowledge.stops.size()},
            {"histories", knowledge.histories.size()},   {"rig_fields", knowledge.rig_fields.size()},
            {"needs", knowledge.needs.size()},           {"parts", knowledge.parts.size()},
            {"sources", knowledge.sources.size()},       {"published_sources", published}};
}

}  // namespace hardover
