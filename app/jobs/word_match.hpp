// Whether a text has the words somebody looks for. Knows no knowledge.
#pragma once

#include <string>
#include <string_view>

namespace hardover {

// Small letters, for comparing; other letters than a to z stay as they are.
std::string in_small_letters(std::string_view text);

// Whether every word of `wanted` stands somewhere in the text, also inside a word, whatever the case.
bool has_all_words(std::string_view text, std::string_view wanted);

}  // namespace hardover
