// The layout of the records file and its versions: every step from one version to the next.
// Knows tables, not what an event means.
#pragma once

#include <cstdint>
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

// Brings a file up to the last of `steps` in one transaction; either all steps are done or none. Does nothing
// when the file is already there.
Result<void> migrate(const Database& database, const std::vector<MigrationStep>& steps);

// Looks for damage: SQLite's quick check, and whether the tables can be read. Error: what was found first.
Result<void> look_for_damage(const Database& database);

}  // namespace hardover::records_detail
