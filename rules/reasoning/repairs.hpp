// The remedies that may still be applied, with their proofs, as numbers for the repair plan.
#pragma once

#include <optional>
#include <vector>

#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/ranking.hpp"
#include "rules/reasoning/repair_plan.hpp"

namespace hardover {

// A remedy with the cause it is most probably for.
struct Repair {
    Index remedy = none;
    Index cause = none;
    std::optional<ProofEffort> proof;  // when proving that cause costs less than the remedy
};

struct Repairs {
    std::vector<Repair> repairs;  // by action of the model
    RepairModel model;            // with a need for every hypothesis
};

// Which of the causes that are present need a remedy of their own: the work for them puts the others right
// too.
std::vector<bool> to_be_cured(const Knowledge& knowledge, const std::vector<int>& causes);

// Remedies of all causes in the hypotheses. A hypothesis with something unlisted, or with a cause that has no
// remedy, is hopeless.
Repairs repairs_for(const Knowledge& knowledge, const std::vector<Hypothesis>& hypotheses,
                    const Effort& effort);

}  // namespace hardover
