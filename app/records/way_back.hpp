// Whether records are there, were never begun or were lost, and the backup beside them that brings them back.
// Opens nothing.
#pragma once

#include <cstdint>
#include <string>

#include "rules/result/result.hpp"

namespace hardover {

// The number of the newest backup beside a records file, rather one that was made than one put aside; 0:
// none.
std::int64_t newest_backup(const std::string& records_path);

// Whether something was ever written there: a file with content, or its log.
bool records_begun(const std::string& records_path);

// Before records may be begun. Error storage: nothing is there, but backups stand beside it, so that the file
// was lost and new records would hide it.
Result<void> not_lost(const std::string& records_path);

// Before records are read. Error not_found: none were begun; storage, as above: they were lost.
Result<void> records_there(const std::string& records_path);

// An error that tells of damage in the records file at `records_path`, with the number of the backup to bring
// back where one stands beside it. Every other error as it is.
Error with_way_back(const Error& error, const std::string& records_path);

namespace records_detail {

// The end of what a damaged file is met with; with_way_back puts the backup in its place.
inline constexpr const char* go_on_with_a_copy = "go on with a copy of it from before";

}  // namespace records_detail

}  // namespace hardover
