// Moments as the records and every file of ours write them: in UTC, to the second, as 2026-11-25T15:03:13Z.
// Written so they sort as text. People read them in the time of the place.
#pragma once

#include <ctime>
#include <string>

namespace hardover {

std::string moment_text(std::time_t moment);

// Whether the text has that form; whether the calendar has such a day is not asked.
bool is_moment(const std::string& text);

// "2026-11-26 04:03": the same moment on the clock here, for a list that a person reads. A text that is no
// moment stays as it is.
std::string local_moment(const std::string& moment);

}  // namespace hardover
