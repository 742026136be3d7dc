#include "app/study/mastery.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

#include "app/study/items_parts.hpp"

namespace hardover::study {

namespace {

constexpr double counts_as_right = 0.8;

using InTopic = std::function<bool(const Review&)>;

// First answers of every learner to the statements of a topic that anyone has met, and who is able how.
Estimate ability_in(const std::vector<LearnerState>& everyone, std::size_t who, const InTopic& in_topic) {
    std::map<std::string, std::size_t> column;
    for (const LearnerState& learner : everyone) {
        for (const Review& review : learner.reviews) {
            if (in_topic(review)) column.try_emplace(review.statement, column.size());
        }
    }
    if (column.empty()) return {};
    std::vector<AnswerRow> rows(everyone.size(), AnswerRow(column.size(), -1));
    for (std::size_t n = 0; n < everyone.size(); ++n) {
        for (const Review& review : everyone[n].reviews) {
            if (!in_topic(review)) continue;
            int& first = rows[n][column.at(review.statement)];
            if (first < 0) first = review.mark >= counts_as_right ? 1 : 0;
        }
    }
    return fit_rasch(rows).ability[who];
}

TopicMastery mastery_of(const std::vector<LearnerState>& everyone, std::size_t who, int day,
                        const InTopic& in_topic) {
    const LearnerState& learner = everyone[who];
    TopicMastery mastery;
    std::set<std::string> met;
    for (const Review& review : learner.reviews) {
        if (!in_topic(review)) continue;
        ++mastery.answers;
        mastery.right += review.mark >= counts_as_right ? 1 : 0;
        met.insert(review.statement);
    }
    for (const std::string& statement : met) {
        mastery.remembered +=
            learner.statements.at(statement).chance(day + 1) / static_cast<double>(met.size());
    }
    mastery.met = static_cast<int>(met.size());
    if (mastery.answers > 0) mastery.ability = ability_in(everyone, who, in_topic);
    return mastery;
}

}  // namespace

LearnerSummary summarise(const Knowledge& all, const std::vector<Stem>& askable,
                         const std::vector<LearnerState>& everyone, std::size_t who, int day) {
    std::map<std::string, std::set<std::string>> statements;  // by topic
    for (const Stem& stem : askable) {
        statements[""].insert(stem.statement);
        if (stem.part != none) statements[at(all.parts, stem.part).id].insert(stem.statement);
        for (const Index complaint : stem.complaints) {
            statements[at(all.complaints, complaint).id].insert(stem.statement);
        }
    }
    const auto topic = [&](const Entry& entry, const InTopic& in_topic) {
        TopicMastery mastery = mastery_of(everyone, who, day, in_topic);
        mastery.id = entry.id;
        mastery.name = entry.name;
        mastery.statements = static_cast<int>(statements[entry.id].size());
        return mastery;
    };
    LearnerSummary summary;
    summary.all = mastery_of(everyone, who, day, [](const Review&) { return true; });
    summary.all.statements = static_cast<int>(statements[""].size());
    for (const Complaint& complaint : all.complaints) {
        summary.by_complaint.push_back(topic(complaint, [&](const Review& review) {
            const auto& ids = review.complaints;
            return std::find(ids.begin(), ids.end(), complaint.id) != ids.end();
        }));
    }
    for (const Part& part : all.parts) {
        summary.by_part.push_back(topic(part, [&](const Review& review) { return review.part == part.id; }));
    }
    summary.due = static_cast<int>(everyone[who].due(day).size());
    summary.calibration = calibrate(everyone[who].sure);
    summary.rough = everyone.size() < enough_learners;
    return summary;
}

}  // namespace hardover::study
