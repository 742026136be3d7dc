// Which complaints come nearest to what the customer said. Inner part of app/jobs; knows no job.
#pragma once

#include <string>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover::jobs_detail {

// All complaints of the knowledge, those first whose name or customer's words are nearest to `said` (see
// WordIndex). Complaints that are equally near keep the order of the knowledge, so without a word in common
// nothing moves.
std::vector<Index> complaints_nearest_first(const Knowledge& knowledge, const std::string& said);

}  // namespace hardover::jobs_detail
