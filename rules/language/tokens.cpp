// Cuts text into numbers with units, words and signs. Knows no grammar.
#include "rules/language/tokens.hpp"

#include <algorithm>
#include <array>
#include <charconv>

#include "rules/quantity/units.hpp"

namespace hardover::language_detail {
namespace {

using quantity_detail::is_digit;
using quantity_detail::is_letter;
using quantity_detail::PlainText;

constexpr std::array<std::string_view, 8> keywords = {"and", "or", "not",   "is",
                                                      "one", "of", "known", "unknown"};
constexpr std::array<std::string_view, 15> signs = {"<=", ">=", "!=", "==", "<", ">", "=", "+",
                                                    "-",  "*",  "/",  "^",  "(", ")", ","};

std::size_t digits_end(const PlainText& text, std::size_t from) {
    while (is_digit(text.at(from))) ++from;
    return from;
}

// The end of "3/4" that starts here, or `from` where there is none.
std::size_t fraction_end(const PlainText& text, std::size_t from) {
    const std::size_t stroke = digits_end(text, from);
    if (stroke == from || text.at(stroke) != '/') return from;
    const std::size_t end = digits_end(text, stroke + 1);
    const char next = text.at(end);
    return end == stroke + 1 || next == '.' ? from : end;
}

double digits_value(const PlainText& text, std::size_t from, std::size_t end) {
    double value = 0;
    std::from_chars(text.text.data() + from, text.text.data() + end, value);
    return value;
}

double fraction_value(const PlainText& text, std::size_t from, std::size_t end) {
    const std::size_t stroke = digits_end(text, from);
    return digits_value(text, from, stroke) / digits_value(text, stroke + 1, end);
}

// Puts the unit that follows a number into its token. A unit after * or / that is also a name is refused:
// "2 in*d" could mean both.
Result<bool> take_unit(const Source& source, const Scope& scope, Token& token) {
    const PlainText& text = source.text;
    const std::size_t from = text.skip_spaces(token.end);
    const auto scanned = quantity_detail::scan_unit(text, from, quantity_detail::Joining::tight);
    if (!scanned) return false;
    for (std::size_t i = 1; i < scanned->starts.size(); ++i) {
        const std::string word(quantity_detail::word_at(text, scanned->starts[i]));
        if (scope.kind_of(word) == nullptr) continue;
        return source.fault(scanned->starts[i], "'" + word + "' can be the unit or the name here",
                            "put blanks round the sign before it to mean the name");
    }
    token.unit = scanned->unit;
    token.end = scanned->end;
    return true;
}

// "4.5", "17 3/4", and "3/4" where a unit follows; elsewhere 3/4 is a division.
Result<Token> number_at(const Source& source, const Scope& scope, std::size_t from) {
    const PlainText& text = source.text;
    Token token;
    token.kind = Token::Kind::number;
    token.start = from;
    const std::size_t fraction = fraction_end(text, from);
    if (fraction != from) {
        token.end = fraction;
        token.number = fraction_value(text, from, fraction);
        token.fraction = true;
        const Result<bool> unit = take_unit(source, scope, token);
        if (!unit) return unit.error();
        if (unit.value()) return token;
        token.fraction = false;
    }
    const char* begin = text.text.data() + from;
    const auto [after, problem] = std::from_chars(begin, text.text.data() + text.text.size(), token.number);
    if (problem != std::errc()) {
        return source.fault(from, "a number beyond all measure", "write a number of ordinary size");
    }
    token.end = from + static_cast<std::size_t>(after - begin);
    const std::size_t next = text.skip_spaces(token.end);
    const std::size_t mixed = fraction_end(text, next);
    if (next != token.end && mixed != next && digits_end(text, from) == token.end) {
        token.number += fraction_value(text, next, mixed);
        token.fraction = true;
        token.end = mixed;
    }
    const Result<bool> unit = take_unit(source, scope, token);
    if (!unit) return unit.error();
    return token;
}

// A name with dots inside: "rig.ram_bore".
Token word_token(const PlainText& text, std::size_t from) {
    std::size_t end = from;
    const auto goes_on = [&](std::size_t at) {
        return is_letter(text.at(at)) || is_digit(text.at(at)) || text.at(at) == '_';
    };
    while (goes_on(end) || (text.at(end) == '.' && goes_on(end + 1))) ++end;
    Token token;
    token.kind = Token::Kind::word;
    token.text = text.text.substr(from, end - from);
    token.start = from;
    token.end = end;
    return token;
}

}  // namespace

bool is_keyword(const std::string& word) {
    return std::find(keywords.begin(), keywords.end(), word) != keywords.end();
}

Result<std::vector<Token>> tokens_of(const Source& source, const Scope& scope) {
    const PlainText& text = source.text;
    std::vector<Token> tokens;
    std::size_t at = text.skip_spaces(0);
    while (!text.ends_at(at)) {
        const char letter = text.at(at);
        if (is_digit(letter) || (letter == '.' && is_digit(text.at(at + 1)))) {
            Result<Token> token = number_at(source, scope, at);
            if (!token) return token.error();
            token.value().text = text.text.substr(at, token.value().end - at);
            tokens.push_back(std::move(token).value());
        } else if (is_letter(letter) || letter == '_') {
            tokens.push_back(word_token(text, at));
        } else {
            const auto sign = std::find_if(signs.begin(), signs.end(), [&](std::string_view known) {
                return std::string_view(text.text).substr(at).starts_with(known);
            });
            if (sign == signs.end()) {
                return source.fault(at, "'" + text.letter_at(at) + "' means nothing here",
                                    "conditions are made of names, numbers with units, words such as 'and' "
                                    "and 'is', and the signs < <= > >= = != + - * / ^ ( )");
            }
            Token token;
            token.kind = Token::Kind::sign;
            token.text = *sign;
            token.start = at;
            token.end = at + sign->size();
            tokens.push_back(token);
        }
        at = text.skip_spaces(tokens.back().end);
    }
    Token end;
    end.start = end.end = text.text.size();
    tokens.push_back(end);
    return tokens;
}

}  // namespace hardover::language_detail
