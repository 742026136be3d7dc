// Learners in the records: their events are appended in order and never changed, and a file of version 2
// opens with all it holds.
#include <sqlite3.h>

#include "app/records/arriving.hpp"
#include "app/records/folded.hpp"
#include "old_layouts.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A records file of version 2 with a job, a setting and another shop's counts.
const std::string version_2_file = tables_of_version_1 + added_by_version_2 + R"sql(
PRAGMA application_id = 1214533494;
PRAGMA user_version = 2;
INSERT INTO jobs VALUES (1, '2026-11-24T09:00:00Z', '2026-11-24T09:05:00Z', 'Tern', 'in hand', 'wander');
INSERT INTO events VALUES (1, 1, '2026-11-24T09:00:00Z', 'opened', '{"text":"kept"}');
INSERT INTO settings VALUES ('learning', 'off');
INSERT INTO counts VALUES ('a1', 4, '{}');
)sql";

int run_sql(const std::string& path, const char* sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    const int code = sqlite3_exec(handle, sql, nullptr, nullptr, nullptr);
    sqlite3_close(handle);
    return code;
}

Store opened(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    return std::move(store.value());
}

StoredEvent review(int sequence) {
    return {sequence, "2026-11-25T15:03:13Z", "reviewed", "{\"mark\":1}"};
}

}  // namespace

TEST_CASE("A records file of version 2 opens with all it holds and takes learners") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    REQUIRE(run_sql(path, version_2_file.c_str()) == SQLITE_OK);
    {
        Store store = opened(path);
        CHECK(store.learners().value().empty());
        const auto learner = store.add_learner("A07", "2026-11-25T15:00:00Z");
        REQUIRE_OK(learner);
        REQUIRE_OK(store.append_study(learner.value(), review(1)));
    }
    const Store again = opened(path);
    REQUIRE_OK(again.check());
    CHECK(again.events(1).value()[0].body == R"({"text":"kept"})");
    CHECK(again.settings().value().at("learning") == "off");
    CHECK(again.counts().value()[0].number == 4);
    REQUIRE(again.learners().value().size() == 1);
    CHECK(again.learners().value()[0].name == "A07");
    CHECK(again.learners().value()[0].events == 1);
    CHECK(again.study_events(1).value()[0].body == "{\"mark\":1}");
}

TEST_CASE("A learner's name is taken once, in capitals or not") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("records.db"));
    REQUIRE_OK(store.add_learner("Robin", "2026-11-25T15:00:00Z"));
    const auto second = store.add_learner("ROBIN", "2026-11-25T15:00:00Z");
    REQUIRE_FALSE(second.ok());
    CHECK(second.error().kind == Error::Kind::bad_input);
    CHECK(store.learners().value().size() == 1);
}

TEST_CASE("Letters beyond A to Z count as the same in both cases, written as one sign or as two") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("records.db"));
    REQUIRE_OK(store.add_learner("Zoë", "2026-11-25T15:00:00Z"));
    for (const std::string name : {"ZOË", "zoe\u0308"}) {
        const auto second = store.add_learner(name, "2026-11-25T15:00:00Z");
        REQUIRE_FALSE(second.ok());
        CHECK(second.error().what == "there is a learner 'Zoë' already");
    }
    REQUIRE_OK(store.add_learner("Zoe", "2026-11-25T15:00:00Z"));
    CHECK(folded("ÖLSTAND Geprüft") == "ölstand geprüft");
    CHECK(folded("A\xff") == "a\xff");  // no UTF-8
}

TEST_CASE("A learner's name has at most 60 letters") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("records.db"));
    std::string name;
    for (int i = 0; i < 60; ++i) name += "ö";
    REQUIRE_OK(store.add_learner(name, "2026-11-25T15:00:00Z"));
    const auto longer = store.add_learner(name + "a", "2026-11-25T15:00:00Z");
    REQUIRE_FALSE(longer.ok());
    CHECK(longer.error().what == "a learner's name has at most 60 letters");
}

TEST_CASE("A learner who comes from elsewhere in capitals is the one who is here") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("records.db"));
    REQUIRE_OK(store.add_learner("Zoë", "2026-11-25T15:00:00Z"));
    REQUIRE_OK(store.append_study(1, review(1)));
    Arriving arriving;
    arriving.learners.push_back({"ZOË", "2026-11-25T15:00:00Z", {review(1), review(2)}});
    REQUIRE_OK(store.take_in(arriving));
    REQUIRE(store.learners().value().size() == 1);
    CHECK(store.learners().value()[0].events == 2);
}

TEST_CASE("The jobs of a boat are found whatever the case of its letters") {
    const TemporaryFolder folder;
    Store store = opened(folder.file("records.db"));
    REQUIRE_OK(store.start_job({1, "2026-11-25T15:00:00Z", "opened", "{}"}, {"Möwe", "in hand", ""}));
    CHECK(store.jobs_of_boat("MÖWE").value().size() == 1);
    CHECK(store.jobs_of_boat("mo\u0308we").value().size() == 1);
    CHECK(store.jobs_of_boat("Mowe").value().empty());
}

TEST_CASE("What a learner did is appended in order and never changed, by any program") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    {
        Store store = opened(path);
        REQUIRE_OK(store.add_learner("Robin", "2026-11-25T15:00:00Z"));
        REQUIRE_OK(store.append_study(1, review(1)));
        CHECK_FALSE(store.append_study(1, review(1)).ok());
        CHECK_FALSE(store.append_study(1, review(3)).ok());
        CHECK(store.append_study(2, review(1)).error().kind == Error::Kind::not_found);
        CHECK(store.study_events(2).error().kind == Error::Kind::not_found);
        REQUIRE_OK(store.append_study(1, review(2)));
        CHECK(store.study_events(1).value().size() == 2);
    }
    CHECK(run_sql(path, "UPDATE study_events SET body = '{}'") != SQLITE_OK);
    CHECK(run_sql(path, "DELETE FROM study_events") != SQLITE_OK);
    CHECK(run_sql(path, "INSERT INTO study_events VALUES (1, 9, '', 'reviewed', '{}')") != SQLITE_OK);
    CHECK(opened(path).study_events(1).value().size() == 2);
}
