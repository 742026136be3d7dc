// Moments as the records and every file of ours write them: in UTC, to the second, as 2026-11-25T15:03:13Z.
// Written so they sort as text. Knows nothing of local days.
#pragma once

#include <ctime>
#include <string>

namespace hardover {

std::string moment_text(std::time_t moment);

// Whether the text has that form; whether the calendar has such a day is not asked.
bool is_moment(const std::string& text);

}  // namespace hardover
