// Evaluates a checked tree for given values of its names. Inner header of rules/language.
#pragma once

#include "rules/language/tree.hpp"

namespace hardover::language_detail {

// The values of the names of an expression, in their order.
struct Inputs {
    const NamedValues& values;
    std::vector<double> numbers;  // SI; NaN where unknown
    std::vector<double> spreads;  // 0 where none is stated
};
// `values` must outlive the result.
Inputs inputs_of(const NamedValues& values);

// The tree of a condition, which must outlive the result.
Condition condition_of(const Node& root);

// `inputs` need no numbers for a condition that compares none.
Truth truth_of(const Condition& condition, const Inputs& inputs);

// Names without which the condition is not yes, ascending.
std::vector<int> needed_by(const Condition& condition);

// Value and first-order spread; nothing where the value is unknown or not finite.
Value quantity_of(const Node& node, const Inputs& inputs);

}  // namespace hardover::language_detail
