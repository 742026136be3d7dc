// The cautions that belong before a check on the boat at hand.
#pragma once

#include <vector>

#include "rules/model/facts.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"

namespace hardover {

// All that the check carries, but for those that come with a need the check does not have on this rig: it is
// there only through needs that take it elsewhere, as the power assist takes the engine where its pump hangs
// on the belt. Where the rig is not known, it stays.
std::vector<Index> cautions_of_check(const PreparedKnowledge& prepared, const Facts& facts, Index check);

}  // namespace hardover
