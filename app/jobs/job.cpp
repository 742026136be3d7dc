// The use cases on a job: start, load, record, undo. Each write goes to the records first, then to the job.
#include "app/jobs/job.hpp"

#include <chrono>
#include <utility>

#include "app/jobs/assessed_mark.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/random_id.hpp"
#include "app/jobs/replay.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

StoredEvent as_next(const Job& job, const Event& event, const std::string& now) {
    StoredEvent stored = to_stored(event);
    stored.sequence = job.events.empty() ? 1 : job.events.back().sequence + 1;
    stored.at = now;
    return stored;
}

}  // namespace

Job replay(const PreparedKnowledge& prepared, JobNumber number, std::vector<StoredEvent> events,
           const ShopWays& shop) {
    Job job = replay_facts(prepared.knowledge(), number, std::move(events), shop);
    job.assessment = assess(prepared, job.facts);
    return job;
}

Result<Job> start_job(Store& store, const PreparedKnowledge& prepared, const Opened& opened,
                      const std::string& now) {
    const Knowledge& knowledge = prepared.knowledge();
    Opened full = opened;
    if (full.boat.find_first_not_of(" \t\r\n") == std::string::npos) {
        return Error{Error::Kind::bad_input, "the boat has no name", "", "say which boat it is"};
    }
    if (full.knowledge.empty()) full.knowledge = knowledge.fingerprint;
    if (full.job.empty()) full.job = random_id();
    const auto shop = read_shop(store);
    if (!shop.ok()) return shop.error();
    const StoredEvent first = as_next(Job{}, full, now);
    Job job = replay(prepared, 0, {first}, shop.value().ways);
    const auto number = store.start_job(first, summary_of(knowledge, job));
    if (!number.ok()) return number.error();
    job.number = number.value();
    for (const RigSet& settled :
         {RigSet{"waters", shop.value().waters}, RigSet{"vessel_use", shop.value().vessel_use}}) {
        if (settled.value.empty() || find(knowledge.rig_fields, settled.field) == none) continue;
        const Result<void> set = record(store, prepared, job, settled, now);
        // A choice that is no longer in the knowledge is left open.
        if (!set.ok() && set.error().kind == Error::Kind::storage) return set.error();
    }
    return job;
}

Result<Job> load_job(const Store& store, const PreparedKnowledge& prepared, JobNumber number) {
    auto events = store.events(number);
    if (!events.ok()) return events.error();
    const auto shop = read_shop(store);
    if (!shop.ok()) return shop.error();
    auto twins = store.jobs_started_by(events.value().front());
    if (!twins.ok()) return twins.error();
    std::erase(twins.value(), number);
    Job job = replay(prepared, number, std::move(events.value()), shop.value().ways);
    job.twins = std::move(twins.value());
    return job;
}

Result<void> record(Store& store, const PreparedKnowledge& prepared, Job& job, const Event& event,
                    const std::string& now) {
    const Knowledge& knowledge = prepared.knowledge();
    auto full = fitted(knowledge, job, event);
    if (!full.ok()) return full.error();
    if (auto* back = std::get_if<HandedBack>(&full.value())) {
        back->assessed = assessed_mark(knowledge, job.facts, job.assessment);
    }
    auto events = job.events;
    events.push_back(as_next(job, full.value(), now));
    Job next = replay_facts(knowledge, job.number, std::move(events), job.shop);
    next.twins = job.twins;
    auto written = store.append(job.number, next.events.back(), summary_of(knowledge, next));
    if (!written.ok()) return written;
    next.assessment = assess(prepared, next.facts);
    job = std::move(next);
    return {};
}

Result<void> undo(Store& store, const PreparedKnowledge& prepared, Job& job, const std::string& now) {
    const auto counts = counting(job.events);
    for (auto stored = job.events.rbegin(); stored != job.events.rend(); ++stored) {
        if (stored->kind == "opened" || stored->kind == "undone") continue;
        if (!counts.at(stored->sequence)) continue;
        return record(store, prepared, job, Undone{stored->sequence}, now);
    }
    return Error{Error::Kind::bad_input, "there is nothing to take back", "", ""};
}

Result<void> return_to(Store& store, const PreparedKnowledge& prepared, Job& job, int sequence,
                       const std::string& now) {
    if (job.events.empty() || sequence < 1 || sequence > job.events.back().sequence) {
        return Error{Error::Kind::bad_input, "this job has no event " + std::to_string(sequence), "", ""};
    }
    const Knowledge& knowledge = prepared.knowledge();
    for (const int change : changes_to(job.events, sequence)) {
        auto events = job.events;
        events.push_back(as_next(job, Undone{change}, now));
        Job next = replay_facts(knowledge, job.number, std::move(events), job.shop);
        next.twins = job.twins;
        auto written = store.append(job.number, next.events.back(), summary_of(knowledge, next));
        if (!written.ok()) return written;
        job = std::move(next);
    }
    job.assessment = assess(prepared, job.facts);
    return {};
}

std::string utc_now() {
    return moment_text(std::chrono::system_clock::to_time_t(std::chrono::system_clock::now()));
}

}  // namespace hardover
