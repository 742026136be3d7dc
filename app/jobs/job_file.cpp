// Writing the job file, and the tables.
#include "app/jobs/job_file.hpp"

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <set>

#include "app/jobs/closed_job.hpp"
#include "app/jobs/csv.hpp"
#include "app/jobs/job_file_form.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/replay.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace jobs_detail;
using nlohmann::ordered_json;

namespace {

constexpr auto replace = ordered_json::error_handler_t::replace;

// The numbers wanted, or all, in order.
Result<std::vector<JobNumber>> wanted(const Store& store, const std::vector<JobNumber>& jobs) {
    std::vector<JobNumber> numbers = jobs;
    if (numbers.empty()) {
        const auto rows = store.jobs();
        if (!rows.ok()) return rows.error();
        for (const JobRow& row : rows.value()) numbers.push_back(row.number);
    }
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

// The body as the object it is, when that gives the same text again; otherwise the text itself.
ordered_json body_json(const std::string& body) {
    auto object = ordered_json::parse(body, nullptr, false);
    if (object.is_object() && object.dump(-1, ' ', false, replace) == body) return object;
    return body;
}

ordered_json job_json(const JobRow& row, const std::vector<StoredEvent>& events) {
    ordered_json list = ordered_json::array();
    for (const StoredEvent& event : events) {
        list.push_back({{"sequence", event.sequence},
                        {"at", event.at},
                        {"kind", event.kind},
                        {"body", body_json(event.body)}});
    }
    return {{"number", row.number},
            {"identity", identity_of(events.front())},
            {"boat", row.summary.boat},
            {"state", row.summary.state},
            {"complaint", row.summary.complaint},
            {"opened_at", row.opened_at},
            {"changed_at", row.changed_at},
            {"events", list},
            {"checksum", checksum_of_events(events)}};
}

// Hands each job's row and events on. Gives how many jobs there were, 0 when it was told to stop.
template <typename Take>
Result<int> each_job(const Store& store, const std::vector<JobNumber>& jobs, const Watched& watched,
                     const Take& take) {
    const auto numbers = wanted(store, jobs);
    if (!numbers.ok()) return numbers.error();
    std::size_t done = 0;
    for (const JobNumber number : numbers.value()) {
        if (!goes_on(watched, done++, numbers.value().size())) return 0;
        const auto row = store.job(number);
        if (!row.ok()) return row.error();
        const auto events = store.events(number);
        if (!events.ok()) return events.error();
        if (auto taken = take(row.value(), events.value()); !taken.ok()) return taken.error();
    }
    return static_cast<int>(numbers.value().size());
}

struct FileWish {
    std::string path;
    std::string head;
    std::string foot;
};

// Writes a whole file of what each job gives; none when it is told to stop.
template <typename Give>
Result<int> write_each(const Store& store, const FileWish& wish, const std::vector<JobNumber>& jobs,
                       const Watched& watched, const Give& give) {
    auto file = WholeFile::start(wish.path);
    if (!file.ok()) return file.error();
    if (auto added = file.value().add(wish.head); !added.ok()) return added.error();
    bool stopped = false;
    const Watched heard = [&](std::size_t done, std::size_t of) {
        stopped = !goes_on(watched, done, of);
        return !stopped;
    };
    const auto written =
        each_job(store, jobs, heard, [&](const JobRow& row, const std::vector<StoredEvent>& events) {
            return file.value().add(give(row, events));
        });
    if (!written.ok() || stopped) return written;
    if (auto added = file.value().add(wish.foot); !added.ok()) return added.error();
    if (auto finished = file.value().finish(); !finished.ok()) return finished.error();
    return written.value();
}

std::string joined(const std::vector<std::string>& texts) {
    std::string all;
    for (const std::string& text : texts) all += (all.empty() ? "" : "; ") + text;
    return all;
}

template <typename E>
std::string id_of(const std::vector<E>& entries, Index index) {
    return index == none ? "" : entries[static_cast<std::size_t>(index)].id;
}

std::vector<std::string> table_row(const Knowledge& knowledge, const JobRow& row,
                                   const std::vector<StoredEvent>& events) {
    const Job job = replay_facts(knowledge, row.number, events);
    const auto closed = closed_job(row.number, events);
    std::vector<std::string> tried, photos, causes, proved;
    for (const RecordedCause& one : closed ? closed->causes : std::vector<RecordedCause>()) {
        causes.push_back(one.cause);
        proved.emplace_back(one.confirmed ? "yes" : "no");
    }
    for (const auto& [remedy, outcome] : job.facts.tried) {
        tried.push_back(id_of(knowledge.remedies, remedy) + ": " + outcome_text(outcome));
    }
    for (const Attached& photo : job.photos) photos.push_back(photo_name(photo));
    return {std::to_string(row.number),
            identity_of(events.front()),
            row.summary.boat,
            row.summary.state,
            row.opened_at,
            row.changed_at,
            closed ? closed->handed_back_at : "",
            row.summary.complaint,
            job.words,
            id_of(knowledge.histories, job.facts.history),
            joined(causes),
            joined(proved),
            job.handed_back ? job.handed_back->note : "",
            joined(tried),
            joined(job.notes),
            joined(photos),
            std::to_string(events.size())};
}

}  // namespace

const std::vector<std::string>& job_table_columns() {
    static const std::vector<std::string> columns = {
        "job",        "identity", "boat",    "state", "opened_at",       "changed_at",     "handed_back_at",
        "complaints", "words",    "history", "cause", "seen_and_proved", "hand_back_note", "remedies",
        "notes",      "photos",   "events"};
    return columns;
}

Result<JobFileWritten> write_job_file(const Store& store, const std::string& path,
                                      const std::vector<JobNumber>& jobs, bool with_photos,
                                      const Watched& watched) {
    JobFileWritten done;
    if (with_photos) {
        std::set<std::string> files;
        const auto read =
            each_job(store, jobs, part_of(watched, 0, 2),
                     [&files](const JobRow&, const std::vector<StoredEvent>& events) -> Result<void> {
                         collect_photos(events, files);
                         return {};
                     });
        if (!read.ok()) return read.error();
        if (read.value() == 0) return done;
        auto copied = copy_photos({files.begin(), files.end()}, photos_folder(store.path()),
                                  photos_folder(std::filesystem::absolute(path).string()));
        if (!copied.ok()) return copied.error();
        done.photos = std::move(copied.value());
    }
    const std::string head =
        "{\"" + std::string(job_file_mark) + "\": " + std::to_string(job_file_version) + ",\n\"jobs\": [";
    bool first = true;
    const auto written =
        write_each(store, {path, head, "\n]}\n"}, jobs, with_photos ? part_of(watched, 1, 2) : watched,
                   [&](const JobRow& row, const std::vector<StoredEvent>& events) {
                       const char* between = first ? "\n" : ",\n";
                       first = false;
                       return between + job_json(row, events).dump(1, ' ', false, replace);
                   });
    if (!written.ok()) return written.error();
    done.jobs = written.value();
    return done;
}

Result<int> write_job_table(const Store& store, const Knowledge& knowledge, const std::string& path,
                            const std::vector<JobNumber>& jobs, const Watched& watched) {
    return write_each(store, {path, csv_record(job_table_columns()), ""}, jobs, watched,
                      [&](const JobRow& row, const std::vector<StoredEvent>& events) {
                          return csv_record(table_row(knowledge, row, events));
                      });
}

Result<int> write_event_table(const Store& store, const std::string& path,
                              const std::vector<JobNumber>& jobs) {
    return write_each(store, {path, csv_record({"job", "sequence", "at", "kind", "body"}), ""}, jobs, {},
                      [](const JobRow& row, const std::vector<StoredEvent>& events) {
                          std::string records;
                          for (const StoredEvent& event : events) {
                              records +=
                                  csv_record({std::to_string(row.number), std::to_string(event.sequence),
                                              event.at, event.kind, event.body});
                          }
                          return records;
                      });
}

}  // namespace hardover
