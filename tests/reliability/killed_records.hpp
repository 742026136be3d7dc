// The commands that carry whole records about and are killed at it: backup, restore, mending, merging of
// records and of a class's hand-ins.
#pragma once

#include "kills.hpp"

namespace hardover_tests {

Command backing_up();
Command restoring();
Command merging_of_records();

// Two events that are not as they were written, one by a single bit, are put right.
Command mending();

// Two seats' hand-ins come into the instructor's records.
Command merging_of_hand_ins();

}  // namespace hardover_tests
