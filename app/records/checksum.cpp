#include "app/records/checksum.hpp"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <cstdint>

namespace hardover::records_detail {

namespace {

// The length goes before the bytes, so that a letter that moves to the column beside it is noticed.
unsigned long add_text(unsigned long sum, const unsigned char* text, std::size_t length) {
    std::array<unsigned char, 4> size{};
    for (std::size_t i = 0; i < size.size(); ++i) size[i] = static_cast<unsigned char>(length >> (8 * i));
    sum = crc32_z(sum, size.data(), size.size());
    return text == nullptr ? sum : crc32_z(sum, text, length);
}

void sql_checksum_of(sqlite3_context* context, int count, sqlite3_value** values) {
    unsigned long sum = crc32_z(0, nullptr, 0);
    for (int i = 0; i < count; ++i) {
        // Damage that makes a blob of a text, or nothing, leaves what it reads as, but not what it compares
        // as.
        const int type = sqlite3_value_type(values[i]);
        if (type == SQLITE_BLOB || type == SQLITE_NULL) sum = ~sum & 0xffffffffUL;
        const unsigned char* text = sqlite3_value_text(values[i]);
        sum = add_text(sum, text, static_cast<std::size_t>(sqlite3_value_bytes(values[i])));
    }
    sqlite3_result_int64(context, static_cast<sqlite3_int64>(sum));
}

std::string places(const char* columns) {
    const auto count = 1 + std::count(columns, columns + std::char_traits<char>::length(columns), ',');
    std::string list;
    for (int n = 1; n <= count; ++n) list += (n == 1 ? "?" : ", ?") + std::to_string(n);
    return list;
}

}  // namespace

int add_checksum_function(sqlite3* handle) {
    constexpr int any_number = -1;
    return sqlite3_create_function_v2(handle, "checksum_of", any_number,
                                      SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS, nullptr,
                                      sql_checksum_of, nullptr, nullptr, nullptr);
}

std::uint32_t checksum_of(const std::vector<std::string>& texts) {
    unsigned long sum = crc32_z(0, nullptr, 0);
    for (const std::string& text : texts) {
        sum = add_text(sum, reinterpret_cast<const unsigned char*>(text.data()), text.size());
    }
    return static_cast<std::uint32_t>(sum);
}

const std::vector<Summed>& summed_tables() {
    static const std::vector<Summed> tables = {
        {"settings", "name, value", "name", "'setting ' || name", false},
        {"counts", "shop, number, counts", "shop", "'the counts of shop ' || shop", false},
        {"jobs", "number, opened_at, changed_at, boat, state, complaint, last_event", "number",
         "'the line of job ' || number || ' in the list'", true},
        {"events", "job, sequence, at, kind, body", "job, sequence",
         "'job ' || job || ', event ' || sequence", true},
        {"learners", "number, name, added_at, last_event", "number", "'learner ' || number || ', ' || name",
         false},
        {"study_events", "learner, sequence, at, kind, body", "learner, sequence",
         "'learner ' || learner || ', event ' || sequence", true},
        {"classes", "number, name, made_at, public_key, sealed", "number", "'class ' || name", false},
        {"class_seats", "class, code, name, seat_group", "class, code",
         "'seat ' || code || ' of class ' || class", false},
        {"class_sets", "sitting, class, id, made_at, file", "sitting",
         "'set ' || id || ' of class ' || class", false},
        {"class_records", "id, sitting, attempt, sequence, line", "id",
         "'record ' || sequence || ' of attempt ' || attempt", false},
        {"class_hand_ins",
         "attempt, last, key, sitting, seat, records, signature, countersignature, collected_at",
         "attempt, last, key", "'hand-in of seat ' || seat || ', attempt ' || attempt", false},
        {"class_marks", "of, marks", "of", "'marks of ' || of", false},
        {"class_own_key", "one, public_key, secret_key", "one", "'the key of this PC'", false},
        {"class_attempts", "attempt, sitting, seat, began_at, file, handed_in, handed_in_at, purged_at",
         "attempt", "'attempt ' || attempt || ' of seat ' || seat", false},
        {"class_attempt_records", "attempt, sequence, line", "attempt, sequence",
         "'record ' || sequence || ' of attempt ' || attempt", false},
    };
    return tables;
}

const Summed& summed(const std::string& table) {
    const auto& tables = summed_tables();
    return *std::find_if(tables.begin(), tables.end(),
                         [&table](const Summed& one) { return table == one.table; });
}

std::string insertion(const std::string& table, const std::string& how, const std::string& end) {
    const Summed& of = summed(table);
    const std::string values = places(of.columns);
    return how + " INTO " + table + " (" + of.columns + ", checksum) VALUES (" + values + ", checksum_of(" +
           values + "))" + end;
}

std::string is_as_written(const std::string& table) {
    return table + ".checksum IS checksum_of(" + summed(table).columns + ")";
}

Result<void> sum_anew(const Database& database, const std::string& table, const std::string& where,
                      const std::string& key) {
    Statement update(database, "UPDATE " + table + " SET checksum = checksum_of(" + summed(table).columns +
                                   ") WHERE " + where);
    if (const int code = update.bind(key).step(); code != SQLITE_DONE) return database.error(code);
    return {};
}

Result<std::vector<DamagedRow>> damaged_rows(const Database& database, bool all, int most) {
    std::vector<DamagedRow> rows;
    for (const Summed& of : summed_tables()) {
        if (!all && of.read_by_row) continue;
        // NOT INDEXED: the table itself, not what an index keeps of it.
        Statement select(database, std::string("SELECT ") + of.named + " FROM " + of.table +
                                       " NOT INDEXED WHERE NOT (" + is_as_written(of.table) + ") LIMIT ?");
        select.bind(std::int64_t{most} - static_cast<std::int64_t>(rows.size()));
        int code = select.step();
        for (; code == SQLITE_ROW; code = select.step()) rows.push_back({&of, select.text(0)});
        if (code != SQLITE_DONE) return database.error(code);
    }
    return rows;
}

Error damaged_row_error(const std::string& path, const std::string& named) {
    Error error = damaged_error(path, named + ", is not as it was written");
    error.cure =
        "bring it back with: hardover records mend; or keep it as it reads now with: hardover records mend "
        "--as-it-reads";
    return error;
}

}  // namespace hardover::records_detail
