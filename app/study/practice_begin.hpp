// Beginning a practice boat and going on with one from the record: what both front ends do before the first
// step. Knows no screen and no clock.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/study/practice_record.hpp"
#include "app/study/practice_session.hpp"

namespace hardover::study::practice {

struct BoatWish {
    std::uint64_t seed = 0;
    std::optional<int> level;          // none: what is next for the learner
    std::optional<Guidance> guidance;  // none: what is next for the learner
    int day = 0;
};

// The boat as it was begun, with these events. Errors: the knowledge is another than the boat was made with
// (it would answer differently); those of make_practice_boat and replay.
Result<Session> session_of(const PreparedKnowledge& prepared, const Begun& begun,
                           const std::vector<PracticeEvent>& events);

// A boat in hand, and its number in the record (0: it is not kept).
struct BoatInHand {
    Session session;
    int number = 0;
};
// A new boat; begun in the record where there is one. `at` is UTC.
Result<BoatInHand> begin_boat(const PreparedKnowledge& prepared, const BoatWish& wish, Record* record,
                              const std::string& at);

// Where a new boat is chosen: the levels, and what is next for this learner.
struct LevelText {
    int level = 1;
    std::string name;
    std::string about;
};
struct StartPage {
    std::vector<LevelText> levels;
    std::string next;        // "Level 2, half-guided."
    std::string why;         // why that
    std::string unfinished;  // "Practice boat 7, level 2"; empty: none
};
StartPage make_start_page(const Record* record);

}  // namespace hardover::study::practice
