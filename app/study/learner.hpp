// What a learner's reviews come to: memory of each statement, ratings, sureness. Worked out anew from the
// appended reviews every time, so that a better rule gives a better schedule. Pure: days come from outside.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/study/fsrs.hpp"
#include "app/study/item.hpp"
#include "app/study/memory_fit.hpp"
#include "app/study/rating.hpp"
#include "app/study/scoring.hpp"
#include "rules/result/result.hpp"

namespace hardover::study {

// One answered item. Topics are kept by id, so that they are known whatever becomes of the knowledge.
struct Review {
    std::string item;
    std::string statement;
    std::string form;
    std::vector<std::string> complaints;
    std::string part;  // "": fitting out
    std::uint64_t seed = 0;
    int day = 0;  // calendar day of the review, counted from 1970-01-01
    std::string answer;
    double mark = 0;
    Grade grade = Grade::again;
    std::optional<double> sure;
    double guess = 0;
    std::string knowledge;  // fingerprint
};

inline constexpr const char* review_kind = "reviewed";
std::string review_body(const Review& review);
// Error bad_input: not a review.
Result<Review> read_review(const std::string& body);

// A statement is due when the chance of remembering has fallen to this; never later than `most_days`.
inline constexpr double target_chance = 0.9;
inline constexpr int most_days = 120;

struct StatementState {
    Memory memory;
    int last_day = 0;
    int reviews = 0;
    std::string last_item;
    int due_day() const;
    double chance(int day) const;  // of remembering
};

struct LearnerState {
    std::optional<MemoryFit> fitted;  // review times by the learner's own history; set before the reviews
    std::map<std::string, StatementState> statements;
    Rating ability;                         // for choosing only
    std::map<std::string, Rating> of_form;  // difficulty by form
    std::vector<SureAnswer> sure;
    std::vector<Review> reviews;

    void take(const Review& review);
    std::vector<std::string> due(int day) const;  // statements, the least remembered first
};

// "today", "tomorrow", "in 5 days", "in about 3 weeks", "in about 4 months".
std::string days_in_words(int days);

}  // namespace hardover::study
