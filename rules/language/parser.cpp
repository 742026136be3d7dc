// Recursive descent, one function for each line of the grammar in parser.hpp.
#include "rules/language/parser.hpp"

#include <algorithm>
#include <map>

#include "rules/quantity/units.hpp"
#include "rules/result/nearest.hpp"

namespace hardover::language_detail {
namespace {

// Brackets, signs and "not" within each other; far below what the stack holds.
constexpr int most_nested = 100;
// Names listed in a message when none is near the one written.
constexpr std::size_t names_worth_listing = 12;

const std::map<std::string, Operation> comparisons = {
    {"<", Operation::less},      {"<=", Operation::at_most}, {">", Operation::greater},
    {">=", Operation::at_least}, {"=", Operation::equal},    {"==", Operation::equal},
    {"!=", Operation::not_equal}};

class Parser {
  public:
    Parser(const Source& source, const Scope& scope, const Functions& functions, std::vector<Token> tokens)
        : source_(source), scope_(scope), check_(source, functions), tokens_(std::move(tokens)) {}

    Result<Parsed> whole();

  private:
    Result<NodePtr> either();
    Result<NodePtr> both();
    Result<NodePtr> negated();
    Result<NodePtr> comparison();
    Result<NodePtr> is_tail(NodePtr left);
    Result<std::vector<Token>> word_list();
    Result<NodePtr> sum();
    Result<NodePtr> product();
    Result<NodePtr> signed_value();
    Result<NodePtr> raised();
    Result<NodePtr> primary();
    Result<NodePtr> literal(double sign);
    Result<NodePtr> bracketed();
    Result<NodePtr> call(const Token& function);
    Result<NodePtr> name(const Token& token);

    const Token& now() const { return tokens_[at_]; }
    Token take() { return tokens_[at_ + 1 < tokens_.size() ? at_++ : at_]; }
    bool at_sign(std::string_view sign) const {
        return now().kind == Token::Kind::sign && now().text == sign;
    }
    bool at_word(std::string_view word) const {
        return now().kind == Token::Kind::word && now().text == word;
    }
    Error expected(const std::string& what, const std::string& cure) const;
    Error nested_too_deep() const;
    std::optional<Error> ill_number() const;
    Error what_follows() const;

    const Source& source_;
    const Scope& scope_;
    Checker check_;
    std::vector<Token> tokens_;
    std::size_t at_ = 0;
    int nested_ = 0;
    int calls_ = 0;  // of them, calls of functions: there a comma parts two arguments
    std::vector<std::string> names_;
};

// Counts one level of nesting for as long as it lives.
struct Level {
    explicit Level(int& count) : count_(count) { ++count_; }
    ~Level() { --count_; }
    Level(const Level&) = delete;
    Level& operator=(const Level&) = delete;
    int& count_;
};

Error Parser::expected(const std::string& what, const std::string& cure) const {
    const std::string found = now().kind == Token::Kind::end ? "the text ends" : "found '" + now().text + "'";
    return source_.fault(now().start, "expected " + what + ", " + found, cure);
}

Error Parser::nested_too_deep() const {
    return source_.fault(now().start,
                         "more than " + std::to_string(most_nested) + " brackets or signs within each other",
                         "split it and give each part a name of its own");
}

// A number with something behind it that cannot follow one: a misspelt unit, a name, a decimal comma.
std::optional<Error> Parser::ill_number() const {
    const Token& number = tokens_[at_ - 1];
    if (now().kind == Token::Kind::word && !is_keyword(now().text)) {
        if (scope_.kind_of(now().text) == nullptr && number.unit.name.empty()) {
            const Error unknown = quantity_detail::unknown_unit(now().text);
            return source_.fault(now().start, unknown.what, unknown.cure);
        }
        return expected("an operator", "write " + number.text + " * " + now().text);
    }
    if (at_sign(",") && calls_ == 0) return expected("a point, not a comma", "write 4.5, not 4,5");
    return std::nullopt;
}

// What to say where the expression could have ended but something goes on.
Error Parser::what_follows() const {
    if (at_sign(")")) return source_.fault(now().start, "a ')' without its '('", "leave it out");
    return expected("an operator or the end", "join two conditions with 'and' or 'or'");
}

Result<Parsed> Parser::whole() {
    if (now().kind == Token::Kind::end) {
        return source_.fault(0, "nothing is written here", "write a condition or formula, or leave it out");
    }
    const Result<NodePtr> root = either();
    if (!root) return root.error();
    if (now().kind != Token::Kind::end) return what_follows();
    return Parsed{root.value(), names_};
}

Result<NodePtr> Parser::either() {
    const std::size_t start = now().start;
    std::vector<NodePtr> operands;
    do {
        Result<NodePtr> operand = both();
        if (!operand) return operand;
        operands.push_back(operand.value());
    } while (at_word("or") && (take(), true));
    if (operands.size() == 1) return operands.front();
    return check_.logic(Operation::either, std::move(operands), start);
}

Result<NodePtr> Parser::both() {
    const std::size_t start = now().start;
    std::vector<NodePtr> operands;
    do {
        Result<NodePtr> operand = negated();
        if (!operand) return operand;
        operands.push_back(operand.value());
    } while (at_word("and") && (take(), true));
    if (operands.size() == 1) return operands.front();
    return check_.logic(Operation::both, std::move(operands), start);
}

Result<NodePtr> Parser::negated() {
    if (!at_word("not")) return comparison();
    const Level level(nested_);
    if (nested_ > most_nested) return nested_too_deep();
    const std::size_t at = take().start;
    const Result<NodePtr> operand = negated();
    if (!operand) return operand;
    return check_.logic(Operation::negation, {operand.value()}, at);
}

Result<NodePtr> Parser::comparison() {
    const Result<NodePtr> left = sum();
    if (!left) return left;
    if (at_word("is")) return is_tail(left.value());
    const auto sign = now().kind == Token::Kind::sign ? comparisons.find(now().text) : comparisons.end();
    if (sign == comparisons.end()) return left;
    const std::size_t at = now().start;
    if (!left.value()->is_quantity && !left.value()->words.empty()) {
        const std::string written = source_.written(*left.value());
        return source_.fault(at, "'" + written + "' is a word and is not compared with '" + now().text + "'",
                             "write '" + written + " is " + left.value()->words.front() + "'");
    }
    take();
    const Result<NodePtr> right = sum();
    if (!right) return right;
    if (now().kind == Token::Kind::sign && comparisons.contains(now().text)) {
        return source_.fault(now().start, "two comparisons in a row", "write 'a < b and b < c'");
    }
    return check_.comparison(sign->second, left.value(), right.value(), at);
}

Result<NodePtr> Parser::is_tail(NodePtr left) {
    const std::size_t at = take().start;
    if (left->operation != Operation::name) {
        return source_.fault(at, "'is' follows '" + source_.written(*left) + "', which is no name",
                             "write a name before 'is', and compare quantities with < > =");
    }
    const bool negative = at_word("not");
    if (negative) take();
    const auto settled = [&](Result<NodePtr> node, bool turned) -> Result<NodePtr> {
        if (!node || !turned) return node;
        return check_.logic(Operation::negation, {node.value()}, left->start);
    };
    if (at_word("known") || at_word("unknown")) {
        const bool unknown = take().text == "unknown";
        return settled(check_.is_known(left), unknown != negative);
    }
    const Result<std::vector<Token>> words = word_list();
    if (!words) return words.error();
    return settled(check_.is_one_of(left, words.value(), at), negative);
}

// "word", or "one of (word, word)".
Result<std::vector<Token>> Parser::word_list() {
    const bool list = at_word("one") && tokens_[at_ + 1].text == "of";
    if (list) {
        take();
        take();
        if (!at_sign("(")) return expected("'('", "write it like 'x is one of (a, b)'");
        take();
    }
    std::vector<Token> words;
    do {
        if (now().kind != Token::Kind::word || is_keyword(now().text)) {
            return expected("a word", "write it like 'x is y' or 'x is one of (y, z)'");
        }
        words.push_back(take());
    } while (list && at_sign(",") && (take(), true));
    if (list && !at_sign(")")) return expected("',' or ')'", "write it like 'x is one of (a, b)'");
    if (list) take();
    return words;
}

Result<NodePtr> Parser::sum() {
    Result<NodePtr> left = product();
    while (left && (at_sign("+") || at_sign("-"))) {
        const Token sign = take();
        const Result<NodePtr> right = product();
        if (!right) return right;
        left = check_.arithmetic(sign.text == "+" ? Operation::add : Operation::subtract, left.value(),
                                 right.value(), sign.start);
    }
    return left;
}

Result<NodePtr> Parser::product() {
    Result<NodePtr> left = signed_value();
    while (left && (at_sign("*") || at_sign("/"))) {
        const Token sign = take();
        const Result<NodePtr> right = signed_value();
        if (!right) return right;
        left = check_.arithmetic(sign.text == "*" ? Operation::multiply : Operation::divide, left.value(),
                                 right.value(), sign.start);
    }
    return left;
}

Result<NodePtr> Parser::signed_value() {
    if (!at_sign("-") && !at_sign("+")) return raised();
    const Level level(nested_);
    if (nested_ > most_nested) return nested_too_deep();
    const Token sign = take();
    // Minus five on a thermometer is a reading of its own, not the negative of five.
    const bool minus_reading =
        sign.text == "-" && now().kind == Token::Kind::number && now().unit.offset != 0;
    if (minus_reading) return literal(-1);
    const Result<NodePtr> operand = signed_value();
    if (!operand || sign.text == "+") return operand;
    return check_.negate(operand.value(), sign.start);
}

Result<NodePtr> Parser::raised() {
    const Result<NodePtr> base = primary();
    if (!base || !at_sign("^")) return base;
    const Level level(nested_);
    if (nested_ > most_nested) return nested_too_deep();
    const std::size_t at = take().start;
    const Result<NodePtr> exponent = signed_value();
    if (!exponent) return exponent;
    return check_.power(base.value(), exponent.value(), at);
}

Result<NodePtr> Parser::primary() {
    if (now().kind == Token::Kind::number) return literal(1);
    if (at_sign("(")) return bracketed();
    if (now().kind != Token::Kind::word || is_keyword(now().text)) {
        return expected("a name, a number or '('", "write something to compare or calculate with");
    }
    const Token token = take();
    return at_sign("(") ? call(token) : name(token);
}

Result<NodePtr> Parser::literal(double sign) {
    const Token number = take();
    if (auto error = ill_number()) return *error;
    return check_.literal(number, sign);
}

Result<NodePtr> Parser::bracketed() {
    const Level level(nested_);
    if (nested_ > most_nested) return nested_too_deep();
    take();
    const Result<NodePtr> inside = either();
    if (!inside) return inside;
    if (!at_sign(")")) return expected("')'", "close the bracket, or join with an operator");
    take();
    return inside;
}

Result<NodePtr> Parser::call(const Token& function) {
    const Level level(nested_);
    if (nested_ > most_nested) return nested_too_deep();
    if (scope_.kind_of(function.text) != nullptr) {
        return source_.fault(function.start, "'" + function.text + "' is a name, not a function",
                             "put an operator before the '('");
    }
    const Level in_call(calls_);
    take();
    std::vector<NodePtr> arguments;
    while (!at_sign(")")) {
        const Result<NodePtr> argument = either();
        if (!argument) return argument;
        arguments.push_back(argument.value());
        if (at_sign(",")) {
            take();
            if (at_sign(")")) return expected("another argument", "leave the last comma out");
        } else if (!at_sign(")")) {
            return expected("',' or ')'", "write it like min(a, b)");
        }
    }
    take();
    return check_.call(function, std::move(arguments));
}

Result<NodePtr> Parser::name(const Token& token) {
    const NameKind* kind = scope_.kind_of(token.text);
    if (kind == nullptr) {
        const std::vector<std::string> known = scope_.names();
        std::string cure = did_you_mean(token.text, known);
        if (cure.empty() && !known.empty() && known.size() <= names_worth_listing) {
            cure = "known names:";
            for (const std::string& other : known) {
                cure.append(&other == &known.front() ? " " : ", ").append(other);
            }
        }
        return source_.fault(token.start, "unknown name '" + token.text + "'", cure);
    }
    auto place = std::find(names_.begin(), names_.end(), token.text);
    if (place == names_.end()) place = names_.insert(names_.end(), token.text);
    return check_.name(token, static_cast<int>(place - names_.begin()), *kind);
}

}  // namespace

Result<Parsed> parse(const Source& source, const Scope& scope, const Functions& functions) {
    Result<std::vector<Token>> tokens = tokens_of(source, scope);
    if (!tokens) return tokens.error();
    return Parser(source, scope, functions, std::move(tokens).value()).whole();
}

}  // namespace hardover::language_detail
