// Learners as the records hold them: who they are, and what all their reviews come to. Knows no item and no
// clock.
#pragma once

#include <string>

#include "app/records/store.hpp"
#include "app/study/learner.hpp"

namespace hardover::study {

struct KnownLearner {
    LearnerNumber number = 0;
    std::string name;
    int events = 0;  // in the learner's record, of every kind
    LearnerState state;
};

// The learner worked out from all reviews on record. Error: a review that cannot be read.
Result<LearnerState> learner_state(const Store& store, LearnerNumber learner);

// Keeps a fit that is adopted; others change nothing.
Result<void> keep_fit(Store& store, LearnerNumber learner, const MemoryFit& fit, const std::string& at);
// Fits review times to the learner's own reviews and keeps the fit. Errors: those of the store.
Result<MemoryFit> fit_learner(Store& store, LearnerNumber learner, const std::string& at);
// Back to the usual review times.
Result<void> use_usual_memory(Store& store, LearnerNumber learner, const std::string& at);

// Error not_found: no such learner, with the nearest name.
Result<KnownLearner> learner_named(const Store& store, const std::string& name);
Result<KnownLearner> learner_numbered(const Store& store, LearnerNumber number);

// Adds a learner under the name typed, without blanks around it. Errors: no name, or those of the store.
Result<KnownLearner> add_learner(Store& store, const std::string& typed, const std::string& at);

// The calendar day here of a moment in UTC, as the records write it, counted from 1970-01-01; 0 for anything
// else. A day starts at four in the morning, so that late work counts for the day before.
int study_day(const std::string& utc);

}  // namespace hardover::study
