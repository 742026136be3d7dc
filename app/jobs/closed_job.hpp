// A job that was handed back, as learning and calibration look at it: what was confirmed, and what was known
// before the cure gave it away. Knows no records file and no clock.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/event.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

struct ClosedJob {
    JobNumber number = 0;
    std::string history;                // id; "" = not known
    std::vector<RecordedCause> causes;  // the main one first
    std::string handed_back_at;         // UTC as in StoredEvent::at
    // The events that counted before the remedy that cured the boat, or before the hand-back when no cure was
    // recorded. Earlier cures, of a job that was reopened since, are left out.
    std::vector<StoredEvent> before_cure;

    // Ids of the causes that were seen and proved.
    std::vector<std::string> confirmed() const;
};

// What was known before a confirmed cause was put right: of several, one may have gone with a remedy that
// helped, before the one that cured. Of a single one, `before_cure`.
std::vector<StoredEvent> before_work_on(const Knowledge& knowledge, const ClosedJob& job,
                                        const std::string& cause);

// Kinds of events that closed_job needs for everything but `before_cure`, and for the answers in it.
const std::vector<std::string>& closing_kinds();
const std::vector<std::string>& closing_and_answer_kinds();

// Nothing when the job is in hand.
std::optional<ClosedJob> closed_job(JobNumber number, const std::vector<StoredEvent>& events);

// All jobs handed back, the first handed back first. Holds in `before_cure` only events of these kinds; none:
// all kinds.
Result<std::vector<ClosedJob>> closed_jobs(const Store& store, const std::vector<std::string>& kinds);

}  // namespace hardover
