// The shop's records: one SQLite file of jobs, each a list of appended events that is never overwritten;
// beside them learners with their events, a few settings and the counts of other shops. Stores plain values:
// knows nothing of knowledge, boats or what an event means.
#pragma once

#include <chrono>
#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover {

using JobNumber = std::int64_t;
using LearnerNumber = std::int64_t;

// One event as stored. `body` is a JSON object as text; `at` is UTC as "2026-11-25T15:03:13Z".
struct StoredEvent {
    int sequence = 0;  // 1, 2, 3 ... within the job
    std::string at;
    std::string kind;
    std::string body;
};

// What the list of jobs shows, kept with the job so that the list needs no replay.
struct JobSummary {
    std::string boat;
    std::string state;      // "in hand" or "handed back"
    std::string complaint;  // ids, separated by ", "
};

struct JobRow {
    JobNumber number = 0;
    std::string opened_at;
    std::string changed_at;
    int events = 0;
    JobSummary summary;
    bool sound =
        true;  // false: this line is not as it was written; the job's events have their own checksums
};

struct JobEvents {
    JobNumber job = 0;
    std::vector<StoredEvent> events;
};

struct LearnerRow {
    LearnerNumber number = 0;
    std::string name;
    std::string added_at;
    int events = 0;
};

// What another shop counted, as it came: `counts` is a JSON object as text, `number` its export's number.
struct StoredCounts {
    std::string shop;
    std::int64_t number = 0;
    std::string counts;
};

// What is written together, beside the jobs.
struct BesideJobs {
    std::map<std::string, std::optional<std::string>> settings;  // by name; no value: the setting goes
    bool drop_counts = false;                                    // all counts go, before `counts` come
    std::vector<StoredCounts> counts;  // each in the place of what was there of the same shop
};

struct Arriving;    // app/records/arriving.hpp
struct ArrivedAll;  // likewise
struct Mended;      // app/records/mend.hpp
struct MendWish;    // likewise

// An open records file. Movable, not copyable; not shared between threads. Every write is one transaction, on
// disk before the call returns: by a write-ahead log where the programs on this computer can share memory
// over the file, by a rollback journal on a disk of the network (app/records/journal.hpp).
class Store {
  public:
    // Opens the file, makes it (and its folder) when missing, brings an older one up to date in one
    // transaction. Errors, each leaving the file as it was: not a records file (other content, other
    // program's database), damaged, made by a newer version, folder or file not writable, disk full, locked
    // by another program. `wait` is how long another program holding the file is waited for, here and in
    // every later call.
    static Result<Store> open(const std::string& path,
                              std::chrono::milliseconds wait = std::chrono::seconds(5));

    // The same for a file with rows that are not as they were written, for mend().
    static Result<Store> open_to_mend(const std::string& path,
                                      std::chrono::milliseconds wait = std::chrono::seconds(5));

    Store(Store&&) noexcept;
    Store& operator=(Store&&) noexcept;
    ~Store();

    // Starts a job with its first event. Gives its number.
    Result<JobNumber> start_job(const StoredEvent& first, const JobSummary& summary);

    // Appends an event as number `event.sequence`, which must be the next one; otherwise an error says that
    // the job was changed by another program meanwhile (load it again). Nothing is written then.
    Result<void> append(JobNumber job, const StoredEvent& event, const JobSummary& summary);

    // All events of a job in order. Error not_found when there is no such job; damaged when one of them is
    // missing or not as it was written.
    Result<std::vector<StoredEvent>> events(JobNumber job) const;

    // All jobs, or the `most` of them, the last changed first.
    Result<std::vector<JobRow>> jobs(std::int64_t most = 0) const;
    Result<std::int64_t> number_of_jobs() const;

    // The row of one job. Error not_found when there is no such job; damaged when it is not as it was
    // written.
    Result<JobRow> job(JobNumber number) const;

    // The jobs of the boat of this name, upper and lower case aside, the first opened first.
    Result<std::vector<JobRow>> jobs_of_boat(const std::string& boat) const;

    // Hands on the events of these kinds by job and in order, without keeping them. One that is not as it was
    // written is left out: events() and check() name it.
    using TakeEvent = std::function<void(JobNumber, const StoredEvent&)>;
    Result<void> each_event(const std::vector<std::string>& kinds, const TakeEvent& take) const;

    Result<void> each_first_event(const TakeEvent& take) const;

    // The jobs that started with this very event, by number.
    Result<std::vector<JobNumber>> jobs_started_by(const StoredEvent& first) const;

    // Takes in jobs, learners and counts that another records file or an export has, all or nothing, and
    // doubles none (app/records/arriving.hpp).
    Result<ArrivedAll> take_in(const Arriving& arriving);

    // All events of these kinds (none: of every kind), of the jobs in this state, by job and in order. A job
    // with one that is not as it was written is left out.
    Result<std::vector<JobEvents>> events_of(const std::string& state,
                                             const std::vector<std::string>& kinds) const;

    // Every setting by name.
    Result<std::map<std::string, std::string>> settings() const;

    // The counts of other shops, by shop.
    Result<std::vector<StoredCounts>> counts() const;

    // Writes all of it, or nothing.
    Result<void> keep(const BesideJobs& change);

    // Adds a learner. Error bad_input: the name is taken (upper and lower case count as the same).
    Result<LearnerNumber> add_learner(const std::string& name, const std::string& at);

    // All learners, by name.
    Result<std::vector<LearnerRow>> learners() const;

    // Appends an event of a learner as number `event.sequence`, which must be the next one. Error not_found:
    // no such learner; storage: another program wrote meanwhile. Nothing is written then.
    Result<void> append_study(LearnerNumber learner, const StoredEvent& event);

    // All events of a learner in order. Errors as events().
    Result<std::vector<StoredEvent>> study_events(LearnerNumber learner) const;

    // Writes a copy of everything as of now to another file, while other programs may go on writing, and
    // opens it to see that it is whole. The file is there as a whole or not at all. Error bad_input: there is
    // a file of that name already.
    Result<void> backup(const std::string& path) const;

    // The same without a look at what is copied, to put a damaged file aside.
    Result<void> copy_as_it_is(const std::string& path) const;

    // Puts everything of a records file of the present layout in the place of what is here, all or nothing,
    // while other programs may have this file open; they see it at their next step.
    Result<void> put_back(const std::string& path);

    // The rows that are not as they were written, in words ("job 12, event 7"), a hundred at most.
    Result<std::vector<std::string>> damaged() const;

    // Looks at every row's checksum, runs SQLite's integrity and foreign key checks, and whether every job's
    // and learner's events are numbered 1, 2, 3 ... to the last. Error: damaged, with the first finding.
    Result<void> check() const;

    // Mends rows that are not as they were written, in one transaction (app/records/mend.hpp). Of the list of
    // jobs it mends what a bit does; the rest of a line follows from the job's events, by list_anew. A backup
    // that cannot be read is passed over.
    Result<Mended> mend(const MendWish& wish);
    Result<void> list_anew(JobNumber job, const JobSummary& summary);

    // Whether this Store has written anything since it was opened.
    bool has_written() const;
    // False: a rollback journal.
    bool writes_ahead() const;

    const std::string& path() const;

  private:
    friend class ClassStore;  // the tables of a class, in the same file
    struct Connection;
    static Result<Store> open_with(const std::string& path, std::chrono::milliseconds wait,
                                   bool damaged_rows);
    // Copies, and has a look at the copy before it gets its name.
    Result<void> copy_to(const std::string& path,
                         const std::function<Result<void>(const std::string&)>& look) const;
    explicit Store(std::unique_ptr<Connection> connection);
    std::unique_ptr<Connection> connection_;
};

// The version of the file's layout this program writes (SQLite user_version).
inline constexpr int records_version = 6;

}  // namespace hardover
