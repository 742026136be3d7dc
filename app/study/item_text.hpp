// An item and what is said after its answer, already in words: both front ends show the same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/study/item.hpp"
#include "app/study/marking.hpp"

namespace hardover::study {

struct ItemText {
    std::string heading;  // "Cause from signs · Oil and reservoir"
    std::vector<std::string> given;
    std::string question;
    std::vector<std::string> options;  // "a) ..."
    std::string how;                   // how to answer; "" where the question says it
};
ItemText item_text(const Knowledge& knowledge, const Item& item);

// "Right is b) Steering cable stiff"; "A right order is b a c."; "Right is 12.5 in."
std::string right_line(const Item& item);

struct FeedbackText {
    std::string verdict;  // "Right." "Partly right, worth 67 in 100." "Not right."
    bool partly = false;
    std::vector<std::string> lines;  // the right answer, why, cautions, reason, source, sureness, next review
};
// `days`: until the next review.
FeedbackText feedback_text(const Item& item, const Marked& marked, std::optional<double> sure, int days);

}  // namespace hardover::study
