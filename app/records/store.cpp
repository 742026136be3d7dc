// The records file in use: jobs, their events and what is kept beside them, written one transaction at a
// time.
#include "app/records/store.hpp"

#include <filesystem>
#include <system_error>
#include <utility>
#include <vector>

#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/inspect.hpp"
#include "app/records/journal.hpp"
#include "app/records/layout.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace records_detail;

namespace {

Result<void> make_folder(const std::string& path) {
    const auto folder = std::filesystem::path(path).parent_path();
    if (folder.empty()) return {};
    std::error_code failed;
    std::vector<std::filesystem::path> made;
    for (auto at = folder; !at.empty() && !std::filesystem::exists(at, failed); at = at.parent_path()) {
        made.push_back(at);
    }
    std::filesystem::create_directories(folder, failed);
    // The records' own name gets to the disk with SQLite's first journal, those of new folders do not.
    for (const auto& name : made) settle_folder(name.string());
    if (!failed) return {};
    return Error{Error::Kind::storage, "the folder for the records cannot be made: " + failed.message(),
                 folder.string(), "name a folder that may be written"};
}

// Once more, now under SQLite's own locks and with the write-ahead log: its newest pages may stand only
// there.
Result<void> accept(const Database& database, FileState state, Rows rows) {
    const auto version = database.number("PRAGMA user_version");
    if (!version.ok()) return version.error();
    if (version.value() > records_version) return newer_error(database.path(), version.value());
    if (state == FileState::unsettled && version.value() > 0) return look_for_damage(database, rows);
    return {};
}

// The number of the job's last event, 0 when there is no such job. Error: damaged, where one is missing.
Result<std::int64_t> last_sequence(const Database& database, JobNumber job) {
    Statement last(database, "SELECT coalesce(max(sequence), 0) FROM events WHERE job = ?");
    const int code = last.bind(job).step();
    if (code != SQLITE_ROW) return database.error(code);
    if (auto all = demand_last_event(database, "jobs", job, last.number(0)); !all.ok()) return all.error();
    return last.number(0);
}

Result<void> insert_event(const Database& database, JobNumber job, int sequence, const StoredEvent& event) {
    Statement insert(database, insertion("events"));
    insert.bind(job).bind(std::int64_t{sequence}).bind(event.at).bind(event.kind).bind(event.body);
    const int code = insert.step();
    if (code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<void> write_setting(const Database& database, const std::string& name,
                           const std::optional<std::string>& value) {
    Statement write(
        database, value ? insertion("settings", "INSERT OR REPLACE") : "DELETE FROM settings WHERE name = ?");
    write.bind(name);
    if (value) write.bind(*value);
    if (const int code = write.step(); code != SQLITE_DONE) return database.error(code);
    return {};
}

}  // namespace

Result<void> records_detail::write_counts(const Database& database, const StoredCounts& counts) {
    Statement write(database, insertion("counts", "INSERT OR REPLACE"));
    write.bind(counts.shop).bind(counts.number).bind(counts.counts);
    if (const int code = write.step(); code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<Store> Store::open(const std::string& path, std::chrono::milliseconds wait) {
    return open_with(path, wait, false);
}

Result<Store> Store::open_to_mend(const std::string& path, std::chrono::milliseconds wait) {
    return open_with(path, wait, true);
}

Result<Store> Store::open_with(const std::string& path, std::chrono::milliseconds wait, bool damaged_rows) {
    const Rows rows = damaged_rows ? Rows::any : Rows::as_written;
    // SQLite gives some names a meaning of their own ("" and ":memory:" keep nothing): never an absolute one.
    std::error_code failed;
    const std::string file = std::filesystem::absolute(path, failed).string();
    if (path.empty() || failed) return storage_error(path, SQLITE_CANTOPEN);
    const auto state = inspect(file, rows);
    if (!state.ok()) return state.error();
    const bool fresh = state.value() == FileState::fresh;
    if (fresh) {
        if (auto folder = make_folder(file); !folder.ok()) return folder.error();
    }
    auto opened = Database::open(file, SQLITE_OPEN_READWRITE | (fresh ? SQLITE_OPEN_CREATE : 0), wait);
    if (!opened.ok()) return opened.error();
    const Database& database = opened.value();
    database.checkpoint_on_close(false);
    if (!memory_is_shared(database) && has_write_ahead_mark(database)) {
        if (auto held = hold_alone(database); !held.ok()) return held.error();
    }
    if (auto accepted = accept(database, state.value(), rows); !accepted.ok()) return accepted.error();

    // The tables are made before the write-ahead log is used, so that a crash on the way leaves either an
    // empty file or one that bears our mark.
    if (auto migrated = migrate(database, migration_steps()); !migrated.ok()) return migrated.error();
    const auto journal = settle_journal(database, fresh, wait);
    if (!journal.ok()) return journal.error();
    if (auto mended = mend_indices(database); !mended.ok()) return mended.error();
    if (auto set = database.run("PRAGMA foreign_keys = ON"); !set.ok()) return set.error();
    database.checkpoint_on_close(true);
    const auto before = sqlite3_total_changes64(database.handle());
    return Store(
        std::make_unique<Connection>(Connection{std::move(opened.value()), journal.value(), before}));
}

Store::Store(std::unique_ptr<Connection> connection) : connection_(std::move(connection)) {}
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;
Store::~Store() = default;

bool Store::has_written() const {
    return sqlite3_total_changes64(connection_->database.handle()) > connection_->changes_before;
}

bool Store::writes_ahead() const {
    return connection_->journal == Journal::write_ahead;
}

const std::string& Store::path() const {
    return connection_->database.path();
}

Result<JobNumber> Store::start_job(const StoredEvent& first, const JobSummary& summary) {
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    const auto job = next_job(database);
    if (!job.ok()) return job.error();
    if (auto listed = insert_job(database, job.value(), summary, {first}); !listed.ok())
        return listed.error();
    if (auto written = insert_event(database, job.value(), 1, first); !written.ok()) return written.error();
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return job.value();
}

Result<void> Store::append(JobNumber job, const StoredEvent& event, const JobSummary& summary) {
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    const auto last = last_sequence(database, job);
    if (!last.ok()) return last.error();
    if (last.value() == 0) return no_such_job(path(), job);
    if (event.sequence != last.value() + 1) {
        return Error{Error::Kind::storage,
                     "job " + std::to_string(job) + " was changed by another program meanwhile", path(),
                     "load it again"};
    }
    if (auto written = insert_event(database, job, event.sequence, event); !written.ok()) return written;
    if (auto listed = update_job(database, job, summary, event); !listed.ok()) return listed;
    return transaction.commit();
}

Result<std::vector<StoredEvent>> Store::events(JobNumber job) const {
    const Database& database = connection_->database;
    Result<std::vector<StoredEvent>> events = read_events(database, "events", "job", job);
    if (!events.ok()) return events;
    const std::int64_t last = events.value().empty() ? 0 : events.value().back().sequence;
    if (auto all = demand_last_event(database, "jobs", job, last); !all.ok()) return all.error();
    if (events.value().empty()) return no_such_job(path(), job);
    return events;
}

Result<std::map<std::string, std::string>> Store::settings() const {
    const Database& database = connection_->database;
    Statement select(database, "SELECT name, value FROM settings");
    std::map<std::string, std::string> settings;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) settings[select.text(0)] = select.text(1);
    if (code != SQLITE_DONE) return database.error(code);
    return settings;
}

Result<std::vector<StoredCounts>> Store::counts() const {
    const Database& database = connection_->database;
    Statement select(database, "SELECT shop, number, counts FROM counts ORDER BY shop");
    std::vector<StoredCounts> all;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        all.push_back({select.text(0), select.number(1), select.text(2)});
    }
    if (code != SQLITE_DONE) return database.error(code);
    return all;
}

Result<void> Store::keep(const BesideJobs& change) {
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    for (const auto& [name, value] : change.settings) {
        if (auto written = write_setting(database, name, value); !written.ok()) return written;
    }
    if (change.drop_counts) {
        if (auto dropped = database.run("DELETE FROM counts"); !dropped.ok()) return dropped;
    }
    for (const StoredCounts& counts : change.counts) {
        if (auto written = write_counts(database, counts); !written.ok()) return written;
    }
    return transaction.commit();
}

}  // namespace hardover
