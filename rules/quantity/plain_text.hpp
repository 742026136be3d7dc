// One way of writing for letters that people write in several ways (″ and ", – and -, ½ and 1/2), so that the
// readers of quantities and of conditions meet plain ASCII only. Knows letters, no units.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace hardover::quantity_detail {

// The text in plain letters, and for each of its bytes (and its end) the letter of the original it came from,
// counted from 1, so that a message can point at the very letter.
struct PlainText {
    std::string original;
    std::string text;
    std::vector<int> letter;

    bool ends_at(std::size_t at) const { return at >= text.size(); }
    char at(std::size_t place) const { return place < text.size() ? text[place] : '\0'; }
    std::size_t skip_spaces(std::size_t from) const;
    // The whole letter at a place, as text for a message (several bytes where it is not ASCII).
    std::string letter_at(std::size_t place) const;
};

PlainText plain_text(std::string_view original);

bool is_digit(char letter);   // '0'-'9', whatever the locale
bool is_letter(char letter);  // 'a'-'z', 'A'-'Z', whatever the locale
// Blanks and digits apart, the run of letters that starts at a place; may be empty.
std::string_view word_at(const PlainText& text, std::size_t from);

}  // namespace hardover::quantity_detail
