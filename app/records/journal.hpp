// Which journal a records file is kept with. Inner part of app/records.
//
// A write-ahead log needs memory that all programs on the file share; two computers share none, and SQLite
// would not notice on a disk of the network ("Write-Ahead Logging", published with SQLite: "does not work
// over a network filesystem"). There, and where the file layer has no shared memory, a rollback journal keeps
// the same promise by the locks of the disk; readers and writers then wait for each other.
#pragma once

#include <chrono>
#include <cstdint>
#include <string>

#include "app/records/database.hpp"
#include "rules/result/result.hpp"

namespace hardover::records_detail {

// Whether a file system of this type (f_type of statfs, Linux) may be written by several computers at once,
// or is of a make that cannot be told.
bool is_of_the_network(std::uint64_t type);

// Whether all programs that can open this file share memory.
bool memory_is_shared(const Database& database);

// Whether the file says of itself that it is kept with a write-ahead log. False for a missing or empty one.
bool has_write_ahead_mark(const Database& database);

// Before anything is read of a file with that mark where no memory is shared: holds the file alone.
Result<void> hold_alone(const Database& database);

enum class Journal { write_ahead, rollback };

// Sets journal and synchronisation so that what was written is on the disk. A file that was once on a network
// keeps its rollback journal: a computer that has its disk at home cannot see who else has it over the
// network. Waits for other programs as long as `wait`.
Result<Journal> settle_journal(const Database& database, bool fresh, std::chrono::milliseconds wait);

}  // namespace hardover::records_detail
