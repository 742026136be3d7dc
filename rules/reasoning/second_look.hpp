// After a remedy that helped and did not cure: which sign seen before it should be looked at again, since
// what was put right may have given it. Reads what was told and the ranking; weighs no minutes.
#pragma once

#include <optional>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/ranking.hpp"

namespace hardover {

struct SecondLook {
    Index finding = none;
    Index cause = none;  // whose proof the finding is; none: it is what the customer complained of
};

// A proved cause at least so probable is looked at again. From memory.
inline constexpr double worth_a_second_look = 0.02;

// What the customer complained of comes first, then the proofs of the causes that are left, the most probable
// cause first. Nothing when no remedy helped, or each such sign has been looked at since. A look that cannot
// be had now (Facts::unavailable) is left out. `ranking` has its `proved` flags set.
std::optional<SecondLook> second_look(const PreparedKnowledge& prepared, const Facts& facts,
                                      const Effort& effort, const DiagnosisCase& diagnosis,
                                      const Ranking& ranking);

}  // namespace hardover
