// Where a value stands in a JSON text, so that a refusal can name its line and column: the JSON library keeps
// no places. Knows no format built on JSON.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace hardover {

// "LINE:COLUMN" of a byte of the text, from 1, the column in letters.
std::string line_and_column(std::string_view text, std::size_t byte);

// "LINE:COLUMN" of what the way leads to: "shops[0].jobs.in_use" from the top of the text; "" is the top
// itself. Where the way does not go on, the place of the value it ends at. The text must be whole JSON.
std::string json_place(std::string_view text, std::string_view way);

struct RepeatedKey {
    std::string key;
    std::size_t byte = 0;  // of its second coming
};
// The first key that an object has twice. The text must be whole JSON.
std::optional<RepeatedKey> repeated_key(std::string_view text);

}  // namespace hardover
