// What an open Store holds, for the files that write and read its tables. Inner part of app/records.
#pragma once

#include "app/records/database.hpp"
#include "app/records/journal.hpp"
#include "app/records/store.hpp"

namespace hardover {

struct Store::Connection {
    records_detail::Database database;
    records_detail::Journal journal = records_detail::Journal::write_ahead;
    std::int64_t changes_before = 0;  // of the database when the Store was opened
};

namespace records_detail {

Error no_such_job(const std::string& path, JobNumber job);

// In the place of what was there of the same shop. Needs an open transaction.
Result<void> write_counts(const Database& database, const StoredCounts& counts);

// The events of a job or learner in order, from `events` by its `job` or `study_events` by its `learner`.
// Error: one is not as it was written.
Result<std::vector<StoredEvent>> read_events(const Database& database, const std::string& table,
                                             const std::string& owner, std::int64_t number);

// Error: damaged, when the row of this job or learner says that it has another last event than `found`.
// Nothing where the row is damaged itself, or not there.
Result<void> demand_last_event(const Database& database, const std::string& table, std::int64_t number,
                               std::int64_t found);

// The number the next new job gets.
Result<JobNumber> next_job(const Database& database);

// The row of a job with these events. Both need an open transaction.
Result<void> insert_job(const Database& database, JobNumber number, const JobSummary& summary,
                        const std::vector<StoredEvent>& events);
// After `last` was appended.
Result<void> update_job(const Database& database, JobNumber number, const JobSummary& summary,
                        const StoredEvent& last);

// The learner of this name, upper and lower case counting as the same, as it is written here; or none.
Result<std::optional<std::string>> same_learner(const Database& database, const std::string& name);
Result<LearnerNumber> insert_learner(const Database& database, const std::string& name,
                                     const std::string& added_at);
Result<void> update_learner(const Database& database, LearnerNumber number, std::int64_t last_event);

// Moves the write-ahead log into the file and empties it, so that it does not keep what was deleted. Where
// others read, it is done when they have finished.
Result<void> empty_the_log(const Database& database);

}  // namespace records_detail

}  // namespace hardover
