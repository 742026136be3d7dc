// Checks calls of functions: the built-in ones, which keep or change dimensions, and those added by others.
#include <array>

#include "rules/language/check.hpp"
#include "rules/language/evaluate.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::language_detail {
namespace {

constexpr std::size_t any_number = 1000;

struct BuiltInForm {
    std::string_view name;
    BuiltIn which;
    std::size_t least;
    std::size_t most;
};

constexpr std::array<BuiltInForm, 13> built_ins = {
    {{"abs", BuiltIn::abs, 1, 1},
     {"min", BuiltIn::min, 2, any_number},
     {"max", BuiltIn::max, 2, any_number},
     {"greatest_known", BuiltIn::greatest_known, 2, any_number},
     {"least_known", BuiltIn::least_known, 2, any_number},
     {"choose", BuiltIn::choose, 3, any_number},
     {"sqrt", BuiltIn::sqrt, 1, 1},
     {"sin", BuiltIn::sin, 1, 1},
     {"cos", BuiltIn::cos, 1, 1},
     {"tan", BuiltIn::tan, 1, 1},
     {"atan", BuiltIn::atan, 1, 1},
     {"round", BuiltIn::round, 1, 2},
     {"in_radians", BuiltIn::in_radians, 1, 1}}};

const BuiltInForm* built_in_form(const std::string& name) {
    for (const BuiltInForm& form : built_ins) {
        if (form.name == name) return &form;
    }
    return nullptr;
}

std::string count_of(std::size_t count) {
    return std::to_string(count) + (count == 1 ? " argument" : " arguments");
}

bool all_even(const Dimension& d) {
    return d.length % 2 == 0 && d.mass % 2 == 0 && d.time % 2 == 0 && d.temperature % 2 == 0 &&
           d.angle % 2 == 0;
}

Dimension halved(const Dimension& d) {
    return {d.length / 2, d.mass / 2, d.time / 2, d.temperature / 2, d.angle / 2};
}

Node call_node(const Token& function, const std::vector<NodePtr>& arguments) {
    Node node;
    node.is_quantity = true;
    node.start = function.start;
    node.end = arguments.empty() ? function.end : arguments.back()->end + 1;
    for (const NodePtr& part : arguments) node.depth = std::max(node.depth, part->depth + 1);
    node.parts = arguments;
    return node;
}

}  // namespace

// Values that may stand for each other: of one dimension, and no thermometer reading beside a difference.
std::optional<Error> Checker::not_of_one_kind(const Token& function,
                                              const std::vector<NodePtr>& values) const {
    const Node& first = *values.front();
    for (const NodePtr& value : values) {
        if (value->dimension == first.dimension && value->thermal == first.thermal) continue;
        return source_.fault(value->start,
                             function.text + "() of " + described(first) + " and " + described(*value),
                             "all its arguments must be of one kind");
    }
    return std::nullopt;
}

// Conditions and values take turns; the last value is for when no condition is yes.
Result<NodePtr> Checker::choice(const Token& function, std::vector<NodePtr> arguments) const {
    if (arguments.size() < 3 || arguments.size() % 2 == 0) {
        return source_.fault(function.start, "choose() is given " + count_of(arguments.size()),
                             "write it like choose(x is y, 1 in, 2 in)");
    }
    std::vector<NodePtr> values;
    std::vector<Condition> conditions;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const bool is_condition = i % 2 == 0 && i + 1 < arguments.size();
        if (auto error = is_condition ? not_a_condition(*arguments[i]) : not_a_quantity(*arguments[i])) {
            return *error;
        }
        if (is_condition) {
            conditions.push_back(condition_of(*arguments[i]));
        } else {
            values.push_back(arguments[i]);
        }
    }
    if (auto error = not_of_one_kind(function, values)) return *error;
    Node node = call_node(function, arguments);
    node.operation = Operation::built_in;
    node.built_in = BuiltIn::choose;
    node.conditions = std::move(conditions);
    node.dimension = values.front()->dimension;
    node.thermal = values.front()->thermal;
    return finish(std::move(node), function.start);
}

Result<NodePtr> Checker::call(const Token& function, std::vector<NodePtr> arguments) const {
    if (function.text == "choose") return choice(function, std::move(arguments));
    for (const NodePtr& argument : arguments) {
        if (auto error = not_a_quantity(*argument)) return *error;
    }
    if (const BuiltInForm* form = built_in_form(function.text)) {
        if (arguments.size() < form->least || arguments.size() > form->most) {
            const std::string least = form->most > form->least ? "at least " : "";
            return source_.fault(
                function.start, function.text + "() is given " + count_of(arguments.size()),
                "it takes " + (arguments.size() > form->most ? "at most " + count_of(form->most)
                                                             : least + count_of(form->least)));
        }
        return built_in(form->which, function, std::move(arguments));
    }
    const Function* known = functions_.find(function.text);
    if (known == nullptr) {
        std::vector<std::string> names;
        for (const BuiltInForm& form : built_ins) names.emplace_back(form.name);
        for (const Function& other : functions_.all()) names.push_back(other.name);
        return source_.fault(function.start, "unknown function '" + function.text + "'",
                             did_you_mean(function.text, names));
    }
    std::string form = function.text + "(";
    for (const Dimension& dimension : known->arguments) {
        form.append(&dimension == &known->arguments.front() ? "" : ", ").append(name_of(dimension));
    }
    form += ")";
    if (arguments.size() != known->arguments.size()) {
        return source_.fault(function.start, function.text + "() is given " + count_of(arguments.size()),
                             "write it as " + form);
    }
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        if (arguments[i]->dimension == known->arguments[i]) continue;
        return source_.fault(arguments[i]->start,
                             "argument " + std::to_string(i + 1) + " of " + function.text + "() is " +
                                 described(*arguments[i]) + ", not " +
                                 with_article(name_of(known->arguments[i])),
                             "write it as " + form);
    }
    Node node = call_node(function, arguments);
    node.operation = Operation::function;
    node.compute = known->compute;
    node.dimension = known->result;
    return finish(std::move(node), function.start);
}

Result<NodePtr> Checker::built_in(BuiltIn which, const Token& function,
                                  std::vector<NodePtr> arguments) const {
    Node node = call_node(function, arguments);
    node.operation = Operation::built_in;
    node.built_in = which;
    const Node& first = *arguments.front();
    const auto must_be = [&](const Dimension& dimension, const std::string& cure) -> std::optional<Error> {
        if (first.dimension == dimension) return std::nullopt;
        return source_.fault(first.start, function.text + "() of " + described(first), cure);
    };
    const bool compares = which == BuiltIn::min || which == BuiltIn::max ||
                          which == BuiltIn::greatest_known || which == BuiltIn::least_known;
    if (!compares) {
        for (const NodePtr& argument : arguments) {
            if (auto error = thermometer_reading(*argument, argument->start)) return *error;
        }
    }
    switch (which) {
        case BuiltIn::sin:
        case BuiltIn::cos:
        case BuiltIn::tan:
            if (auto error = must_be({.angle = 1}, "give it an angle, such as 12 deg")) return *error;
            break;
        case BuiltIn::in_radians:
            if (auto error = must_be({.angle = 1}, "give it an angle, such as 12 deg")) return *error;
            break;
        case BuiltIn::atan:
            if (auto error = must_be({}, "give it a plain number, such as rise / run")) return *error;
            node.dimension = {.angle = 1};
            break;
        case BuiltIn::sqrt:
            if (!all_even(first.dimension)) {
                return source_.fault(first.start, "sqrt() of " + described(first),
                                     "give it a plain number, an area or another square");
            }
            node.dimension = halved(first.dimension);
            break;
        case BuiltIn::round:
            if (arguments.size() == 1) {
                if (auto error = must_be({}, "say to what step, as in round(x, 1/16 in)")) return *error;
            }
            [[fallthrough]];
        case BuiltIn::abs:
        case BuiltIn::min:
        case BuiltIn::max:
        case BuiltIn::greatest_known:
        case BuiltIn::least_known:
            if (auto error = not_of_one_kind(function, arguments)) return *error;
            node.dimension = first.dimension;
            node.thermal = first.thermal;
            break;
        case BuiltIn::choose:
            break;  // checked in choice()
    }
    return finish(std::move(node), function.start);
}

}  // namespace hardover::language_detail
