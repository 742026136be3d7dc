// Reads what a learner typed for an item and says what it is worth, and why. Pure; knows no learner.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/study/fsrs.hpp"
#include "app/study/item.hpp"
#include "rules/result/result.hpp"

namespace hardover::study {

// What a figure got by a known mistake is worth: of the unit, and any other.
inline constexpr double mark_of_unit_slip = 0.5;
inline constexpr double mark_of_slip = 0.25;

struct Marked {
    double mark = 0;      // 0 to 1
    bool right = false;   // worth 0.8 or more
    std::string why_not;  // what was wrong with it: the slip, why the choice is wrong; may be empty
};

// The options an answer names, from 0: "a, C 2" -> 0, 2, 1; "ac" is taken letter by letter. Error: none of
// them.
Result<std::vector<int>> read_choices(const Item& item, const std::string& typed);

// "b"; "a c" or "a, c"; "b a c" for an order; "12.5 in"; "?" for "can't tell". Letters may be numbers (1 is
// a). Error: what cannot be read as an answer to this item, with what would be.
Result<Marked> mark_answer(const Item& item, const std::string& typed);

// "70", "70 %", "0.7", "7 in 10": a chance from 0 to 1, kept within 0.01 and 0.99. Error: none of these.
Result<double> read_sureness(const std::string& typed);

// Wrong, below half: again; below 0.8, or right but less than even sure: hard; else good.
Grade grade_of(double mark, std::optional<double> sure);

}  // namespace hardover::study
