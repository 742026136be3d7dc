// The tables of the records file, as steps from version to version.
#include "app/records/layout.hpp"

#include <algorithm>
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

// Classes: on the instructor's PC roster, sets and what was handed in; on a student's PC the attempts at
// sets. Records are only ever appended. A roster is not: a name goes when it is taken out. The records of an
// attempt go from a student's PC only with the attempt, and that only once all of them were handed in.
constexpr const char* version_4 = R"sql(
CREATE TABLE classes (
    number INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE COLLATE NOCASE,
    made_at TEXT NOT NULL,
    public_key TEXT NOT NULL,
    sealed TEXT NOT NULL
) STRICT;

CREATE TABLE class_seats (
    class INTEGER NOT NULL REFERENCES classes (number),
    code TEXT NOT NULL COLLATE NOCASE,
    name TEXT NOT NULL,
    seat_group TEXT NOT NULL,
    PRIMARY KEY (class, code)
) STRICT, WITHOUT ROWID;

CREATE TABLE class_sets (
    sitting TEXT PRIMARY KEY,
    class INTEGER NOT NULL REFERENCES classes (number),
    id TEXT NOT NULL COLLATE NOCASE,
    made_at TEXT NOT NULL,
    file TEXT NOT NULL,
    UNIQUE (class, id)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER class_sets_are_never_changed BEFORE UPDATE ON class_sets
BEGIN SELECT RAISE(ABORT, 'a set is never changed'); END;

CREATE TRIGGER class_sets_are_never_deleted BEFORE DELETE ON class_sets
BEGIN SELECT RAISE(ABORT, 'a set is never deleted'); END;

CREATE TABLE class_records (
    id TEXT PRIMARY KEY,
    sitting TEXT NOT NULL REFERENCES class_sets (sitting),
    attempt TEXT NOT NULL,
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    line TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE INDEX class_records_in_order ON class_records (sitting, attempt, sequence);

CREATE TRIGGER class_records_are_never_changed BEFORE UPDATE ON class_records
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;

CREATE TRIGGER class_records_are_never_deleted BEFORE DELETE ON class_records
BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;

CREATE TABLE class_hand_ins (
    attempt TEXT NOT NULL,
    last TEXT NOT NULL,
    key TEXT NOT NULL,
    sitting TEXT NOT NULL REFERENCES class_sets (sitting),
    seat TEXT NOT NULL,
    records TEXT NOT NULL,
    signature TEXT NOT NULL,
    countersignature TEXT NOT NULL,
    collected_at TEXT NOT NULL,
    PRIMARY KEY (attempt, last, key)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER class_hand_ins_are_never_changed BEFORE UPDATE ON class_hand_ins
BEGIN SELECT RAISE(ABORT, 'a hand-in is never changed'); END;

CREATE TRIGGER class_hand_ins_are_never_deleted BEFORE DELETE ON class_hand_ins
BEGIN SELECT RAISE(ABORT, 'a hand-in is never deleted'); END;

CREATE TABLE class_marks (
    of TEXT PRIMARY KEY,
    marks TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE class_own_key (
    one INTEGER PRIMARY KEY CHECK (one = 1),
    public_key TEXT NOT NULL,
    secret_key TEXT NOT NULL
) STRICT;

CREATE TABLE class_attempts (
    attempt TEXT PRIMARY KEY,
    sitting TEXT NOT NULL,
    seat TEXT NOT NULL COLLATE NOCASE,
    began_at TEXT NOT NULL,
    file TEXT NOT NULL,
    handed_in INTEGER NOT NULL CHECK (handed_in >= 0),
    handed_in_at TEXT NOT NULL,
    purged_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE UNIQUE INDEX class_attempts_by_seat ON class_attempts (sitting, seat);

CREATE TABLE class_attempt_records (
    attempt TEXT NOT NULL REFERENCES class_attempts (attempt),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    line TEXT NOT NULL,
    PRIMARY KEY (attempt, sequence)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER class_attempt_records_are_appended_in_order BEFORE INSERT ON class_attempt_records
WHEN NEW.sequence <> 1 + (SELECT coalesce(max(sequence), 0) FROM class_attempt_records
                          WHERE attempt = NEW.attempt)
     OR (SELECT purged_at FROM class_attempts WHERE attempt = NEW.attempt) <> ''
BEGIN SELECT RAISE(ABORT, 'a record must be the next one of its attempt'); END;

CREATE TRIGGER class_attempt_records_are_never_changed BEFORE UPDATE ON class_attempt_records
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;

CREATE TRIGGER class_attempt_records_go_with_their_attempt BEFORE DELETE ON class_attempt_records
WHEN (SELECT purged_at FROM class_attempts WHERE attempt = OLD.attempt) = ''
BEGIN SELECT RAISE(ABORT, 'a record goes only with its attempt'); END;

CREATE TRIGGER class_attempts_go_when_handed_in BEFORE UPDATE OF purged_at ON class_attempts
WHEN NEW.handed_in = 0
     OR NEW.handed_in < (SELECT count(*) FROM class_attempt_records WHERE attempt = NEW.attempt)
BEGIN SELECT RAISE(ABORT, 'an attempt goes only when all of it was handed in'); END;

CREATE TRIGGER class_attempts_are_never_deleted BEFORE DELETE ON class_attempts
BEGIN SELECT RAISE(ABORT, 'that an attempt was made is never deleted'); END;
)sql";

// Gives a table a checksum of these columns.
std::string with_checksum(const std::string& table, const std::string& columns) {
    return "ALTER TABLE " + table + " ADD COLUMN checksum INTEGER NOT NULL DEFAULT 0; UPDATE " + table +
           " SET checksum = checksum_of(" + columns + ");\n";
}

// For finding among many jobs: the list in its order, by boat and by first moment; and what is told of a job
// as a whole, in the order of the jobs.
const std::string version_5 = R"sql(
CREATE INDEX jobs_by_change ON jobs (changed_at, number);
CREATE INDEX jobs_by_opening ON jobs (opened_at);
CREATE INDEX jobs_by_boat ON jobs (boat COLLATE NOCASE);
CREATE INDEX events_told ON events (job, sequence, kind, at, body) WHERE )sql" +
                              told_kinds + ";";

// A checksum of every row, and of jobs and learners the number of their last event: an event whose key was
// damaged is missed then. Events are copied in their order, which leaves their pages full.
const std::string version_6 = R"sql(
CREATE TABLE summed_events (
    job INTEGER NOT NULL REFERENCES jobs (number),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    at TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    checksum INTEGER NOT NULL,
    PRIMARY KEY (job, sequence)
) STRICT, WITHOUT ROWID;
INSERT INTO summed_events SELECT job, sequence, at, kind, body, checksum_of(job, sequence, at, kind, body)
FROM events NOT INDEXED ORDER BY job, sequence;
DROP TABLE events;
ALTER TABLE summed_events RENAME TO events;
CREATE TRIGGER events_are_appended_in_order BEFORE INSERT ON events
WHEN NEW.sequence <> 1 + (SELECT coalesce(max(sequence), 0) FROM events WHERE job = NEW.job)
BEGIN SELECT RAISE(ABORT, 'an event must be the next one of its job'); END;
CREATE TRIGGER events_are_never_changed BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER events_are_never_deleted BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;
CREATE INDEX events_told ON events (job, sequence, kind, at, body, checksum) WHERE )sql" +
                              told_kinds + R"sql(;

CREATE TABLE summed_study_events (
    learner INTEGER NOT NULL REFERENCES learners (number),
    sequence INTEGER NOT NULL CHECK (sequence >= 1),
    at TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL,
    checksum INTEGER NOT NULL,
    PRIMARY KEY (learner, sequence)
) STRICT, WITHOUT ROWID;
INSERT INTO summed_study_events
SELECT learner, sequence, at, kind, body, checksum_of(learner, sequence, at, kind, body)
FROM study_events ORDER BY learner, sequence;
DROP TABLE study_events;
ALTER TABLE summed_study_events RENAME TO study_events;
CREATE TRIGGER study_events_are_appended_in_order BEFORE INSERT ON study_events
WHEN NEW.sequence <> 1 + (SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = NEW.learner)
BEGIN SELECT RAISE(ABORT, 'an event must be the next one of its learner'); END;
CREATE TRIGGER study_events_are_never_changed BEFORE UPDATE ON study_events
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
CREATE TRIGGER study_events_are_never_deleted BEFORE DELETE ON study_events
BEGIN SELECT RAISE(ABORT, 'an event is never deleted'); END;

ALTER TABLE jobs ADD COLUMN last_event INTEGER NOT NULL DEFAULT 0;
ALTER TABLE learners ADD COLUMN last_event INTEGER NOT NULL DEFAULT 0;
UPDATE jobs SET last_event = (SELECT coalesce(max(sequence), 0) FROM events WHERE job = number);
UPDATE learners SET last_event = (SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = number);

DROP TRIGGER class_sets_are_never_changed;
DROP TRIGGER class_records_are_never_changed;
DROP TRIGGER class_hand_ins_are_never_changed;
DROP TRIGGER class_attempt_records_are_never_changed;
)sql" + with_checksum("jobs", "number, opened_at, changed_at, boat, state, complaint, last_event") +
                              with_checksum("settings", "name, value") +
                              with_checksum("counts", "shop, number, counts") +
                              with_checksum("learners", "number, name, added_at, last_event") +
                              with_checksum("classes", "number, name, made_at, public_key, sealed") +
                              with_checksum("class_seats", "class, code, name, seat_group") +
                              with_checksum("class_sets", "sitting, class, id, made_at, file") +
                              with_checksum("class_records", "id, sitting, attempt, sequence, line") +
                              with_checksum("class_hand_ins",
                                            "attempt, last, key, sitting, seat, records, signature, "
                                            "countersignature, collected_at") +
                              with_checksum("class_marks", "of, marks") +
                              with_checksum("class_own_key", "one, public_key, secret_key") +
                              with_checksum("class_attempts",
                                            "attempt, sitting, seat, began_at, file, handed_in, "
                                            "handed_in_at, purged_at") +
                              with_checksum("class_attempt_records", "attempt, sequence, line") +
                              R"sql(
CREATE TRIGGER class_sets_are_never_changed BEFORE UPDATE ON class_sets
BEGIN SELECT RAISE(ABORT, 'a set is never changed'); END;
CREATE TRIGGER class_records_are_never_changed BEFORE UPDATE ON class_records
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
CREATE TRIGGER class_hand_ins_are_never_changed BEFORE UPDATE ON class_hand_ins
BEGIN SELECT RAISE(ABORT, 'a hand-in is never changed'); END;
CREATE TRIGGER class_attempt_records_are_never_changed BEFORE UPDATE ON class_attempt_records
BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
)sql";

}  // namespace

const std::vector<MigrationStep>& migration_steps() {
    static const std::vector<MigrationStep> steps = {version_1, version_2,         version_3,
                                                     version_4, version_5.c_str(), version_6.c_str()};
    return steps;
}

bool are_told(const std::vector<std::string>& kinds) {
    return !kinds.empty() && std::all_of(kinds.begin(), kinds.end(), [](const std::string& kind) {
        return told_kinds.find("'" + kind + "'") != std::string::npos;
    });
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

}  // namespace hardover::records_detail
