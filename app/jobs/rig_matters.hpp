// Which figures of the rig are worth asking for first: those that decide what may be the cause of what is
// complained of. Inner part of app/jobs. Pure; does not look at the rig, so that the order stays while the
// rig is being told.
#pragma once

#include <set>

#include "rules/model/knowledge.hpp"

namespace hardover::jobs_detail {

inline constexpr std::size_t most_that_matter = 8;

// At most `most_that_matter` rig fields. Without a complaint: what matters most often.
std::set<Index> rig_fields_that_matter(const Knowledge& knowledge, const std::set<Index>& complaints);

}  // namespace hardover::jobs_detail
