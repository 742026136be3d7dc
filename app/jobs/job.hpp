// A job in hand: its events replayed to facts, assessed. The use cases that both front ends call.
// The clock is passed in; the records are the only side effect.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/jobs/event.hpp"
#include "app/jobs/shop.hpp"
#include "app/records/store.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

struct Job {
    JobNumber number = 0;
    std::vector<StoredEvent> events;
    ShopWays shop;
    std::vector<JobNumber> twins;  // jobs that started as this one and went on differently elsewhere
    // Replayed from the events:
    std::string boat;
    std::string words;
    std::string knowledge;  // fingerprint it was started with
    Facts facts;
    std::vector<std::string> notes;
    std::vector<Attached> photos;
    std::optional<HandedBack> handed_back;
    std::vector<std::string> left_out;  // events this knowledge no longer understands, one sentence each
    Assessment assessment;
};

// Replays events to a job and assesses it. Never fails: what cannot be understood is listed in `left_out`.
Job replay(const PreparedKnowledge& prepared, JobNumber number, std::vector<StoredEvent> events,
           const ShopWays& shop = {});

// Starts a job, with the rig fields the shop has settled for new jobs. `now` is UTC as in StoredEvent::at.
Result<Job> start_job(Store& store, const PreparedKnowledge& prepared, const Opened& opened,
                      const std::string& now);

// Loads a job by number.
Result<Job> load_job(const Store& store, const PreparedKnowledge& prepared, JobNumber number);

// Records one event (checked against the knowledge first: an answer must fit its finding, ids must exist),
// then brings `job` up to date. On an error nothing is written and `job` is as before. An answer is stored in
// its full form: reading id, or quantity with unit and spread.
Result<void> record(Store& store, const PreparedKnowledge& prepared, Job& job, const Event& event,
                    const std::string& now);

// Takes the last event that still counts back (not Opened). Error bad_input when there is nothing to take
// back.
Result<void> undo(Store& store, const PreparedKnowledge& prepared, Job& job, const std::string& now);

// Makes everything count again as it did just after the event of this number, back or forward; 0 < sequence.
// Appends what takes back or brings back, and overwrites nothing. Error bad_input: there is no such event.
// An error of the records on the way leaves the job at a state in between, with nothing lost.
Result<void> return_to(Store& store, const PreparedKnowledge& prepared, Job& job, int sequence,
                       const std::string& now);

// The present time in UTC as the records write it. The only clock of the program.
std::string utc_now();

}  // namespace hardover
