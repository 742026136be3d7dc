#include "rules/reasoning/repairs.hpp"

#include <algorithm>

namespace hardover {

namespace {

Index remedy_of(const Knowledge& knowledge, int cause) {
    const Index remedy = knowledge.causes[static_cast<std::size_t>(cause)].remedy;
    const bool exists = remedy >= 0 && static_cast<std::size_t>(remedy) < knowledge.remedies.size();
    return exists ? remedy : none;
}

// Whether the work for the causes that are kept puts right all the others along with them.
bool kept_do_all(const Knowledge& knowledge, const std::vector<int>& causes, const std::vector<bool>& kept) {
    for (std::size_t i = 0; i < causes.size(); ++i) {
        bool done = kept[i];
        for (std::size_t other = 0; other < causes.size() && !done; ++other)
            done = kept[other] && puts_right(knowledge, remedy_of(knowledge, causes[other]), causes[i]);
        if (!done) return false;
    }
    return true;
}

RepairNeed need_of(const Knowledge& knowledge, const Hypothesis& hypothesis,
                   const std::vector<int>& action_of) {
    RepairNeed need;
    need.hopeless = hypothesis.unlisted;
    const std::vector<bool> needed = to_be_cured(knowledge, hypothesis.causes);
    for (std::size_t i = 0; i < hypothesis.causes.size(); ++i) {
        if (!needed[i]) continue;
        const Index remedy = remedy_of(knowledge, hypothesis.causes[i]);
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

std::vector<bool> to_be_cured(const Knowledge& knowledge, const std::vector<int>& causes) {
    std::vector<bool> kept(causes.size(), true);
    for (std::size_t i = 0; i < causes.size(); ++i) {
        kept[i] = false;
        if (!kept_do_all(knowledge, causes, kept)) kept[i] = true;
    }
    return kept;
}

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
