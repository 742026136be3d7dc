// Conditions and formulas: read and worked out, or refused at the letter at fault.
#include <cmath>

#include "fuzz/target.hpp"
#include "language/names.hpp"

using namespace hardover;
using namespace hardover_fuzz;
using hardover_tests::job_scope;

namespace {

const std::string file = "rules.yaml";
constexpr int line = 3;
constexpr int column = 9;

// A value of each kind a name can have; the same every time.
Value sample_of(const NameKind& kind, bool with_spread) {
    const Choice word{kind.words.empty() ? std::vector<std::string>() : std::vector{kind.words.front()}};
    Quantity quantity = quantity_in(2.5, kind.unit);
    if (with_spread) quantity.spread = 0.1 * kind.unit.factor;
    if (kind.is_quantity && !kind.words.empty()) return Measured{quantity, word};
    if (kind.is_quantity) return quantity;
    if (kind.is_truth) return Truth::yes;
    return with_spread ? Choice{kind.words} : word;
}

void demand_place(const Error& error, const std::string& text) {
    // The text stands in line 3 from column 9 on; a line end in it does not begin a new line of the file.
    std::string around = "\n\n" + std::string(column - 1, ' ');
    for (const char c : text) around += c == '\n' ? ' ' : c;
    demand_located(error, file, around);
}

void demand_same_truth(const Expression& condition, const Scope& scope) {
    for (const bool with_spread : {false, true}) {
        std::vector<Value> values;
        for (const std::string& name : condition.names()) {
            const NameKind* kind = scope.kind_of(name);
            demand(kind != nullptr, "a name that is not in the scope: " + name);
            values.push_back(sample_of(*kind, with_spread));
        }
        NamedValues pointers;
        for (const Value& value : values) pointers.push_back(&value);
        const auto lookup = [&](const std::string& name) {
            return sample_of(*scope.kind_of(name), with_spread);
        };
        demand(condition.condition(lookup) == condition.condition_with(pointers),
               "two ways to a different truth: " + condition.text());
    }
    condition.condition([](const std::string&) { return Value(Unknown{}); });
}

void demand_finite(const Expression& formula, const Scope& scope, const Dimension& expected) {
    const Value value =
        formula.quantity([&](const std::string& name) { return sample_of(*scope.kind_of(name), true); });
    if (const Quantity* quantity = std::get_if<Quantity>(&value)) {
        demand(std::isfinite(quantity->value) && quantity->dimension == expected,
               "a wrong result: " + formula.text());
    }
    formula.quantity([](const std::string&) { return Value(Unknown{}); });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const auto scope = job_scope();
    static const Dimension length = find_unit("in").value().dimension;
    const std::string text = text_of(data, size);
    const Result<Expression> condition = read_condition(text, scope, Functions(), {file, line, column});
    if (condition) {
        demand_same_truth(condition.value(), scope);
    } else {
        demand_place(condition.error(), text);
    }
    const Result<Expression> formula = read_formula(text, scope, Functions(), length, {file, line, column});
    if (formula) {
        demand_finite(formula.value(), scope, length);
    } else {
        demand_place(formula.error(), text);
    }
    return 0;
}
