// Rows that are not as they were written: named where they are read, mended by their checksum or a backup,
// and older layouts that get their checksums.
#include <sqlite3.h>

#include <random>

#include "app/records/class_store.hpp"
#include "app/records/mend.hpp"
#include "old_layouts.hpp"
#include "records_support.hpp"
#include "whole_content.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Runs SQL as another program would.
void run_sql(const std::string& path, const std::string& sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    char* message = nullptr;
    sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &message);
    INFO((message == nullptr ? "" : message));
    CHECK(message == nullptr);
    sqlite3_free(message);
    sqlite3_close(handle);
}

std::string text_asked(const std::string& path, const char* sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    std::string all;
    const auto take = [](void* into, int columns, char** texts, char**) {
        for (int i = 0; i < columns; ++i) {
            *static_cast<std::string*>(into) += std::string(texts[i] == nullptr ? "" : texts[i]) + "|";
        }
        return 0;
    };
    CHECK(sqlite3_exec(handle, sql, take, &all, nullptr) == SQLITE_OK);
    sqlite3_close(handle);
    return all;
}

// Puts another text in the place of the only one of these bytes in the file.
void change_bytes(const std::string& path, const std::string& from, const std::string& to) {
    std::string bytes = file_text(path);
    const std::size_t at = bytes.find(from);
    REQUIRE(at != std::string::npos);
    write_file(path, bytes.replace(at, from.size(), to));
}

// An answer of a job, which no index has a copy of, with this in it.
StoredEvent answer(int sequence, const std::string& what) {
    return {sequence, "2026-11-25T15:03:13Z", "answered", "{\"reading\":\"" + what + "\"}"};
}

// Job 1 with the answer "springy" as event 2, job 2 beside it.
void make_two_jobs(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    for (int job = 1; job <= 2; ++job) REQUIRE_OK(store.value().start_job(event(1), summary()));
    REQUIRE_OK(store.value().append(1, answer(2, "springy"), summary()));
    REQUIRE_OK(store.value().append(1, event(3), summary()));
}

const std::string one_of_each = R"sql(
INSERT INTO jobs VALUES (4, '2026-11-24T09:00:00Z', '2026-11-24T09:05:00Z', 'Tern', 'in hand', 'wander');
INSERT INTO events VALUES (4, 1, '2026-11-24T09:00:00Z', 'opened', '{"text":"kept"}');
INSERT INTO events VALUES (4, 2, '2026-11-24T09:05:00Z', 'noted', '{"text":"too"}');
)sql";

const std::vector<std::string> added_rows = {
    "",
    "",
    "INSERT INTO settings VALUES ('learning', 'off'); INSERT INTO counts VALUES ('a1', 4, '{}');",
    "INSERT INTO learners VALUES (1, 'A07', '2026-11-25T15:00:00Z');"
    "INSERT INTO study_events VALUES (1, 1, '2026-11-25T15:03:13Z', 'reviewed', '{}');",
    "INSERT INTO classes VALUES (1, 'Evening', '2026-11-25T15:00:00Z', 'key', 'sealed');"
    "INSERT INTO class_seats VALUES (1, 'A07', 'Ann', 'one');"
    "INSERT INTO class_sets VALUES ('s', 1, 'S1', '2026-11-25T15:00:00Z', 'file');"
    "INSERT INTO class_records VALUES ('r', 's', 'a', 1, 'line');"
    "INSERT INTO class_hand_ins VALUES ('a', 'l', 'k', 's', 'A07', 'r', 'g', 'c', '2026-11-25T15:00:00Z');"
    "INSERT INTO class_marks VALUES ('a', 'm'); INSERT INTO class_own_key VALUES (1, 'p', 'q');"
    "INSERT INTO class_attempts VALUES ('b', 's', 'A07', '2026-11-25T15:00:00Z', 'file', 0, '', '');"
    "INSERT INTO class_attempt_records VALUES ('b', 1, 'line');",
    ""};

// A file as the program made it once, with a row in every table.
void make_old_file(const std::string& path, int version) {
    const std::vector<std::string> tables = {"",
                                             tables_of_version_1,
                                             added_by_version_2,
                                             added_by_version_3,
                                             added_by_version_4,
                                             added_by_version_5};
    std::string sql =
        "PRAGMA application_id = 1214533494; PRAGMA user_version = " + std::to_string(version) + ";";
    for (int step = 1; step <= version; ++step) sql += tables[static_cast<std::size_t>(step)];
    sql += one_of_each;
    for (int step = 1; step <= version; ++step) sql += added_rows[static_cast<std::size_t>(step)];
    run_sql(path, sql);
}

}  // namespace

TEST_CASE("A records file of any version before opens with all it holds, and its rows get checksums") {
    const TemporaryFolder folder;
    const std::string fresh = folder.file("fresh.db");
    REQUIRE_OK(Store::open(fresh));
    const char* columns =
        "SELECT m.name, c.name, c.type FROM sqlite_master AS m, pragma_table_info(m.name) AS c "
        "WHERE m.type = 'table' ORDER BY 1, c.cid";
    const char* others = "SELECT type, name, tbl_name FROM sqlite_master ORDER BY 1, 2";
    for (int version = 1; version < records_version; ++version) {
        INFO("version " << version);
        const std::string path = folder.file("version " + std::to_string(version) + ".db");
        make_old_file(path, version);
        auto store = Store::open(path);
        REQUIRE_OK(store);
        REQUIRE_OK(store.value().check());
        const auto events = store.value().events(4);
        REQUIRE_OK(events);
        REQUIRE(events.value().size() == 2);
        CHECK(events.value()[1].body == R"({"text":"too"})");
        CHECK(store.value().jobs().value()[0].events == 2);
        CHECK(store.value().settings().value().count("learning") == (version >= 2 ? 1 : 0));
        if (version >= 3) CHECK(store.value().study_events(1).value().size() == 1);
        if (version >= 4) CHECK(ClassStore(store.value()).attempt_lines("b").value()[0] == "line");
        CHECK(text_asked(path, columns) == text_asked(fresh, columns));
        CHECK(text_asked(path, others) == text_asked(fresh, others));
        // What goes on in it is summed as well, and what is there stays as it is.
        REQUIRE_OK(store.value().append(4, event(3), summary()));
        REQUIRE_OK(store.value().check());
    }
}

TEST_CASE("An answer that changed on the disk is named when its job is read, and other jobs go on") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_two_jobs(path);
    change_bytes(path, "springy", "sprinGy");
    auto store = Store::open(path);
    REQUIRE_OK(store);
    const auto read = store.value().events(1);
    REQUIRE_FALSE(read.ok());
    CHECK(read.error().text() ==
          path +
              ": the records file is damaged: job 1, event 2, is not as it was written (bring it back "
              "with: hardover records mend; or keep it as it reads now with: hardover records mend "
              "--as-it-reads)");
    CHECK(store.value().damaged().value() == std::vector<std::string>{"job 1, event 2"});
    CHECK(store.value().events(2).value().size() == 1);
    REQUIRE_OK(store.value().append(2, event(2), summary()));
    CHECK(store.value().jobs().value().size() == 2);
    CHECK_FALSE(store.value().check().ok());
    CHECK_FALSE(store.value().backup(folder.file("copy.db")).ok());  // no good one goes for a damaged one
    std::size_t answers = 0;
    REQUIRE_OK(store.value().each_event({"answered"}, [&](JobNumber, const StoredEvent&) { ++answers; }));
    CHECK(answers == 0);
}

TEST_CASE("A row of which one bit turned is mended by its checksum, whatever column it is in") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_full_records(path, 2, 5);
    auto sound = Store::open(path);
    REQUIRE_OK(sound);
    const Content content = content_of(sound.value());
    const std::vector<std::string> damages = {
        "UPDATE events SET body = replace(body, 'event 3', 'event 2') WHERE job = 1 AND sequence = 3",
        "UPDATE events SET at = replace(at, 'T08', 'T09') WHERE job = 2 AND sequence = 2",
        "UPDATE events SET checksum = checksum + 4 - 8 * ((checksum / 4) % 2) WHERE job = 1 AND sequence = 1",
        "UPDATE events SET job = 3 WHERE job = 2 AND sequence = 5",
        "UPDATE study_events SET sequence = 13 WHERE sequence = 5",
        "UPDATE jobs SET boat = 'Grey Herof' WHERE number = 1",
        "UPDATE settings SET value = 'metrig' WHERE name = 'units'",
        "UPDATE class_seats SET name = 'Anf' WHERE name = 'Ann'",
        "UPDATE class_attempts SET handed_in = 4 WHERE handed_in = 20",
        "UPDATE class_attempt_records SET line = 'line 3' WHERE sequence = 7"};
    const std::string triggers =
        "DROP TRIGGER events_are_never_changed; DROP TRIGGER study_events_are_never_changed; "
        "DROP TRIGGER class_attempt_records_are_never_changed;";
    for (const std::string& damage : damages) {
        INFO(damage);
        const std::string copy = folder.file("copy.db");
        for (const char* end : {"", "-wal", "-shm"}) fs::remove(copy + end);
        REQUIRE_OK(sound.value().backup(copy));
        run_sql(copy, triggers + damage);
        auto store = Store::open_to_mend(copy);
        REQUIRE_OK(store);
        CHECK(difference(content, content_of(store.value()), store.value()) != Difference::none);
        CHECK_FALSE(store.value().check().ok());
        const auto mended = store.value().mend({});
        REQUIRE_OK(mended);
        CHECK(mended.value().by_bit.size() == 1);
        CHECK(mended.value().left.empty());
        REQUIRE_OK(store.value().check());
        CHECK(content_of(store.value()) == content);
    }
}

TEST_CASE("What more than a bit changed comes back from a backup, or counts as it reads on demand") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db"), backup = folder.file("backup.db");
    make_two_jobs(path);
    {
        auto store = Store::open(path);
        REQUIRE_OK(store);
        REQUIRE_OK(store.value().backup(backup));
        REQUIRE_OK(store.value().append(1, answer(4, "foaming"), summary()));  // in no backup
    }
    change_bytes(path, "springy", "SPRINGY");
    change_bytes(path, "foaming", "FOAMING");
    auto store = Store::open_to_mend(path);
    REQUIRE_OK(store);
    const auto tried = store.value().mend({{folder.file("no such.db"), backup}, false});
    REQUIRE_OK(tried);
    CHECK(tried.value().by_backup == std::vector<std::string>{"job 1, event 2, from " + backup});
    CHECK(tried.value().left == std::vector<std::string>{"job 1, event 4"});
    CHECK_FALSE(store.value().events(1).ok());
    const auto kept = store.value().mend({{}, true});
    REQUIRE_OK(kept);
    CHECK(kept.value().as_they_read == std::vector<std::string>{"job 1, event 4"});
    REQUIRE_OK(store.value().check());
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    CHECK(events.value()[1].body == answer(2, "springy").body);
    CHECK(events.value()[3].body == answer(4, "FOAMING").body);
    // Its events are kept from change again.
    CHECK(text_asked(path, "SELECT count(*) FROM sqlite_master WHERE type = 'trigger'") ==
          text_asked(backup, "SELECT count(*) FROM sqlite_master WHERE type = 'trigger'"));
}

TEST_CASE("The last event of a job that went astray is missed") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_two_jobs(path);
    run_sql(path, "DROP TRIGGER events_are_never_deleted; DELETE FROM events WHERE job = 1 AND sequence = 3");
    auto store = Store::open(path);
    REQUIRE_OK(store);
    const auto read = store.value().events(1);
    REQUIRE_FALSE(read.ok());
    CHECK(read.error().what ==
          "the records file is damaged: job 1 has 3 events, and the last one found is event 2");
    CHECK_FALSE(
        store.value().append(1, event(3), summary()).ok());  // it would take the place of the lost one
    CHECK_FALSE(store.value().check().ok());
}

TEST_CASE("An index that lost a boat is made anew on opening") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_two_jobs(path);
    // The index comes after the table in the file, so the last of the names is the index's.
    std::string bytes = file_text(path);
    const std::size_t at = bytes.rfind("Grey Heron");
    REQUIRE(at != bytes.find("Grey Heron"));
    bytes[at + 9] = 'm';
    write_file(path, bytes);
    const auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().jobs_of_boat("Grey Heron").value().size() == 2);
    REQUIRE_OK(store.value().check());
}

TEST_CASE("No single bit of a records file changes what is read of it without being named") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_full_records(path, 3, 20);
    const std::string bytes = file_text(path);
    Content sound;
    {
        auto store = Store::open(path);
        REQUIRE_OK(store);
        sound = content_of(store.value());
    }
    std::mt19937 random(20261126);
    std::uniform_int_distribution<std::size_t> anywhere(0, bytes.size() * 8 - 1);
    int named = 0;
    for (int i = 0; i < 300; ++i) {
        const std::size_t bit = anywhere(random);
        INFO("bit " << bit % 8 << " of byte " << bit / 8);
        std::string wrong = bytes;
        wrong[bit / 8] = static_cast<char>(static_cast<unsigned char>(wrong[bit / 8]) ^ (1U << (bit % 8)));
        for (const char* end : {"-wal", "-shm"}) fs::remove(path + end);
        write_file(path, wrong);
        auto store = Store::open(path);
        if (!store.ok()) continue;
        const Difference now = difference(sound, content_of(store.value()), store.value());
        CHECK(now != Difference::silent);
        named += now == Difference::named ? 1 : 0;
    }
    CHECK(named > 5);
}
