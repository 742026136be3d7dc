// A set being taken at a student's PC: which task is in hand, and every answer written before it is taken in,
// so that it goes on where it was after the lid was closed. The quizzes and boats themselves are those of
// app/study; a front end holds them as it does without a class. Knows no screen and no clock.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/classroom/record.hpp"
#include "app/classroom/set.hpp"
#include "app/records/class_store.hpp"
#include "app/study/practice_session.hpp"
#include "app/study/quiz_in_hand.hpp"

namespace hardover::classroom {

// What a list of the sets on this PC shows.
struct TakenSet {
    std::string attempt;
    std::string set;
    std::string title;
    std::string seat;
    bool graded = false;
    int records = 0;
    int handed_in = 0;  // records in the last hand-in; 0: never handed in
    std::string handed_in_at;
    bool purged = false;
};
Result<std::vector<TakenSet>> taken_sets(const ClassStore& store);

class Taking {
  public:
    // Begins the set of this file for a seat, or goes on where it was left. `start_code` is for graded sets.
    // Errors: those of read_set_file and open_seeds; the seat is not in the set (with the nearest); the
    // knowledge of this PC is not the one the set was made with; it was purged; those of the store.
    static Result<Taking> begin(ClassStore& store, const std::string& file_text, const std::string& file_name,
                                const std::string& seat, const std::string& start_code,
                                const Knowledge& knowledge, const std::string& at);
    // Goes on with an attempt of this PC without its file.
    static Result<Taking> go_on(ClassStore& store, const std::string& attempt, const std::string& start_code,
                                const Knowledge& knowledge);

    const ClassSet& set() const { return set_; }
    const AttemptOf& of() const { return of_; }
    // In graded sets nothing is said about an answer before the instructor has marked it.
    bool tells_marks() const { return !set_.graded; }

    bool at_end() const { return done_ == set_.tasks.size(); }
    std::size_t number() const { return done_ + 1; }        // of the task in hand, from 1
    const Task& task() const { return set_.tasks[done_]; }  // not at the end

    // The task in hand as it stands after what was written. Errors: of choose_items; an answer on record that
    // no longer fits its item. `day` is today.
    Result<study::QuizInHand> quiz(const study::Portraits& portraits, int day) const;
    // Errors: those of session_of.
    Result<study::practice::Session> boat(const PreparedKnowledge& prepared, int day) const;

    // Each is on disk before it returns. Errors: those of the store; nothing is written then. `at` is UTC.
    // `number` is that of the item within its quiz, from 1; `seconds` what was spent on it.
    Result<void> keep(std::size_t number, const study::QuizInHand::Answer& answer, double seconds,
                      const std::string& at);
    Result<void> keep(const study::practice::PracticeEvent& event, const std::string& at);
    // The task in hand is finished; the next one comes. `ended` of a boat, where marks are told.
    Result<void> finish_task(const std::optional<study::practice::Ended>& ended, const std::string& at);

    // "Set S1: Bleeding. Task 2 of 5. Practice boat of level 2, unaided."
    std::string heading() const;

  private:
    Taking(ClassStore& store, ClassSet set, AttemptOf of)
        : store_(&store), set_(std::move(set)), of_(std::move(of)) {}
    static Result<Taking> from_records(ClassStore& store, ClassSet set, AttemptOf of,
                                       const std::vector<std::string>& lines);
    Result<void> append(const RecordContent& content, const std::string& at);
    int task_number() const { return static_cast<int>(done_) + 1; }

    ClassStore* store_;
    ClassSet set_;
    AttemptOf of_;
    std::vector<Record> records_;
    std::size_t done_ = 0;  // tasks
};

}  // namespace hardover::classroom
