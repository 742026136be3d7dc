// What the records are asked for: rows of the list, events by kind, whether all is in order.
#include "app/records/connection.hpp"
#include "app/records/layout.hpp"

namespace hardover {

using namespace records_detail;

namespace {

constexpr const char* row_columns =
    "SELECT number, opened_at, changed_at, boat, state, complaint, "
    "(SELECT max(sequence) FROM events WHERE job = number) FROM jobs ";

JobRow row_of(const Statement& select) {
    JobRow row;
    row.number = select.number(0);
    row.opened_at = select.text(1);
    row.changed_at = select.text(2);
    row.summary = {select.text(3), select.text(4), select.text(5)};
    row.events = static_cast<int>(select.number(6));
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
    const std::string sql = row_columns + std::string("ORDER BY changed_at DESC, number DESC LIMIT ?");
    Statement select(database, sql.c_str());
    select.bind(most > 0 ? most : -1);
    return rows_of(database, select);
}

Result<std::vector<JobRow>> Store::jobs_of_boat(const std::string& boat) const {
    const Database& database = connection_->database;
    const std::string sql =
        row_columns + std::string("WHERE boat = ? COLLATE NOCASE ORDER BY opened_at, number");
    Statement select(database, sql.c_str());
    select.bind(boat);
    return rows_of(database, select);
}

Result<std::int64_t> Store::number_of_jobs() const {
    return connection_->database.number("SELECT count(*) FROM jobs");
}

Result<JobRow> Store::job(JobNumber number) const {
    const Database& database = connection_->database;
    const std::string sql = row_columns + std::string("WHERE number = ?");
    Statement select(database, sql.c_str());
    const int code = select.bind(number).step();
    if (code == SQLITE_ROW) return row_of(select);
    if (code != SQLITE_DONE) return database.error(code);
    return no_such_job(path(), number);
}

Result<void> Store::each_event(const std::vector<std::string>& kinds, const TakeEvent& take) const {
    const Database& database = connection_->database;
    const std::string sql = "SELECT job, sequence, at, kind, body FROM " + events_with(kinds) +
                            " WHERE TRUE" + kind_clause(kinds) + " ORDER BY job, sequence";
    Statement select(database, sql.c_str());
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
                     "ON job = number AND sequence = 1 ORDER BY number");
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) take(select.number(0), event_of(select, 1));
    if (code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<std::vector<JobEvents>> Store::events_of(const std::string& state,
                                                const std::vector<std::string>& kinds) const {
    const Database& database = connection_->database;
    const std::string sql = "SELECT job, sequence, at, kind, body FROM " + events_with(kinds) +
                            " CROSS JOIN jobs ON number = job WHERE state = ?" + kind_clause(kinds) +
                            " ORDER BY job, sequence";
    Statement select(database, sql.c_str());
    select.bind(state);
    for (const std::string& kind : kinds) select.bind(kind);
    std::vector<JobEvents> jobs;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        if (jobs.empty() || jobs.back().job != select.number(0)) jobs.push_back({select.number(0), {}});
        jobs.back().events.push_back(event_of(select, 1));
    }
    if (code != SQLITE_DONE) return database.error(code);
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

Result<void> Store::check() const {
    const Database& database = connection_->database;
    const auto found = database.first_text("PRAGMA integrity_check(1)");
    if (!found.ok()) return found.error();
    if (found.value() != "ok") return damaged_error(path(), found.value().value_or("no answer"));
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
    const auto empty = database.first_text(
        "SELECT 'job ' || number FROM jobs WHERE NOT EXISTS (SELECT 1 FROM events WHERE job = number)");
    if (!empty.ok()) return empty.error();
    if (empty.value()) return damaged_error(path(), *empty.value() + " has no events");
    return {};
}

}  // namespace hardover
