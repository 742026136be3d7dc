// What the records are asked for: rows of the list, events by kind, whether all is in order.
#include <algorithm>
#include <set>

#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/layout.hpp"
#include "app/records/way_back.hpp"

namespace hardover {

using namespace records_detail;

namespace {

std::string select_rows(const char* rest) {
    return "SELECT number, opened_at, changed_at, boat, state, complaint, last_event, " +
           is_as_written("jobs") + " FROM jobs " + rest;
}

JobRow row_of(const Statement& select) {
    JobRow row;
    row.number = select.number(0);
    row.opened_at = select.text(1);
    row.changed_at = select.text(2);
    row.summary = {select.text(3), select.text(4), select.text(5)};
    row.events = static_cast<int>(select.number(6));
    row.sound = select.number(7) != 0;
    return row;
}

Result<std::vector<JobRow>> rows_of(const Database& database, Statement& select) {
    std::vector<JobRow> rows;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) rows.push_back(row_of(select));
    if (code != SQLITE_DONE) return database.error(code);
    return rows;
}

// The table of events, or the index that holds all of these kinds.
std::string events_with(const std::vector<std::string>& kinds) {
    return are_told(kinds) ? "events INDEXED BY events_told" : "events";
}

// " AND kind IN (?, ?)", or nothing for every kind.
std::string kind_clause(const std::vector<std::string>& kinds) {
    std::string clause = are_told(kinds) ? " AND " + told_kinds : "";
    for (std::size_t i = 0; i < kinds.size(); ++i) clause += i == 0 ? " AND kind IN (?" : ", ?";
    return kinds.empty() ? clause : clause + ")";
}

StoredEvent event_of(const Statement& select, int first_column) {
    return {static_cast<int>(select.number(first_column)), select.text(first_column + 1),
            select.text(first_column + 2), select.text(first_column + 3)};
}

}  // namespace

Error records_detail::no_such_job(const std::string& path, JobNumber job) {
    return {Error::Kind::not_found, "there is no job " + std::to_string(job), path, ""};
}

Result<std::vector<JobRow>> Store::jobs(std::int64_t most) const {
    const Database& database = connection_->database;
    Statement select(database, select_rows("ORDER BY changed_at DESC, number DESC LIMIT ?"));
    select.bind(most > 0 ? most : -1);
    return rows_of(database, select);
}

Result<std::vector<JobRow>> Store::jobs_of_boat(const std::string& boat) const {
    const Database& database = connection_->database;
    // An index knows A to Z in both cases; for other letters every line is looked at.
    const bool indexed = std::all_of(boat.begin(), boat.end(), [](unsigned char c) { return c < 0x80; });
    Statement select(database,
                     select_rows(indexed ? "WHERE boat = ? COLLATE NOCASE ORDER BY opened_at, number"
                                         : "WHERE folded(boat) = folded(?) ORDER BY opened_at, number"));
    select.bind(boat);
    return rows_of(database, select);
}

Result<std::int64_t> Store::number_of_jobs() const {
    return connection_->database.number("SELECT count(*) FROM jobs");
}

Result<JobRow> Store::job(JobNumber number) const {
    const Database& database = connection_->database;
    Statement select(database, select_rows("WHERE number = ?"));
    const int code = select.bind(number).step();
    if (code == SQLITE_ROW) {
        JobRow row = row_of(select);
        if (!row.sound) {
            return damaged_row_error(path(), "the line of job " + std::to_string(number) + " in the list");
        }
        return row;
    }
    if (code != SQLITE_DONE) return database.error(code);
    return no_such_job(path(), number);
}

Result<void> Store::each_event(const std::vector<std::string>& kinds, const TakeEvent& take) const {
    const Database& database = connection_->database;
    const std::string sql = "SELECT job, sequence, at, kind, body FROM " + events_with(kinds) + " WHERE " +
                            is_as_written("events") + kind_clause(kinds) + " ORDER BY job, sequence";
    Statement select(database, sql);
    for (const std::string& kind : kinds) select.bind(kind);
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) take(select.number(0), event_of(select, 1));
    if (code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<void> Store::each_first_event(const TakeEvent& take) const {
    const Database& database = connection_->database;
    Statement select(database,
                     "SELECT job, sequence, at, kind, body FROM jobs CROSS JOIN events "
                     "ON job = number AND sequence = 1 AND " +
                         is_as_written("events") + " ORDER BY number");
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) take(select.number(0), event_of(select, 1));
    if (code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<std::vector<JobEvents>> Store::events_of(const std::string& state,
                                                const std::vector<std::string>& kinds) const {
    const Database& database = connection_->database;
    const std::string sql = "SELECT job, sequence, at, kind, body, " + is_as_written("events") + " FROM " +
                            events_with(kinds) + " CROSS JOIN jobs ON number = job WHERE state = ?" +
                            kind_clause(kinds) + " ORDER BY job, sequence";
    Statement select(database, sql);
    select.bind(state);
    for (const std::string& kind : kinds) select.bind(kind);
    std::vector<JobEvents> jobs;
    std::set<JobNumber> damaged;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        if (select.number(5) == 0) damaged.insert(select.number(0));
        if (jobs.empty() || jobs.back().job != select.number(0)) jobs.push_back({select.number(0), {}});
        jobs.back().events.push_back(event_of(select, 1));
    }
    if (code != SQLITE_DONE) return database.error(code);
    std::erase_if(jobs, [&damaged](const JobEvents& one) { return damaged.count(one.job) > 0; });
    return jobs;
}

Result<std::vector<JobNumber>> Store::jobs_started_by(const StoredEvent& first) const {
    const Database& database = connection_->database;
    Statement select(database,
                     "SELECT number FROM jobs JOIN events ON job = number AND sequence = 1 "
                     "WHERE opened_at = ? AND kind = ? AND body = ? ORDER BY number");
    select.bind(first.at).bind(first.kind).bind(first.body);
    std::vector<JobNumber> numbers;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) numbers.push_back(select.number(0));
    if (code != SQLITE_DONE) return database.error(code);
    return numbers;
}

Result<std::vector<std::string>> Store::damaged() const {
    const auto rows = damaged_rows(connection_->database, true);
    if (!rows.ok()) return rows.error();
    std::vector<std::string> named;
    for (const DamagedRow& row : rows.value()) named.push_back(row.named);
    return named;
}

Result<void> Store::check() const {
    const Database& database = connection_->database;
    // First: an index that holds a row as it was written would be told as damaged in its place.
    const auto rows = damaged_rows(database, true, 1);
    if (!rows.ok()) return rows.error();
    if (!rows.value().empty()) return damaged_row_error(path(), rows.value().front().named);
    const auto found = database.first_text("PRAGMA integrity_check(1)");
    if (!found.ok()) return found.error();
    if (found.value() != "ok") {
        Error error = damaged_error(path(), found.value().value_or("no answer"));
        error.cure = std::string("mend it with: hardover records mend; if it stays, ") + go_on_with_a_copy;
        return error;
    }
    const auto stray = database.first_text("PRAGMA foreign_key_check");
    if (!stray.ok()) return stray.error();
    if (stray.value()) return damaged_error(path(), "there are events of a job that is not there");
    const auto gap = database.first_text(
        "SELECT 'job ' || job FROM events GROUP BY job "
        "HAVING min(sequence) <> 1 OR max(sequence) <> count(*) "
        "UNION ALL SELECT 'learner ' || learner FROM study_events GROUP BY learner "
        "HAVING min(sequence) <> 1 OR max(sequence) <> count(*) LIMIT 1");
    if (!gap.ok()) return gap.error();
    if (gap.value()) return damaged_error(path(), "events of " + *gap.value() + " are missing in between");
    const auto fewer = database.first_text(
        "SELECT 'job ' || number FROM jobs WHERE last_event <> "
        "(SELECT coalesce(max(sequence), 0) FROM events WHERE job = number) OR last_event = 0 "
        "UNION ALL SELECT 'learner ' || number FROM learners WHERE last_event <> "
        "(SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = number) LIMIT 1");
    if (!fewer.ok()) return fewer.error();
    if (fewer.value()) return damaged_error(path(), *fewer.value() + " lacks its last events");
    return {};
}

}  // namespace hardover
