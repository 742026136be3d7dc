// The commands that do one thing and are killed at it: bringing an old records file up to date, merging
// counts.
#pragma once

#include "kills.hpp"

namespace hardover_tests {

// A file of layout version 1 with `jobs` jobs of twelve events is opened by a program of today.
Command migration(int jobs);

// The counts of three other shops come into the records.
Command merging_of_counts();

}  // namespace hardover_tests
