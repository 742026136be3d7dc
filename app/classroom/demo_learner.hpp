// An invented learner who answers items and works on boats by a plain model, drawn from a seed: for the demo
// class and for tests. Nothing in it was measured on real people.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "app/study/chance.hpp"
#include "app/study/item.hpp"

namespace hardover::classroom {

struct DemoLearner {
    double ability = 0;  // logits; 0 is the middle of the class
    double boast = 0;    // says to be surer than it is, by this much
};
// Abilities are spread as a normal distribution of one logit.
DemoLearner draw_learner(study::Chance& chance);

struct DemoAnswer {
    std::string typed;
    std::optional<double> sure;
    double seconds = 0;
};
// Right with the chance of a Rasch model with guessing; each item has its own difficulty, told by its id, and
// one in twelve does not tell good learners from weak ones. Who is wrong takes one wrong choice more often
// than the others.
DemoAnswer answer_of(const DemoLearner& learner, const study::Item& item, study::Chance& chance);

// How much of the work on a boat is the expert's, from 0 to 1.
double care_of(const DemoLearner& learner);

}  // namespace hardover::classroom
