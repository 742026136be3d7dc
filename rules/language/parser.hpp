// Recursive descent over the tokens; every node is checked as it is made. Inner header of rules/language.
#pragma once

#include "rules/language/check.hpp"

namespace hardover::language_detail {

struct Parsed {
    NodePtr root;
    std::vector<std::string> names;
};

// The grammar, loosest first:
//   either     = both { "or" both }
//   both       = negated { "and" negated }
//   negated    = "not" negated | comparison
//   comparison = sum [ ( "<" | "<=" | ">" | ">=" | "=" | "!=" ) sum | "is" ["not"] what ]
//   what       = "known" | "unknown" | "one" "of" "(" word { "," word } ")" | word
//   sum        = product { ( "+" | "-" ) product }
//   product    = signed { ( "*" | "/" ) signed }
//   signed     = "-" signed | "+" signed | raised
//   raised     = primary [ "^" signed ]
//   primary    = number | name | function "(" [ either { "," either } ] ")" | "(" either ")"
Result<Parsed> parse(const Source& source, const Scope& scope, const Functions& functions);

}  // namespace hardover::language_detail
