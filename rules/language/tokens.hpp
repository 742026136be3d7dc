// Cuts a condition or formula into tokens; a number and its unit are one token. Inner header of
// rules/language.
#pragma once

#include "rules/language/tree.hpp"

namespace hardover::language_detail {

struct Token {
    enum class Kind { number, word, sign, end };
    Kind kind = Kind::end;
    std::string text;       // of a word or sign; of a number, as written
    double number = 0;      // as written, before the unit
    Unit unit;              // of a number; empty name: none
    bool fraction = false;  // 3/4 or 17 3/4
    std::size_t start = 0;
    std::size_t end = 0;
};

// Ends with a token of kind `end`. Errors: a letter that belongs to nothing, a unit that could be a name too.
Result<std::vector<Token>> tokens_of(const Source& source, const Scope& scope);

// and, or, not, is, one, of, known, unknown: not to be used as names.
bool is_keyword(const std::string& word);

}  // namespace hardover::language_detail
