// A set of the class being taken at the place Study: its quizzes and boats are worked on as always, but every
// answer goes to the attempt instead of a learner's record, and the tasks come in their order.
#include <chrono>

#include "app/study/practice_marks.hpp"
#include "app/window/study_desk.hpp"
#include "app/window/study_work.hpp"

namespace hardover::window {

using namespace study;

void StudyDesk::take_set(classroom::Taking taking) {
    stop_working();
    quiz_.reset();
    session_.reset();
    page_ = {};
    learner_ = 0;
    taking_ = std::move(taking);
    tell_set();
    read_start();
    apply(TakeTask{});
}

// The task in hand, as far as it has come.
void StudyDesk::apply(const TakeTask&) {
    if (!taking_ || taking_->at_end() || page_.working) return;  // the boat before is still being marked
    const int day = study_day(now_());
    page_.debrief.reset();
    if (taking_->task().kind == classroom::Task::Kind::quiz) {
        page_.showing = StudyShowing::quiz;
        work("Making the questions", StudyShowing::quiz,
             [this, taking = *taking_, prepared = prepared_, portraits = portraits_,
              day](Background::Watch&) -> Background::Outcome {
                 const auto known = made_if_needed(portraits, prepared);
                 return [this, known, quiz = taking.quiz(*known, day)] {
                     page_.working.reset();
                     portraits_ = known;
                     take_quiz_of_set(quiz);
                 };
             });
        return;
    }
    auto session = taking_->boat(prepared_, day);
    if (!session) {
        refused(session.error());
        return;
    }
    take_in_hand({std::move(session.value()), 0});
    end_boat();
}

void StudyDesk::take_quiz_of_set(const Result<QuizInHand>& quiz) {
    if (!quiz) {
        page_.showing = StudyShowing::start;
        refused(quiz.error());
        return;
    }
    quiz_.emplace(quiz.value());
    began_item_ = std::chrono::steady_clock::now();
    page_.quiz = make_quiz_page(prepared_.knowledge(), *quiz_);
    pass_on_at_end();
}

void StudyDesk::apply(const PutSetAway&) {
    stop_working();
    taking_.reset();
    quiz_.reset();
    session_.reset();
    page_ = {};
    read_start();
}

// Seconds since the item came up.
double StudyDesk::seconds_on_item() {
    const auto now = std::chrono::steady_clock::now();
    const std::chrono::duration<double> spent = now - began_item_;
    began_item_ = now;
    return spent.count();
}

bool StudyDesk::keep_in_set(const QuizInHand::Answer& answer) {
    const Result<void> kept = taking_->keep(quiz_->number(), answer, seconds_on_item(), now_());
    return kept || !refused(kept.error());
}

// Nothing is said about an answer of a graded set: the next item comes at once.
void StudyDesk::pass_over_marks() {
    if (!taking_ || taking_->tells_marks()) return;
    quiz_->go_on();
    page_.quiz = make_quiz_page(prepared_.knowledge(), *quiz_);
    pass_on_at_end();
}

// A quiz that is answered through makes way for what comes after it.
void StudyDesk::pass_on_at_end() {
    if (!taking_ || !quiz_ || !quiz_->at_end()) return;
    finish_task(std::nullopt);
}

void StudyDesk::finish_task(const std::optional<practice::Ended>& ended) {
    const Result<void> done = taking_->finish_task(ended, now_());
    if (!done) {
        refused(done.error());
        return;
    }
    tell_set();
    if (session_) return;  // its debrief is looked at first
    quiz_.reset();
    page_.quiz.reset();
    page_.showing = StudyShowing::start;
}

void StudyDesk::tell_set() {
    page_.set =
        SetInHand{taking_->heading(), taking_->at_end(),
                  taking_->at_end() ? "All tasks are done. Hand the set in at the place Class, under My sets."
                                    : classroom::task_text(taking_->task(), page_.topics)};
}

}  // namespace hardover::window
