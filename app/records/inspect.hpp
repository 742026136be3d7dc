// Looks at a file before it is opened for writing, so that a file that is not ours keeps every byte.
// Reads only; makes no file, takes no lock.
#pragma once

#include <string>

#include "app/records/layout.hpp"
#include "rules/result/result.hpp"

namespace hardover::records_detail {

enum class FileState {
    fresh,     // missing, or empty: records may be started in it
    sound,     // ours, of a version we know, without damage
    unsettled  // ours, but in use by another program or left so by a crash: look again once it is open
};

// Error: a folder, not a records file, another program's database, damaged, made by a newer version,
// unreadable. `rows` any: rows that are not as they were written are no reason to refuse it.
Result<FileState> inspect(const std::string& path, Rows rows);

// The error for a file whose layout is of a version this program does not know.
Error newer_error(const std::string& path, long long version);

}  // namespace hardover::records_detail
