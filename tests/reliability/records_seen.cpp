#include "records_seen.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <filesystem>

#include "scratch_folder.hpp"

namespace hardover_tests {

namespace fs = std::filesystem;

namespace {

// The first columns of all rows; an error is the one row "error: ...".
std::vector<std::string> ask(sqlite3* handle, const std::string& sql) {
    std::vector<std::string> rows;
    sqlite3_stmt* statement = nullptr;
    int code = sqlite3_prepare_v2(handle, sql.c_str(), -1, &statement, nullptr);
    if (code == SQLITE_OK) {
        while ((code = sqlite3_step(statement)) == SQLITE_ROW) {
            const unsigned char* text = sqlite3_column_text(statement, 0);
            rows.push_back(text == nullptr ? "" : reinterpret_cast<const char*>(text));
        }
    }
    if (code != SQLITE_OK && code != SQLITE_DONE) rows = {std::string("error: ") + sqlite3_errmsg(handle)};
    sqlite3_finalize(statement);
    return rows;
}

// The list shows of each job when it was changed and how; both are written together with the event.
constexpr const char* jobs_out_of_step =
    "SELECT number FROM jobs WHERE NOT EXISTS (SELECT 1 FROM events WHERE job = number) OR changed_at <> "
    "(SELECT at FROM events WHERE job = number ORDER BY sequence DESC LIMIT 1)";
constexpr const char* gaps_in_events =
    "SELECT job FROM events GROUP BY job HAVING max(sequence) <> count(*) OR min(sequence) <> 1";

std::string trouble_of(sqlite3* handle) {
    const auto integrity = ask(handle, "PRAGMA integrity_check");
    if (integrity != std::vector<std::string>{"ok"}) return "integrity: " + integrity.front();
    const auto stray = ask(handle, "PRAGMA foreign_key_check");
    if (!stray.empty()) return "foreign keys: " + stray.front();
    if (ask(handle, "SELECT 1 FROM sqlite_master WHERE name = 'events'").empty()) return "";
    for (const char* odd : {jobs_out_of_step, gaps_in_events}) {
        const auto jobs = ask(handle, odd);
        if (!jobs.empty()) return "job and events out of step: " + jobs.front();
    }
    return "";
}

}  // namespace

RecordsSeen see_records(const std::string& path, const std::string& wanted) {
    RecordsSeen seen;
    const ScratchFolder folder;
    const std::string copy = folder.file("copy.db");
    for (const char* end : {"", "-wal", "-journal"}) {
        if (!fs::exists(path + end)) continue;
        fs::copy_file(path + end, copy + end);
        seen.left_open = seen.left_open || *end != '\0';
    }
    sqlite3* handle = nullptr;
    sqlite3_open(copy.c_str(), &handle);
    seen.trouble = trouble_of(handle);
    const auto version = ask(handle, "PRAGMA user_version");
    seen.version = version.empty() ? 0 : std::atol(version.front().c_str());
    if (!wanted.empty() && seen.version > 0) seen.rows = ask(handle, wanted);
    sqlite3_close(handle);
    return seen;
}

long count_lost(const std::vector<std::string>& before, const std::vector<std::string>& fed,
                std::size_t confirmed, const std::vector<std::string>& found) {
    long lost = 0;
    std::size_t at = 0;
    for (const std::string& row : before) {
        if (at < found.size() && found[at] == row) {
            ++at;
        } else {
            ++lost;
        }
    }
    // What was fed but not confirmed may be there or not, but nothing else, and none with a gap before it.
    std::size_t next = 0;
    while (at < found.size() && next < fed.size() && found[at].find(fed[next]) != std::string::npos) {
        ++at;
        ++next;
    }
    lost += static_cast<long>(confirmed - std::min(confirmed, next));
    return lost + static_cast<long>(found.size() - at);
}

}  // namespace hardover_tests
