// Whether a cause is proved, with which causes and how sure a boat is handed back, and how that is told: the
// same everywhere. Knows no screen.
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

// By cause: proved now, or when something was tried on the boat. A check that finds nothing after the work
// does not take back what it found before.
std::vector<bool> ever_proved(const PreparedKnowledge& prepared, const Job& job);

// The causes that were proved and that a remedy which cured or helped puts right, in the order of the
// ranking: with these the boat is handed back unless somebody says otherwise.
std::vector<Index> proved_and_put_right(const PreparedKnowledge& prepared, const Job& job);

// The same as they are recorded.
std::vector<RecordedCause> suggested_causes(const PreparedKnowledge& prepared, const Job& job);

// The hand-back as it is recorded. `told`: the causes, at least one, the main one first, each with whether
// somebody says that it was seen. A cause is confirmed when it was seen or was ever proved by its check.
HandedBack hand_back_with(const PreparedKnowledge& prepared, const Job& job,
                          const std::vector<RecordedCause>& told, const std::string& note);

// "Proved and not put right: …."; "" where there is none.
std::string left_text(const Knowledge& knowledge, const Job& job);

// "seen and proved", "assumed, not proved".
const char* certainty_text(bool confirmed);

// "air left in the oil, seen and proved; hose chafed, assumed, not proved". A cause that this knowledge does
// not have goes by its id in plain words.
std::string recorded_text(const Knowledge& knowledge, const std::vector<RecordedCause>& causes);

}  // namespace hardover
