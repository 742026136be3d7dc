// What is being learned in the window: who learns, the quiz or the practice boat in hand, and the page that
// shows it. Everything is on disk before it shows. Knows no drawing library.
#pragma once

#include <chrono>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/classroom/taking.hpp"
#include "app/study/known_learner.hpp"
#include "app/study/practice_begin.hpp"
#include "app/study/practice_debrief.hpp"
#include "app/study/practice_page.hpp"
#include "app/study/progress_page.hpp"
#include "app/study/quiz_in_hand.hpp"
#include "app/window/background.hpp"
#include "app/window/study_actions.hpp"

namespace hardover::window {

struct LearnerLine {
    LearnerNumber number = 0;
    std::string name;
    bool chosen = false;
};

// Work that is about to be done, with the cautions still to be spoken of.
struct WorkInHand {
    practice::PracticeEvent event;
    practice::WorkCard card;
    std::vector<practice::CautionQuestion> questions;
};

// Long work that is being done, shown in the place of what it will come to.
struct StudyWork {
    std::string what;      // "Making the questions"
    std::string progress;  // "3 of 12"; "" until it is known
    double share = 0;      // that is done
    StudyShowing showing = StudyShowing::quiz;
};

// A set of the class that is being taken.
struct SetInHand {
    std::string heading;  // "Set S1: Bleeding. Task 2 of 5. ..."
    bool at_end = false;
    std::string next;  // what the task is, or what to do at the end
};

// Everything the place shows, already in words.
struct StudyPage {
    StudyShowing showing = StudyShowing::start;
    std::vector<LearnerLine> learners;
    std::string learner;  // "": nobody
    std::optional<SetInHand> set;
    std::string due;  // "3 statements are due today."
    std::vector<study::Topic> topics;
    practice::StartPage start;
    std::optional<study::QuizPage> quiz;
    std::optional<practice::Page> boat;
    std::optional<WorkInHand> work;
    std::vector<std::string> told;  // what came of the last step
    std::vector<std::string> hint;  // help asked for last
    std::string suspected;          // cause said last, by id
    bool right = false;             // the boat is right
    bool done = false;              // and handed over, though perhaps not marked yet
    std::optional<practice::Debrief> debrief;
    std::optional<study::ProgressPage> progress;
    std::string trouble;  // what was refused, and what would be right
    std::string notice;   // something to know that was done by itself
    std::optional<StudyWork> working;
};

class StudyDesk {
  public:
    StudyDesk(const PreparedKnowledge& prepared, Store& store, std::function<std::string()> now);

    // On coming to the place: the learners, what is due and the shop's units anew.
    void show(UnitSystem units);
    void carry_out(const StudyAction& action);
    // Knowledge read anew: a quiz and a boat in hand were made with the old one, so they are put away. What
    // is on record stays.
    void use(const PreparedKnowledge& prepared);

    // A set of the class, taken in the place of a learner's own work until it is put away.
    void take_set(classroom::Taking taking);

    const StudyPage& page() const { return page_; }

    // Long work is done beside the window from now on; without it, at once.
    void work_in(Background& background) { background_ = &background; }
    // How far long work has come, for the page.
    void note_progress();

    // The finished boat for the place where faults are shown; nothing while none is finished.
    struct FinishedBoat {
        Facts told;
        std::vector<std::string> faults;  // causes
    };
    std::optional<FinishedBoat> finished_boat() const;

  private:
    void apply(const ChooseLearner& choose);
    void apply(const AddLearner& add);
    void apply(const ShowStudy& show);
    void apply(const StartQuiz& start);
    void apply(const AnswerItem& answer);
    void apply(const NextItem& next);
    void apply(const BeginBoat& begin);
    void apply(const GoOnWithBoat& go_on);
    void apply(const TakeUpWork& take_up);
    void apply(const MindCautions& mind);
    void apply(const DoWork& work);
    void apply(const DropWork& drop);
    void apply(const Tell& tell);
    void apply(const FitMemory& fit);
    void apply(const UsualMemory& usual);
    void apply(const StopWork& stop);
    void apply(const TakeTask& take);
    void apply(const PutSetAway& put);

    bool refused(const Error& error);  // true, so that callers can return on it
    // Does work whose outcome is shown at `showing`; what was being done is dropped.
    void work(const std::string& what, StudyShowing showing, Background::Work work);
    void stop_working();
    void take_quiz(const Result<std::vector<study::Item>>& items, const study::LearnerState& learner,
                   const study::QuizWish& wish);
    Result<std::optional<practice::Record>> record();
    bool keep(const practice::PracticeEvent& event);
    void do_work();
    void take_in_hand(practice::BoatInHand boat);
    void end_boat();
    void take_debrief(const practice::Debrief& debrief, int boat);
    void put_away_work();
    void read_start();
    void read_progress();
    double seconds_on_item();
    bool keep_in_set(const study::QuizInHand::Answer& answer);
    void take_quiz_of_set(const Result<study::QuizInHand>& quiz);
    void pass_over_marks();
    void pass_on_at_end();
    void finish_task(const std::optional<practice::Ended>& ended);
    void tell_set();

    PreparedKnowledge prepared_;
    Store& store_;
    std::function<std::string()> now_;
    Background* background_ = nullptr;
    UnitSystem units_ = UnitSystem::us;  // the shop's
    LearnerNumber learner_ = 0;
    std::shared_ptr<const study::Portraits> portraits_;  // made when first needed
    std::optional<std::vector<study::Stem>> askable_;    // found out when first needed
    std::optional<study::QuizInHand> quiz_;
    std::optional<practice::Session> session_;
    int boat_number_ = 0;  // in the learner's record
    std::optional<classroom::Taking> taking_;
    std::chrono::steady_clock::time_point began_item_ = {};
    StudyPage page_;
};

}  // namespace hardover::window
