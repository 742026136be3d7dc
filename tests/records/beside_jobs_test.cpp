// What the records keep beside the jobs: settings and other shops' counts, and the way there from a file of
// version 1.
#include <sqlite3.h>

#include "old_layouts.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A records file of version 1 with one job.
const std::string version_1_file = tables_of_version_1 + R"sql(
PRAGMA application_id = 1214533494;
PRAGMA user_version = 1;
PRAGMA journal_mode = WAL;
INSERT INTO jobs VALUES (1, '2026-10-01T08:00:00Z', '2026-10-01T09:00:00Z', 'Tern', 'in hand', 'wander');
INSERT INTO events VALUES (1, 1, '2026-10-01T08:00:00Z', 'opened', '{"boat":"Tern"}');
INSERT INTO events VALUES (1, 2, '2026-10-01T09:00:00Z', 'noted', '{"text":"kept"}');
)sql";

void make_version_1(const std::string& path) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    REQUIRE(sqlite3_exec(handle, version_1_file.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(handle);
}

Store opened(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    return std::move(store.value());
}

}  // namespace

TEST_CASE("A records file of version 1 opens with its jobs and takes settings and counts") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_version_1(path);
    {
        Store store = opened(path);
        CHECK(store.settings().value().empty());
        CHECK(store.counts().value().empty());
        REQUIRE_OK(store.keep({{{"learning", "off"}}, false, {{"a1", 1, "{}"}}}));
        REQUIRE_OK(store.append(1, {3, "2026-11-25T10:00:00Z", "noted", "{}"}, {"Tern", "in hand", ""}));
    }
    const Store again = opened(path);
    REQUIRE_OK(again.check());
    const auto events = again.events(1);
    REQUIRE_OK(events);
    REQUIRE(events.value().size() == 3);
    CHECK(events.value()[1].body == R"({"text":"kept"})");
    CHECK(again.settings().value().at("learning") == "off");
    CHECK(again.counts().value().size() == 1);
}

TEST_CASE("A file that says version 2 but lacks its tables is refused as damaged and kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_version_1(path);
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    CHECK(sqlite3_exec(handle, "PRAGMA user_version = 2", nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(handle);
    const auto before = folder.content();
    const auto store = Store::open(path);
    REQUIRE_FALSE(store.ok());
    CHECK(store.error().what == "the records file is damaged: no such table: settings");
    CHECK(folder.content() == before);
}

TEST_CASE("A setting is kept, replaced and taken away") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("jobs.db"));
    REQUIRE_OK(store.keep({{{"a", "1"}, {"b", "two \"words\""}}, false, {}}));
    REQUIRE_OK(store.keep({{{"a", "3"}}, false, {}}));
    CHECK(store.settings().value() == std::map<std::string, std::string>{{"a", "3"}, {"b", "two \"words\""}});
    REQUIRE_OK(store.keep({{{"a", std::nullopt}, {"never_there", std::nullopt}}, false, {}}));
    CHECK(store.settings().value() == std::map<std::string, std::string>{{"b", "two \"words\""}});
}

TEST_CASE("A shop's later counts stand in the place of its earlier ones") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("jobs.db"));
    REQUIRE_OK(store.keep({{}, false, {{"b2", 1, "{\"n\":1}"}, {"a1", 4, "{}"}}}));
    REQUIRE_OK(store.keep({{}, false, {{"b2", 2, "{\"n\":2}"}}}));
    const auto counts = store.counts().value();
    REQUIRE(counts.size() == 2);
    CHECK(counts[0].shop == "a1");
    CHECK(counts[1].shop == "b2");
    CHECK(counts[1].number == 2);
    CHECK(counts[1].counts == "{\"n\":2}");
    REQUIRE_OK(store.keep({{}, true, {{"c3", 1, "{}"}}}));
    REQUIRE(store.counts().value().size() == 1);
    CHECK(store.counts().value()[0].shop == "c3");
}

TEST_CASE("What is written beside the jobs is written whole or not at all") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("jobs.db"));
    REQUIRE_OK(store.keep({{{"learning", "on"}}, false, {{"a1", 1, "{}"}}}));
    const auto refused = store.keep({{{"learning", "off"}}, true, {{"b2", 1, "{}"}, {"c3", 0, "{}"}}});
    CHECK_FALSE(refused.ok());  // an export's number starts at 1
    CHECK(store.settings().value().at("learning") == "on");
    REQUIRE(store.counts().value().size() == 1);
    CHECK(store.counts().value()[0].shop == "a1");
}

TEST_CASE("Events are picked by the job's state and their kind, in order") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("jobs.db"));
    for (int job = 1; job <= 3; ++job) {
        REQUIRE_OK(store.start_job({1, "", "opened", "{}"}, summary()));
        REQUIRE_OK(store.append(job, {2, "", "history_set", "{}"}, summary()));
        REQUIRE_OK(store.append(job, {3, "", "noted", "{}"}, summary()));
        REQUIRE_OK(store.append(job, {4, "", "handed_back", "{}"},
                                {"Tern", job == 2 ? "in hand" : "handed back", ""}));
    }
    const auto picked = store.events_of("handed back", {"handed_back", "history_set"});
    REQUIRE_OK(picked);
    REQUIRE(picked.value().size() == 2);
    CHECK(picked.value()[0].job == 1);
    CHECK(picked.value()[1].job == 3);
    REQUIRE(picked.value()[1].events.size() == 2);
    CHECK(picked.value()[1].events[0].sequence == 2);
    CHECK(picked.value()[1].events[1].kind == "handed_back");
    CHECK(store.events_of("handed back", {"reopened"}).value().empty());
    CHECK(store.events_of("in hand", {}).value().at(0).events.size() == 4);
}
