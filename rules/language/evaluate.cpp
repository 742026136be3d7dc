// Three-valued evaluation, and numbers with the spread carried through. NaN stands for an unknown number.
#include "rules/language/evaluate.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

namespace hardover::language_detail {
namespace {

constexpr double unknown_number = std::numeric_limits<double>::quiet_NaN();

// Two numbers that differ only by the rounding of unit conversions count as equal.
constexpr double same = 1e-9;

// For the spread, rounding is left out: a rounded figure is no surer than the one it was rounded from.
enum class Rounding { done, left_out };

// Where a tree is evaluated: at the numbers of its names, which may be moved a little for a derivative. What
// a condition inside a formula says is taken at the values as they are.
struct Point {
    const Inputs& inputs;
    const std::vector<double>& names;
    Rounding rounding;
};

double number_of(const Node& node, const Point& point);

double rounded(const std::vector<double>& given, Rounding rounding) {
    if (rounding == Rounding::left_out) return given.front();
    const double step = given.size() > 1 ? given[1] : 1;
    return std::round(given.front() / step) * step;
}

double built_in(const Node& node, const std::vector<double>& given, Rounding rounding) {
    const double x = given.front();
    switch (node.built_in) {
        case BuiltIn::abs:
            return std::abs(x);
        case BuiltIn::min:
        case BuiltIn::least_known:
            return *std::min_element(given.begin(), given.end());
        case BuiltIn::max:
        case BuiltIn::greatest_known:
            return *std::max_element(given.begin(), given.end());
        case BuiltIn::sqrt:
            return std::sqrt(x);
        case BuiltIn::sin:
            return std::sin(x);
        case BuiltIn::cos:
            return std::cos(x);
        case BuiltIn::tan:
            return std::tan(x);
        case BuiltIn::atan:
            return std::atan(x);
        case BuiltIn::in_radians:
            return x;  // angles are in radians inside
        case BuiltIn::round:
            return rounded(given, rounding);
        case BuiltIn::choose:
            break;  // only one of its values is evaluated: see chosen()
    }
    return unknown_number;
}

// The value behind the first condition that is yes, the last one when all are no.
double chosen(const Node& node, const Point& point) {
    for (std::size_t i = 0; i < node.conditions.size(); ++i) {
        const Truth truth = truth_of(node.conditions[i], point.inputs);
        if (truth == Truth::unknown) return unknown_number;
        if (truth == Truth::yes) return number_of(*node.parts[2 * i + 1], point);
    }
    return number_of(*node.parts.back(), point);
}

double called(const Node& node, const Point& point) {
    const bool is_built_in = node.operation == Operation::built_in;
    if (is_built_in && node.built_in == BuiltIn::choose) return chosen(node, point);
    const bool passes_over =
        is_built_in && (node.built_in == BuiltIn::greatest_known || node.built_in == BuiltIn::least_known);
    std::vector<double> given;
    for (const auto& part : node.parts) {
        const double number = number_of(*part, point);
        if (std::isfinite(number)) {
            given.push_back(number);
        } else if (!passes_over) {
            return unknown_number;
        }
    }
    if (given.empty() && passes_over) return unknown_number;
    if (is_built_in) return built_in(node, given, point.rounding);
    return node.compute ? node.compute(given) : unknown_number;
}

double number_of(const Node& node, const Point& point) {
    const auto part = [&](std::size_t i) { return number_of(*node.parts[i], point); };
    switch (node.operation) {
        case Operation::number:
            return node.number;
        case Operation::name:
            return point.names[static_cast<std::size_t>(node.name)];
        case Operation::negate:
            return -part(0);
        case Operation::add:
            return part(0) + part(1);
        case Operation::subtract:
            return part(0) - part(1);
        case Operation::multiply:
            return part(0) * part(1);
        case Operation::divide:
            return part(0) / part(1);
        case Operation::power: {
            // pow(NaN, 0) is 1: an unknown base must stay unknown.
            const double base = part(0);
            const double exponent = part(1);
            return std::isnan(base) || std::isnan(exponent) ? unknown_number : std::pow(base, exponent);
        }
        case Operation::built_in:
        case Operation::function:
            return called(node, point);
        default:
            return unknown_number;
    }
}

// Half the width in which f lies: the inputs' spreads times the partial derivatives, in quadrature (GUM,
// JCGM 100:2008, 5.1.2, equation 10, inputs independent). Derivatives by central difference, one-sided at
// the end of the range in which f is defined. NaN where f has no derivative.
template <typename F>
double spread_of(const F& f, std::vector<double> names, const std::vector<double>& spreads) {
    double sum = 0;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (spreads[i] == 0 || std::isnan(names[i])) continue;
        const double here = names[i];
        // Small against the spread, large against the rounding of doubles.
        const double step = std::max(1e-3 * spreads[i], 1e-6 * std::abs(here));
        names[i] = here + step;
        const double above = f(names);
        names[i] = here - step;
        const double below = f(names);
        names[i] = here;
        const bool both_sides = std::isfinite(above) && std::isfinite(below);
        const double middle = both_sides ? 0 : f(names);
        const double slope = both_sides             ? (above - below) / (2 * step)
                             : std::isfinite(above) ? (above - middle) / step
                                                    : (middle - below) / step;
        sum += std::pow(slope * spreads[i], 2);
    }
    return std::sqrt(sum);
}

// With a spread s on the difference of the sides, a difference smaller than s decides nothing. The
// difference is taken as one formula, so that a name on both sides is not counted twice.
Truth compared(const Node& node, const Inputs& inputs) {
    const Node& left = *node.parts[0];
    const Node& right = *node.parts[1];
    const double a = number_of(left, {inputs, inputs.numbers, Rounding::done});
    const double b = number_of(right, {inputs, inputs.numbers, Rounding::done});
    if (!std::isfinite(a) || !std::isfinite(b)) return Truth::unknown;
    const auto difference = [&](const std::vector<double>& names) {
        const Point point{inputs, names, Rounding::left_out};
        return number_of(left, point) - number_of(right, point);
    };
    const double spread = spread_of(difference, inputs.numbers, inputs.spreads);
    if (std::isnan(spread)) return Truth::unknown;
    const bool equal = std::abs(a - b) <= same * std::max(std::abs(a), std::abs(b));
    const bool blurred = spread > same * std::max(std::abs(a), std::abs(b));
    if (blurred && std::abs(a - b) < spread * (1 - same)) return Truth::unknown;
    bool holds = false;
    switch (node.operation) {
        case Operation::less:
            holds = !equal && a < b;
            break;
        case Operation::at_most:
            holds = equal || a < b;
            break;
        case Operation::greater:
            holds = !equal && a > b;
            break;
        case Operation::at_least:
            holds = equal || a > b;
            break;
        case Operation::equal:
            holds = equal;
            break;
        default:
            holds = !equal;
            break;
    }
    return holds ? Truth::yes : Truth::no;
}

const Choice* choice_in(const Value& value) {
    if (const auto* choice = std::get_if<Choice>(&value)) return choice;
    if (const auto* measured = std::get_if<Measured>(&value)) return &measured->reading;
    return nullptr;
}

// Membership for a name that can be several words at once; else yes when every word still possible is among
// those asked for, no when none is.
Truth among(const Node& node, const Value& value) {
    const Choice* choice = choice_in(value);
    if (choice == nullptr) return Truth::unknown;
    const auto asked = [&](const std::string& word) {
        return std::find(node.words.begin(), node.words.end(), word) != node.words.end();
    };
    const auto hits = std::count_if(choice->possible.begin(), choice->possible.end(), asked);
    if (node.several) return hits > 0 ? Truth::yes : Truth::no;
    if (choice->possible.empty()) return Truth::unknown;
    if (hits == 0) return Truth::no;
    return hits == static_cast<std::ptrdiff_t>(choice->possible.size()) ? Truth::yes : Truth::unknown;
}

bool known(const Value& value) {
    if (std::holds_alternative<Unknown>(value)) return false;
    if (const auto* truth = std::get_if<Truth>(&value)) return *truth != Truth::unknown;
    if (const auto* choice = std::get_if<Choice>(&value)) return !choice->possible.empty();
    return true;
}

bool is_comparison(Operation operation) {
    return operation >= Operation::less && operation <= Operation::not_equal;
}

void lay_out(const Node& node, Condition& condition) {
    const std::size_t at = condition.clauses.size();
    const bool about_a_name = node.operation == Operation::is_one_of || node.operation == Operation::is_known;
    condition.clauses.push_back({node.operation, about_a_name ? node.parts[0]->name : node.name, 0, &node});
    if (is_comparison(node.operation)) {
        condition.compares = true;
    } else if (!about_a_name) {
        for (const auto& part : node.parts) lay_out(*part, condition);
    }
    condition.clauses[at].after = static_cast<int>(condition.clauses.size());
}

Truth truth_at(const std::vector<Clause>& clauses, std::size_t at, const Inputs& inputs) {
    const Clause& clause = clauses[at];
    const auto value = [&]() -> const Value& {
        return *inputs.values[static_cast<std::size_t>(clause.name)];
    };
    switch (clause.operation) {
        case Operation::name: {
            const auto* truth = std::get_if<Truth>(&value());
            return truth ? *truth : Truth::unknown;
        }
        case Operation::is_one_of:
            return among(*clause.node, value());
        case Operation::is_known:
            return known(value()) ? Truth::yes : Truth::no;
        case Operation::negation:
            return !truth_at(clauses, at + 1, inputs);
        case Operation::both:
        case Operation::either: {
            const bool needs_all = clause.operation == Operation::both;
            const Truth settled = needs_all ? Truth::no : Truth::yes;
            Truth all = !settled;
            const auto end = static_cast<std::size_t>(clause.after);
            for (std::size_t part = at + 1; part < end && all != settled;) {
                const Truth truth = truth_at(clauses, part, inputs);
                all = needs_all ? both(all, truth) : either(all, truth);
                part = static_cast<std::size_t>(clauses[part].after);
            }
            return all;
        }
        default:
            return is_comparison(clause.operation) ? compared(*clause.node, inputs) : Truth::unknown;
    }
}

// Sides of a comparison that are a name and nothing else.
std::vector<int> names_compared(const Node& comparison) {
    std::vector<int> names;
    for (const auto& side : comparison.parts) {
        if (side->operation == Operation::name) names.push_back(side->name);
    }
    std::sort(names.begin(), names.end());
    return names;
}

std::vector<int> needed_at(const std::vector<Clause>& clauses, std::size_t at) {
    const Clause& clause = clauses[at];
    switch (clause.operation) {
        case Operation::name:
        case Operation::is_one_of:
        case Operation::is_known:
            return {clause.name};
        case Operation::negation: {
            // What is unknown for want of a name stays unknown; what is no for want of it does not stay no.
            const Operation denied = clauses[at + 1].operation;
            const bool unknown_without =
                denied == Operation::name || denied == Operation::is_one_of || is_comparison(denied);
            return unknown_without ? needed_at(clauses, at + 1) : std::vector<int>{};
        }
        case Operation::both:
        case Operation::either: {
            std::vector<int> needed = needed_at(clauses, at + 1);
            const auto end = static_cast<std::size_t>(clause.after);
            for (auto part = static_cast<std::size_t>(clauses[at + 1].after); part < end;
                 part = static_cast<std::size_t>(clauses[part].after)) {
                const std::vector<int> others = needed_at(clauses, part);
                std::vector<int> all;
                if (clause.operation == Operation::both) {
                    std::set_union(needed.begin(), needed.end(), others.begin(), others.end(),
                                   std::back_inserter(all));
                } else {
                    std::set_intersection(needed.begin(), needed.end(), others.begin(), others.end(),
                                          std::back_inserter(all));
                }
                needed = std::move(all);
            }
            return needed;
        }
        default:
            return is_comparison(clause.operation) ? names_compared(*clause.node) : std::vector<int>{};
    }
}

}  // namespace

Inputs inputs_of(const NamedValues& values) {
    Inputs inputs{values, {}, {}};
    inputs.numbers.reserve(values.size());
    inputs.spreads.reserve(values.size());
    for (const Value* value : values) {
        const auto* measured = std::get_if<Measured>(value);
        const auto* quantity = measured ? &measured->quantity : std::get_if<Quantity>(value);
        inputs.numbers.push_back(quantity ? quantity->value : unknown_number);
        inputs.spreads.push_back(quantity ? quantity->spread : 0);
    }
    return inputs;
}

Condition condition_of(const Node& root) {
    Condition condition;
    lay_out(root, condition);
    return condition;
}

Truth truth_of(const Condition& condition, const Inputs& inputs) {
    return truth_at(condition.clauses, 0, inputs);
}

std::vector<int> needed_by(const Condition& condition) {
    return needed_at(condition.clauses, 0);
}

Value quantity_of(const Node& node, const Inputs& inputs) {
    const double value = number_of(node, {inputs, inputs.numbers, Rounding::done});
    if (!std::isfinite(value)) return Unknown{};
    const auto formula = [&](const std::vector<double>& names) {
        return number_of(node, {inputs, names, Rounding::left_out});
    };
    const double spread = spread_of(formula, inputs.numbers, inputs.spreads);
    if (!std::isfinite(spread)) return Unknown{};
    return Quantity{value, node.dimension, spread};
}

}  // namespace hardover::language_detail
