#include "rules/quantity/decimal_comma.hpp"

#include "rules/quantity/plain_text.hpp"

namespace hardover {

namespace {

constexpr std::size_t digits_of_a_thousand = 3;

bool belongs_to_number(char letter) {
    return quantity_detail::is_digit(letter) || letter == ',' || letter == '.' || letter == '/';
}

// Where the comma of a number stands that can only be a decimal one; npos: nowhere.
std::size_t decimal_comma(std::string_view number) {
    const std::size_t comma = number.find(',');
    if (comma == std::string_view::npos || comma == 0) return std::string_view::npos;
    const bool alone = number.find_first_of(",./", comma + 1) == std::string_view::npos &&
                       number.find_first_of("./") == std::string_view::npos;
    const std::size_t behind = number.size() - comma - 1;
    return alone && behind > 0 && behind != digits_of_a_thousand ? comma : std::string_view::npos;
}

}  // namespace

std::string with_decimal_points(std::string_view typed) {
    std::string text(typed);
    for (std::size_t from = 0; from < text.size();) {
        std::size_t end = from;
        while (end < text.size() && belongs_to_number(text[end])) ++end;
        const std::size_t comma = decimal_comma(typed.substr(from, end - from));
        if (comma != std::string_view::npos) text[from + comma] = '.';
        from = end + 1;
    }
    return text;
}

}  // namespace hardover
