// What a person can ask for at the place Study.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/records/store.hpp"
#include "app/study/practice_event.hpp"

namespace hardover::window {

namespace practice = study::practice;

enum class StudyShowing { start, quiz, practice, progress };

struct ChooseLearner {
    LearnerNumber learner = 0;  // 0: nobody, and nothing is kept
};
struct AddLearner {
    std::string name;
};
struct ShowStudy {
    StudyShowing showing = StudyShowing::start;
};
struct StartQuiz {
    std::string topic;  // id; "": everything
};
struct AnswerItem {
    std::string typed;  // as for study::mark_answer
    std::optional<double> sure;
};
struct NextItem {};
struct FitMemory {};    // review times by the learner's own answers
struct UsualMemory {};  // and back
struct StopWork {};     // long work that is being done
struct BeginBoat {
    std::optional<int> level;  // none: what is next
    std::string seed;          // as typed; "": any
};
struct GoOnWithBoat {};
// Work that is about to be done: its cautions are asked for first.
struct TakeUpWork {
    practice::PracticeEvent event;
};
struct MindCautions {
    std::vector<std::string> named;
    bool skipped = false;
};
struct DoWork {};
struct DropWork {};
// What takes no time: a suspicion, help, handing over.
struct Tell {
    practice::PracticeEvent event;
};
// The task of a set of the class that comes next, and leaving the set: what was answered is kept.
struct TakeTask {};
struct PutSetAway {};
using StudyAction = std::variant<ChooseLearner, AddLearner, ShowStudy, StartQuiz, AnswerItem, NextItem,
                                 BeginBoat, GoOnWithBoat, TakeUpWork, MindCautions, DoWork, DropWork, Tell,
                                 FitMemory, UsualMemory, StopWork, TakeTask, PutSetAway>;

}  // namespace hardover::window
