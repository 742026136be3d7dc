// Values for the names of the tests of the language, and what an expression comes to with them.
#pragma once

#include <map>

#include "language/names.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover;

using Values = std::map<std::string, Value>;

inline Lookup from(const Values& values) {
    return [values](const std::string& name) {
        const auto place = values.find(name);
        return place == values.end() ? Value(Unknown{}) : place->second;
    };
}

inline Quantity amount(const std::string& text) {
    const Result<Quantity> quantity = read_quantity(text);
    REQUIRE_OK(quantity);
    return quantity.value();
}

inline Choice word(const std::string& one) {
    return Choice{{one}};
}

inline Truth truth_of(const std::string& text, const Values& values, const Scope& scope = job_scope()) {
    INFO(text);
    const Result<Expression> condition = read_condition(text, scope, Functions(), {});
    REQUIRE_OK(condition);
    return condition.value().condition(from(values));
}

// The quantity a formula gives; fails where it gives none.
inline Quantity value_of(const std::string& text, const Values& values, const std::string& unit,
                         const Scope& scope = job_scope(), const Functions& functions = Functions()) {
    INFO(text);
    const Result<Expression> formula =
        read_formula(text, scope, functions, find_unit(unit).value().dimension, {});
    REQUIRE_OK(formula);
    const Value value = formula.value().quantity(from(values));
    REQUIRE(std::holds_alternative<Quantity>(value));
    return std::get<Quantity>(value);
}

inline double number_of(const std::string& text, const Values& values = {},
                        const std::string& unit = "count") {
    return in_unit(value_of(text, values, unit), find_unit(unit).value());
}

}  // namespace hardover_tests

// How Catch prints a Truth when a check fails.
namespace Catch {
template <>
struct StringMaker<hardover::Truth> {
    static std::string convert(hardover::Truth truth) {
        return truth == hardover::Truth::yes ? "yes" : truth == hardover::Truth::no ? "no" : "unknown";
    }
};
}  // namespace Catch
