// Sets whose results have lain on the instructor's PC for so long that they should go: personal data is kept
// no longer than it serves. Knows no clock.
#pragma once

#include <string>
#include <vector>

#include "app/records/class_store.hpp"

namespace hardover::classroom {

inline constexpr int months_kept = 24;  // unless the instructor says otherwise

struct OldSet {
    StoredSet set;
    int hand_ins = 0;
    std::string last_used;  // the day it was made, or its last hand-in came in
};

// The sets of a class last used more than `months` before `today` (as 2026-11-25), oldest first.
Result<std::vector<OldSet>> old_sets(const ClassStore& store, const StoredClass& of, const std::string& today,
                                     int months = months_kept);

}  // namespace hardover::classroom
