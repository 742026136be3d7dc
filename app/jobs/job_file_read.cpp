// Reading a job file: every field asked for, every fault with its place.
#include <algorithm>
#include <map>
#include <memory>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>

#include "app/jobs/event.hpp"
#include "app/jobs/job_file.hpp"
#include "app/jobs/job_file_form.hpp"
#include "app/jobs/json_place.hpp"
#include "app/jobs/moment.hpp"
#include "app/jobs/replay.hpp"
#include "app/records/photos.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace jobs_detail;
using nlohmann::ordered_json;

namespace {

constexpr std::size_t most_bytes = 1'000'000;  // of one event

struct ReadJob {
    JobNumber number = 0;
    std::vector<StoredEvent> events;
};

Error refused(std::string what, const std::string& where, std::string cure = "") {
    return {Error::Kind::bad_input, std::move(what), where,
            cure.empty() ? "take the file as the export wrote it" : std::move(cure)};
}

const std::string* text_of(const ordered_json& object, const char* name) {
    const auto field = object.find(name);
    return field != object.end() && field->is_string() ? field->get_ptr<const std::string*>() : nullptr;
}

Result<StoredEvent> event_of(const ordered_json& json, int sequence, const std::string& where) {
    const auto wrong = [&where](const char* what) { return refused(what, where); };
    if (!json.is_object()) return wrong("this is no event");
    const auto number = json.find("sequence");
    if (number == json.end() || !number->is_number_integer() || *number != sequence) {
        return wrong("the events are not numbered 1, 2, 3 ...");
    }
    const std::string* at = text_of(json, "at");
    const std::string* kind = text_of(json, "kind");
    if (at == nullptr || !is_moment(*at)) return wrong("'at' is not a moment such as 2026-11-25T15:03:13Z");
    if (kind == nullptr || kind->empty()) return wrong("'kind' is missing");
    const auto body = json.find("body");
    StoredEvent event{sequence, *at, *kind, ""};
    if (body != json.end() && body->is_object()) {
        event.body = body->dump(-1, ' ', false, ordered_json::error_handler_t::replace);
    } else if (body != json.end() && body->is_string()) {
        event.body = body->get<std::string>();
    } else {
        return wrong("'body' is neither an object nor a text");
    }
    if (event.body.size() > most_bytes) return wrong("'body' is larger than 1 MB");
    // Of a kind this program knows, it must be one; other kinds are a newer program's business.
    const auto read = from_stored(event);
    if (!read.ok() && read.error().kind == Error::Kind::bad_input) return refused(read.error().what, where);
    return event;
}

Result<ReadJob> job_of(const ordered_json& json, const std::string& where) {
    if (!json.is_object()) return refused("this is no job", where);
    const auto number = json.find("number");
    const bool numbered =
        number != json.end() && number->is_number_integer() && *number >= 1 && *number <= 1'000'000'000'000;
    if (!numbered) return refused("'number' is not a whole number from 1", where);
    ReadJob job{number->get<JobNumber>(), {}};
    const std::string here = where + ", job " + std::to_string(job.number);
    const auto events = json.find("events");
    if (events == json.end() || !events->is_array() || events->empty()) {
        return refused("the job has no events", here);
    }
    for (const ordered_json& one : *events) {
        const int sequence = static_cast<int>(job.events.size()) + 1;
        auto event = event_of(one, sequence, here + ", event " + std::to_string(sequence));
        if (!event.ok()) return event.error();
        job.events.push_back(std::move(event.value()));
    }
    if (job.events.front().kind != "opened") return refused("the job does not start with 'opened'", here);
    // A hash that no longer fits tells of a first event that was changed by hand: it would be taken for
    // another job.
    const std::string* identity = text_of(json, "identity");
    if (identity != nullptr && *identity != identity_of(job.events.front())) {
        return refused("the first event is not the one the job was known by", here,
                       "export it again; events are not to be edited");
    }
    // Files of other programs, and of before there was one, have none.
    const std::string* checksum = text_of(json, "checksum");
    if (checksum != nullptr && *checksum != checksum_of_events(job.events)) {
        return refused("its events are not those that were written", here,
                       "export it again; events are not to be edited");
    }
    return job;
}

// Reads job by job, so that the whole file is never held as a tree.
class JobFileReader {
  public:
    JobFileReader(const std::string& path, const std::string& text) : path_(path), text_(text) {}

    Result<std::vector<ReadJob>> run() {
        const auto keep = [this](int depth, ordered_json::parse_event_t event, ordered_json& value) {
            return take(depth, event, value);
        };
        try {
            const auto rest = ordered_json::parse(text_, keep);
            if (fault_) return *fault_;
            return checked(rest);
        } catch (const ordered_json::exception& error) {  // the parser's only way to say where it stopped
            if (fault_) return *fault_;
            const auto* parse = dynamic_cast<const ordered_json::parse_error*>(&error);
            return refused(
                "this is no job file: it cannot be read as JSON from here on",
                path_ + ":" +
                    line_and_column(text_, parse == nullptr || parse->byte == 0 ? 0 : parse->byte - 1));
        }
    }

  private:
    // Depth 0 is the file, 1 the list of jobs, 2 a job: that one is taken and not kept in the tree.
    bool take(int depth, ordered_json::parse_event_t event, ordered_json& value) {
        if (depth > 64 && !fault_) fault_ = refused("it is nested too deep", path_);
        if (fault_) return false;
        if (depth != 2 || event != ordered_json::parse_event_t::object_end) return true;
        auto job = job_of(value, path_);
        if (job.ok()) {
            jobs_.push_back(std::move(job.value()));
        } else {
            fault_ = job.error();
        }
        return false;
    }

    Result<std::vector<ReadJob>> checked(const ordered_json& rest) {
        const bool ours =
            rest.is_object() && rest.contains(job_file_mark) && rest[job_file_mark].is_number_integer();
        if (!ours)
            return refused("this is no job file: it lacks '" + std::string(job_file_mark) + "'", path_);
        if (rest[job_file_mark] > job_file_version) {
            return Error{Error::Kind::unsupported, "this job file was written by a newer version of Hardover",
                         path_, "import it with the newer version"};
        }
        if (!rest.contains("jobs") || !rest["jobs"].is_array() || !rest["jobs"].empty()) {
            return refused("'jobs' is not a list of jobs", path_);
        }
        return std::move(jobs_);
    }

    const std::string& path_;
    const std::string& text_;
    std::vector<ReadJob> jobs_;
    std::optional<Error> fault_;
};

}  // namespace

std::string jobs_detail::checksum_of_events(const std::vector<StoredEvent>& events) {
    std::string identities;
    for (const StoredEvent& event : events) identities += identity_of(event) + "\n";
    return sha256_of(identities);
}

void jobs_detail::collect_photos(const std::vector<StoredEvent>& events, std::set<std::string>& files) {
    for (const StoredEvent& stored : events) {
        if (stored.kind != "attached") continue;
        const auto event = from_stored(stored);
        if (!event.ok()) continue;
        const std::string& file = std::get<Attached>(event.value()).file;
        if (is_photo_name(file)) files.insert(file);
    }
}

Result<JobFileRead> read_job_file(const Knowledge& knowledge, const std::string& path) {
    const auto text = read_whole_file(path);
    if (!text.ok()) return text.error();
    return job_file_of(knowledge, text.value(), path);
}

Result<JobFileRead> job_file_of(const Knowledge& knowledge, const std::string& text,
                                const std::string& path) {
    auto jobs = JobFileReader(path, text).run();
    if (!jobs.ok()) return jobs.error();
    JobFileRead read;
    std::set<std::string> files;
    auto kept = std::make_shared<std::vector<ArrivingJob>>();
    auto places = std::make_shared<std::map<JobNumber, std::size_t>>();
    for (ReadJob& job : jobs.value()) {
        if (!places->emplace(job.number, kept->size()).second) {
            return refused("two jobs have the number " + std::to_string(job.number), path);
        }
        collect_photos(job.events, files);
        read.arriving.heads.push_back({job.number, job.events.front()});
        const Job replayed = replay_facts(knowledge, job.number, job.events);
        kept->push_back({summary_of(knowledge, replayed), std::move(job.events)});
    }
    read.arriving.job = [kept, places](const ArrivingHead& head) -> Result<ArrivingJob> {
        return (*kept)[places->at(head.number)];
    };
    read.photos.assign(files.begin(), files.end());
    return read;
}

}  // namespace hardover
