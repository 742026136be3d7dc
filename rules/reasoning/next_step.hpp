// The next step: the one that leaves the fewest expected minutes until the boat is right.
#pragma once

#include <vector>

#include "rules/reasoning/diagnosis_case.hpp"
#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/firing.hpp"
#include "rules/reasoning/ranking.hpp"

namespace hardover {

struct Advice {
    NextStep next;
    std::vector<NextStep> also;  // cheapest first
    double minutes_left = 0;
    double sets_missing = 0;
    std::vector<Index> weighed_in;  // findings whose readings the next step was chosen for
};

inline constexpr std::size_t most_also = 5;

// Proposes only what can change what is done; a remedy whose cause can be proved for fewer minutes than the
// remedy takes is proved first; a proved cause is put right next; after a remedy that helped, what it may
// have taken away is looked at again. `ranking` has its `proved` flags set.
Advice advise(const PreparedKnowledge& prepared, const Facts& facts, const Effort& effort, const Fired& fired,
              const DiagnosisCase& diagnosis, const Ranking& ranking);

}  // namespace hardover
