// `hardover worksheet ...`: list the worksheets and work one out from the command line.
#include <algorithm>
#include <ostream>

#include "app/jobs/json.hpp"
#include "app/jobs/page.hpp"
#include "app/reports/job_report.hpp"
#include "app/terminal/context.hpp"
#include "rules/reasoning/worksheets.hpp"
#include "rules/result/nearest.hpp"

namespace hardover {

namespace {

std::vector<std::string> input_ids(const Worksheet& worksheet) {
    std::vector<std::string> ids;
    for (const WorksheetInput& input : worksheet.inputs) ids.push_back(input.id);
    return ids;
}

std::string example_of(const Worksheet& worksheet, UnitSystem units) {
    std::string line = "hardover worksheet " + worksheet.id;
    for (const WorksheetInput& input : worksheet.inputs) {
        if (input.example.has_value())
            line += " " + input.id + "='" + show(*input.example, input.unit, units) + "'";
        if (!input.example_choice.empty()) line += " " + input.id + "='" + input.example_choice + "'";
    }
    return line;
}

// Reads "key=value" words into the worksheet's inputs, in its order; what is not given stays unknown.
Result<std::vector<Value>> read_inputs(const Worksheet& worksheet, const std::vector<std::string>& words,
                                       UnitSystem units) {
    std::vector<Value> values(worksheet.inputs.size(), Unknown{});
    for (const std::string& word : words) {
        const std::size_t equals = word.find('=');
        if (equals == std::string::npos) {
            return Error{Error::Kind::bad_input, "'" + word + "' is not an input", "",
                         "write key=value, as in: " + example_of(worksheet, units)};
        }
        const std::string key = word.substr(0, equals);
        const std::vector<std::string> ids = input_ids(worksheet);
        const auto at = std::find(ids.begin(), ids.end(), key);
        if (at == ids.end()) {
            const std::string near = did_you_mean(key, ids);
            return Error{Error::Kind::bad_input, "the worksheet has no input '" + key + "'", worksheet.id,
                         near.empty() ? "as in: " + example_of(worksheet, units) : near};
        }
        const WorksheetInput& input = worksheet.inputs[at - ids.begin()];
        const Result<Value> value = read_input_value(input, word.substr(equals + 1));
        if (!value) return Error{Error::Kind::bad_input, value.error().what, key, value.error().cure};
        values[at - ids.begin()] = value.value();
    }
    return values;
}

std::string missing_inputs(const Worksheet& worksheet, const std::vector<Value>& values) {
    std::string missing;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (std::holds_alternative<Unknown>(values[i]))
            missing += (missing.empty() ? "" : ", ") + worksheet.inputs[i].id;
    }
    return missing;
}

void print_sheet(std::ostream& out, const Knowledge& knowledge, const SheetText& sheet) {
    out << sheet.name << "\n";
    for (const SheetLine& line : sheet.inputs) out << "  " << line.name << ": " << line.value << "\n";
    for (const SheetLine& line : sheet.results) out << "  " << line.name << " = " << line.value << "\n";
    for (const std::string& advice : sheet.advice) out << wrapped(advice, 80) << "\n";
    out << wrapped(sheet.source, 80, 2) << "\n";
    for (const Deferral& deferral : knowledge.deferrals) {
        if (deferral.when.empty())
            out << wrapped(deferral.name + ": " + deferral.text + " " + deferral.to, 80, 2) << "\n";
    }
}

}  // namespace

int run_worksheet_list(Context& context, bool json) {
    const Result<Knowledge> knowledge = load_knowledge(context);
    if (!knowledge) return refuse(context, knowledge.error());
    const UnitSystem units = units_in_use(context);
    nlohmann::ordered_json list = nlohmann::ordered_json::array();
    for (const Worksheet& worksheet : knowledge.value().worksheets) {
        if (json) {
            list.push_back(
                {{"id", worksheet.id}, {"name", worksheet.name}, {"example", example_of(worksheet, units)}});
            continue;
        }
        context.streams.out << worksheet.id << "  " << worksheet.name << "\n"
                            << wrapped("    " + worksheet.about, 80, 4) << "\n"
                            << "    Example: " << example_of(worksheet, units) << "\n";
    }
    if (json) context.streams.out << json_text(list) << "\n";
    return 0;
}

int run_worksheet(Context& context, const std::string& id, const std::vector<std::string>& inputs,
                  bool json) {
    const Result<Knowledge> loaded = load_knowledge(context);
    if (!loaded) return refuse(context, loaded.error());
    return run_worksheet(context, loaded.value(), id, inputs, json);
}

int run_worksheet(Context& context, const Knowledge& knowledge, const std::string& id,
                  const std::vector<std::string>& inputs, bool json) {
    const UnitSystem units = units_in_use(context);
    const Index index = find(knowledge.worksheets, id);
    if (index == none) {
        std::vector<std::string> ids;
        for (const Worksheet& worksheet : knowledge.worksheets) ids.push_back(worksheet.id);
        const std::string near = did_you_mean(id, ids);
        return refuse(context, {Error::Kind::not_found, "there is no worksheet '" + id + "'", "",
                                near.empty() ? "see: hardover worksheet list" : near});
    }
    const Worksheet& worksheet = knowledge.worksheets[index];
    const Result<std::vector<Value>> values = read_inputs(worksheet, inputs, units);
    if (!values) return refuse(context, values.error());

    const WorkedSheet sheet = work_out(knowledge, index, values.value());
    if (!sheet.refused.empty()) return refuse(context, {Error::Kind::bad_input, sheet.refused, id, ""});
    const bool any_result = std::any_of(sheet.results.begin(), sheet.results.end(), [](const Value& value) {
        return !std::holds_alternative<Unknown>(value);
    });
    if (!any_result) {
        const std::string missing = missing_inputs(worksheet, values.value());
        return refuse(context, {Error::Kind::bad_input,
                                missing.empty() ? "these inputs give no result" : "still needed: " + missing,
                                id, "as in: " + example_of(worksheet, units)});
    }
    if (json)
        context.streams.out << json_text(sheet_json(knowledge, sheet)) << "\n";
    else
        print_sheet(context.streams.out, knowledge, sheet_text(knowledge, sheet, units));
    return 0;
}

}  // namespace hardover
