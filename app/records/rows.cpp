// The rows of jobs and learners, written with their checksums, and their events, read against theirs.
#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"

namespace hardover {

using namespace records_detail;

Result<std::vector<StoredEvent>> records_detail::read_events(const Database& database,
                                                             const std::string& table,
                                                             const std::string& owner, std::int64_t number) {
    Statement select(database, "SELECT sequence, at, kind, body, " + is_as_written(table) + ", " +
                                   summed(table).named + " FROM " + table + " WHERE " + owner +
                                   " = ? ORDER BY sequence");
    select.bind(number);
    std::vector<StoredEvent> events;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        if (select.number(4) == 0) return damaged_row_error(database.path(), select.text(5));
        events.push_back(
            {static_cast<int>(select.number(0)), select.text(1), select.text(2), select.text(3)});
    }
    if (code != SQLITE_DONE) return database.error(code);
    return events;
}

Result<void> records_detail::demand_last_event(const Database& database, const std::string& table,
                                               std::int64_t number, std::int64_t found) {
    Statement select(database,
                     "SELECT last_event FROM " + table + " WHERE number = ? AND " + is_as_written(table));
    const int code = select.bind(number).step();
    if (code == SQLITE_DONE) return {};
    if (code != SQLITE_ROW) return database.error(code);
    if (select.number(0) == found) return {};
    const std::string owner = table == "jobs" ? "job " : "learner ";
    Error error = damaged_row_error(database.path(), "");
    error.what = damaged_error(database.path(),
                               owner + std::to_string(number) + " has " + std::to_string(select.number(0)) +
                                   " events, and the last one found is event " + std::to_string(found))
                     .what;
    return error;
}

Result<JobNumber> records_detail::next_job(const Database& database) {
    return database.number("SELECT coalesce(max(number), 0) + 1 FROM jobs");
}

Result<void> records_detail::insert_job(const Database& database, JobNumber number, const JobSummary& summary,
                                        const std::vector<StoredEvent>& events) {
    Statement insert(database, insertion("jobs"));
    insert.bind(number).bind(events.front().at).bind(events.back().at);
    insert.bind(summary.boat).bind(summary.state).bind(summary.complaint);
    insert.bind(static_cast<std::int64_t>(events.size()));
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<void> records_detail::update_job(const Database& database, JobNumber number, const JobSummary& summary,
                                        const StoredEvent& last) {
    // All of the row comes from the events, so that a damaged one is right again.
    Statement update(database,
                     "UPDATE jobs SET opened_at = f.at, changed_at = ?2, boat = ?3, state = ?4, complaint = "
                     "?5, last_event = ?6, checksum = checksum_of(?1, f.at, ?2, ?3, ?4, ?5, ?6) "
                     "FROM (SELECT at FROM events WHERE job = ?1 AND sequence = 1) AS f WHERE number = ?1");
    update.bind(number).bind(last.at).bind(summary.boat).bind(summary.state).bind(summary.complaint);
    if (const int code = update.bind(std::int64_t{last.sequence}).step(); code != SQLITE_DONE) {
        return database.error(code);
    }
    return {};
}

Result<LearnerNumber> records_detail::insert_learner(const Database& database, const std::string& name,
                                                     const std::string& added_at) {
    const auto number = database.number("SELECT coalesce(max(number), 0) + 1 FROM learners");
    if (!number.ok()) return number;
    Statement insert(database, insertion("learners"));
    insert.bind(number.value()).bind(name).bind(added_at).bind(std::int64_t{0});
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    return number;
}

Result<void> records_detail::update_learner(const Database& database, LearnerNumber number,
                                            std::int64_t last_event) {
    Statement update(database,
                     "UPDATE learners SET last_event = ?2, checksum = checksum_of(number, name, added_at, "
                     "?2) WHERE number = ?1");
    if (const int code = update.bind(number).bind(last_event).step(); code != SQLITE_DONE) {
        return database.error(code);
    }
    return {};
}

}  // namespace hardover
