#include "rules/reasoning/check_cautions.hpp"

#include <algorithm>

#include "rules/reasoning/situation.hpp"

namespace hardover {

namespace {

bool holds(const std::vector<Index>& list, Index index) {
    return std::find(list.begin(), list.end(), index) != list.end();
}

// Of the check itself and of what is looked at in it.
std::vector<Index> needs_of(const Knowledge& knowledge, const Check& check) {
    std::vector<Index> needs = check.needs;
    for (const Index finding : check.gets) {
        const std::vector<Index>& more = knowledge.findings[static_cast<std::size_t>(finding)].needs;
        needs.insert(needs.end(), more.begin(), more.end());
    }
    return needs;
}

}  // namespace

std::vector<Index> cautions_of_check(const PreparedKnowledge& prepared, const Facts& facts, Index check) {
    const Knowledge& knowledge = prepared.knowledge();
    const Check& entry = knowledge.checks[static_cast<std::size_t>(check)];
    const std::vector<Index> needs = needs_of(knowledge, entry);
    Situation situation(prepared, facts);
    const auto never_comes = [&](Index caution) {
        const Index with = knowledge.cautions[static_cast<std::size_t>(caution)].comes_with;
        if (with == none || holds(needs, with)) return false;
        bool elsewhere = false;
        for (const Index need : needs) {
            if (!holds(knowledge.needs[static_cast<std::size_t>(need)].takes, with)) continue;
            if (situation.holds(prepared.need_takes_when(need)) != Truth::no) return false;
            elsewhere = true;
        }
        return elsewhere;
    };
    std::vector<Index> cautions = entry.cautions;
    std::erase_if(cautions, never_comes);
    return cautions;
}

}  // namespace hardover
