#include "app/study/learner.hpp"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "app/jobs/json_fields.hpp"

namespace hardover::study {

namespace {

// The curve of forgetting: a fit leaves it as it is.
const MemoryModel usual;

}  // namespace

std::string review_body(const Review& review) {
    nlohmann::json body = {{"item", review.item},   {"statement", review.statement},
                           {"form", review.form},   {"complaints", review.complaints},
                           {"part", review.part},   {"seed", review.seed},
                           {"day", review.day},     {"answer", review.answer},
                           {"mark", review.mark},   {"grade", static_cast<int>(review.grade)},
                           {"guess", review.guess}, {"knowledge", review.knowledge}};
    if (review.sure) body["sure"] = *review.sure;
    return body.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

Result<Review> read_review(const std::string& body) {
    JsonFields fields(body);
    Review review;
    review.item = fields.text("item");
    review.statement = fields.text("statement");
    review.form = fields.text("form");
    review.complaints = fields.texts("complaints");
    review.part = fields.text("part");
    review.seed = fields.seed("seed");
    review.day = fields.day("day");
    review.answer = fields.text("answer");
    review.mark = fields.chance("mark");
    review.guess = fields.chance("guess");
    review.knowledge = fields.text("knowledge");
    review.grade = static_cast<Grade>(fields.whole("grade", 1, 4));
    if (fields.has("sure")) review.sure = fields.chance("sure");
    if (fields.fault().empty()) return review;
    return Error{Error::Kind::bad_input, "this is not a review: it " + fields.fault(), "", ""};
}

int StatementState::due_day() const {
    return last_day + whole_days_until(usual, memory.stability, target_chance, most_days);
}

double StatementState::chance(int day) const {
    return chance_of_remembering(usual, memory.stability, std::max(0, day - last_day));
}

void LearnerState::take(const Review& review) {
    auto [entry, is_new] = statements.try_emplace(review.statement);
    StatementState& state = entry->second;
    const int elapsed = std::max(0, review.day - state.last_day);
    const MemoryModel model = fitted ? with_first_days(fitted->days) : usual;
    state.memory =
        is_new ? first_review(model, review.grade) : next_review(model, state.memory, elapsed, review.grade);
    state.last_day = review.day;
    state.last_item = review.item;
    ++state.reviews;
    const bool right = review.grade != Grade::again;
    take_answer(ability, of_form[review.form], right, review.guess);
    if (review.sure) sure.push_back({*review.sure, review.mark >= 0.8});
    reviews.push_back(review);
}

std::vector<std::string> LearnerState::due(int day) const {
    std::vector<std::string> due;
    for (const auto& [statement, state] : statements) {
        if (state.due_day() <= day) due.push_back(statement);
    }
    std::stable_sort(due.begin(), due.end(), [&](const std::string& a, const std::string& b) {
        return statements.at(a).chance(day) < statements.at(b).chance(day);
    });
    return due;
}

std::string days_in_words(int days) {
    if (days <= 0) return "today";
    if (days == 1) return "tomorrow";
    if (days < 14) return "in " + std::to_string(days) + " days";
    if (days < 60) return "in about " + std::to_string(std::lround(days / 7.0)) + " weeks";
    return "in about " + std::to_string(std::lround(days / 30.4)) + " months";
}

}  // namespace hardover::study
