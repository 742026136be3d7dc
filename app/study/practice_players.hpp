// Players who work on practice boats by themselves: the program's own way, two bad ways, to see that the
// marks tell them apart, and learners in between. Pure.
#pragma once

#include <cstdint>
#include <memory>

#include "app/study/practice_session.hpp"

namespace hardover::study::practice {

// Does the program's next step, one finding at a time, until the boat is right or it would call for help.
Session expert_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat);

// A learner: with the chance `care` (0 to 1) each step is the expert's and its cautions are minded; otherwise
// it is a question at random, or the remedy of whatever leads the ranking.
Session learner_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat,
                   double care, std::uint64_t seed);

// Looks at nothing: fits the remedy of whatever leads the ranking, then of what leads it after that; calls
// for help after five.
Session first_choice_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat);

// Asks and fits whatever comes to hand, in no order and each once: three questions to a remedy, and
// help after five remedies. Heeds no caution, and is always half sure.
Session guesser_on(const PreparedKnowledge& prepared, const std::shared_ptr<const PracticeBoat>& boat,
                   std::uint64_t seed);

}  // namespace hardover::study::practice
