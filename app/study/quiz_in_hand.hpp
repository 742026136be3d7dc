// A quiz being answered: which item is in hand, what was answered, what it came to, and all of it in words.
// Pure: whoever holds it writes the review of an answer before the answer is taken in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/study/item_text.hpp"
#include "app/study/learner.hpp"
#include "app/study/marking.hpp"
#include "app/study/quiz.hpp"

namespace hardover::study {

// How sure one may say to be, in five steps; any other figure from 1 to 99 in 100 will do as well.
struct SureStep {
    double sure = 0.5;
    std::string name;  // "a guess"
};
const std::vector<SureStep>& sure_steps();

class QuizInHand {
  public:
    // The knowledge must outlive it and stay as it is.
    QuizInHand(const Knowledge& knowledge, std::vector<Item> items, LearnerState learner, QuizWish wish);

    std::size_t number() const { return at_ + 1; }
    std::size_t count() const { return items_.size(); }
    bool at_end() const { return at_ == items_.size(); }
    const Item& item() const { return items_[at_]; }  // not at the end

    // What an answer to the item in hand comes to; nothing has changed yet. Errors: those of mark_answer.
    struct Answer {
        std::string typed;
        Marked marked;
        std::optional<double> sure;
        Review review;
    };
    Result<Answer> weigh(const std::string& typed, std::optional<double> sure) const;

    // Takes the answer in. The item stays in hand until go_on().
    const FeedbackText& take(const Answer& answer);
    // Of the item in hand, once it is answered.
    const std::optional<Answer>& answered() const { return answered_; }
    const std::optional<FeedbackText>& feedback() const { return feedback_; }
    void go_on();

    int answers() const { return answers_; }
    // "Quiz of 10, seed 3."
    std::string opening() const;
    // "Answered 4 of 10, marks 3.25 of 4.", and what sureness came to.
    std::vector<std::string> closing() const;

  private:
    const Knowledge* knowledge_;
    std::vector<Item> items_;
    LearnerState learner_;
    QuizWish wish_;
    std::size_t at_ = 0;
    std::optional<Answer> answered_;
    std::optional<FeedbackText> feedback_;
    int answers_ = 0;
    double marks_ = 0;
    std::vector<SureAnswer> sure_;
};

// The item in hand as a screen shows it.
struct QuizOption {
    std::string text;
    bool chosen = false;  // once answered
    bool right = false;   // once answered; a single or several choice
    std::string drawn{};  // part of the drawing it stands for, or ""
};
struct QuizPage {
    std::string progress;  // "3 of 10"
    std::string heading;   // "Cause from signs · Oil and reservoir"
    std::vector<std::string> given;
    std::string question;
    Way way = Way::single;
    std::vector<QuizOption> options;
    std::optional<drawing::Drawing> drawing;  // the options are places on it
    std::optional<FeedbackText> feedback;
    bool right = false;                // once answered
    std::vector<std::string> closing;  // at the end: there is no item
};
QuizPage make_quiz_page(const Knowledge& knowledge, const QuizInHand& quiz);

}  // namespace hardover::study
