// A student's part: the key of this PC, and attempts at sets.
#include "app/records/checksum.hpp"
#include "app/records/class_store.hpp"
#include "app/records/connection.hpp"

namespace hardover {

using namespace records_detail;

namespace {

Error no_such_attempt(const std::string& path) {
    return {Error::Kind::not_found, "there is no such attempt on this PC", path, ""};
}

Result<void> insert_line(const Database& database, const std::string& attempt, int sequence,
                         const std::string& line) {
    Statement insert(database, insertion("class_attempt_records"));
    const int code = insert.bind(attempt).bind(std::int64_t{sequence}).bind(line).step();
    if (code != SQLITE_DONE) return database.error(code);
    return {};
}

// Runs an update that must meet one row.
Result<void> update_one(const Database& database, Statement& update) {
    const int code = update.step();
    if (code != SQLITE_DONE) return database.error(code);
    if (sqlite3_changes(database.handle()) == 0) return no_such_attempt(database.path());
    return {};
}

}  // namespace

Result<void> records_detail::empty_the_log(const Database& database) {
    return database.run("PRAGMA wal_checkpoint(TRUNCATE)");
}

Result<std::optional<StoredKey>> ClassStore::own_key() const {
    const Database& database = store_->connection_->database;
    Statement select(database, "SELECT public_key, secret_key FROM class_own_key");
    const int code = select.step();
    if (code == SQLITE_DONE) return std::optional<StoredKey>();
    if (code != SQLITE_ROW) return database.error(code);
    return std::optional<StoredKey>(StoredKey{select.text(0), select.text(1)});
}

Result<StoredKey> ClassStore::keep_own_key(const StoredKey& key) {
    const Database& database = store_->connection_->database;
    Statement insert(database, insertion("class_own_key", "INSERT", " ON CONFLICT (one) DO NOTHING"));
    insert.bind(std::int64_t{1}).bind(key.public_key).bind(key.secret_key);
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    const auto kept = own_key();
    if (!kept) return kept.error();
    return *kept.value();
}

Result<void> ClassStore::begin_attempt(const StoredAttempt& attempt, const std::string& first_line) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement same(database, "SELECT 1 FROM class_attempts WHERE sitting = ? AND seat = ?");
    const int found = same.bind(attempt.sitting).bind(attempt.seat).step();
    if (found == SQLITE_ROW) {
        return Error{Error::Kind::bad_input,
                     "seat " + attempt.seat + " has begun this set on this PC already", store_->path(),
                     "go on with it"};
    }
    if (found != SQLITE_DONE) return database.error(found);
    Statement insert(database, insertion("class_attempts"));
    insert.bind(attempt.attempt).bind(attempt.sitting).bind(attempt.seat).bind(attempt.began_at);
    insert.bind(attempt.file).bind(std::int64_t{0}).bind("").bind("");
    if (const int code = insert.step(); code != SQLITE_DONE) return database.error(code);
    if (auto first = insert_line(database, attempt.attempt, 1, first_line); !first) return first;
    return transaction.commit();
}

Result<std::vector<StoredAttempt>> ClassStore::attempts() const {
    const Database& database = store_->connection_->database;
    Statement select(database,
                     "SELECT attempt, sitting, seat, began_at, file, handed_in, handed_in_at, purged_at, "
                     "(SELECT count(*) FROM class_attempt_records AS r WHERE r.attempt = a.attempt) "
                     "FROM class_attempts AS a ORDER BY began_at DESC, attempt");
    std::vector<StoredAttempt> rows;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        rows.push_back({select.text(0), select.text(1), select.text(2), select.text(3), select.text(4),
                        static_cast<int>(select.number(8)), static_cast<int>(select.number(5)),
                        select.text(6), select.text(7)});
    }
    if (code != SQLITE_DONE) return database.error(code);
    return rows;
}

Result<void> ClassStore::append(const std::string& attempt, int sequence, const std::string& line) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement state(database,
                    "SELECT purged_at, (SELECT coalesce(max(sequence), 0) FROM class_attempt_records AS r "
                    "WHERE r.attempt = a.attempt) FROM class_attempts AS a WHERE attempt = ?");
    const int code = state.bind(attempt).step();
    if (code == SQLITE_DONE) return no_such_attempt(store_->path());
    if (code != SQLITE_ROW) return database.error(code);
    if (!state.text(0).empty() || state.number(1) + 1 != sequence) {
        return Error{Error::Kind::storage, "the attempt was changed by another program meanwhile",
                     store_->path(), "take the set up again"};
    }
    if (auto written = insert_line(database, attempt, sequence, line); !written) return written;
    return transaction.commit();
}

Result<std::vector<std::string>> ClassStore::attempt_lines(const std::string& attempt) const {
    const Database& database = store_->connection_->database;
    Statement select(database, "SELECT line FROM class_attempt_records WHERE attempt = ? ORDER BY sequence");
    select.bind(attempt);
    std::vector<std::string> lines;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) lines.push_back(select.text(0));
    if (code != SQLITE_DONE) return database.error(code);
    return lines;
}

Result<void> ClassStore::keep_handed_in(const std::string& attempt, int count, const std::string& at) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement update(database, "UPDATE class_attempts SET handed_in = ?, handed_in_at = ? WHERE attempt = ?");
    update.bind(std::int64_t{count}).bind(at).bind(attempt);
    if (auto updated = update_one(database, update); !updated) return updated;
    if (auto summed = sum_anew(database, "class_attempts", "attempt = ?", attempt); !summed) return summed;
    return transaction.commit();
}

Result<void> ClassStore::purge(const std::string& attempt, const std::string& at) {
    const Database& database = store_->connection_->database;
    if (auto set = database.run("PRAGMA secure_delete = ON"); !set.ok()) return set;
    {
        Transaction transaction(database);
        if (auto begun = transaction.begin(); !begun.ok()) return begun;
        Statement open(database,
                       "SELECT handed_in = 0 OR handed_in < (SELECT count(*) FROM class_attempt_records AS r "
                       "WHERE r.attempt = a.attempt) FROM class_attempts AS a WHERE attempt = ?");
        const int code = open.bind(attempt).step();
        if (code == SQLITE_DONE) return no_such_attempt(store_->path());
        if (code != SQLITE_ROW) return database.error(code);
        if (open.number(0) != 0) {
            return Error{Error::Kind::bad_input, "not all of this attempt was handed in", store_->path(),
                         "hand it in first"};
        }
        Statement mark(database, "UPDATE class_attempts SET purged_at = ? WHERE attempt = ?");
        if (auto marked = update_one(database, mark.bind(at).bind(attempt)); !marked) return marked;
        if (auto summed = sum_anew(database, "class_attempts", "attempt = ?", attempt); !summed) {
            return summed;
        }
        Statement clear(database, "DELETE FROM class_attempt_records WHERE attempt = ?");
        if (const int cleared = clear.bind(attempt).step(); cleared != SQLITE_DONE) {
            return database.error(cleared);
        }
        if (auto committed = transaction.commit(); !committed) return committed;
    }
    return empty_the_log(database);
}

}  // namespace hardover
