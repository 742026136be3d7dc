// Learners as the records hold them, for the commands of the terminal. Knows no item.
#pragma once

#include <string>

#include "app/records/store.hpp"
#include "app/study/learner.hpp"

namespace hardover {

struct KnownLearner {
    LearnerNumber number = 0;
    std::string name;
    int events = 0;  // in the learner's record, of every kind
    study::LearnerState state;
};

// The learner worked out from all reviews on record. Error: a review that cannot be read.
Result<study::LearnerState> learner_state(const Store& store, LearnerNumber learner);

// Error not_found: no such learner, with the nearest name.
Result<KnownLearner> learner_named(const Store& store, const std::string& name);

// The calendar day here and now, counted from 1970-01-01. A day starts at four in the morning, so that late
// work counts for the day before.
int study_day();

}  // namespace hardover
