// What each outcome of the next step would do to the ranking, for "why this question".
#pragma once

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/next_step.hpp"

namespace hardover {

// Adds to `advice.next` its branches, exactly: every reading of the findings it was chosen for.
void add_branches(const Knowledge& knowledge, const DiagnosisCase& diagnosis, Advice& advice);

}  // namespace hardover
