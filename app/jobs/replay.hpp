// From a list of events to what holds now. Inner part of app/jobs; knows no records file and no clock.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "app/jobs/job.hpp"

namespace hardover::jobs_detail {

// By sequence: whether each event counts, that is, was not taken back by an Undone that itself counts.
// Undone events are in the map as well. Events that cannot be read count as not there.
std::map<int, bool> counting(const std::vector<StoredEvent>& events);

// The events to be undone one after the other so that those up to `sequence` count as they did then and no
// later one does. What was taken back since comes back by undoing what took it back.
std::vector<int> changes_to(const std::vector<StoredEvent>& events, int sequence);

// As replay(), without the assessment.
Job replay_facts(const Knowledge& knowledge, JobNumber number, std::vector<StoredEvent> events,
                 const ShopWays& shop = {});

// The row of a job in the list of jobs.
JobSummary summary_of(const Knowledge& knowledge, const Job& job);

// Puts an answer into the facts, `stage` remedies having been tried. One given again after a remedy leaves
// the one before it as evidence of how the boat was then; one given again with no remedy between puts it
// right.
void keep_answer(Facts& facts, Index finding, const Answer& answer, int stage);

// An event that fits this knowledge, with its answer or value in full form, or why it does not fit. `job` is
// how things stand before it. Facts of the job that the event needs are looked up there.
Result<Event> fitted(const Knowledge& knowledge, const Job& job, const Event& event);

// A quantity in `unit` with every digit: "4.75 in ± 0.0625 in". read_quantity gives it back to the last digit
// or two.
std::string exact_text(const Quantity& quantity, const Unit& unit);

// "cured", "better", "not_cured".
std::optional<Outcome> outcome_of(const std::string& word);

// An id of a knowledge that may be gone, for people: "wheel_feel" as "wheel feel".
std::string spoken_id(const std::string& id);

}  // namespace hardover::jobs_detail
