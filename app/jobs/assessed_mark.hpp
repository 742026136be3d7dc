// Digests of what the program made of a job, kept with its hand-back, so that it can be told later whether
// the same events still come to the same. Pure.
#pragma once

#include "app/jobs/event.hpp"
#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/assessment.hpp"

namespace hardover {

// Probabilities count to six decimals, so that another computer's last digit does not matter. The shop's rate
// and the next step, which it moves, are left out.
AssessedMark assessed_mark(const Knowledge& knowledge, const Facts& facts, const Assessment& assessment);

}  // namespace hardover
