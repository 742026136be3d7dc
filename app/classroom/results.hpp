// What a class did, as plain values: who answered which item and how, and what each practice boat came to.
// It is made from the merged records and read by figures, exports and screens. Knows no files and no keys.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/study/learner.hpp"
#include "app/study/practice_event.hpp"

namespace hardover::classroom {

// A place in the class. Results carry the code alone; the name stays on the instructor's PC and may be empty.
struct Seat {
    std::string code;  // "A07"
    std::string name;
    std::string group;
};

// What every result says of itself. `day` is a calendar day, counted from 1970-01-01.
struct Origin {
    std::string seat;
    std::string set;
    std::string attempt;  // 128 bits in hex
    int sequence = 0;     // 1, 2, 3 ... within the attempt
    int day = 0;
    bool disputed = false;  // two different records claim one place of its attempt: to be looked into
};

// One answered item, marked by the instructor's program.
struct ItemResult {
    Origin origin;
    study::Review review;
    double seconds = 0;  // spent on it; 0: not known
    // Of an item that asks for a cause: the right one and the one chosen, ids. Otherwise empty.
    std::string right_cause;
    std::string chosen_cause;
};

// One finished practice boat.
struct BoatResult {
    Origin origin;
    study::practice::Begun begun;
    study::practice::Ended ended;
    std::vector<std::string> faults;  // cause ids that were there
    std::string named;                // the cause named for good, or ""
};

struct ClassResults {
    std::string name;         // of the class
    std::vector<Seat> seats;  // by code
    std::vector<ItemResult> items;
    std::vector<BoatResult> boats;
    std::set<std::string> topics;  // ids that its quizzes are about; "" among them: all there is
};

// No average of a class is told with fewer learners than this, so that nobody is picked out by it.
inline constexpr int fewest_learners = 5;
// Seats with at least one result.
int learners_with_results(const ClassResults& results);

}  // namespace hardover::classroom
