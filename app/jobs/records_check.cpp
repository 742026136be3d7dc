#include "app/jobs/records_check.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "app/jobs/assessed_mark.hpp"
#include "app/jobs/event.hpp"
#include "app/jobs/job.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/replay.hpp"
#include "app/jobs/wording.hpp"

namespace hardover {

using namespace jobs_detail;

namespace {

std::string counted(int n, const char* what) {
    return fmt::format("{} {}{}", n, what, n == 1 ? "" : "s");
}

class Checker {
  public:
    Checker(const Store& store, const PreparedKnowledge& prepared)
        : store_(store), prepared_(prepared), folder_(photos_folder(store.path())) {}

    Result<RecordsChecked> run(const Watched& watched) {
        const auto damaged = store_.damaged();
        if (!damaged.ok()) return damaged.error();
        for (const std::string& row : damaged.value()) {
            find(row, "not as it was written",
                 "mend it with: hardover records mend, which goes by its checksum or a backup", true);
        }
        done_.damaged = damaged.value();
        // Without damaged rows; what rests on them would be told as damaged too.
        if (damaged.value().empty()) {
            if (auto whole = store_.check(); !whole.ok()) return whole.error();
        }
        const auto rows = store_.jobs();
        if (!rows.ok()) return rows.error();
        std::vector<JobRow> jobs = rows.value();
        std::sort(jobs.begin(), jobs.end(),
                  [](const JobRow& a, const JobRow& b) { return a.number < b.number; });
        for (const JobRow& row : jobs) {
            const auto events = store_.events(row.number);
            if (!events.ok() && damaged.value().empty()) return events.error();
            if (events.ok()) {
                check_job(row, events.value());
            } else {
                in_part_.emplace(row.number, Part{row.sound ? row.events : 0, 0});
            }
            ++done_.jobs;
            if (!goes_on(watched, static_cast<std::size_t>(done_.jobs), jobs.size())) break;
        }
        if (auto left = check_what_is_left(); !left.ok()) return left.error();
        if (auto shared = check_twins(); !shared.ok()) return shared.error();
        tell();
        return std::move(done_);
    }

  private:
    // A job with damaged events: how many it has, 0 where its line in the list is damaged too, and how many
    // of them are as they were written.
    struct Part {
        int events = 0;
        int sound = 0;
    };

    void find(std::string where, std::string what, std::string cure, bool grave) {
        done_.findings.push_back({std::move(where), std::move(what), std::move(cure), grave});
    }

    void check_job(const JobRow& row, const std::vector<StoredEvent>& events) {
        const std::string job = fmt::format("job {}", row.number);
        done_.events += static_cast<int>(events.size());
        for (const StoredEvent& stored : events) check_event(job, stored);
        if (events.front().kind != "opened") {
            find(job, "its first event does not open it", "bring back a backup from before", true);
        }
        const Job replayed = replay_facts(prepared_.knowledge(), row.number, events);
        if (row.sound) check_row(job, row, replayed);
        // What is left out because the knowledge has changed is told on the job's page.
        check_mark(job, events);
        std::set<std::string> seen;  // one photo may be with the job twice, under two captions
        for (const Attached& photo : replayed.photos) {
            if (seen.insert(photo.file).second) check_photo(job, photo);
        }
    }

    void check_event(const std::string& job, const StoredEvent& stored) {
        const auto event = from_stored(stored);
        if (event.ok()) return;
        const bool newer = event.error().kind == Error::Kind::unsupported;
        find(fmt::format("{}, event {}", job, stored.sequence), event.error().what,
             newer ? "open the records with the newer version of the program"
                   : "bring back a backup from before, or go on without this event",
             !newer);
    }

    void check_row(const std::string& job, const JobRow& row, const Job& replayed) {
        const JobSummary summary = summary_of(prepared_.knowledge(), replayed);
        const bool same = summary.boat == row.summary.boat && summary.state == row.summary.state &&
                          replayed.events.front().at == row.opened_at &&
                          replayed.events.back().at == row.changed_at;
        if (same) return;
        find(job,
             fmt::format("the list says '{}, {}', its events say '{}, {}'", row.summary.boat,
                         row.summary.state, summary.boat, summary.state),
             "nothing is lost; add a note to the job, and the list is right again", true);
    }

    // The last hand-back that counts, compared with what its events come to today.
    void check_mark(const std::string& job, const std::vector<StoredEvent>& events) {
        const auto counts = counting(events);
        for (auto stored = events.rbegin(); stored != events.rend(); ++stored) {
            if (stored->kind != "handed_back" || !counts.at(stored->sequence)) continue;
            const auto event = from_stored(*stored);
            if (!event.ok()) return;
            const AssessedMark& then = std::get<HandedBack>(event.value()).assessed;
            if (then.knowledge.empty() || then.knowledge != prepared_.knowledge().fingerprint) {
                ++done_.not_comparable;
                return;
            }
            std::vector<StoredEvent> before(events.begin(), std::prev(stored.base()));
            compare(fmt::format("{}, event {}", job, stored->sequence), then, std::move(before));
            return;
        }
    }

    void compare(const std::string& where, const AssessedMark& then, std::vector<StoredEvent> before) {
        const Job job = replay(prepared_, 0, std::move(before));
        const AssessedMark now = assessed_mark(prepared_.knowledge(), job.facts, job.assessment);
        ++done_.compared;
        const char* cure =
            "compare the job with a backup; an update of the program may have changed what it says, too";
        if (now.found != then.found) {
            find(where,
                 "its events no longer come to what was found at the hand-back, with the same knowledge",
                 cure, true);
            return;
        }
        if (now.odds != then.odds) return;
        ++done_.ranking_compared;
        if (now.ranked != then.ranked) {
            find(where, "its causes are no longer as probable as at the hand-back, with the same knowledge",
                 cure, true);
        }
    }

    void check_photo(const std::string& job, const Attached& photo) {
        ++done_.photos;
        const PhotoState state = look_at_photo(folder_, photo.file);
        if (state == PhotoState::whole) return;
        const bool missing = state == PhotoState::missing;
        find(fmt::format("{}, photo {}", job, photo.name),
             missing ? fmt::format("the file is missing: {}/{}", folder_, photo.file)
                     : fmt::format("the file was altered: {}/{}", folder_, photo.file),
             "copy it back from the folder 'photos' of a backup, or attach the photo again", true);
    }

    // The sound events of jobs that have damaged ones, each by itself: without the others they come to
    // nothing.
    Result<void> check_what_is_left() {
        if (in_part_.empty()) return {};
        return store_.each_event({}, [this](JobNumber number, const StoredEvent& stored) {
            const auto part = in_part_.find(number);
            if (part == in_part_.end()) return;
            ++part->second.sound;
            ++done_.events;
            check_event(fmt::format("job {}", number), stored);
        });
    }

    // Jobs that went on differently on two computers.
    Result<void> check_twins() {
        std::map<std::string, std::vector<JobNumber>> by_start;
        const auto read = store_.each_first_event([&by_start](JobNumber job, const StoredEvent& first) {
            by_start[first.at + first.body].push_back(job);
        });
        if (!read.ok()) return read;
        for (const auto& [start, jobs] : by_start) {
            if (jobs.size() < 2) continue;
            std::vector<std::string> numbers;
            for (const JobNumber job : jobs) numbers.push_back(std::to_string(job));
            find("jobs " + listed(numbers), "they started as one job and went on differently",
                 "go on with one of them, and note in the others which", false);
        }
        return {};
    }

    void tell() {
        done_.told.push_back(fmt::format("{}, {}, {} looked at.", counted(done_.jobs, "job"),
                                         counted(done_.events, "event"), counted(done_.photos, "photo")));
        for (const auto& [number, part] : in_part_) {
            done_.told.push_back(fmt::format(
                "Job {}: {} could be read; the job was not replayed, and its photos were not looked at.",
                number,
                part.events > 0 ? fmt::format("{} of its {}", part.sound, counted(part.events, "event"))
                                : counted(part.sound, "event")));
        }
        if (done_.compared + done_.not_comparable > 0) {
            done_.told.push_back(fmt::format(
                "{} replayed and compared with what was found at the hand-back, {} also by the "
                "probabilities; {} "
                "handed back with other knowledge, or before the program kept what to compare with.",
                counted(done_.compared, "job"), done_.ranking_compared, done_.not_comparable));
        }
        if (!store_.writes_ahead()) {
            done_.told.emplace_back(
                "The file is kept with a rollback journal, as it is or was on a disk of the network: "
                "programs "
                "wait for each other a little longer.");
        }
    }

    const Store& store_;
    const PreparedKnowledge& prepared_;
    std::string folder_;
    std::map<JobNumber, Part> in_part_;
    RecordsChecked done_;
};

}  // namespace

bool RecordsChecked::in_order() const {
    return std::none_of(findings.begin(), findings.end(), [](const RecordsFinding& f) { return f.grave; });
}

Result<RecordsChecked> check_records(const Store& store, const PreparedKnowledge& prepared,
                                     const Watched& watched) {
    return Checker(store, prepared).run(watched);
}

}  // namespace hardover
