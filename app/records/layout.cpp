// The tables of the records file, as steps from version to version.
#include "app/records/layout.hpp"

#include <string>

namespace hardover::records_detail {

namespace {

// A job is a row that the list shows, and its events. Events are only ever appended: the triggers refuse
// everything else, from whatever program.
constexpr const char* version_1 = R"sql(
CREATE TABLE jobs (
    number INTEGER PRIMARY KEY,
    opened_at TEXT NOT NULL,
    changed_at TEXT NOT NULL,
    boat TEXT NOT NULL,
    state TEXT NOT NULL,
    complaint TEXT NOT NULL
) STRICT;

CREATE TABLE events (
    job INTEGER NOT NULL REFERENCES jobs (number),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    at TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (job, sequence)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER events_are_appended_in_order BEFORE INSERT ON events
WHEN NEW.sequence <> 1 + (SELECT coalesce(max(sequence), 0) FROM events WHERE job = NEW.job)
BEGIN SELECT RAISE(ABORT, 'an event must be the next one of its job'); END;

CREATE TRIGGER events_are_never_changed BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;

CREATE TRIGGER events_are_never_deleted BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;
)sql";

// Settings of the shop, and what other shops counted: of each shop its newest export only.
constexpr const char* version_2 = R"sql(
CREATE TABLE settings (
    name TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE counts (
    shop TEXT PRIMARY KEY,
    number INTEGER NOT NULL CHECK (number >= 1),
    counts TEXT NOT NULL
) STRICT, WITHOUT ROWID;
)sql";

// Learners, and what each did: only ever appended, as the events of a job.
constexpr const char* version_3 = R"sql(
CREATE TABLE learners (
    number INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    added_at TEXT NOT NULL
) STRICT;

CREATE TABLE study_events (
    learner INTEGER NOT NULL REFERENCES learners (number),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    at TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (learner, sequence)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER study_events_are_appended_in_order BEFORE INSERT ON study_events
WHEN NEW.sequence <> 1 + (SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = NEW.learner)
BEGIN SELECT RAISE(ABORT, 'an event must be the next one of its learner'); END;

CREATE TRIGGER study_events_are_never_changed BEFORE UPDATE ON study_events
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;

CREATE TRIGGER study_events_are_never_deleted BEFORE DELETE ON study_events
BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;
)sql";

// What must be readable in a file of each version, beside what was there before.
struct Probe {
    std::int64_t since;
    const char* sql;
};
constexpr Probe probes[] = {
    {1, "SELECT number, opened_at, changed_at, boat, state, complaint FROM jobs LIMIT 1"},
    {1, "SELECT job, sequence, at, kind, body FROM events LIMIT 1"},
    {2, "SELECT name, value FROM settings LIMIT 1"},
    {2, "SELECT shop, number, counts FROM counts LIMIT 1"},
    {3, "SELECT number, name, added_at FROM learners LIMIT 1"},
    {3, "SELECT learner, sequence, at, kind, body FROM study_events LIMIT 1"},
};

}  // namespace

const std::vector<MigrationStep>& migration_steps() {
    static const std::vector<MigrationStep> steps = {version_1, version_2, version_3};
    return steps;
}

Result<void> migrate(const Database& database, const std::vector<MigrationStep>& steps) {
    const auto last = static_cast<std::int64_t>(steps.size());
    const auto before = database.number("PRAGMA user_version");
    if (!before.ok()) return before.error();
    if (before.value() >= last) return {};

    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    // Another program may have done the work while this one waited for the lock.
    const auto version = database.number("PRAGMA user_version");
    if (!version.ok()) return version.error();
    for (auto done = version.value(); done < last; ++done) {
        if (auto step = database.run(steps[static_cast<std::size_t>(done)]); !step.ok()) return step;
    }
    const std::string marks = "PRAGMA application_id = " + std::to_string(application_id) +
                              "; PRAGMA user_version = " + std::to_string(last);
    if (auto marked = database.run(marks.c_str()); !marked.ok()) return marked;
    return transaction.commit();
}

Result<void> look_for_damage(const Database& database) {
    const auto found = database.first_text("PRAGMA quick_check(1)");
    if (!found.ok()) return found.error();
    if (found.value() != "ok") return damaged_error(database.path(), found.value().value_or("no answer"));

    const auto version = database.number("PRAGMA user_version");
    if (!version.ok()) return version.error();
    for (const Probe& probe : probes) {
        const auto row = database.first_text(probe.sql);
        if (version.value() < probe.since) {
            if (version.value() == 0 || !row.ok()) continue;
            return damaged_error(database.path(), "it holds more than its version has");
        }
        // A missing table or column is a plain SQLITE_ERROR: the file bears our mark but not our tables.
        if (!row.ok()) return damaged_error(database.path(), sqlite3_errmsg(database.handle()));
    }
    return {};
}

}  // namespace hardover::records_detail
