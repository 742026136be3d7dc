// Results of invented classes for the tests of figures, exports and sheets.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "app/classroom/results.hpp"

namespace hardover_tests {

using hardover::classroom::BoatResult;
using hardover::classroom::ClassResults;
using hardover::classroom::ItemResult;

inline std::string seat_code(std::size_t number) {
    return fmt::format("A{:02}", number + 1);
}

inline ItemResult answered(const std::string& seat, const std::string& item, bool right, int sequence = 1) {
    ItemResult result;
    result.origin = {seat, "S1", "0f" + seat, sequence, 20500, false};
    result.review.item = item;
    result.review.statement = item;
    result.review.form = item.substr(0, item.find('/'));
    result.review.day = 20500;
    result.review.mark = right ? 1 : 0;
    result.review.answer = right ? "a" : "b";
    return result;
}

inline BoatResult worked(const std::string& seat, int day, double avoidable, double luck) {
    BoatResult boat;
    boat.origin = {seat, "S1", "0b" + seat, day, day, false};
    boat.begun.day = day;
    boat.ended.cured = true;
    boat.ended.expected = 60;
    boat.ended.avoidable = avoidable;
    boat.ended.luck = luck;
    boat.ended.minutes = 60 + avoidable + luck;
    return boat;
}

// Everyone's answers to items "remedy/item_01" ...: 1 right, 0 wrong, -1 none.
inline ClassResults class_of(const std::vector<std::vector<int>>& table) {
    ClassResults results;
    results.name = "invented";
    for (std::size_t n = 0; n < table.size(); ++n) {
        results.seats.push_back({seat_code(n), "", ""});
        for (std::size_t i = 0; i < table[n].size(); ++i) {
            if (table[n][i] < 0) continue;
            results.items.push_back(answered(seat_code(n), fmt::format("remedy/item_{:03}", i + 1),
                                             table[n][i] == 1, static_cast<int>(i) + 1));
        }
    }
    return results;
}

}  // namespace hardover_tests
