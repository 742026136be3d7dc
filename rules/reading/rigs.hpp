// Is there any rig and history on which conditions can hold: for finding entries that never come into play.
#pragma once

#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover::reading_detail {

// Whether for every rig and history at least one of the conditions is a plain no, whatever else is unknown.
// Choices and small counts are tried one by one; a size stands for everything between its least and most.
// False also where it cannot be said. An empty condition always holds.
bool never_hold_together(const std::vector<const Expression*>& conditions, const Knowledge& knowledge);

}  // namespace hardover::reading_detail
