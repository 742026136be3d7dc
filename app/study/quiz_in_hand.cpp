#include "app/study/quiz_in_hand.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

Review review_of(const Knowledge& knowledge, const Item& item, const QuizWish& wish) {
    Review review;
    review.item = item.stem.id;
    review.statement = item.stem.statement;
    review.form = form_id(item.stem.form);
    for (const Index complaint : item.stem.complaints) {
        review.complaints.push_back(at(knowledge.complaints, complaint).id);
    }
    if (item.stem.part != none) review.part = at(knowledge.parts, item.stem.part).id;
    review.seed = wish.seed;
    review.day = wish.day;
    review.guess = guess_chance(item);
    review.knowledge = knowledge.fingerprint;
    return review;
}

std::string letter_of(std::size_t option) {
    return std::string(1, static_cast<char>('a' + option));
}

}  // namespace

const std::vector<SureStep>& sure_steps() {
    static const std::vector<SureStep> steps{
        {0.2, "A guess"}, {0.4, "Doubtful"}, {0.6, "Rather sure"}, {0.8, "Sure"}, {0.95, "Certain"}};
    return steps;
}

QuizInHand::QuizInHand(const Knowledge& knowledge, std::vector<Item> items, LearnerState learner,
                       QuizWish wish)
    : knowledge_(&knowledge),
      items_(std::move(items)),
      learner_(std::move(learner)),
      wish_(std::move(wish)) {}

Result<QuizInHand::Answer> QuizInHand::weigh(const std::string& typed, std::optional<double> sure) const {
    Result<Marked> marked = mark_answer(item(), typed);
    if (!marked) return marked.error();
    Answer answer{typed, std::move(marked.value()), sure, review_of(*knowledge_, item(), wish_)};
    answer.review.answer = typed;
    answer.review.mark = answer.marked.mark;
    answer.review.sure = sure;
    answer.review.grade = grade_of(answer.marked.mark, sure);
    return answer;
}

const FeedbackText& QuizInHand::take(const Answer& answer) {
    learner_.take(answer.review);
    ++answers_;
    marks_ += answer.marked.mark;
    if (answer.sure) sure_.push_back({*answer.sure, answer.marked.right});
    const StatementState& state = learner_.statements.at(item().stem.statement);
    answered_ = answer;
    feedback_ = feedback_text(item(), answer.marked, answer.sure, state.due_day() - wish_.day);
    return *feedback_;
}

void QuizInHand::go_on() {
    if (!at_end()) ++at_;
    answered_.reset();
    feedback_.reset();
}

std::string QuizInHand::opening() const {
    return fmt::format("Quiz of {}, seed {}.", items_.size(), wish_.seed);
}

std::vector<std::string> QuizInHand::closing() const {
    std::vector<std::string> lines{
        fmt::format("Answered {} of {}, marks {:.2f} of {}.", answers_, items_.size(), marks_, answers_)};
    if (!sure_.empty()) {
        const Calibration found = calibrate(sure_);
        lines.push_back(
            fmt::format("Sureness given {}: on average {:.0f} in 100, right {:.0f} in 100, Brier {:.3f}.",
                        found.answers == 1 ? "once" : fmt::format("{} times", found.answers),
                        100 * found.mean_sureness, 100 * found.share_right, found.brier));
    }
    return lines;
}

QuizPage make_quiz_page(const Knowledge& knowledge, const QuizInHand& quiz) {
    QuizPage page;
    if (quiz.at_end()) {
        page.closing = quiz.closing();
        return page;
    }
    const Item& item = quiz.item();
    const ItemText text = item_text(knowledge, item);
    page.progress = fmt::format("{} of {}", quiz.number(), quiz.count());
    page.heading = text.heading;
    page.given = text.given;
    page.question = text.question;
    page.way = way_of(item.stem.form);
    page.drawing = item.drawing;
    page.feedback = quiz.feedback();
    const bool answered = quiz.answered().has_value();
    page.right = answered && quiz.answered()->marked.right;
    for (std::size_t i = 0; i < item.options.size(); ++i) {
        const bool chosen = answered && page.way != Way::order &&
                            quiz.answered()->typed.find(letter_of(i)) != std::string::npos;
        page.options.push_back(
            {item.options[i].text, chosen, answered && item.options[i].right, item.options[i].drawn});
    }
    return page;
}

}  // namespace hardover::study
