#include "rules/reasoning/repairs.hpp"

#include <algorithm>

namespace hardover {

namespace {

Index remedy_of(const Knowledge& knowledge, int cause) {
    const Index remedy = knowledge.causes[static_cast<std::size_t>(cause)].remedy;
    const bool exists = remedy >= 0 && static_cast<std::size_t>(remedy) < knowledge.remedies.size();
    return exists ? remedy : none;
}

RepairNeed need_of(const Knowledge& knowledge, const Hypothesis& hypothesis,
                   const std::vector<int>& action_of) {
    RepairNeed need;
    need.hopeless = hypothesis.unlisted;
    for (int cause : hypothesis.causes) {
        const Index remedy = remedy_of(knowledge, cause);
        if (remedy == none) {
            need.hopeless = true;
        } else {
            need.actions.push_back(action_of[static_cast<std::size_t>(remedy)]);
        }
    }
    std::sort(need.actions.begin(), need.actions.end());
    need.actions.erase(std::unique(need.actions.begin(), need.actions.end()), need.actions.end());
    return need;
}

}  // namespace

Repairs repairs_for(const Knowledge& knowledge, const std::vector<Hypothesis>& hypotheses,
                    const Effort& effort) {
    Repairs result;
    result.model.call_for_help = knowledge.settings.call_for_help;
    std::vector<double> present(knowledge.causes.size(), 0.0);
    for (const Hypothesis& hypothesis : hypotheses) {
        for (int cause : hypothesis.causes) {
            present[static_cast<std::size_t>(cause)] += hypothesis.probability;
        }
    }
    std::vector<int> action_of(knowledge.remedies.size(), -1);
    for (std::size_t i = 0; i < present.size(); ++i) {
        const Index remedy = remedy_of(knowledge, static_cast<int>(i));
        if (present[i] <= 0 || remedy == none) continue;
        int& action = action_of[static_cast<std::size_t>(remedy)];
        if (action < 0) {
            action = static_cast<int>(result.repairs.size());
            result.repairs.push_back({remedy, static_cast<Index>(i), std::nullopt});
        }
        Repair& repair = result.repairs[static_cast<std::size_t>(action)];
        if (present[i] > present[static_cast<std::size_t>(repair.cause)])
            repair.cause = static_cast<Index>(i);
    }
    for (Repair& repair : result.repairs) {
        RepairAction action;
        action.minutes = effort.of_remedy(repair.remedy);
        repair.proof = effort.of_proof(repair.cause);
        if (repair.proof && repair.proof->minutes >= action.minutes) repair.proof.reset();
        if (repair.proof) {
            action.proof_minutes = repair.proof->minutes;
            action.proof_findings = repair.proof->findings;
            action.proof_check = repair.proof->check;
            action.proof_setting_up = effort.setting_up(repair.proof->check);
        }
        result.model.actions.push_back(action);
    }
    for (const Hypothesis& hypothesis : hypotheses) {
        result.model.needs.push_back(need_of(knowledge, hypothesis, action_of));
    }
    return result;
}

}  // namespace hardover
