// The records file as earlier versions of the layout made it, word for word: what was shipped once does not
// change with the program, so it is written here and not taken from it.
#pragma once

#include <string>

namespace hardover_tests {

inline const std::string tables_of_version_1 = R"sql(
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

inline const std::string added_by_version_2 = R"sql(
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

inline const std::string added_by_version_3 = R"sql(
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

inline const std::string added_by_version_4 = R"sql(
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

inline const std::string added_by_version_5 = R"sql(
CREATE INDEX jobs_by_change ON jobs (changed_at, number);
CREATE INDEX jobs_by_opening ON jobs (opened_at);
CREATE INDEX jobs_by_boat ON jobs (boat COLLATE NOCASE);
CREATE INDEX events_told ON events (job, sequence, kind, at, body)
WHERE kind IN ('opened', 'history_set', 'noted', 'attached', 'handed_back', 'reopened', 'undone');
)sql";

}  // namespace hardover_tests
