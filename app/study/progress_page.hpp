// How a learner is doing, in plain words: what has been met and is remembered, by complaint and by part of
// the system; sureness against truth; what comes back when; the practice boats so far. Both front ends show
// the same. Pure.
#pragma once

#include <string>
#include <vector>

#include "app/study/mastery.hpp"
#include "app/study/practice_record.hpp"

namespace hardover::study {

struct MasteryLine {
    std::string id;
    std::string name;
    std::string words;      // "12 of 40 met, 9 of 14 answers right, about 84 in 100 known tomorrow"
    double met = 0;         // share of the statements
    double remembered = 0;  // share of the statements that will still be known tomorrow
};

// Answers given with about the same sureness.
struct SureBand {
    std::string name;   // "Sure: 80 in 100"
    std::string words;  // "5 answers, 60 in 100 right"
    double said = 0;
    double right = 0;
};

struct DueLine {
    std::string when;  // "Today", "In 2 to 7 days"
    int statements = 0;
};

struct ProgressPage {
    std::string headline;  // "14 answers, 9 of them right; 12 of 800 statements met, 3 due today."
    std::vector<std::string> sureness;  // sentences
    std::vector<SureBand> bands;        // those with answers, the least sure first
    std::vector<DueLine> due;           // the soonest first; only with statements
    std::vector<MasteryLine> by_complaint;
    std::vector<MasteryLine> by_part;
    std::vector<std::string> boats;   // the last begun first
    std::vector<std::string> memory;  // by what review times go
    bool fitted = false;              // to the learner's own reviews
};
ProgressPage make_progress_page(const LearnerSummary& summary, const LearnerState& learner,
                                const std::vector<practice::RecordedBoat>& boats, int day);

// The first sentence, and what sureness came to.
std::string progress_headline(const LearnerSummary& summary);
std::vector<std::string> sureness_sentences(const Calibration& calibration);
std::vector<std::string> memory_sentences(const LearnerState& learner);
// "3 statements are due today."
std::string due_sentence(int due);

}  // namespace hardover::study
