#include "app/records/arriving_classes.hpp"

#include <map>
#include <string>
#include <vector>

#include "app/records/checksum.hpp"

namespace hardover::records_detail {

namespace {

using Row = std::vector<std::string>;

Result<std::vector<Row>> rows_of(const Database& database, const char* sql, int columns) {
    Statement select(database, sql);
    std::vector<Row> rows;
    int code = select.step();
    for (; code == SQLITE_ROW; code = select.step()) {
        Row row;
        for (int column = 0; column < columns; ++column) row.push_back(select.text(column));
        rows.push_back(std::move(row));
    }
    if (code != SQLITE_DONE) return database.error(code);
    return rows;
}

// Inserts a row where its key is free. Texts that are numbers become numbers by the column's type.
Result<bool> insert(const Database& database, const std::string& sql, const Row& row) {
    Statement statement(database, sql);
    for (const std::string& text : row) statement.bind(text);
    if (const int code = statement.step(); code != SQLITE_DONE) return database.error(code);
    return sqlite3_changes(database.handle()) > 0;
}

Result<std::string> free_name(const Database& database, const std::string& wanted) {
    std::string name = wanted;
    for (int twin = 2;; ++twin) {
        Statement taken(database, "SELECT 1 FROM classes WHERE name = ?");
        const int code = taken.bind(name).step();
        if (code == SQLITE_DONE) return name;
        if (code != SQLITE_ROW) return database.error(code);
        name = wanted + " (" + std::to_string(twin) + ")";
    }
}

// Copies rows by one statement each; gives how many were new.
Result<int> copy(const Database& from, const Database& to, const char* select, int columns,
                 const std::string& into) {
    const auto rows = rows_of(from, select, columns);
    if (!rows.ok()) return rows.error();
    int added = 0;
    for (const Row& row : rows.value()) {
        const auto done = insert(to, into, row);
        if (!done.ok()) return done.error();
        added += done.value() ? 1 : 0;
    }
    return added;
}

// The numbers of the classes here by those there.
Result<std::map<std::string, std::string>> take_the_classes(const Database& from, const Database& to,
                                                            ArrivedClasses& arrived) {
    std::map<std::string, std::string> here;
    const auto classes = rows_of(from, "SELECT number, name, made_at, public_key, sealed FROM classes", 5);
    if (!classes.ok()) return classes.error();
    for (const Row& one : classes.value()) {
        Statement known(to, "SELECT number FROM classes WHERE public_key = ?");
        const int code = known.bind(one[3]).step();
        if (code == SQLITE_ROW) {
            here[one[0]] = known.text(0);
            continue;
        }
        if (code != SQLITE_DONE) return to.error(code);
        const auto name = free_name(to, one[1]);
        if (!name.ok()) return name.error();
        const auto number = to.number("SELECT coalesce(max(number), 0) + 1 FROM classes");
        if (!number.ok()) return number.error();
        const auto added = insert(to, insertion("classes"),
                                  {std::to_string(number.value()), name.value(), one[2], one[3], one[4]});
        if (!added.ok()) return added.error();
        here[one[0]] = std::to_string(number.value());
        ++arrived.classes;
        const auto seats = rows_of(from, "SELECT class, code, name, seat_group FROM class_seats", 4);
        if (!seats.ok()) return seats.error();
        for (const Row& seat : seats.value()) {
            if (seat[0] != one[0]) continue;
            const auto kept = insert(to, insertion("class_seats"), {here[one[0]], seat[1], seat[2], seat[3]});
            if (!kept.ok()) return kept.error();
        }
    }
    return here;
}

}  // namespace

Result<ArrivedClasses> take_classes(const Database& from, const Database& to) {
    ArrivedClasses arrived;
    const auto here = take_the_classes(from, to, arrived);
    if (!here.ok()) return here.error();
    const auto sets = rows_of(from, "SELECT sitting, class, id, made_at, file FROM class_sets", 5);
    if (!sets.ok()) return sets.error();
    for (Row set : sets.value()) {
        set[1] = here.value().at(set[1]);
        // A set of the same id that was made here meanwhile is another sitting: that of there gets an id of
        // its own.
        Statement taken(to, "SELECT 1 FROM class_sets WHERE class = ? AND id = ? AND sitting <> ?");
        const int code = taken.bind(set[1]).bind(set[2]).bind(set[0]).step();
        if (code == SQLITE_ROW) set[2] += "-" + set[0].substr(0, 8);
        if (code != SQLITE_ROW && code != SQLITE_DONE) return to.error(code);
        const auto added = insert(to, insertion("class_sets", "INSERT OR IGNORE"), set);
        if (!added.ok()) return added.error();
    }
    const auto records = copy(from, to, "SELECT id, sitting, attempt, sequence, line FROM class_records", 5,
                              insertion("class_records", "INSERT OR IGNORE"));
    if (!records.ok()) return records.error();
    arrived.records = records.value();
    const auto hand_ins =
        copy(from, to,
             "SELECT attempt, last, key, sitting, seat, records, signature, countersignature, collected_at "
             "FROM class_hand_ins",
             9, insertion("class_hand_ins", "INSERT OR IGNORE"));
    if (!hand_ins.ok()) return hand_ins.error();
    return arrived;
}

}  // namespace hardover::records_detail
