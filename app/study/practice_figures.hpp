// Three players on the same practice boats: do the marks tell a good way of working from bad ones? Pure; the
// digits are the same for any number of threads.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/study/practice_marks.hpp"

namespace hardover::study::practice {

struct PlayerFigures {
    std::string id;  // "expert", "first_choice", "guesser"
    std::string name;
    int boats = 0;
    int cured = 0;
    // Sums over the boats, in minutes.
    double minutes = 0;
    double expected = 0;
    double avoidable = 0;
    double luck = 0;
    double largest_gap = 0;  // of |minutes over the best - avoidable - luck|, over all boats
    double brier = 0;        // mean over the boats on which something was said
    int said = 0;
    int told_nothing = 0;
    int wrong_remedies = 0;
    // Boats on which the marks (avoidable minutes) put this player behind, or level with, the expert.
    int behind_expert = 0;
    double over_best() const { return expected > 0 ? minutes / expected : 0; }  // 1: as expected
};

struct LevelFigures {
    int level = 1;
    std::vector<PlayerFigures> players;
};

struct PracticeFigures {
    int boats = 0;
    int refused = 0;  // seeds that made no boat
    std::vector<PlayerFigures> players;
    std::vector<LevelFigures> levels;
};

struct FiguresWish {
    int boats = 2000;  // the levels in turn
    std::uint64_t seed = 1;
    int threads = 0;  // 0: as many as the machine has
};
PracticeFigures practice_figures(const PreparedKnowledge& prepared, const FiguresWish& wish);

}  // namespace hardover::study::practice
