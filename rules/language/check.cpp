// The rules of what goes with what: kinds and dimensions of every operator and comparison.
#include "rules/language/check.hpp"

#include <algorithm>
#include <cmath>

#include "rules/result/nearest.hpp"

namespace hardover::language_detail {
namespace {

// Deeper trees are refused, so that no text can exhaust the stack when it is evaluated.
constexpr int most_levels = 400;
constexpr int most_exponent = 9;

Node joined(Operation operation, std::vector<NodePtr> parts) {
    Node node;
    node.operation = operation;
    node.start = parts.front()->start;
    node.end = parts.back()->end;
    for (const NodePtr& part : parts) node.depth = std::max(node.depth, part->depth + 1);
    node.parts = std::move(parts);
    return node;
}

bool is_bare_number(const Node& node) {
    return node.operation == Operation::number && node.dimension.is_number() && node.unit.empty();
}

// What would put a pair of unlike sides right.
std::string cure_for(const Node& left, const Node& right) {
    const bool left_bare = is_bare_number(left);
    if (!left_bare && !is_bare_number(right)) return "both sides must be of one kind";
    const Node& other = left_bare ? right : left;
    return other.unit.empty() ? "write the number with its unit"
                              : "write the number with its unit, such as 2 " + other.unit;
}

}  // namespace

std::string with_article(const std::string& noun) {
    if (noun.find_first_of("/^") != std::string::npos || noun.find("·") != std::string::npos) {
        return "a quantity in " + noun;  // no trade name: "m·rad"
    }
    const bool vowel = std::string_view("aeiou").find(noun.front()) != std::string_view::npos;
    return (vowel ? "an " : "a ") + noun;
}

std::string Checker::described(const Node& node) {
    if (node.is_quantity) {
        if (node.thermal == Thermal::difference) return "a difference of temperatures";
        return with_article(name_of(node.dimension));
    }
    if (node.is_truth) return "yes or no";
    return "a word";
}

// The last step of every join: the limit on nesting.
Result<NodePtr> Checker::finish(Node node, std::size_t at) const {
    if (node.depth > most_levels) {
        return source_.fault(at, "more than " + std::to_string(most_levels) + " steps in one expression",
                             "split it and give each part a name of its own");
    }
    return NodePtr(std::make_shared<const Node>(std::move(node)));
}

NodePtr Checker::literal(const Token& token, double sign) const {
    Node node;
    node.is_quantity = true;
    node.start = token.start;
    node.end = token.end;
    node.fraction = token.fraction;
    node.unit = token.unit.name;
    node.dimension = token.unit.dimension;
    node.number = sign * token.number * token.unit.factor + token.unit.offset;
    if (token.unit.offset != 0) node.thermal = Thermal::point;
    return std::make_shared<const Node>(std::move(node));
}

NodePtr Checker::name(const Token& token, int index, const NameKind& kind) const {
    Node node;
    node.operation = Operation::name;
    node.name = index;
    node.words = kind.words;
    node.several = kind.several;
    node.is_truth = kind.is_truth;
    node.is_quantity = kind.is_quantity;
    node.start = token.start;
    node.end = token.end;
    if (kind.is_quantity) {
        node.dimension = kind.unit.dimension;
        node.unit = kind.unit.name;
        if (kind.unit.offset != 0) node.thermal = Thermal::point;
    }
    return std::make_shared<const Node>(std::move(node));
}

std::optional<Error> Checker::not_a_condition(const Node& node) const {
    if (node.is_truth) return std::nullopt;
    const std::string written = source_.written(node);
    const std::string cure = node.is_quantity     ? "compare it with a limit, as in 'x > 2 in'"
                             : node.words.empty() ? "write a comparison"
                                                  : "write '" + written + " is " + node.words.front() + "'";
    return source_.fault(node.start, "'" + written + "' is " + described(node) + ", not a condition", cure);
}

std::optional<Error> Checker::not_a_quantity(const Node& node) const {
    if (node.is_quantity) return std::nullopt;
    const std::string written = source_.written(node);
    return source_.fault(node.start, "'" + written + "' is " + described(node) + ", not a quantity",
                         node.is_truth ? "use it with 'and', 'or' and 'not'"
                                       : "use it with 'is', as in 'x is y', or give a measured name");
}

// A thermometer reading can be compared, and two can be subtracted; nothing else has a meaning.
std::optional<Error> Checker::thermometer_reading(const Node& node, std::size_t at) const {
    if (node.thermal != Thermal::point) return std::nullopt;
    return source_.fault(at, "calculates with the thermometer reading '" + source_.written(node) + "'",
                         "take the difference of two temperatures first, or write it in K");
}

Result<NodePtr> Checker::negate(NodePtr operand, std::size_t at) const {
    if (auto error = not_a_quantity(*operand)) return *error;
    if (auto error = thermometer_reading(*operand, at)) return *error;
    Node node = joined(Operation::negate, {operand});
    node.start = at;
    node.is_quantity = true;
    node.dimension = operand->dimension;
    node.thermal = operand->thermal;
    return finish(std::move(node), at);
}

Result<NodePtr> Checker::arithmetic(Operation operation, NodePtr left, NodePtr right, std::size_t at) const {
    if (auto error = not_a_quantity(*left)) return *error;
    if (auto error = not_a_quantity(*right)) return *error;
    Node node = joined(operation, {left, right});
    node.is_quantity = true;
    if (operation == Operation::multiply || operation == Operation::divide) {
        if (auto error = thermometer_reading(*left, at)) return *error;
        if (auto error = thermometer_reading(*right, at)) return *error;
        node.dimension = operation == Operation::multiply ? left->dimension * right->dimension
                                                          : left->dimension / right->dimension;
        return finish(std::move(node), at);
    }
    const bool adds = operation == Operation::add;
    if (left->dimension != right->dimension) {
        const bool mixed = !adds && is_bare_number(*left) && right->fraction;
        const std::string what = adds ? "adds " + described(*left) + " and " + described(*right)
                                      : "takes " + described(*right) + " from " + described(*left);
        return source_.fault(
            at, what, mixed ? "write a mixed number with a blank: 17 3/4 in" : cure_for(*left, *right));
    }
    node.dimension = left->dimension;
    const bool points = left->thermal == Thermal::point && right->thermal == Thermal::point;
    const bool difference_less_point =
        !adds && left->thermal == Thermal::difference && right->thermal == Thermal::point;
    if ((adds && points) || difference_less_point) {
        return *thermometer_reading(*right, at);
    }
    if (points) {
        node.thermal = Thermal::difference;
    } else if (left->thermal == right->thermal) {
        node.thermal = left->thermal;
    } else if (adds && (left->thermal == Thermal::point || right->thermal == Thermal::point)) {
        node.thermal = Thermal::point;
    } else if (right->thermal == Thermal::difference) {
        node.thermal = left->thermal == Thermal::point ? Thermal::point : Thermal::difference;
    }
    return finish(std::move(node), at);
}

Result<NodePtr> Checker::power(NodePtr base, NodePtr exponent, std::size_t at) const {
    if (auto error = not_a_quantity(*base)) return *error;
    if (auto error = not_a_quantity(*exponent)) return *error;
    if (auto error = thermometer_reading(*base, at)) return *error;
    if (!exponent->dimension.is_number()) {
        return source_.fault(exponent->start, "the exponent is " + described(*exponent),
                             "an exponent is a plain number");
    }
    Node node = joined(Operation::power, {base, exponent});
    node.is_quantity = true;
    if (!base->dimension.is_number()) {
        const bool negative = exponent->operation == Operation::negate;
        const Node& size = negative ? *exponent->parts.front() : *exponent;
        const bool whole =
            is_bare_number(size) && size.number == std::floor(size.number) && size.number <= most_exponent;
        if (!whole) {
            return source_.fault(exponent->start,
                                 described(*base) + " can only be raised to a whole number up to " +
                                     std::to_string(most_exponent),
                                 "write it like x^2, or use sqrt(x)");
        }
        const int number = static_cast<int>(size.number);
        node.dimension = hardover::power(base->dimension, negative ? -number : number);
    }
    return finish(std::move(node), at);
}

Result<NodePtr> Checker::comparison(Operation operation, NodePtr left, NodePtr right, std::size_t at) const {
    if (auto error = not_a_quantity(*left)) return *error;
    if (auto error = not_a_quantity(*right)) return *error;
    const bool point_with_difference =
        (left->thermal == Thermal::point && right->thermal == Thermal::difference) ||
        (left->thermal == Thermal::difference && right->thermal == Thermal::point);
    if (left->dimension != right->dimension || point_with_difference) {
        return source_.fault(at, "compares " + described(*left) + " with " + described(*right),
                             point_with_difference ? "write a difference of temperatures in K (1.8 F are 1 K)"
                                                   : cure_for(*left, *right));
    }
    Node node = joined(operation, {left, right});
    node.is_truth = true;
    return finish(std::move(node), at);
}

Result<NodePtr> Checker::is_one_of(NodePtr name, const std::vector<Token>& words, std::size_t at) const {
    const std::string written = source_.written(*name);
    if (name->words.empty()) {
        const std::string cure = name->is_truth ? "write '" + written + "' or 'not " + written + "'"
                                                : "compare it with a limit, as in 'x > 2 in'";
        return source_.fault(at, "'" + written + "' is " + described(*name) + " and has no words to be",
                             cure);
    }
    Node node = joined(Operation::is_one_of, {name});
    node.is_truth = true;
    node.end = words.back().end;
    for (const Token& word : words) {
        if (std::find(name->words.begin(), name->words.end(), word.text) == name->words.end()) {
            std::string cure = did_you_mean(word.text, name->words);
            if (cure.empty()) {
                cure = "it can be";
                for (const std::string& known : name->words) {
                    cure.append(&known == &name->words.front() ? " " : ", ").append(known);
                }
            }
            return source_.fault(word.start, "'" + written + "' is never '" + word.text + "'", cure);
        }
        node.words.push_back(word.text);
    }
    node.several = name->several;
    return finish(std::move(node), at);
}

NodePtr Checker::is_known(NodePtr name) const {
    Node node = joined(Operation::is_known, {name});
    node.is_truth = true;
    return std::make_shared<const Node>(std::move(node));
}

Result<NodePtr> Checker::logic(Operation operation, std::vector<NodePtr> operands, std::size_t at) const {
    for (const NodePtr& operand : operands) {
        if (auto error = not_a_condition(*operand)) return *error;
    }
    Node node = joined(operation, std::move(operands));
    if (operation == Operation::negation) node.start = at;
    node.is_truth = true;
    return finish(std::move(node), at);
}

}  // namespace hardover::language_detail
