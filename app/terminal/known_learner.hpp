// Learners for the commands of the terminal, which work on the day of the clock.
#pragma once

#include "app/jobs/job.hpp"
#include "app/study/known_learner.hpp"

namespace hardover {

// Today.
inline int study_day() {
    return study::study_day(utc_now());
}

}  // namespace hardover
