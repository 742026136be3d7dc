#include "app/study/known_learner.hpp"

#include <cstdio>
#include <ctime>

#include "app/jobs/moment.hpp"
#include "app/records/folded.hpp"
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
        if (event.kind == usual_kind) state.fitted.reset();
        if (event.kind != fitted_kind) continue;
        const Result<MemoryFit> fit = read_fit(event.body);
        if (!fit) return fit.error();
        state.fitted = fit.value();
    }
    for (const StoredEvent& event : events.value()) {
        if (event.kind != review_kind) continue;
        const Result<Review> review = read_review(event.body);
        if (!review) return review.error();
        state.take(review.value());
    }
    return state;
}

namespace {

Result<void> append(Store& store, LearnerNumber learner, const char* kind, const std::string& body,
                    const std::string& at) {
    const Result<KnownLearner> known = learner_numbered(store, learner);
    if (!known) return known.error();
    return store.append_study(learner, {known.value().events + 1, at, kind, body});
}

}  // namespace

Result<void> keep_fit(Store& store, LearnerNumber learner, const MemoryFit& fit, const std::string& at) {
    if (!fit.adopted) return {};
    return append(store, learner, fitted_kind, fit_body(fit), at);
}

Result<MemoryFit> fit_learner(Store& store, LearnerNumber learner, const std::string& at) {
    const Result<LearnerState> state = learner_state(store, learner);
    if (!state) return state.error();
    const MemoryFit fit = fit_memory(state.value().reviews);
    const Result<void> kept = keep_fit(store, learner, fit, at);
    if (!kept) return kept.error();
    return fit;
}

Result<void> use_usual_memory(Store& store, LearnerNumber learner, const std::string& at) {
    return append(store, learner, usual_kind, "{}", at);
}

Result<KnownLearner> learner_named(const Store& store, const std::string& name) {
    const auto rows = store.learners();
    if (!rows) return rows.error();
    std::vector<std::string> names;
    const LearnerRow* alike = nullptr;  // records of before may hold the name in other letters too
    for (const LearnerRow& row : rows.value()) {
        if (row.name == name) return known(store, row);
        if (alike == nullptr && folded(row.name) == folded(name)) alike = &row;
        names.push_back(row.name);
    }
    if (alike != nullptr) return known(store, *alike);
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
    if (!is_moment(utc)) return 0;
    std::tm told{};
    std::sscanf(utc.c_str(), "%d-%d-%dT%d:%d:%d", &told.tm_year, &told.tm_mon, &told.tm_mday, &told.tm_hour,
                &told.tm_min, &told.tm_sec);
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
