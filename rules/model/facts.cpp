#include "rules/model/facts.hpp"

#include <algorithm>

namespace hardover {

int present_stage(const Facts& facts) {
    int stage = 0;
    for (const auto& [remedy, outcome] : facts.tried) stage = std::max(stage, tried_as(facts, remedy));
    return stage;
}

int answer_stage(const Facts& facts, Index finding) {
    const auto at = facts.answered_at.find(finding);
    return at == facts.answered_at.end() ? 0 : at->second;
}

bool answered_now(const Facts& facts, Index finding) {
    return facts.answers.contains(finding) && answer_stage(facts, finding) == present_stage(facts);
}

int tried_as(const Facts& facts, Index remedy) {
    if (!facts.tried.contains(remedy)) return 0;
    const auto as = facts.tried_as.find(remedy);
    return as == facts.tried_as.end() ? 1 : as->second;
}

}  // namespace hardover
