// Conditions and formulas of the knowledge base: text -> checked tree -> value or unknown.
// Knows names only through the Scope it is given; no boats, no files.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "rules/quantity/quantity.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// Strong Kleene logic: an unknown part leaves the whole unknown unless the rest decides it.
enum class Truth { no, unknown, yes };
Truth operator!(Truth a);
Truth both(Truth a, Truth b);
Truth either(Truth a, Truth b);

struct Unknown {
    friend bool operator==(const Unknown&, const Unknown&) = default;
};

// A word out of a fixed list: a finding's reading, a rig choice, a history. `possible` holds every word the
// answer may still be (a measurement near a threshold leaves two), best first; one word means it is settled.
struct Choice {
    std::vector<std::string> possible;
    friend bool operator==(const Choice&, const Choice&) = default;
};

// What a name or an expression stands for. A finding that is measured has both a quantity and a reading.
struct Measured {
    Quantity quantity;
    Choice reading;
};
using Value = std::variant<Unknown, Truth, Quantity, Choice, Measured>;

// The kind of a name, known before any value is: used to check an expression when it is read.
struct NameKind {
    bool is_truth = false;     // facts derived by rules
    bool is_quantity = false;  // then `unit` is what it is measured in
    Unit unit;
    std::vector<std::string> words;  // not empty: may be compared with `is`
    bool several = false;            // `is` asks for membership (complaint)
};

// The names an expression may use, and their kinds. Built by the reader from the knowledge.
class Scope {
  public:
    virtual ~Scope() = default;
    // nullptr when there is no such name.
    virtual const NameKind* kind_of(const std::string& name) const = 0;
    virtual std::vector<std::string> names() const = 0;  // for "did you mean"
};

// Gives the value of a name, or Unknown. For `several` names the Choice holds all words present.
using Lookup = std::function<Value(const std::string& name)>;

// The values of the names of an expression, in the order of Expression::names(). None may be null.
using NamedValues = std::vector<const Value*>;

// A function callable in formulas: argument dimensions are checked when the text is read. `compute` is called
// with finite numbers only, must not throw, and must be safe to call from several threads.
struct Function {
    std::string name;
    std::vector<Dimension> arguments;
    Dimension result;
    std::function<double(const std::vector<double>&)>
        compute;         // SI in, SI out; NaN means "no value": unknown
    std::string source;  // where its formula is published
};

// A name of the numeric model that stands behind the functions, and its unit.
struct ModelName {
    std::string name;
    Unit unit;
};

// The functions that others add (app/rig). The parser itself knows, and prefers:
//   abs(x), min(x, y, ...), max(x, y, ...)   of one dimension, which they keep
//   greatest_known(x, y, ...), least_known(x, y, ...)   the same, but unknown arguments are passed over
//   choose(condition, x, y)   x when the condition is yes, y when it is no, unknown when that is unknown;
//   choose(one, x, other, y, ..., z) takes the first condition that is yes
//   round(x) of a plain number; round(x, step) of anything, as in round(excess, 1/4 turn)
//   sqrt(x) of a dimension that can be halved; sin, cos, tan of an angle; atan of a plain number gives an
//   angle in_radians(angle) gives a plain number: arc = in_radians(angle) * radius
class Functions {
  public:
    void add(Function function);  // replaces one of the same name
    const Function* find(const std::string& name) const;
    const std::vector<Function>& all() const { return functions_; }

    // What the numeric model can have changed in it (parameters) and what can be read off it (gauges). Both
    // empty: there is no numeric model, and knowledge that refers to one is refused.
    std::vector<ModelName> parameters;
    std::vector<ModelName> gauges;

  private:
    std::vector<Function> functions_;
};

// Where a text stands inside a YAML file, so that a fault inside it is reported at its own column.
struct TextPlace {
    std::string file;
    int line = 0;    // 1-based; 0: no file
    int column = 0;  // 1-based column of the first letter of the text
};

namespace language_detail {
struct Condition;
struct Node;
}  // namespace language_detail

// A condition or formula that has been read and checked. Cheap to copy, never changes.
class Expression {
  public:
    Expression();  // empty: condition() gives yes
    bool empty() const { return root_ == nullptr; }
    const std::string& text() const { return text_; }

    // Names used, each once, in order of first appearance.
    const std::vector<std::string>& names() const { return names_; }

    // For conditions. An empty expression is yes. Comparisons carry the spread: with a spread s on the
    // difference of the two sides (first order, inputs independent), a difference smaller than s decides
    // nothing and the comparison is unknown, so that a measurement near its limit does not pass for a sure
    // one. Without spread, sides that differ by less than 1 part in 10^9 (rounding of unit conversions) are
    // equal. `x is reading` is yes when that is the only word still possible, no when it is not possible,
    // else unknown. `is known` and `is unknown` are always decided.
    Truth condition(const Lookup& lookup) const;
    // The same where the values of its names have been found already.
    Truth condition_with(const NamedValues& values) const;
    // Names, by their place, without which a condition is not yes: while one of them is unknown, so is the
    // condition, or it is no. Not always all of them.
    std::vector<int> needed_names() const;

    // For formulas: the value in SI with dimension and first-order spread carried from the inputs' spreads,
    // taken as independent (GUM, JCGM 100:2008, 5.1.2, partial derivatives by central difference). Unknown
    // when an input is unknown or the result is not a finite number.
    Value quantity(const Lookup& lookup) const;
    Value quantity_with(const NamedValues& values) const;

  private:
    friend Result<Expression> read_condition(std::string_view, const Scope&, const Functions&,
                                             const TextPlace&);
    friend Result<Expression> read_formula(std::string_view, const Scope&, const Functions&, const Dimension&,
                                           const TextPlace&);
    Expression(std::string text, std::shared_ptr<const language_detail::Node> root,
               std::vector<std::string> names);
    std::string text_;
    std::shared_ptr<const language_detail::Node> root_;
    std::shared_ptr<const language_detail::Condition> condition_;  // where it is one
    std::vector<std::string> names_;
};

// Reads a condition. Errors: syntax, unknown name or word (with the nearest right spelling), mixed
// dimensions; each with file:line:column of the letter at fault.
Result<Expression> read_condition(std::string_view text, const Scope& scope, const Functions& functions,
                                  const TextPlace& place);

// Reads a formula that must have the dimension `expected`.
Result<Expression> read_formula(std::string_view text, const Scope& scope, const Functions& functions,
                                const Dimension& expected, const TextPlace& place);

}  // namespace hardover
