// A running estimate of how able a learner and how hard an item is, to choose the next item by.
// Moves with every answer and is too rough to be printed as a mark: reports use rasch.hpp.
#pragma once

namespace hardover::study {

struct Rating {
    double value = 0;  // logits
    int answers = 0;
};

// How far one answer moves a rating: start / (1 + slowing * answers so far), after R. Pelanek, "Applications
// of the Elo rating system in adaptive educational systems", Computers & Education 98 (2016). The defaults
// did best in our own simulation of 20 learners and 60 items.
struct RatingSpeed {
    double start = 1;
    double slowing = 0.1;
};

// Chance of a right answer; `guess` is the chance of hitting it blindly (1 / choices for single choice).
double chance_of_right(double ability, double difficulty, double guess);

void take_answer(Rating& learner, Rating& item, bool right, double guess, const RatingSpeed& speed = {});

}  // namespace hardover::study
