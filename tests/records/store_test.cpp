// The records in normal use: jobs started, events appended and read again, and what is refused.
#include "app/records/store.hpp"

#include <sqlite3.h>

#include "app/records/layout.hpp"
#include "old_layouts.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Runs SQL as another program would. Gives SQLite's message, or "".
std::string run_elsewhere(const std::string& path, const std::string& sql) {
    sqlite3* handle = nullptr;
    sqlite3_open(path.c_str(), &handle);
    char* message = nullptr;
    sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, &message);
    const std::string text = message == nullptr ? "" : message;
    sqlite3_free(message);
    sqlite3_close(handle);
    return text;
}

}  // namespace

TEST_CASE("A new records file and its folders are made on opening") {
    const TemporaryFolder folder;
    const std::string path = folder.file("shop/2026/jobs.db");
    auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().path() == path);
    REQUIRE(store.value().jobs().ok());
    CHECK(store.value().jobs().value().empty());
    REQUIRE_OK(store.value().check());
}

TEST_CASE("An empty file counts as a new one") {
    const TemporaryFolder folder;
    write_file(folder.file("jobs.db"), "");
    REQUIRE_OK(Store::open(folder.file("jobs.db")));
    CHECK(records_detail::migration_steps().size() == static_cast<std::size_t>(records_version));
}

TEST_CASE("Events come back in order, word for word, after closing and opening") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    const std::string words =
        "wheel's stiff \"one way\"\n\xC3\xA9t\xC3\xA9 \xE2\x80\x94 50% ; DROP TABLE jobs";
    {
        auto store = Store::open(path);
        REQUIRE_OK(store);
        const auto job = store.value().start_job({1, "2026-11-25T08:00:00Z", "opened", words}, summary());
        REQUIRE_OK(job);
        CHECK(job.value() == 1);
        REQUIRE_OK(store.value().append(1, {2, "2026-11-25T08:01:00Z", "noted", std::string("a\0b", 3)},
                                        {"Tern", "handed back", "wander, hard_one_way"}));
    }
    auto store = Store::open(path);
    REQUIRE_OK(store);
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    REQUIRE(events.value().size() == 2);
    CHECK(events.value()[0].body == words);
    CHECK(events.value()[0].kind == "opened");
    CHECK(events.value()[1].body == std::string("a\0b", 3));
    CHECK(events.value()[1].sequence == 2);
    CHECK(events.value()[1].at == "2026-11-25T08:01:00Z");

    const auto jobs = store.value().jobs();
    REQUIRE_OK(jobs);
    REQUIRE(jobs.value().size() == 1);
    const JobRow& row = jobs.value()[0];
    CHECK(row.number == 1);
    CHECK(row.events == 2);
    CHECK(row.opened_at == "2026-11-25T08:00:00Z");
    CHECK(row.changed_at == "2026-11-25T08:01:00Z");
    CHECK(row.summary.boat == "Tern");
    CHECK(row.summary.state == "handed back");
    CHECK(row.summary.complaint == "wander, hard_one_way");
}

TEST_CASE("The job changed last stands first in the list") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(store);
    for (int i = 1; i <= 3; ++i) {
        StoredEvent first = event(1);
        first.at = "2026-11-25T08:0" + std::to_string(i) + ":00Z";
        REQUIRE_OK(store.value().start_job(first, summary()));
    }
    StoredEvent later = event(2);
    later.at = "2026-11-25T09:00:00Z";
    REQUIRE_OK(store.value().append(2, later, summary()));
    const auto jobs = store.value().jobs();
    REQUIRE_OK(jobs);
    REQUIRE(jobs.value().size() == 3);
    CHECK(jobs.value()[0].number == 2);
    CHECK(jobs.value()[1].number == 3);
    CHECK(jobs.value()[2].number == 1);
}

TEST_CASE("A job that is not there is said to be not there") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(store);
    const auto events = store.value().events(7);
    REQUIRE_FALSE(events.ok());
    CHECK(events.error().kind == Error::Kind::not_found);
    CHECK(events.error().what == "there is no job 7");
    const auto appended = store.value().append(7, event(1), summary());
    REQUIRE_FALSE(appended.ok());
    CHECK(appended.error().kind == Error::Kind::not_found);
}

TEST_CASE("Of two windows on one job the second to write is told to load it again") {
    const TemporaryFolder folder;
    auto first = Store::open(folder.file("jobs.db"));
    auto second = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(first);
    REQUIRE_OK(second);
    const auto job = first.value().start_job(event(1), summary());
    REQUIRE_OK(job);
    REQUIRE_OK(first.value().append(job.value(), event(2), summary()));

    const auto clash = second.value().append(job.value(), event(2), summary());
    REQUIRE_FALSE(clash.ok());
    CHECK(clash.error().what == "job 1 was changed by another program meanwhile");
    CHECK(clash.error().cure == "load it again");
    CHECK(second.value().events(job.value()).value().size() == 2);
    CHECK_FALSE(second.value().append(job.value(), event(4), summary()).ok());
    REQUIRE_OK(second.value().append(job.value(), event(3), summary()));
}

TEST_CASE("No program can change, delete or replace an event") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 3);
    CHECK(run_elsewhere(path, "UPDATE events SET body = '{}' WHERE sequence = 2") ==
          "an event is never changed");
    CHECK(run_elsewhere(path, "DELETE FROM events") == "an event is never deleted");
    CHECK(run_elsewhere(path, "INSERT OR REPLACE INTO events VALUES (1, 2, '', 'noted', '{}', 0)") ==
          "an event must be the next one of its job");
    CHECK(run_elsewhere(path, "INSERT INTO events VALUES (1, 5, '', 'noted', '{}', 0)") ==
          "an event must be the next one of its job");
    auto store = Store::open(path);
    REQUIRE_OK(store);
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    CHECK(events.value().size() == 3);
    CHECK(in_order(events.value()));
}

TEST_CASE("Names that SQLite would keep in memory only are files or refused") {
    CHECK_FALSE(Store::open("").ok());
    const TemporaryFolder folder;
    const std::string path = folder.file("100% odd?name#1.db");
    make_records(path, 2);
    auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().events(1).value().size() == 2);
    CHECK(fs::exists(path));
}

TEST_CASE("A layout step that fails leaves the file at the version it had") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 3);
    auto database = records_detail::Database::open(path, SQLITE_OPEN_READWRITE, std::chrono::milliseconds(0));
    REQUIRE_OK(database);

    auto steps = records_detail::migration_steps();
    steps.push_back("ALTER TABLE jobs ADD COLUMN yard TEXT NOT NULL DEFAULT ''");
    steps.push_back("CREATE TABLE jobs (number INTEGER)");  // is there already
    CHECK_FALSE(records_detail::migrate(database.value(), steps).ok());
    CHECK(database.value().number("PRAGMA user_version").value() == records_version);
    CHECK_FALSE(database.value().first_text("SELECT yard FROM jobs").ok());

    steps.pop_back();
    REQUIRE_OK(records_detail::migrate(database.value(), steps));
    CHECK(database.value().number("PRAGMA user_version").value() == records_version + 1);
    CHECK(database.value().first_text("SELECT yard FROM jobs").value() == "");
    CHECK(database.value().number("SELECT count(*) FROM events").value() == 3);
}

TEST_CASE("A move hands the open file over") {
    const TemporaryFolder folder;
    auto opened = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(opened);
    Store store = std::move(opened.value());
    REQUIRE_OK(store.start_job(event(1), summary()));
    auto other = Store::open(folder.file("other.db"));
    REQUIRE_OK(other);
    store = std::move(other.value());
    CHECK(store.jobs().value().empty());
}

TEST_CASE("A records file of version 4, without the means of finding, gets them and keeps its jobs") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    REQUIRE(run_elsewhere(path,
                          tables_of_version_1 + added_by_version_2 + added_by_version_3 + added_by_version_4 +
                              "PRAGMA application_id = 1214533494; PRAGMA user_version = 4;"
                              "INSERT INTO jobs VALUES (1, '" +
                              event(1).at + "', '" + event(3).at + "', 'Grey Heron', 'in hand', 'wander')") ==
            "");
    for (int i = 1; i <= 3; ++i) {
        REQUIRE(run_elsewhere(path, "INSERT INTO events VALUES (1, " + std::to_string(i) + ", '" +
                                        event(i).at + "', 'noted', '" + event(i).body + "')") == "");
    }
    const auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().events(1).value().size() == 3);
    std::size_t notes = 0;
    REQUIRE_OK(store.value().each_event({"noted"}, [&notes](JobNumber, const StoredEvent&) { ++notes; }));
    CHECK(notes == 3);
    CHECK(store.value().jobs_of_boat("GREY HERON").value().size() == 1);
}

TEST_CASE("Events are picked by kind the same whether the index holds the kinds or not") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("jobs.db"));
    REQUIRE_OK(store);
    for (int job = 1; job <= 3; ++job) {
        REQUIRE_OK(store.value().start_job(event(1), summary()));
        REQUIRE_OK(store.value().append(job, {2, event(2).at, "answered", "{}"}, summary()));
        REQUIRE_OK(store.value().append(job, event(3), summary()));
    }
    const auto picked = [&store](const std::vector<std::string>& kinds) {
        std::string text;
        REQUIRE_OK(store.value().each_event(kinds, [&text](JobNumber job, const StoredEvent& one) {
            text += std::to_string(job) + "." + std::to_string(one.sequence) + " ";
        }));
        return text;
    };
    CHECK(picked({"noted"}) == "1.1 1.3 2.1 2.3 3.1 3.3 ");
    CHECK(picked({"answered", "noted"}) == "1.1 1.2 1.3 2.1 2.2 2.3 3.1 3.2 3.3 ");
    CHECK(picked({}) == picked({"answered", "noted"}));
    CHECK(store.value().events_of("in hand", {"noted"}).value().size() == 3);
    CHECK(store.value().events_of("handed back", {"noted"}).value().empty());
}
