#include "rules/reasoning/worksheets.hpp"

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

using Known = std::unordered_map<std::string, Value>;

bool has_value(const Value& value) {
    return std::holds_alternative<Quantity>(value);
}

// One of the input's words.
bool is_choice_of(const WorksheetInput& input, const Value& given) {
    const Choice* choice = std::get_if<Choice>(&given);
    if (choice == nullptr || choice->possible.size() != 1) return false;
    return std::any_of(input.choices.begin(), input.choices.end(),
                       [&](const Word& word) { return word.id == choice->possible.front(); });
}

// A quantity of the input's kind with a spread, or a word of its choices, or Unknown.
Value usable(const WorksheetInput& input, const Value& given) {
    if (!input.choices.empty()) return is_choice_of(input, given) ? given : Value(Unknown{});
    const Quantity* quantity = std::get_if<Quantity>(&given);
    if (const Measured* measured = std::get_if<Measured>(&given)) quantity = &measured->quantity;
    if (!quantity || !(quantity->dimension == input.unit.dimension)) return Unknown{};
    return with_spread(*quantity, input.spread);
}

Value as_given(Value value) {
    if (Quantity* quantity = std::get_if<Quantity>(&value)) quantity->spread = 0;
    return value;
}

Lookup in(const Known& known) {
    return [&known](const std::string& name) {
        const auto found = known.find(name);
        return found != known.end() ? found->second : Value(Unknown{});
    };
}

// The results as plain numbers (SI, NaN where there is none), with one input moved by `step`.
std::vector<double> numbers_with(const Worksheet& sheet, Known inputs, const std::string& moved,
                                 double step) {
    for (auto& [id, value] : inputs) value = as_given(value);
    std::get<Quantity>(inputs.at(moved)).value += step;
    std::vector<double> numbers;
    for (const WorksheetOutput& result : sheet.results) {
        const Value value = result.formula.quantity(in(inputs));
        const Quantity* quantity = std::get_if<Quantity>(&value);
        numbers.push_back(quantity ? quantity->value : std::nan(""));
        inputs[result.id] = value;
    }
    return numbers;
}

// Spreads of all results from those of the inputs. A result that rests on another one has part of its spread
// in common with it, so that its own formula cannot tell: every input is moved through the whole sheet
// instead (GUM, JCGM 100:2008, 5.1.2, derivatives by central difference, one-sided at the end of a range).
std::vector<double> spreads_through(const Worksheet& sheet, const Known& inputs,
                                    const std::vector<Value>& results) {
    std::vector<double> squares(sheet.results.size(), 0);
    for (const WorksheetInput& input : sheet.inputs) {
        const Quantity* quantity = std::get_if<Quantity>(&inputs.at(input.id));
        if (quantity == nullptr || quantity->spread == 0) continue;
        const double step = std::max(1e-3 * quantity->spread, 1e-6 * std::abs(quantity->value));
        const std::vector<double> above = numbers_with(sheet, inputs, input.id, step);
        const std::vector<double> below = numbers_with(sheet, inputs, input.id, -step);
        for (std::size_t r = 0; r < results.size(); ++r) {
            const Quantity* here = std::get_if<Quantity>(&results[r]);
            if (here == nullptr) continue;
            const bool both_sides = std::isfinite(above[r]) && std::isfinite(below[r]);
            const double slope = both_sides                ? (above[r] - below[r]) / (2 * step)
                                 : std::isfinite(above[r]) ? (above[r] - here->value) / step
                                                           : (here->value - below[r]) / step;
            squares[r] += std::pow(slope * quantity->spread, 2);
        }
    }
    for (double& square : squares) square = std::sqrt(square);
    return squares;
}

bool rests_on_a_result(const Worksheet& sheet, const WorksheetOutput& result) {
    const auto& names = result.formula.names();
    return std::any_of(sheet.results.begin(), sheet.results.end(), [&](const WorksheetOutput& other) {
        return std::find(names.begin(), names.end(), other.id) != names.end();
    });
}

// A result so large that another unit could not show it is none.
Value of_ordinary_size(const Value& value) {
    constexpr double most = 1e280;
    const Quantity* quantity = std::get_if<Quantity>(&value);
    const bool too_large =
        quantity != nullptr && !(std::abs(quantity->value) < most && quantity->spread < most);
    return too_large ? Value(Unknown{}) : value;
}

// Every result by its formula; those that rest on others get their spread through the whole sheet.
std::vector<Value> results_of(const Worksheet& sheet, const Known& inputs) {
    Known known = inputs;
    std::vector<Value> results;
    for (const WorksheetOutput& result : sheet.results) {
        results.push_back(of_ordinary_size(result.formula.quantity(in(known))));
        known[result.id] = results.back();
    }
    const bool any_rests = std::any_of(sheet.results.begin(), sheet.results.end(),
                                       [&](const auto& result) { return rests_on_a_result(sheet, result); });
    const bool any_value = std::any_of(results.begin(), results.end(), has_value);
    if (!any_rests || !any_value) return results;
    const std::vector<double> spreads = spreads_through(sheet, inputs, results);
    for (std::size_t r = 0; r < results.size(); ++r) {
        Quantity* quantity = std::get_if<Quantity>(&results[r]);
        if (quantity == nullptr || !rests_on_a_result(sheet, sheet.results[r])) continue;
        quantity->spread = spreads[r];
        results[r] = of_ordinary_size(*quantity);
    }
    return results;
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
    worked.results.assign(sheet.results.size(), Unknown{});
    Known known;
    Known exact;
    for (std::size_t n = 0; n < sheet.inputs.size(); ++n) {
        const Value given = n < inputs.size() ? inputs[n] : Value(Unknown{});
        worked.inputs.push_back(usable(sheet.inputs[n], given));
        worked.input_assumed.push_back(false);
        known[sheet.inputs[n].id] = worked.inputs.back();
        exact[sheet.inputs[n].id] = as_given(worked.inputs.back());
    }
    // Whether the sheet holds is asked of the values as given: 0 turns ± 0.1 turns is no turns.
    for (const WorksheetGuard& guard : sheet.holds_when) {
        if (guard.condition.condition(in(exact)) != Truth::no) continue;
        worked.refused = guard.otherwise;
        return worked;
    }
    worked.results = results_of(sheet, known);
    for (std::size_t r = 0; r < sheet.results.size(); ++r) known[sheet.results[r].id] = worked.results[r];
    for (const WorksheetAdvice& advice : sheet.advice) {
        if (advice.when.condition(in(known)) == Truth::yes) worked.advice.push_back(advice.say);
    }
    return worked;
}

}  // namespace hardover
