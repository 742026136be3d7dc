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

}  // namespace hardover_tests
