// How well the program's probabilities came true on the shop's own closed jobs: each job is replayed to just
// before its cure (of several causes: before the first was put right), assessed, and compared with the causes
// that were confirmed. Knows no screen; only reads.
//
// Of a job with several confirmed causes each is present by itself in the forecasts and in the Brier score;
// places and the log loss of jobs go by the first of them, with the others left out of the ranking. A cause
// that was only assumed beside a confirmed one is neither present nor absent: it is not scored.
#pragma once

#include <cstddef>
#include <vector>

#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/calibration.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// Probabilities of causes below this are not scored one by one: the many that are near nothing would flatter
// every score. From memory, as usual for such tables.
inline constexpr double least_scored = 0.02;
// So many forecasts in a row of the table, if there are so many.
inline constexpr std::size_t fewest_in_row = 20;

struct CalibratedOdds {
    JobScores jobs;
    std::size_t forecasts = 0;  // of a job and a cause, each scored by itself
    BrierSplit brier;
    double log_loss = 0;  // nats
    CalibrationError error;
    std::vector<ReliabilityRow> table;
};

struct JobCalibration {
    CalibratedOdds shipped;  // with the odds as shipped
    // With the odds that learning gives from other shops' counts and the own jobs handed back before the job
    // in question, whether learning is on or not.
    CalibratedOdds learned;
    std::size_t not_confirmed = 0;
    std::size_t before = 0;         // left out by a reset of learning
    std::size_t without_cause = 0;  // no confirmed cause of which this knowledge has
};

Result<JobCalibration> calibrate(const Knowledge& shipped, const Store& store);

}  // namespace hardover
