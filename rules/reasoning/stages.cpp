#include "rules/reasoning/stages.hpp"

#include <algorithm>

namespace hardover {

namespace {

// Worksheets whose inputs come from worksheets: deeper than this is a circle.
constexpr int deepest = 8;

}  // namespace

Facts facts_at(const Facts& facts, int stage) {
    Facts then = facts;
    for (const auto& [finding, answer] : facts.answers) {
        if (answer_stage(facts, finding) <= stage) continue;
        then.answers.erase(finding);
        then.answered_at.erase(finding);
    }
    then.earlier.clear();
    for (const EarlierAnswer& earlier : facts.earlier) {
        if (earlier.stage > stage) continue;
        const auto replaced = then.answers.find(earlier.finding);
        if (replaced == then.answers.end()) {
            then.answers[earlier.finding] = earlier.answer;
            then.answered_at[earlier.finding] = earlier.stage;
        } else if (answer_stage(then, earlier.finding) > earlier.stage) {
            then.earlier.push_back(earlier);
        } else {
            then.earlier.push_back({earlier.finding, answer_stage(then, earlier.finding), replaced->second});
            replaced->second = earlier.answer;
            then.answered_at[earlier.finding] = earlier.stage;
        }
    }
    return then;
}

Stages::Stages(const Knowledge& knowledge, const Facts& facts, Situation& now)
    : knowledge_(knowledge), facts_(facts), now_(now) {
    for (const auto& [finding, stage] : facts.answered_at) last_ = std::max(last_, stage);
    any_ = last_ > 0;
}

Situation& Stages::at(int stage) {
    if (stage >= last_) return now_;
    std::unique_ptr<Then>& then = then_[stage];
    if (!then) then = std::make_unique<Then>(now_.prepared(), facts_at(facts_, stage));
    return then->situation;
}

std::vector<int> Stages::directly(Index finding) const {
    std::vector<int> stages;
    for (const EarlierAnswer& earlier : facts_.earlier) {
        if (earlier.finding == finding) stages.push_back(earlier.stage);
    }
    if (facts_.answers.contains(finding)) stages.push_back(answer_stage(facts_, finding));
    return stages;
}

// The stages in which something about the finding was told, itself or through its worksheet.
void Stages::collect(Index finding, std::vector<int>& stages, int depth) const {
    if (finding < 0 || static_cast<std::size_t>(finding) >= knowledge_.findings.size() || depth > deepest) {
        return;
    }
    const std::vector<int> direct = directly(finding);
    stages.insert(stages.end(), direct.begin(), direct.end());
    const auto& from = knowledge_.findings[static_cast<std::size_t>(finding)].from;
    if (!from) return;
    for (const WorksheetInput& input :
         knowledge_.worksheets[static_cast<std::size_t>(from->worksheet)].inputs) {
        collect(input.finding, stages, depth + 1);
    }
}

std::vector<TimedAnswer> Stages::about(Index finding) {
    std::vector<TimedAnswer> told;
    if (!any_) {
        if (const auto& answer = now_.answer_to(finding)) told.push_back({0, *answer});
        return told;
    }
    const std::vector<int> direct = directly(finding);
    std::vector<int> stages{0};
    collect(finding, stages, 0);
    std::sort(stages.begin(), stages.end());
    stages.erase(std::unique(stages.begin(), stages.end()), stages.end());
    for (int stage : stages) {
        const bool itself = std::find(direct.begin(), direct.end(), stage) != direct.end();
        // An answer stands before what a worksheet gives later.
        if (!itself && !direct.empty() && stage > *std::min_element(direct.begin(), direct.end())) continue;
        const std::optional<Answer>& answer = at(stage).answer_to(finding);
        if (!answer) continue;
        const bool worked_out = std::holds_alternative<Quantity>(answer->given);
        if (itself || worked_out || stage == 0) told.push_back({stage, *answer});
    }
    return told;
}

int Stages::put_right_at(Index cause) const {
    int first = never;
    for (const auto& [remedy, outcome] : facts_.tried) {
        if (!puts_right(knowledge_, remedy, cause)) continue;
        first = std::min(first, tried_as(facts_, remedy));
    }
    return first;
}

}  // namespace hardover
