#include "app/study/practice_cost.hpp"

#include <algorithm>

#include "rules/reasoning/effort.hpp"

namespace hardover::study::practice {

namespace {

template <typename E>
const E& at(const std::vector<E>& entries, Index index) {
    return entries[static_cast<std::size_t>(index)];
}

void add_once(std::vector<Index>& list, Index index) {
    if (std::find(list.begin(), list.end(), index) == list.end()) list.push_back(index);
}

}  // namespace

std::vector<Index> to_measure(const Ground& ground, Index finding) {
    const Finding& entry = at(ground.knowledge.findings, finding);
    if (!entry.from) return {finding};
    std::vector<Index> all;
    std::vector<Index> open;
    for (const WorksheetInput& input : at(ground.knowledge.worksheets, entry.from->worksheet).inputs) {
        if (input.finding == none || !ground.makes_sense[static_cast<std::size_t>(input.finding)]) continue;
        add_once(all, input.finding);
        if (!answered_now(ground.facts, input.finding)) add_once(open, input.finding);
    }
    return open.empty() ? all : open;
}

std::vector<Index> checks_to_set_up(const Ground& ground, Index finding) {
    std::vector<Index> checks;
    for (const Index measured : to_measure(ground, finding)) {
        const Index check = at(ground.knowledge.findings, measured).check;
        if (check != none && !ground.set_up.contains(check)) add_once(checks, check);
    }
    return checks;
}

double minutes_of_finding(const Ground& ground, Index finding) {
    double minutes = 0;
    for (const Index measured : to_measure(ground, finding)) {
        minutes += std::max(least_minutes, at(ground.knowledge.findings, measured).minutes);
    }
    for (const Index check : checks_to_set_up(ground, finding)) {
        minutes += at(ground.knowledge.checks, check).minutes;
    }
    return minutes;
}

}  // namespace hardover::study::practice
