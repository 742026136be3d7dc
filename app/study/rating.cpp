#include "app/study/rating.hpp"

#include <cmath>

namespace hardover::study {

double chance_of_right(double ability, double difficulty, double guess) {
    return guess + (1 - guess) / (1 + std::exp(difficulty - ability));
}

void take_answer(Rating& learner, Rating& item, bool right, double guess, const RatingSpeed& speed) {
    const double surprise = (right ? 1.0 : 0.0) - chance_of_right(learner.value, item.value, guess);
    const auto step = [&](const Rating& rating) {
        return speed.start / (1 + speed.slowing * rating.answers);
    };
    learner.value += step(learner) * surprise;
    item.value -= step(item) * surprise;
    ++learner.answers;
    ++item.answers;
}

}  // namespace hardover::study
