// The learners and what happened to each: appended events, as for jobs. Knows nothing of what an event means.
#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/folded.hpp"

namespace hardover {

using namespace records_detail;

namespace {

constexpr std::size_t longest_learner_name = 60;  // letters; more would break every list

Error no_such_learner(const std::string& path, LearnerNumber learner) {
    return {Error::Kind::not_found, "there is no learner " + std::to_string(learner), path, ""};
}

Result<bool> is_there(const Database& database, LearnerNumber learner) {
    Statement select(database, "SELECT 1 FROM learners WHERE number = ?");
    const int code = select.bind(learner).step();
    if (code != SQLITE_ROW && code != SQLITE_DONE) return database.error(code);
    return code == SQLITE_ROW;
}

}  // namespace

Result<std::optional<std::string>> records_detail::same_learner(const Database& database,
                                                                const std::string& name) {
    Statement select(database, "SELECT name FROM learners WHERE folded(name) = folded(?)");
    const int code = select.bind(name).step();
    if (code == SQLITE_ROW) return std::optional<std::string>(select.text(0));
    if (code != SQLITE_DONE) return database.error(code);
    return std::optional<std::string>();
}

Result<LearnerNumber> Store::add_learner(const std::string& name, const std::string& at) {
    if (letters_in(name) > longest_learner_name) {
        return Error{Error::Kind::bad_input,
                     "a learner's name has at most " + std::to_string(longest_learner_name) + " letters", "",
                     "a seat such as A07 will do"};
    }
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    const auto same = same_learner(database, name);
    if (!same.ok()) return same.error();
    if (same.value()) {
        return Error{Error::Kind::bad_input, "there is a learner '" + *same.value() + "' already", path(),
                     "take another name"};
    }
    const auto learner = insert_learner(database, name, at);
    if (!learner.ok()) return learner;
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return learner;
}

Result<std::vector<LearnerRow>> Store::learners() const {
    const Database& database = connection_->database;
    Statement select(
        database,
        "SELECT number, name, added_at, (SELECT count(*) FROM study_events WHERE learner = number) "
        "FROM learners ORDER BY name");
    std::vector<LearnerRow> rows;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        rows.push_back(
            {select.number(0), select.text(1), select.text(2), static_cast<int>(select.number(3))});
    }
    if (code != SQLITE_DONE) return database.error(code);
    return rows;
}

Result<void> Store::append_study(LearnerNumber learner, const StoredEvent& event) {
    const Database& database = connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    const Result<bool> there = is_there(database, learner);
    if (!there) return there.error();
    if (!there.value()) return no_such_learner(path(), learner);
    Statement last(database, "SELECT coalesce(max(sequence), 0) FROM study_events WHERE learner = ?");
    if (const int code = last.bind(learner).step(); code != SQLITE_ROW) return database.error(code);
    if (event.sequence != last.number(0) + 1) {
        return Error{Error::Kind::storage, "the learner's record was changed by another program meanwhile",
                     path(), "load it again"};
    }
    if (auto all = demand_last_event(database, "learners", learner, last.number(0)); !all.ok()) return all;
    Statement insert(database, insertion("study_events"));
    insert.bind(learner).bind(std::int64_t{event.sequence}).bind(event.at).bind(event.kind).bind(event.body);
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    if (auto listed = update_learner(database, learner, event.sequence); !listed.ok()) return listed;
    return transaction.commit();
}

Result<std::vector<StoredEvent>> Store::study_events(LearnerNumber learner) const {
    const Database& database = connection_->database;
    const Result<bool> there = is_there(database, learner);
    if (!there) return there.error();
    if (!there.value()) return no_such_learner(path(), learner);
    auto events = read_events(database, "study_events", "learner", learner);
    if (!events.ok()) return events;
    const std::int64_t last = events.value().empty() ? 0 : events.value().back().sequence;
    if (auto all = demand_last_event(database, "learners", learner, last); !all.ok()) return all.error();
    return events;
}

}  // namespace hardover
