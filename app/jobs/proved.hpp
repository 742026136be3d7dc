// Whether a cause is proved, and how the certainty of a recorded cause is told: the same everywhere. Knows no
// screen.
#pragma once

#include "app/jobs/job.hpp"

namespace hardover {

// What the check that proves it has shown, as the knowledge says (`proved_when`). `cause` none: no.
bool is_proved(const Job& job, Index cause);

// "seen and proved", "assumed, not proved".
const char* certainty_text(bool confirmed);

}  // namespace hardover
