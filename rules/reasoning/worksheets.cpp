#include "rules/reasoning/worksheets.hpp"

#include <algorithm>
#include <unordered_map>

#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

bool has_value(const Value& value) {
    return std::holds_alternative<Quantity>(value);
}

// A quantity of the input's kind with a spread, or Unknown.
Value usable(const WorksheetInput& input, const Value& given) {
    const Quantity* quantity = std::get_if<Quantity>(&given);
    if (const Measured* measured = std::get_if<Measured>(&given)) quantity = &measured->quantity;
    if (!quantity || !(quantity->dimension == input.unit.dimension)) return Unknown{};
    return with_spread(*quantity, input.spread);
}

}  // namespace

// Worked out: every result has a value and the worksheet holds for its inputs.
bool WorkedSheet::complete() const {
    return refused.empty() && !results.empty() && std::all_of(results.begin(), results.end(), has_value);
}

WorkedSheet work_out(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs) {
    const Worksheet& sheet = knowledge.worksheets[static_cast<std::size_t>(worksheet)];
    WorkedSheet worked;
    worked.worksheet = worksheet;
    std::unordered_map<std::string, Value> known;
    for (std::size_t n = 0; n < sheet.inputs.size(); ++n) {
        const Value given = n < inputs.size() ? inputs[n] : Value(Unknown{});
        worked.inputs.push_back(usable(sheet.inputs[n], given));
        worked.input_assumed.push_back(false);
        known[sheet.inputs[n].id] = worked.inputs.back();
    }
    const Lookup lookup = [&](const std::string& name) {
        const auto found = known.find(name);
        return found != known.end() ? found->second : Value(Unknown{});
    };
    // Whether the sheet holds is asked of the values as given: 0 turns ± 0.1 turns is no turns.
    const Lookup as_given = [&](const std::string& name) {
        Value value = lookup(name);
        if (Quantity* quantity = std::get_if<Quantity>(&value)) quantity->spread = 0;
        return value;
    };
    for (const WorksheetGuard& guard : sheet.holds_when) {
        if (worked.refused.empty() && guard.condition.condition(as_given) == Truth::no) {
            worked.refused = guard.otherwise;
        }
    }
    for (const WorksheetOutput& result : sheet.results) {
        const Value value = worked.refused.empty() ? result.formula.quantity(lookup) : Value(Unknown{});
        worked.results.push_back(value);
        known[result.id] = value;
    }
    if (!worked.complete()) return worked;
    for (const WorksheetAdvice& advice : sheet.advice) {
        if (advice.when.condition(lookup) == Truth::yes) worked.advice.push_back(advice.say);
    }
    return worked;
}

}  // namespace hardover
