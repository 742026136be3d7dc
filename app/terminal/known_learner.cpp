#include "app/terminal/known_learner.hpp"

#include <ctime>

#include "rules/result/nearest.hpp"

namespace hardover {

using namespace study;

Result<LearnerState> learner_state(const Store& store, LearnerNumber learner) {
    const auto events = store.study_events(learner);
    if (!events) return events.error();
    LearnerState state;
    for (const StoredEvent& event : events.value()) {
        if (event.kind != review_kind) continue;
        const Result<Review> review = read_review(event.body);
        if (!review) return review.error();
        state.take(review.value());
    }
    return state;
}

Result<KnownLearner> learner_named(const Store& store, const std::string& name) {
    const auto rows = store.learners();
    if (!rows) return rows.error();
    std::vector<std::string> names;
    for (const LearnerRow& row : rows.value()) {
        names.push_back(row.name);
        if (row.name != name) continue;
        Result<LearnerState> state = learner_state(store, row.number);
        if (!state) return state.error();
        return KnownLearner{row.number, row.name, row.events, std::move(state.value())};
    }
    const std::string near = did_you_mean(name, names);
    return Error{Error::Kind::not_found, "there is no learner '" + name + "'", "",
                 near.empty() ? "add one with: hardover learner add NAME" : near};
}

int study_day() {
    constexpr int day_starts_at = 4;
    const std::time_t now = std::time(nullptr) - day_starts_at * 3600;
    std::tm local{};
    localtime_r(&now, &local);
    local.tm_hour = 12;
    local.tm_min = local.tm_sec = 0;
    return static_cast<int>(timegm(&local) / 86400);
}

}  // namespace hardover
