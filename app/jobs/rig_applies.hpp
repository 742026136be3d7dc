// Which fields of the rig have a say on the rig at hand: a tie bar's length has none where one drive stands
// alone. Inner part of app/jobs. Pure.
#pragma once

#include "app/jobs/job.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::jobs_detail {

// Some condition of the knowledge hangs on the field once all the other fields have their value, told or
// assumed; or a worksheet takes it that was run in the job, or that gives a finding which makes sense here.
bool applies_here(const Knowledge& knowledge, const Job& job, Index field);

}  // namespace hardover::jobs_detail
