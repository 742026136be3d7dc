// What writing and reading a job file share. Inner part of app/jobs.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "app/records/store.hpp"

namespace hardover::jobs_detail {

inline constexpr const char* job_file_mark = "hardover_jobs";
inline constexpr int job_file_version = 1;

// SHA-256 over all events, each as `identity_of` takes the first: finds what was altered by accident. Whoever
// alters on purpose can write it anew.
std::string checksum_of_events(const std::vector<StoredEvent>& events);

// Adds the files that attached events name.
void collect_photos(const std::vector<StoredEvent>& events, std::set<std::string>& files);

}  // namespace hardover::jobs_detail
