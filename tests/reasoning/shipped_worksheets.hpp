// The shipped worksheets, worked out from inputs as a person types them.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules/reasoning/worksheets.hpp"
#include "shipped.hpp"
#include "support.hpp"

namespace hardover_tests {

using namespace hardover;

inline const Worksheet& sheet_of(const std::string& id) {
    const Index index = find(shipped().worksheets, id);
    INFO("worksheet " << id);
    REQUIRE(index != none);
    return shipped().worksheets[static_cast<std::size_t>(index)];
}

// The example of its own help, changed where something else is typed; "" leaves an input open.
inline std::vector<Value> inputs_of(const Worksheet& sheet, const std::map<std::string, std::string>& typed) {
    std::vector<Value> values;
    std::size_t used = 0;
    for (const WorksheetInput& input : sheet.inputs) {
        Value value = Unknown{};
        if (input.example) value = *input.example;
        if (!input.example_choice.empty()) value = Choice{{input.example_choice}};
        const auto given = typed.find(input.id);
        if (given != typed.end()) {
            ++used;
            value = Unknown{};
            if (!given->second.empty()) {
                const Result<Value> read = read_input_value(input, given->second);
                INFO(sheet.id << "." << input.id);
                REQUIRE_OK(read);
                value = read.value();
            }
        }
        values.push_back(value);
    }
    INFO("an input that " << sheet.id << " does not have");
    REQUIRE(used == typed.size());
    return values;
}

inline WorkedSheet work(const std::string& id, const std::map<std::string, std::string>& typed = {}) {
    const Worksheet& sheet = sheet_of(id);
    return work_out(shipped(), find(shipped().worksheets, id), inputs_of(sheet, typed));
}

inline std::size_t place_of_result(const Worksheet& sheet, const std::string& result) {
    for (std::size_t r = 0; r < sheet.results.size(); ++r) {
        if (sheet.results[r].id == result) return r;
    }
    FAIL(sheet.id << " has no result " << result);
    return 0;
}

// In the unit named; NaN where the sheet gives no value.
inline double result_of(const std::string& id, const std::map<std::string, std::string>& typed,
                        const std::string& result, const std::string& unit) {
    const WorkedSheet worked = work(id, typed);
    INFO(id << "." << result << " " << worked.refused);
    const Value& value = worked.results.at(place_of_result(sheet_of(id), result));
    REQUIRE(std::holds_alternative<Quantity>(value));
    return in_unit(std::get<Quantity>(value), find_unit(unit).value());
}

}  // namespace hardover_tests
