#include "killed_commands.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

#include <stdexcept>

#include "app/records/store.hpp"
#include "records/old_layouts.hpp"
#include "records_seen.hpp"

namespace hardover_tests {

namespace {

constexpr int events_of_a_job = 12;

std::string body(int job, int event) {
    return fmt::format("{{\"text\":\"job {} event {}\"}}", job, event);
}

std::string trouble_after_migration(const std::string& path, int jobs, bool finished) {
    const RecordsSeen seen = see_records(path, "SELECT body FROM events ORDER BY job, sequence");
    if (!seen.trouble.empty()) return seen.trouble;
    std::vector<std::string> expected;
    for (int job = 1; job <= jobs; ++job) {
        for (int event = 1; event <= events_of_a_job; ++event) expected.push_back(body(job, event));
    }
    if (seen.rows != expected) return "the events are not those that were written";
    const bool done = seen.version == hardover::records_version;
    if (finished && !done) return "it stays at version " + std::to_string(seen.version);
    if (!done && seen.version != 1) return "it is half way, at version " + std::to_string(seen.version);
    return "";
}

std::string shop_id(int shop) {
    return fmt::format("{:032x}", 0xabc0 + shop);
}

}  // namespace

void make_version_1(const std::string& path, int jobs) {
    sqlite3* handle = nullptr;
    sqlite3_open(path.c_str(), &handle);
    std::string sql = "PRAGMA synchronous = OFF; PRAGMA journal_mode = WAL; BEGIN;" + tables_of_version_1 +
                      "PRAGMA application_id = 1214533494; PRAGMA user_version = 1;";
    const std::string at = "'2026-10-01T08:00:00Z'";
    for (int job = 1; job <= jobs; ++job) {
        sql += fmt::format("INSERT INTO jobs VALUES ({0}, {1}, {1}, 'Tern', 'in hand', 'wander');", job, at);
        for (int event = 1; event <= events_of_a_job; ++event) {
            sql += fmt::format("INSERT INTO events VALUES ({}, {}, {}, 'noted', '{}');", job, event, at,
                               body(job, event));
        }
    }
    sql += "COMMIT";
    const int code = sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr);
    sqlite3_close(handle);
    if (code != SQLITE_OK) throw std::runtime_error("no file of version 1");
}

Command migration(int jobs) {
    Command command;
    command.fault = "kill -9 while an old file is brought up to date";
    command.prepare = [jobs](const std::string& folder) -> std::vector<std::string> {
        make_version_1(folder + "records.db", jobs);
        return {"--records", folder + "records.db", "learner", "list"};
    };
    command.trouble = [jobs](const std::string& folder, bool finished) {
        return trouble_after_migration(folder + "records.db", jobs, finished);
    };
    command.things = jobs * events_of_a_job;
    return command;
}

Command merging_of_counts() {
    Command command;
    command.fault = "kill -9 while other shops' counts are merged";
    command.prepare = [](const std::string& folder) {
        const std::string records = folder + "records.db";
        const Ran ran = run_program({"--records", records, "learner", "add", "A07"});
        if (ran.code != 0) throw std::runtime_error("no records: " + ran.err);
        std::vector<std::string> words = {"--records", records, "learning", "merge"};
        for (int shop = 1; shop <= 3; ++shop) {
            words.push_back(folder + fmt::format("shop{}.json", shop));
            write_file(words.back(),
                       fmt::format("{{\"hardover_counts\": 1, \"shops\": [{{\"shop\": \"{}\", \"number\": 1, "
                                   "\"jobs\": {{}}, \"readings\": {{}}}}]}}",
                                   shop_id(shop)));
        }
        return words;
    };
    command.trouble = [](const std::string& folder, bool finished) -> std::string {
        const RecordsSeen seen = see_records(
            folder + "records.db",
            "SELECT name FROM learners UNION ALL SELECT * FROM (SELECT shop FROM counts ORDER BY shop)");
        if (!seen.trouble.empty()) return seen.trouble;
        const std::vector<std::string> before = {"A07"};
        const std::vector<std::string> after = {"A07", shop_id(1), shop_id(2), shop_id(3)};
        if (seen.rows == after || (!finished && seen.rows == before)) return "";
        return fmt::format("{} rows of learners and counts, finished: {}", seen.rows.size(), finished);
    };
    command.things = 1;
    return command;
}

}  // namespace hardover_tests
