// The checksum that every row of the records carries, so that a bit that turns on the disk is noticed. It is
// there for accidents: whoever alters a row by intent can make its checksum anew.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/records/database.hpp"
#include "rules/result/result.hpp"

namespace hardover::records_detail {

// Makes checksum_of(...) known to the connection: CRC-32 (zlib) over the lengths and bytes of its arguments,
// each as the text it is read as. Gives SQLite's code.
int add_checksum_function(sqlite3* handle);

// The same in C++.
std::uint32_t checksum_of(const std::vector<std::string>& texts);

// A table whose rows carry a checksum.
struct Summed {
    const char* table;
    const char* columns;  // what the checksum is over, in the order of insertion()
    const char* key;      // of them, those that tell which row it is
    const char* named;    // the row in words, as SQL
    bool read_by_row;     // looked at when a row is read; the others when the file is opened
};

// All of them, those first that others refer to.
const std::vector<Summed>& summed_tables();
const Summed& summed(const std::string& table);

// "INSERT INTO table (columns, checksum) VALUES (?1, ?2 ..., checksum_of(?1, ?2 ...))". `how` stands in the
// place of INSERT, `end` behind it all.
std::string insertion(const std::string& table, const std::string& how = "INSERT",
                      const std::string& end = "");

// "table.checksum IS checksum_of(columns)": whether a row is as it was written.
std::string is_as_written(const std::string& table);

// Sums rows of a table anew that were changed on purpose. `where` has one place, for `key`.
Result<void> sum_anew(const Database& database, const std::string& table, const std::string& where,
                      const std::string& key);

struct DamagedRow {
    const Summed* of = nullptr;
    std::string named;  // "job 12, event 7"
};

// The rows that are not as they were written, at most `most`. `all` false: only of the tables that are not
// read by row.
Result<std::vector<DamagedRow>> damaged_rows(const Database& database, bool all, int most = 100);

// The error for such a row, with what to do.
Error damaged_row_error(const std::string& path, const std::string& named);

}  // namespace hardover::records_detail
