// The commands that do one thing and are killed at it: bringing an old records file up to date, merging
// counts.
#pragma once

#include "kills.hpp"

namespace hardover_tests {

// Writes a records file of layout version 1 with `jobs` jobs of twelve events, "job 1 event 1" and so on.
void make_version_1(const std::string& path, int jobs);

// A file of layout version 1 with `jobs` jobs of twelve events is opened by a program of today.
Command migration(int jobs);

// The counts of three other shops come into the records.
Command merging_of_counts();

}  // namespace hardover_tests
