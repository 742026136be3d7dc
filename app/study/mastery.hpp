// How far a learner has come: by complaint, by part of the system and in all, with sureness. Pure.
#pragma once

#include <string>
#include <vector>

#include "app/study/items.hpp"
#include "app/study/learner.hpp"
#include "app/study/rasch.hpp"

namespace hardover::study {

struct TopicMastery {
    std::string id;
    std::string name;
    int statements = 0;  // that a quiz can ask
    int met = 0;         // answered at least once
    int answers = 0;
    int right = 0;          // worth 0.8 or more
    double remembered = 0;  // mean chance tomorrow, when today's answers are a night old, over the statements
                            // met; 0 when none was
    Estimate ability;       // Rasch, from the first answer to each statement; error 0: no answer yet
};

// With fewer learners than this, difficulties and abilities are called rough (J. M. Linacre 1994).
inline constexpr std::size_t enough_learners = 30;

struct LearnerSummary {
    TopicMastery all;
    std::vector<TopicMastery> by_complaint;
    std::vector<TopicMastery> by_part;
    int due = 0;  // statements, today
    Calibration calibration;
    bool rough = true;
};

// What stems are askable does not hang on the seed but for a few figures: mastery is told with this one.
inline constexpr std::uint64_t mastery_seed = 0;

// `askable`: as of askable_stems(). `everyone` holds all learners, so that difficulties rest on all answers;
// `who` is the one summarised.
LearnerSummary summarise(const Knowledge& all, const std::vector<Stem>& askable,
                         const std::vector<LearnerState>& everyone, std::size_t who, int day);

}  // namespace hardover::study
