// Small questions about UTF-8 text. Knows no YAML and no knowledge.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace hardover::reading_detail {

// Letters (code points) in a text, as an editor counts columns.
int count_letters(std::string_view utf8);

// Position of the first byte that is not UTF-8 (RFC 3629) or is a control character other than tab and line
// ends; nothing when all is text.
std::optional<std::size_t> first_bad_byte(std::string_view text);

// a-z, 0-9 and underscores, starting with a letter.
bool is_id(std::string_view text);

// The whole text as a finite decimal number with a point; nothing when it is anything else.
std::optional<double> plain_number(std::string_view text);

// A number as short as six decimals allow: 1.2, 0.05, 3.
std::string short_number(double number);

}  // namespace hardover::reading_detail
