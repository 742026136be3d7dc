// Whether a records file has lost or changed part of what was written to it.
#include "app/records/checksum.hpp"
#include "app/records/layout.hpp"

namespace hardover::records_detail {

namespace {

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
    {4, "SELECT number, name, made_at, public_key, sealed FROM classes LIMIT 1"},
    {4, "SELECT class, code, name, seat_group FROM class_seats LIMIT 1"},
    {4, "SELECT sitting, class, id, made_at, file FROM class_sets LIMIT 1"},
    {4, "SELECT id, sitting, attempt, sequence, line FROM class_records LIMIT 1"},
    {4,
     "SELECT attempt, last, key, sitting, seat, records, signature, countersignature, collected_at FROM "
     "class_hand_ins LIMIT 1"},
    {4, "SELECT of, marks FROM class_marks LIMIT 1"},
    {4, "SELECT one, public_key, secret_key FROM class_own_key LIMIT 1"},
    {4,
     "SELECT attempt, sitting, seat, began_at, file, handed_in, handed_in_at, purged_at FROM "
     "class_attempts LIMIT 1"},
    {4, "SELECT attempt, sequence, line FROM class_attempt_records LIMIT 1"},
    {5, "SELECT number FROM jobs INDEXED BY jobs_by_boat WHERE boat = '' COLLATE NOCASE LIMIT 1"},
    {6, "SELECT last_event, checksum FROM jobs LIMIT 1"},
    {6, "SELECT checksum FROM events LIMIT 1"},
    {6, "SELECT last_event, checksum FROM learners LIMIT 1"},
    {6, "SELECT checksum FROM class_attempt_records LIMIT 1"},
};

// Every version's tables must be there, and none of a later one.
Result<void> look_at_tables(const Database& database, std::int64_t version) {
    for (const Probe& probe : probes) {
        const auto row = database.first_text(probe.sql);
        if (version < probe.since) {
            if (version == 0 || !row.ok()) continue;
            return damaged_error(database.path(), "it holds more than its version has");
        }
        // A missing table or column is a plain SQLITE_ERROR: the file bears our mark but not our tables.
        if (!row.ok()) return damaged_error(database.path(), sqlite3_errmsg(database.handle()));
    }
    return {};
}

Result<bool> finds_nothing(const Database& database, const char* check) {
    const auto found = database.first_text(check);
    if (!found.ok()) return found.error();
    if (found.value() == "ok") return true;
    return damaged_error(database.path(), found.value().value_or("no answer"));
}

}  // namespace

Result<bool> read_on_opening(const Database& database) {
    // Free pages are not read: the update of an old file leaves as many of them as it had pages.
    const auto bytes = database.number(
        "SELECT (page_count - freelist_count) * page_size FROM pragma_page_count(), "
        "pragma_freelist_count(), pragma_page_size()");
    if (!bytes.ok()) return bytes.error();
    return bytes.value() <= most_bytes_read_on_opening;
}

Result<void> look_for_damage(const Database& database, Rows rows) {
    const auto small = read_on_opening(database);
    if (!small.ok()) return small.error();
    if (small.value()) {
        if (auto sound = finds_nothing(database, "PRAGMA quick_check(1)"); !sound.ok()) return sound.error();
    }
    const auto version = database.number("PRAGMA user_version");
    if (!version.ok()) return version.error();
    if (auto tables = look_at_tables(database, version.value()); !tables.ok()) return tables;
    if (rows == Rows::any || !small.value() || version.value() < first_with_checksums) return {};
    const auto damaged = damaged_rows(database, false, 1);
    if (!damaged.ok()) return damaged.error();
    if (!damaged.value().empty()) return damaged_row_error(database.path(), damaged.value().front().named);
    return {};
}

Result<void> mend_indices(const Database& database) {
    const auto small = read_on_opening(database);
    if (!small.ok()) return small.error();
    if (!small.value()) return {};
    for (const Summed& of : summed_tables()) {
        const std::string table = of.table;
        if (table == "events" || table == "study_events") continue;
        const std::string look = "PRAGMA integrity_check(" + table + ")";
        if (finds_nothing(database, look.c_str()).ok()) continue;
        if (auto made = database.run(("REINDEX " + table).c_str()); !made.ok()) return made;
    }
    // To look for each of the many events in their index would take long; but it has their checksums too, so
    // that those it holds rightly can be counted.
    const auto wrong =
        database.number(("SELECT (SELECT count(*) FROM events NOT INDEXED WHERE " + told_kinds +
                         ") <> (SELECT count(*) FROM events INDEXED BY events_told WHERE " + told_kinds +
                         " AND " + is_as_written("events") + ")")
                            .c_str());
    if (!wrong.ok()) return wrong.error();
    return wrong.value() != 0 ? database.run("REINDEX events_told") : Result<void>();
}

}  // namespace hardover::records_detail
