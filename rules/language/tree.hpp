// The checked tree of a condition or formula. Inner header of rules/language.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "rules/language/language.hpp"
#include "rules/quantity/plain_text.hpp"

namespace hardover::language_detail {

enum class Operation {
    number,
    name,
    negate,
    add,
    subtract,
    multiply,
    divide,
    power,
    built_in,
    function,
    less,
    at_most,
    greater,
    at_least,
    equal,
    not_equal,
    is_one_of,
    is_known,
    both,
    either,
    negation
};

enum class BuiltIn {
    abs,
    min,
    max,
    greatest_known,
    least_known,
    choose,
    sqrt,
    sin,
    cos,
    tan,
    atan,
    round,
    in_radians
};

// What a temperature is: a point on the thermometer (68 F) or a difference of two; a literal in K may be
// either. Keeps 20 F + 20 F, and a difference compared with 10 F, from being taken for something sensible.
enum class Thermal { either, point, difference };

struct Node;

// One step of a condition laid out flat: each clause is followed by its parts. There are hundreds of
// conditions and each step of a job goes through them all; a tree in that place was mostly waiting for
// memory.
struct Clause {
    Operation operation = Operation::name;
    int name = -1;               // of a name, of `is` and of `is known`
    int after = 0;               // the clause behind its parts
    const Node* node = nullptr;  // words of `is`, sides of a comparison
};
struct Condition {
    std::vector<Clause> clauses;
    bool compares = false;  // numbers are needed
};

struct Node {
    Operation operation = Operation::number;
    std::vector<std::shared_ptr<const Node>> parts;
    std::vector<Condition> conditions;  // of choose(), in turn with its values

    double number = 0;                                          // of a literal, SI
    int name = -1;                                              // index into the names of the expression
    std::vector<std::string> words;                             // of `is`, and of a name
    bool several = false;                                       // `is` asks for membership
    BuiltIn built_in = BuiltIn::abs;                            // of a built-in function
    std::function<double(const std::vector<double>&)> compute;  // of a function added by others

    // What it can stand for. A measured finding is a quantity and a word at once.
    bool is_truth = false;
    bool is_quantity = false;
    Dimension dimension;
    Thermal thermal = Thermal::either;

    std::string unit;       // of a name or literal, for messages
    bool fraction = false;  // a literal like 3/4 in
    int depth = 1;          // of the tree below and with this node
    std::size_t start = 0;  // where its text begins and ends in the plain text
    std::size_t end = 0;
};
using NodePtr = std::shared_ptr<const Node>;

// The text being read and where it stands: makes errors that point at a letter.
struct Source {
    quantity_detail::PlainText text;
    TextPlace place;

    Error fault(std::size_t at, const std::string& what, const std::string& cure) const;
    std::string written(const Node& node) const {
        return text.text.substr(node.start, node.end - node.start);
    }
};

}  // namespace hardover::language_detail
