// Job files: jobs that another computer exported, read or refused with the job and event at fault named; what
// was read, written in the documented form and read again, is the same.
#include <nlohmann/json.hpp>

#include "app/jobs/job_file.hpp"
#include "fuzz/garden_pump.hpp"
#include "fuzz/target.hpp"

using namespace hardover;
using namespace hardover_fuzz;

namespace {

const std::string name = "yard.json";

using Jobs = std::vector<std::pair<JobNumber, std::vector<StoredEvent>>>;

Result<JobFileRead> read(const std::string& text) {
    static const Knowledge knowledge = garden_pump();
    return job_file_of(knowledge, text, name);
}

Jobs jobs_of(const JobFileRead& file) {
    Jobs jobs;
    for (const ArrivingHead& head : file.arriving.heads) {
        const Result<ArrivingJob> job = file.arriving.job(head);
        demand(job.ok() && !job.value().events.empty(), "a job without events was taken");
        demand(job.value().events.front().kind == "opened", "a job was taken that does not begin");
        jobs.emplace_back(head.number, job.value().events);
    }
    return jobs;
}

// As the README says it.
std::string written(const Jobs& jobs) {
    using nlohmann::json;
    json list = json::array();
    for (const auto& [number, events] : jobs) {
        json kept = json::array();
        for (const StoredEvent& event : events) {
            kept.push_back(
                {{"sequence", event.sequence}, {"at", event.at}, {"kind", event.kind}, {"body", event.body}});
        }
        list.push_back({{"number", number}, {"identity", identity_of(events.front())}, {"events", kept}});
    }
    return json{{"hardover_jobs", 1}, {"jobs", list}}.dump();
}

bool same(const Jobs& a, const Jobs& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const auto& one, const auto& other) {
        const auto equal = [](const StoredEvent& x, const StoredEvent& y) {
            return x.sequence == y.sequence && x.at == y.at && x.kind == y.kind && x.body == y.body;
        };
        return one.first == other.first && std::equal(one.second.begin(), one.second.end(),
                                                      other.second.begin(), other.second.end(), equal);
    });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const Result<JobFileRead> file = read(text_of(data, size));
    if (!file) {
        const Error& error = file.error();
        demand_worded(error);
        demand(error.where.rfind(name, 0) == 0, "a refusal that does not name the file: " + error.text());
        demand(!error.cure.empty() || error.where.find(':') != std::string::npos,
               "a refusal without what to do or where: " + error.text());
        return 0;
    }
    const Jobs jobs = jobs_of(file.value());
    const std::string text = written(jobs);
    const Result<JobFileRead> again = read(text);
    demand(again.ok(), "a file that was read, written and is refused: " + text);
    demand(same(jobs_of(again.value()), jobs), "jobs that change when written and read: " + text);
    demand(again.value().photos == file.value().photos, "photos that change when written and read: " + text);
    return 0;
}
