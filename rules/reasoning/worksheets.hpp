// Works a worksheet out from given inputs: used by firing in a job, and by the front ends for a worksheet
// alone. Pure; knows no job.
#pragma once

#include <vector>

#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover {

// `inputs` in the order of the worksheet's inputs; Unknown where not given. Inputs without a spread of their
// own are taken with the worksheet's. Results that lack an input are Unknown; advice that rests on one is
// not given. When a `holds_when` condition
// is not met, `refused` says why and all results are Unknown.
WorkedSheet work_out(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs);

// The same values without a spread, in a tenth of the time: every spread that goes through a whole sheet
// works it twice. For who takes the inputs as they stand, as a quiz does.
WorkedSheet work_out_as_given(const Knowledge& knowledge, Index worksheet, const std::vector<Value>& inputs);

}  // namespace hardover
