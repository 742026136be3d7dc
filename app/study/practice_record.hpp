// The practice boats in a learner's record: read, added to as they happen, and what comes next for this
// learner. Knows no screen.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/records/store.hpp"
#include "app/study/practice_session.hpp"

namespace hardover::study::practice {

struct RecordedBoat {
    int number = 0;  // sequence number of its begun event
    std::string at;  // when it was begun, UTC
    Begun begun;
    std::vector<PracticeEvent> events;
    std::optional<Ended> ended;
};

// "2-14": learner 2, boat 14.
std::string practice_id(LearnerNumber learner, int number);
struct PracticeId {
    LearnerNumber learner = 0;
    int number = 0;
};
// Error bad_input: not of this form.
Result<PracticeId> read_practice_id(const std::string& text);

class Record {
  public:
    // Errors: those of the store; an event of a practice boat that cannot be read.
    static Result<Record> open(Store& store, LearnerNumber learner);

    LearnerNumber learner() const { return learner_; }
    const std::vector<RecordedBoat>& boats() const { return boats_; }
    const RecordedBoat* boat(int number) const;
    // The last one that is not finished; nullptr: none.
    const RecordedBoat* unfinished() const;

    // Each is on disk before it returns. Errors: those of the store; nothing is written then. `at` is UTC.
    Result<int> begin(const Begun& begun, const std::string& at);
    Result<void> add(int number, const PracticeEvent& event, const std::string& at);
    Result<void> end(int number, const Ended& ended, const std::string& at);

  private:
    Record(Store& store, LearnerNumber learner) : store_(&store), learner_(learner) {}
    Result<void> append(const char* kind, const std::string& body, const std::string& at);

    Store* store_;
    LearnerNumber learner_;
    int last_ = 0;  // sequence number
    std::vector<RecordedBoat> boats_;
};

// What the next boat should be, and why, in a sentence.
struct Plan {
    int level = 1;
    Guidance guidance = Guidance::half;
    std::string why;
};
// A learner goes up a level after three boats in a row, worked ones not counted, on which choices lost less
// than 15 % of the minutes expected (Wickens et al. 2013: raise difficulty by what was done, not by plan). At
// each level help fades boat by boat (van Gog, Paas, van Merrienboer 2006: worked examples first, then
// problems), and comes back by one after a boat that went badly. Without a record the level decides.
Plan plan_next(const std::vector<RecordedBoat>* boats, std::optional<int> level);

inline constexpr double share_done_well = 0.15;  // of the minutes expected, lost by choices
inline constexpr double share_done_badly = 0.5;
inline constexpr int boats_to_go_up = 3;

}  // namespace hardover::study::practice
