#include "app/study/known_learner.hpp"

#include <cstdio>
#include <ctime>

#include "rules/result/nearest.hpp"

namespace hardover::study {

namespace {

Result<KnownLearner> known(const Store& store, const LearnerRow& row) {
    Result<LearnerState> state = learner_state(store, row.number);
    if (!state) return state.error();
    return KnownLearner{row.number, row.name, row.events, std::move(state.value())};
}

}  // namespace

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
        if (row.name == name) return known(store, row);
        names.push_back(row.name);
    }
    const std::string near = did_you_mean(name, names);
    return Error{Error::Kind::not_found, "there is no learner '" + name + "'", "",
                 near.empty() ? "add one with: hardover learner add NAME" : near};
}

Result<KnownLearner> learner_numbered(const Store& store, LearnerNumber number) {
    const auto rows = store.learners();
    if (!rows) return rows.error();
    for (const LearnerRow& row : rows.value()) {
        if (row.number == number) return known(store, row);
    }
    return Error{Error::Kind::not_found, "there is no learner " + std::to_string(number), store.path(), ""};
}

Result<KnownLearner> add_learner(Store& store, const std::string& typed, const std::string& at) {
    const std::size_t first = typed.find_first_not_of(" \t"), last = typed.find_last_not_of(" \t");
    if (first == std::string::npos) {
        return Error{Error::Kind::bad_input, "a learner needs a name", "", "a seat such as A07 will do"};
    }
    const std::string name = typed.substr(first, last - first + 1);
    const auto added = store.add_learner(name, at);
    if (!added) return added.error();
    return KnownLearner{added.value(), name, 0, {}};
}

int study_day(const std::string& utc) {
    constexpr int day_starts_at = 4;
    std::tm told{};
    if (std::sscanf(utc.c_str(), "%d-%d-%dT%d:%d:%d", &told.tm_year, &told.tm_mon, &told.tm_mday,
                    &told.tm_hour, &told.tm_min, &told.tm_sec) != 6) {
        return 0;
    }
    told.tm_year -= 1900;
    told.tm_mon -= 1;
    const std::time_t moment = timegm(&told) - day_starts_at * 3600;
    std::tm local{};
    localtime_r(&moment, &local);
    local.tm_hour = 12;
    local.tm_min = local.tm_sec = 0;
    return static_cast<int>(timegm(&local) / 86400);
}

}  // namespace hardover::study
