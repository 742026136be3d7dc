// From a job's events to what became of it.
#include "app/jobs/closed_job.hpp"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

#include "app/jobs/event.hpp"
#include "app/jobs/replay.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

bool is_cure(const Event& event) {
    const Tried* tried = std::get_if<Tried>(&event);
    return tried != nullptr && outcome_of(tried->outcome) == Outcome::cured;
}

// Everything before the last cure, without earlier ones.
std::vector<StoredEvent> until_the_cure(const std::vector<std::pair<StoredEvent, Event>>& events) {
    auto end = events.end();
    for (auto event = events.begin(); event != events.end(); ++event) {
        if (is_cure(event->second)) end = event;
    }
    std::vector<StoredEvent> before;
    for (auto event = events.begin(); event != end; ++event) {
        if (!is_cure(event->second)) before.push_back(event->first);
    }
    return before;
}

}  // namespace

std::vector<std::string> ClosedJob::confirmed() const {
    std::vector<std::string> ids;
    for (const RecordedCause& one : causes) {
        if (one.confirmed) ids.push_back(one.cause);
    }
    return ids;
}

std::vector<StoredEvent> before_work_on(const Knowledge& knowledge, const ClosedJob& job,
                                        const std::string& cause) {
    const Index index = find(knowledge.causes, cause);
    std::vector<StoredEvent> before;
    for (const StoredEvent& stored : job.before_cure) {
        const auto event = from_stored(stored);
        const Tried* tried = event.ok() ? std::get_if<Tried>(&event.value()) : nullptr;
        const bool helped = tried != nullptr && outcome_of(tried->outcome) == Outcome::better &&
                            index != none &&
                            puts_right(knowledge, find(knowledge.remedies, tried->remedy), index);
        if (helped && job.confirmed().size() > 1) break;
        before.push_back(stored);
    }
    return before;
}

const std::vector<std::string>& closing_kinds() {
    static const std::vector<std::string> kinds = {"history_set", "handed_back", "reopened", "undone"};
    return kinds;
}

const std::vector<std::string>& closing_and_answer_kinds() {
    static const std::vector<std::string> kinds = {"history_set", "handed_back", "reopened", "undone",
                                                   "answered",    "taken_back",  "tried"};
    return kinds;
}

std::optional<ClosedJob> closed_job(JobNumber number, const std::vector<StoredEvent>& events) {
    ClosedJob job;
    job.number = number;
    std::optional<HandedBack> handed_back;
    std::vector<std::pair<StoredEvent, Event>> so_far;
    std::size_t before_hand_back = 0;
    const std::map<int, bool> counts = counting(events);
    for (const StoredEvent& stored : events) {
        const auto event = from_stored(stored);
        if (!counts.at(stored.sequence) || !event.ok()) continue;
        if (const auto* set = std::get_if<HistorySet>(&event.value())) job.history = set->history;
        if (std::holds_alternative<Undone>(event.value())) continue;
        if (std::holds_alternative<Reopened>(event.value())) {
            handed_back.reset();
        } else if (const auto* back = std::get_if<HandedBack>(&event.value())) {
            handed_back = *back;
            job.handed_back_at = stored.at;
            before_hand_back = so_far.size();
        } else {
            so_far.emplace_back(stored, event.value());
        }
    }
    if (!handed_back) return std::nullopt;
    job.causes = causes_of(*handed_back);
    so_far.erase(so_far.begin() + static_cast<std::ptrdiff_t>(before_hand_back), so_far.end());
    job.before_cure = until_the_cure(so_far);
    return job;
}

Result<std::vector<ClosedJob>> closed_jobs(const Store& store, const std::vector<std::string>& kinds) {
    const auto all = store.events_of("handed back", kinds);
    if (!all.ok()) return all.error();
    std::vector<ClosedJob> jobs;
    for (const JobEvents& events : all.value()) {
        if (auto job = closed_job(events.job, events.events)) jobs.push_back(std::move(*job));
    }
    std::stable_sort(jobs.begin(), jobs.end(), [](const ClosedJob& a, const ClosedJob& b) {
        return std::tie(a.handed_back_at, a.number) < std::tie(b.handed_back_at, b.number);
    });
    return jobs;
}

}  // namespace hardover
