// Whether a cause is proved, and how the certainty of a recorded cause is told: the same everywhere. Knows no
// screen.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/job.hpp"

namespace hardover {

// What the check that proves it has shown, as the knowledge says (`proved_when`). `cause` none: no.
bool is_proved(const Job& job, Index cause);

// The causes that are proved and that no remedy tried puts right, in the order of the ranking: they go out
// with the boat, whatever else was cured.
std::vector<Index> proved_and_left(const Job& job);

// "Proved and not put right: …."; "" where there is none.
std::string left_text(const Knowledge& knowledge, const Job& job);

// "seen and proved", "assumed, not proved".
const char* certainty_text(bool confirmed);

}  // namespace hardover
