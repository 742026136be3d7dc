// What would change the first cause: readings of findings nobody has answered, and given answers if they are
// wrong. Costs some hundred rankings, so it is worked out only when someone asks.
#pragma once

#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

// An answer as it might be.
struct AsIf {
    Index finding = none;
    int reading = -1;  // -1: as if it had not been answered
    int stage = 0;     // of a given answer: how many remedies had been tried
};

struct Turn {
    std::vector<AsIf> answers;     // together; knowledge order
    double chance = 0;             // that they read so; 0 for given answers, which have been read
    Index first = none;            // the first cause then
    double first_probability = 0;  // its probability then
};

struct Turning {
    Index first = none;  // now; none: nothing on the list is possible, and nothing below
    double probability = 0;

    // The smallest sets that would change the first cause: single findings, or pairs of the most promising
    // when no single one would. The most probable first.
    std::vector<Turn> by_answering;
    // The same for given answers, taken away or read otherwise. The one that leaves most doubt first.
    std::vector<Turn> if_wrong;
};

// Readings rarer than this are left out.
inline constexpr double least_turning_chance = 0.005;

// Findings and answers that are paired when no single one turns the first cause.
inline constexpr std::size_t most_promising = 8;

// Pure and exact for what it looks at; rules that the answers would fire are taken into account.
Turning what_would_turn(const PreparedKnowledge& prepared, const Facts& facts);

}  // namespace hardover
