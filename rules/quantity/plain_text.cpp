#include "rules/quantity/plain_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace hardover::quantity_detail {
namespace {

// Letter as written, letters as read. A fraction in one letter gets a blank before it: "17½" is 17 1/2.
constexpr std::array<std::pair<std::string_view, std::string_view>, 44> same_letters = {{
    {"\u00b1", "+-"},    // plus-minus
    {"\u2213", "+-"},    // minus-plus
    {"\u00b7", "*"},     // middle dot
    {"\u22c5", "*"},     // dot operator
    {"\u2219", "*"},     // bullet operator
    {"\u2022", "*"},     // bullet
    {"\u00d7", "*"},     // times
    {"\u2215", "/"},     // division slash
    {"\u2044", "/"},     // fraction slash
    {"\u2212", "-"},     // minus
    {"\u2010", "-"},     // hyphen
    {"\u2011", "-"},     // hyphen that does not break
    {"\u2012", "-"},     // figure dash
    {"\u2013", "-"},     // en dash
    {"\u2014", "-"},     // em dash
    {"\u00b0", "deg"},   // degree
    {"\u00ba", "deg"},   // ordinal sign, often typed for the degree
    {"\u2032", "'"},     // prime
    {"\u2019", "'"},     // right quote
    {"\u2018", "'"},     // left quote
    {"\u2033", "\""},    // double prime
    {"\u201d", "\""},    // right double quote
    {"\u201c", "\""},    // left double quote
    {"\u00b2", "^2"},    // superscripts
    {"\u00b3", "^3"},    //
    {"\u00bc", " 1/4"},  // fractions
    {"\u00bd", " 1/2"},  //
    {"\u00be", " 3/4"},  //
    {"\u2153", " 1/3"},  //
    {"\u2154", " 2/3"},  //
    {"\u215b", " 1/8"},  //
    {"\u215c", " 3/8"},  //
    {"\u215d", " 5/8"},  //
    {"\u215e", " 7/8"},  //
    {"\u00a0", " "},     // blanks
    {"\u202f", " "},     //
    {"\u2009", " "},     //
    {"\u2007", " "},     //
    {"\t", " "},         //
    {"\n", " "},         //
    {"\r", " "},         //
    {"\u2264", "<="},    // comparisons
    {"\u2265", ">="},    //
    {"\u2260", "!="},    //
}};

// Bytes of the UTF-8 letter that starts here; 1 for a byte that starts none.
std::size_t letter_length(std::string_view text, std::size_t at) {
    const auto first = static_cast<unsigned char>(text[at]);
    std::size_t length = 1;
    if (first >= 0xf0 && first < 0xf8) {
        length = 4;
    } else if (first >= 0xe0 && first < 0xf0) {
        length = 3;
    } else if (first >= 0xc0 && first < 0xe0) {
        length = 2;
    }
    if (at + length > text.size()) return 1;
    for (std::size_t i = 1; i < length; ++i) {
        if ((static_cast<unsigned char>(text[at + i]) & 0xc0) != 0x80) return 1;
    }
    return length;
}

}  // namespace

bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

bool is_letter(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

PlainText plain_text(std::string_view original) {
    PlainText plain;
    plain.original = original;
    int letter = 1;
    for (std::size_t at = 0; at < original.size(); ++letter) {
        const std::size_t length = letter_length(original, at);
        const std::string_view written = original.substr(at, length);
        const auto known = std::find_if(same_letters.begin(), same_letters.end(),
                                        [&](const auto& pair) { return pair.first == written; });
        const std::string_view read = known == same_letters.end() ? written : known->second;
        plain.text += read;
        plain.letter.insert(plain.letter.end(), read.size(), letter);
        at += length;
    }
    plain.letter.push_back(letter);
    return plain;
}

std::size_t PlainText::skip_spaces(std::size_t from) const {
    while (from < text.size() && text[from] == ' ') ++from;
    return from;
}

std::string PlainText::letter_at(std::size_t place) const {
    if (ends_at(place)) return "";
    // Count letters of the original up to the one this byte came from.
    std::size_t at = 0;
    for (int count = 1; count < letter[place] && at < original.size(); ++count) {
        at += letter_length(original, at);
    }
    return original.substr(at, letter_length(original, at));
}

std::string_view word_at(const PlainText& text, std::size_t from) {
    std::size_t end = from;
    while (end < text.text.size() && is_letter(text.text[end])) ++end;
    return std::string_view(text.text).substr(std::min(from, text.text.size()), end - from);
}

}  // namespace hardover::quantity_detail
