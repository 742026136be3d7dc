// Finds a row of one of the rig's tables by its name. Inner header: knows only that a row has a name.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/result/nearest.hpp"
#include "rules/result/result.hpp"

namespace hardover::rig {

// Error: "unknown <kind> '<name>'", with the nearest known name.
template <typename Row>
Result<Row> find_named(const std::vector<Row>& rows, std::string_view name, const std::string& kind) {
    std::vector<std::string> names;
    for (const Row& row : rows) {
        if (row.name == name) return row;
        names.push_back(row.name);
    }
    return Error{Error::Kind::not_found, "unknown " + kind + " '" + std::string(name) + "'", "",
                 did_you_mean(name, names)};
}

}  // namespace hardover::rig
