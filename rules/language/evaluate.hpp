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

Truth truth_of(const Node& node, const Inputs& inputs);

// Value and first-order spread; nothing where the value is unknown or not finite.
Value quantity_of(const Node& node, const Inputs& inputs);

}  // namespace hardover::language_detail
