// A figure typed with a decimal comma, as half of Europe writes it. For what a person types: files of
// knowledge are written with a point.
#pragma once

#include <string>
#include <string_view>

namespace hardover {

// "13,26 psi" as "13.26 psi"; text without such a comma as it is. A comma is a decimal one where it stands
// alone in its number, between digits, and not before exactly three of them, which may be thousands. Any
// other comma stays, for the reader of quantities to refuse.
std::string with_decimal_points(std::string_view typed);

}  // namespace hardover
