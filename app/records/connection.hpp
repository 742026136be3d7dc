// What an open Store holds, for the files that write and read its tables. Inner part of app/records.
#pragma once

#include "app/records/database.hpp"
#include "app/records/store.hpp"

namespace hardover {

struct Store::Connection {
    records_detail::Database database;
};

namespace records_detail {

// The rows of a statement that gives sequence, at, kind and body.
Result<std::vector<StoredEvent>> read_events(const Database& database, Statement& select);

}  // namespace records_detail

}  // namespace hardover
