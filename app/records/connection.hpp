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

// The rows of a statement that gives sequence, at, kind and body.
Result<std::vector<StoredEvent>> read_events(const Database& database, Statement& select);

// Moves the write-ahead log into the file and empties it, so that it does not keep what was deleted. Where
// others read, it is done when they have finished.
Result<void> empty_the_log(const Database& database);

}  // namespace records_detail

}  // namespace hardover
