// The instructor's part: classes, rosters, sets and what was collected.
#include "app/records/class_store.hpp"

#include "app/records/checksum.hpp"
#include "app/records/connection.hpp"
#include "app/records/without_triggers.hpp"

namespace hardover {

using namespace records_detail;

namespace {

// Runs a statement that gives no rows.
Result<void> done(const Database& database, Statement& statement) {
    const int code = statement.step();
    if (code == SQLITE_DONE) return {};
    return database.error(code);
}

// Whether it wrote a row; false where the row was there.
Result<bool> wrote(const Database& database, Statement& insert) {
    if (auto run = done(database, insert); !run) return run.error();
    return sqlite3_changes(database.handle()) > 0;
}

template <typename Row, typename Read>
Result<std::vector<Row>> rows_of(const Database& database, Statement& select, Read read) {
    std::vector<Row> rows;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) rows.push_back(read(select));
    if (code != SQLITE_DONE) return database.error(code);
    return rows;
}

Result<bool> any(const Database& database, Statement& select) {
    const int code = select.step();
    if (code != SQLITE_ROW && code != SQLITE_DONE) return database.error(code);
    return code == SQLITE_ROW;
}

StoredClassRecord record_of(const Statement& row) {
    return {row.text(0), row.text(1), row.text(2), static_cast<int>(row.number(3)), row.text(4)};
}

std::string lines_of(const std::vector<std::string>& texts) {
    std::string lines;
    for (const std::string& text : texts) lines += text + "\n";
    return lines;
}

std::vector<std::string> texts_of(const std::string& lines) {
    std::vector<std::string> texts;
    std::size_t from = 0;
    for (std::size_t end = lines.find('\n'); end != std::string::npos; end = lines.find('\n', from)) {
        texts.push_back(lines.substr(from, end - from));
        from = end + 1;
    }
    return texts;
}

}  // namespace

Result<ClassNumber> ClassStore::add_class(const StoredClass& added) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    Statement same(database, "SELECT 1 FROM classes WHERE name = ?");
    const Result<bool> taken = any(database, same.bind(added.name));
    if (!taken) return taken.error();
    if (taken.value()) {
        return Error{Error::Kind::bad_input, "there is a class '" + added.name + "' already", store_->path(),
                     "take another name"};
    }
    const auto number = database.number("SELECT coalesce(max(number), 0) + 1 FROM classes");
    if (!number.ok()) return number;
    Statement insert(database, insertion("classes"));
    insert.bind(number.value())
        .bind(added.name)
        .bind(added.made_at)
        .bind(added.public_key)
        .bind(added.sealed);
    if (auto written = done(database, insert); !written) return written.error();
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return number;
}

Result<std::vector<StoredClass>> ClassStore::classes() const {
    const Database& database = store_->connection_->database;
    Statement select(database, "SELECT number, name, made_at, public_key, sealed FROM classes ORDER BY name");
    return rows_of<StoredClass>(database, select, [](const Statement& row) {
        return StoredClass{row.number(0), row.text(1), row.text(2), row.text(3), row.text(4)};
    });
}

Result<void> ClassStore::change_sealed(ClassNumber number, const std::string& sealed) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement update(database, "UPDATE classes SET sealed = ? WHERE number = ?");
    const Result<bool> changed = wrote(database, update.bind(sealed).bind(number));
    if (!changed) return changed.error();
    if (!changed.value()) return Error{Error::Kind::not_found, "there is no such class", store_->path(), ""};
    if (auto summed = sum_anew(database, "classes", "number = ?", std::to_string(number)); !summed) {
        return summed;
    }
    return transaction.commit();
}

Result<std::vector<StoredSeat>> ClassStore::seats(ClassNumber number) const {
    const Database& database = store_->connection_->database;
    Statement select(database,
                     "SELECT code, name, seat_group FROM class_seats WHERE class = ? ORDER BY code");
    select.bind(number);
    return rows_of<StoredSeat>(database, select, [](const Statement& row) {
        return StoredSeat{row.text(0), row.text(1), row.text(2)};
    });
}

Result<void> ClassStore::keep_seats(ClassNumber number, const std::vector<StoredSeat>& seats) {
    const Database& database = store_->connection_->database;
    if (auto set = database.run("PRAGMA secure_delete = ON"); !set.ok()) return set;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement clear(database, "DELETE FROM class_seats WHERE class = ?");
    if (auto cleared = done(database, clear.bind(number)); !cleared) return cleared;
    for (const StoredSeat& seat : seats) {
        Statement insert(database, insertion("class_seats"));
        insert.bind(number).bind(seat.code).bind(seat.name).bind(seat.group);
        if (auto written = done(database, insert); !written) return written;
    }
    if (auto committed = transaction.commit(); !committed) return committed;
    return empty_the_log(database);
}

Result<void> ClassStore::add_set(ClassNumber number, const StoredSet& set) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    Statement same(database, "SELECT 1 FROM class_sets WHERE class = ? AND id = ?");
    const Result<bool> taken = any(database, same.bind(number).bind(set.id));
    if (!taken) return taken.error();
    if (taken.value()) {
        return Error{Error::Kind::bad_input, "the class has a set '" + set.id + "' already", store_->path(),
                     "take another id"};
    }
    Statement insert(database, insertion("class_sets"));
    insert.bind(set.sitting).bind(number).bind(set.id).bind(set.made_at).bind(set.file);
    if (auto written = done(database, insert); !written) return written;
    return transaction.commit();
}

Result<void> ClassStore::forget_set(const std::string& sitting) {
    const Database& database = store_->connection_->database;
    if (auto set = database.run("PRAGMA secure_delete = ON"); !set.ok()) return set;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    WithoutTriggers without;
    if (auto begun = without.begin(database); !begun.ok()) return begun;
    for (const char* table : {"class_records", "class_hand_ins", "class_sets"}) {
        Statement forget(database, std::string("DELETE FROM ") + table + " WHERE sitting = ?");
        if (auto forgotten = done(database, forget.bind(sitting)); !forgotten) return forgotten;
    }
    Statement marks(database, "DELETE FROM class_marks");
    if (auto forgotten = done(database, marks); !forgotten) return forgotten;
    if (auto ended = without.end(database); !ended.ok()) return ended;
    if (auto committed = transaction.commit(); !committed) return committed;
    return empty_the_log(database);
}

Result<std::vector<StoredSet>> ClassStore::sets(ClassNumber number) const {
    const Database& database = store_->connection_->database;
    Statement select(
        database, "SELECT sitting, id, made_at, file FROM class_sets WHERE class = ? ORDER BY made_at, id");
    select.bind(number);
    return rows_of<StoredSet>(database, select, [](const Statement& row) {
        return StoredSet{row.text(0), row.text(1), row.text(2), row.text(3)};
    });
}

Result<ClassStore::Added> ClassStore::collect(const StoredHandIn& hand_in,
                                              const std::vector<StoredClassRecord>& records) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun.error();
    Added added;
    for (const StoredClassRecord& record : records) {
        Statement insert(database, insertion("class_records", "INSERT", " ON CONFLICT (id) DO NOTHING"));
        insert.bind(record.id).bind(record.sitting).bind(record.attempt);
        insert.bind(std::int64_t{record.sequence}).bind(record.line);
        const Result<bool> written = wrote(database, insert);
        if (!written) return written.error();
        added.records += written.value() ? 1 : 0;
    }
    Statement insert(database,
                     insertion("class_hand_ins", "INSERT", " ON CONFLICT (attempt, last, key) DO NOTHING"));
    insert.bind(hand_in.attempt).bind(hand_in.last).bind(hand_in.key).bind(hand_in.sitting);
    insert.bind(hand_in.seat).bind(lines_of(hand_in.records)).bind(hand_in.signature);
    insert.bind(hand_in.countersignature).bind(hand_in.collected_at);
    const Result<bool> written = wrote(database, insert);
    if (!written) return written.error();
    added.hand_in = written.value();
    if (auto committed = transaction.commit(); !committed.ok()) return committed.error();
    return added;
}

Result<std::vector<StoredClassRecord>> ClassStore::records(ClassNumber number) const {
    const Database& database = store_->connection_->database;
    Statement select(database,
                     "SELECT r.id, r.sitting, r.attempt, r.sequence, r.line FROM class_records AS r "
                     "JOIN class_sets AS s ON s.sitting = r.sitting WHERE s.class = ? "
                     "ORDER BY r.sitting, r.attempt, r.sequence, r.id");
    select.bind(number);
    return rows_of<StoredClassRecord>(database, select, record_of);
}

Result<std::vector<StoredClassRecord>> ClassStore::records_of(const std::string& sitting,
                                                              const std::string& attempt) const {
    const Database& database = store_->connection_->database;
    Statement select(database,
                     "SELECT id, sitting, attempt, sequence, line FROM class_records "
                     "WHERE sitting = ? AND attempt = ? ORDER BY sequence, id");
    return rows_of<StoredClassRecord>(database, select.bind(sitting).bind(attempt), record_of);
}

Result<std::vector<StoredHandIn>> ClassStore::hand_ins(ClassNumber number) const {
    const Database& database = store_->connection_->database;
    Statement select(database,
                     "SELECT h.attempt, h.last, h.key, h.sitting, h.seat, h.records, h.signature, "
                     "h.countersignature, h.collected_at FROM class_hand_ins AS h "
                     "JOIN class_sets AS s ON s.sitting = h.sitting WHERE s.class = ? "
                     "ORDER BY h.sitting, h.seat, h.attempt, h.collected_at, h.last, h.key");
    select.bind(number);
    return rows_of<StoredHandIn>(database, select, [](const Statement& row) {
        return StoredHandIn{row.text(0),           row.text(1), row.text(2), row.text(3), row.text(4),
                            texts_of(row.text(5)), row.text(6), row.text(7), row.text(8)};
    });
}

Result<std::optional<std::string>> ClassStore::marks(const std::string& of) const {
    const Database& database = store_->connection_->database;
    Statement select(database, "SELECT marks FROM class_marks WHERE of = ?");
    const Result<bool> there = any(database, select.bind(of));
    if (!there) return there.error();
    return there.value() ? std::optional<std::string>(select.text(0)) : std::nullopt;
}

Result<void> ClassStore::keep_marks(const std::vector<std::pair<std::string, std::string>>& marks) {
    const Database& database = store_->connection_->database;
    Transaction transaction(database);
    if (auto begun = transaction.begin(); !begun.ok()) return begun;
    for (const auto& [of, text] : marks) {
        Statement insert(database, insertion("class_marks", "INSERT OR REPLACE"));
        if (auto written = done(database, insert.bind(of).bind(text)); !written) return written;
    }
    return transaction.commit();
}

}  // namespace hardover
