// The layout of the records file and its versions: every step from one version to the next.
// Knows tables, not what an event means.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/records/database.hpp"
#include "rules/result/result.hpp"

namespace hardover::records_detail {

// SQLite's application_id, which marks a file as ours: "HdOv".
inline constexpr std::int32_t application_id = 0x48644f76;

// The statements that bring a file from version n to n + 1.
using MigrationStep = const char*;

// Step 0 makes version 1 out of an empty file, step 1 would make version 2 out of version 1, and so on.
const std::vector<MigrationStep>& migration_steps();

// The kinds of events that tell of a job as a whole, as SQL: what people wrote, how it was closed. There are
// few of them among many answers, and an index holds them apart, so that a search need not read every answer.
// A condition has to name all of them, word for word, for SQLite to use it.
inline const std::string told_kinds =
    "kind IN ('opened', 'history_set', 'noted', 'attached', 'handed_back', 'reopened', 'undone')";

// Whether all of these kinds are among them.
bool are_told(const std::vector<std::string>& kinds);

// Brings a file up to the last of `steps` in one transaction; either all steps are done or none. Does nothing
// when the file is already there.
Result<void> migrate(const Database& database, const std::vector<MigrationStep>& steps);

// Files with more than this in them, free pages left out, are not read from end to end on opening, which would
// take seconds: damage is found when it is met, by every backup and by Store::check.
inline constexpr std::int64_t most_bytes_read_on_opening = 64 << 20;

inline constexpr std::int64_t first_with_checksums = 6;

enum class Rows { as_written, any };

// Looks for damage: SQLite's quick check, whether the tables can be read, and the rows of the small ones
// against their checksums, unless any will do. Error: what was found first.
Result<void> look_for_damage(const Database& database, Rows rows);

// Makes indices anew that do not hold what their tables hold.
Result<void> mend_indices(const Database& database);

}  // namespace hardover::records_detail
