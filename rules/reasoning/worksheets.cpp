#include "rules/reasoning/worksheets.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "rules/reasoning/evidence.hpp"

namespace hardover {

namespace {

// A result so large that another unit could not show it is none.
Value of_ordinary_size(const Value& value) {
    constexpr double most = 1e280;
    const Quantity* quantity = std::get_if<Quantity>(&value);
    const bool too_large =
        quantity != nullptr && !(std::abs(quantity->value) < most && quantity->spread < most);
    return too_large ? Value(Unknown{}) : value;
}

// The values of a worksheet's inputs and, as far as they are worked out, its results.
struct Known {
    const Worksheet& sheet;
    std::vector<Value> inputs;
    std::vector<Value> results;

    const Value& value_of(const std::string& id) const {
        static const Value unknown = Unknown{};
        for (std::size_t r = 0; r < results.size(); ++r) {
            if (sheet.results[r].id == id) return results[r];
        }
        for (std::size_t n = 0; n < inputs.size(); ++n) {
            if (sheet.inputs[n].id == id) return inputs[n];
        }
        return unknown;
    }

    NamedValues values_of(const Expression& expression) const {
        NamedValues values;
        values.reserve(expression.names().size());
        for (const std::string& name : expression.names()) values.push_back(&value_of(name));
        return values;
    }

    Truth condition(const Expression& expression) const {
        return expression.condition_with(values_of(expression));
    }

    // Every result by its formula, one after the other.
    void work_out_results() {
        results.reserve(sheet.results.size());
        for (const WorksheetOutput& result : sheet.results) {
            results.push_back(of_ordinary_size(result.formula.quantity_with(values_of(result.formula))));
        }
    }
};

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

std::vector<Value> all_as_given(std::vector<Value> values) {
    for (Value& value : values) value = as_given(std::move(value));
    return values;
}

// The results as plain numbers (SI, NaN where there is none), with one input moved by `step`.
std::vector<double> numbers_with(const Worksheet& sheet, const std::vector<Value>& inputs, std::size_t moved,
                                 double step) {
    Known known{sheet, all_as_given(inputs), {}};
    std::get<Quantity>(known.inputs[moved]).value += step;
    known.work_out_results();
    std::vector<double> numbers;
    for (const Value& value : known.results) {
        const Quantity* quantity = std::get_if<Quantity>(&value);
        numbers.push_back(quantity ? quantity->value : std::nan(""));
    }
    return numbers;
}

// Spreads of all results from those of the inputs. A result that rests on another one has part of its spread
// in common with it, so that its own formula cannot tell: every input is moved through the whole sheet
// instead (GUM, JCGM 100:2008, 5.1.2, derivatives by central difference, one-sided at the end of a range).
std::vector<double> spreads_through(const Known& known) {
    const std::vector<Value>& results = known.results;
    std::vector<double> squares(results.size(), 0);
    for (std::size_t n = 0; n < known.inputs.size(); ++n) {
        const Quantity* quantity = std::get_if<Quantity>(&known.inputs[n]);
        if (quantity == nullptr || quantity->spread == 0) continue;
        const double step = std::max(1e-3 * quantity->spread, 1e-6 * std::abs(quantity->value));
        const std::vector<double> above = numbers_with(known.sheet, known.inputs, n, step);
        const std::vector<double> below = numbers_with(known.sheet, known.inputs, n, -step);
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

// Every result by its formula; those that rest on others get their spread through the whole sheet.
void work_out_results(Known& known) {
    const Worksheet& sheet = known.sheet;
    known.work_out_results();
    if (std::none_of(known.results.begin(), known.results.end(), has_value)) return;
    const bool any_rests = std::any_of(sheet.results.begin(), sheet.results.end(),
                                       [&](const auto& result) { return rests_on_a_result(sheet, result); });
    if (!any_rests) return;
    const std::vector<double> spreads = spreads_through(known);
    for (std::size_t r = 0; r < known.results.size(); ++r) {
        Quantity* quantity = std::get_if<Quantity>(&known.results[r]);
        if (quantity == nullptr || !rests_on_a_result(sheet, sheet.results[r])) continue;
        quantity->spread = spreads[r];
        known.results[r] = of_ordinary_size(*quantity);
    }
}

WorkedSheet worked_out(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs,
                       bool with_spreads) {
    const Worksheet& sheet = knowledge.worksheets[static_cast<std::size_t>(worksheet)];
    WorkedSheet worked;
    worked.worksheet = worksheet;
    worked.results.assign(sheet.results.size(), Unknown{});
    worked.input_assumed.assign(sheet.inputs.size(), false);
    for (std::size_t n = 0; n < sheet.inputs.size(); ++n) {
        worked.inputs.push_back(usable(sheet.inputs[n], n < inputs.size() ? inputs[n] : Value(Unknown{})));
    }
    // Whether the sheet holds is asked of the values as given: 0 turns ± 0.1 turns is no turns.
    const Known exact{sheet, all_as_given(worked.inputs), {}};
    for (const WorksheetGuard& guard : sheet.holds_when) {
        if (exact.condition(guard.condition) != Truth::no) continue;
        worked.refused = guard.otherwise;
        return worked;
    }
    Known known{sheet, with_spreads ? worked.inputs : exact.inputs, {}};
    work_out_results(known);
    for (const WorksheetAdvice& advice : sheet.advice) {
        if (known.condition(advice.when) == Truth::yes) worked.advice.push_back(advice.say);
    }
    worked.results = std::move(known.results);
    return worked;
}

}  // namespace

// Worked out: every result has a value and the worksheet holds for its inputs.
bool WorkedSheet::complete() const {
    return refused.empty() && !results.empty() && std::all_of(results.begin(), results.end(), has_value);
}

WorkedSheet work_out(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs) {
    return worked_out(knowledge, worksheet, inputs, true);
}

WorkedSheet work_out_as_given(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs) {
    return worked_out(knowledge, worksheet, inputs, false);
}

}  // namespace hardover
