// The public face of the language: Kleene's tables, the functions, reading and evaluating expressions.
#include "rules/language/language.hpp"

#include <algorithm>

#include "rules/language/evaluate.hpp"
#include "rules/language/parser.hpp"

namespace hardover {

using namespace language_detail;

// Kleene 1952, section 64, strong tables: no < unknown < yes, "and" is the lesser, "or" the greater.
Truth operator!(Truth a) {
    if (a == Truth::unknown) return a;
    return a == Truth::yes ? Truth::no : Truth::yes;
}
Truth both(Truth a, Truth b) {
    return std::min(a, b);
}
Truth either(Truth a, Truth b) {
    return std::max(a, b);
}

void Functions::add(Function function) {
    const auto same = std::find_if(functions_.begin(), functions_.end(),
                                   [&](const Function& other) { return other.name == function.name; });
    if (same == functions_.end()) {
        functions_.push_back(std::move(function));
    } else {
        *same = std::move(function);
    }
}

const Function* Functions::find(const std::string& name) const {
    for (const Function& function : functions_) {
        if (function.name == name) return &function;
    }
    return nullptr;
}

Error Source::fault(std::size_t at, const std::string& what, const std::string& cure) const {
    const int letter = text.letter[std::min(at, text.text.size())];
    Error error{Error::Kind::bad_knowledge, what, "", cure};
    if (place.line > 0) {
        error.where = place.file + ":" + std::to_string(place.line) + ":" +
                      std::to_string(std::max(place.column, 1) + letter - 1);
    } else {
        error.where = "letter " + std::to_string(letter);
    }
    return error;
}

Expression::Expression() = default;
Expression::Expression(std::string text, std::shared_ptr<const Node> root, std::vector<std::string> names)
    : text_(std::move(text)), root_(std::move(root)), names_(std::move(names)) {
    if (root_->is_truth)
        condition_ = std::make_shared<const language_detail::Condition>(condition_of(*root_));
}

namespace {

// The values of names, kept, and where they are.
struct LookedUp {
    std::vector<Value> kept;
    NamedValues values;

    LookedUp(const std::vector<std::string>& names, const Lookup& lookup) {
        for (const std::string& name : names) kept.push_back(lookup ? lookup(name) : Value(Unknown{}));
        for (const Value& value : kept) values.push_back(&value);
    }
};

}  // namespace

Truth Expression::condition(const Lookup& lookup) const {
    if (empty()) return Truth::yes;
    return condition_with(LookedUp(names_, lookup).values);
}

Truth Expression::condition_with(const NamedValues& values) const {
    if (empty()) return Truth::yes;
    if (!condition_) return Truth::unknown;
    return truth_of(*condition_, condition_->compares ? inputs_of(values) : Inputs{values, {}, {}});
}

std::vector<int> Expression::needed_names() const {
    return condition_ ? needed_by(*condition_) : std::vector<int>{};
}

Value Expression::quantity(const Lookup& lookup) const {
    if (empty() || !root_->is_quantity) return Unknown{};
    return quantity_with(LookedUp(names_, lookup).values);
}

Value Expression::quantity_with(const NamedValues& values) const {
    if (empty() || !root_->is_quantity) return Unknown{};
    return quantity_of(*root_, inputs_of(values));
}

Result<Expression> read_condition(std::string_view text, const Scope& scope, const Functions& functions,
                                  const TextPlace& place) {
    const Source source{quantity_detail::plain_text(text), place};
    Result<Parsed> parsed = parse(source, scope, functions);
    if (!parsed) return parsed.error();
    if (auto error = Checker(source, functions).not_a_condition(*parsed.value().root)) return *error;
    return Expression(std::string(text), parsed.value().root, std::move(parsed.value().names));
}

Result<Expression> read_formula(std::string_view text, const Scope& scope, const Functions& functions,
                                const Dimension& expected, const TextPlace& place) {
    const Source source{quantity_detail::plain_text(text), place};
    Result<Parsed> parsed = parse(source, scope, functions);
    if (!parsed) return parsed.error();
    const Node& root = *parsed.value().root;
    if (auto error = Checker(source, functions).not_a_quantity(root)) return *error;
    if (root.dimension != expected) {
        const std::string given = Checker::described(root);
        return source.fault(root.start,
                            "the formula gives " + given + ", not " + with_article(name_of(expected)),
                            "check the formula against the unit of its result");
    }
    return Expression(std::string(text), parsed.value().root, std::move(parsed.value().names));
}

}  // namespace hardover
