// Classes in the records file: a file of version 3 opens with all it holds, and what is appended stays.
#include "app/records/class_store.hpp"

#include <sqlite3.h>

#include "old_layouts.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

int run_sql(const std::string& path, const std::string& sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    const int code = sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr);
    sqlite3_close(handle);
    return code;
}

const std::string day = "2026-11-25T18:00:00Z";

StoredAttempt attempt_of(const std::string& seat) {
    StoredAttempt attempt;
    attempt.attempt = "attempt of " + seat;
    attempt.sitting = "sitting";
    attempt.seat = seat;
    attempt.began_at = day;
    attempt.file = "set";
    return attempt;
}

}  // namespace

TEST_CASE("A records file of version 3 opens with its learners and takes a class") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    REQUIRE(
        run_sql(path,
                tables_of_version_1 + added_by_version_2 + added_by_version_3 +
                    "PRAGMA application_id = 1214533494; PRAGMA user_version = 3;"
                    "INSERT INTO learners VALUES (1, 'A07', '2026-11-25T15:00:00Z');"
                    "INSERT INTO study_events VALUES (1, 1, '2026-11-25T15:03:13Z', 'reviewed', '{}');") ==
        SQLITE_OK);
    {
        auto store = Store::open(path);
        REQUIRE_OK(store);
        ClassStore classes(store.value());
        CHECK(classes.classes().value().empty());
        REQUIRE_OK(classes.add_class({0, "Evening", day, "key", "sealed"}));
    }
    auto store = Store::open(path);
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().check());
    CHECK(store.value().study_events(1).value().size() == 1);
    CHECK(ClassStore(store.value()).classes().value()[0].name == "Evening");
}

TEST_CASE("The records of an attempt are appended in order and never changed") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    auto store = Store::open(path);
    REQUIRE_OK(store);
    ClassStore classes(store.value());
    REQUIRE_OK(classes.begin_attempt(attempt_of("A07"), "first"));
    CHECK_FALSE(classes.begin_attempt(attempt_of("a07"), "again").ok());
    REQUIRE_OK(classes.append("attempt of A07", 2, "second"));
    CHECK(classes.append("attempt of A07", 2, "other second").error().kind == Error::Kind::storage);
    CHECK_FALSE(classes.append("attempt of A07", 4, "fourth").ok());
    CHECK(classes.append("attempt of A08", 1, "x").error().kind == Error::Kind::not_found);
    CHECK(classes.attempt_lines("attempt of A07").value() == std::vector<std::string>{"first", "second"});
    CHECK(run_sql(path, "UPDATE class_attempt_records SET line = 'better'") != SQLITE_OK);
    CHECK(run_sql(path, "DELETE FROM class_attempt_records") != SQLITE_OK);
    CHECK(run_sql(path, "DELETE FROM class_attempts") != SQLITE_OK);
    CHECK(run_sql(path, "UPDATE class_attempts SET purged_at = 'now'") != SQLITE_OK);
    CHECK(run_sql(path, "INSERT INTO class_attempt_records VALUES ('attempt of A07', 9, 'x')") != SQLITE_OK);
}

TEST_CASE("What was collected is kept once, and only of sets of the class") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    ClassStore classes(store.value());
    const auto number = classes.add_class({0, "Evening", day, "key", "sealed"});
    REQUIRE_OK(number);
    CHECK_FALSE(classes.add_class({0, "EVENING", day, "key", "sealed"}).ok());
    REQUIRE_OK(classes.add_set(number.value(), {"sitting", "S1", day, "set"}));
    CHECK_FALSE(classes.add_set(number.value(), {"other sitting", "s1", day, "set"}).ok());
    const StoredHandIn hand_in{"attempt", "last", "key", "sitting", "A07", {"i1", "i2"}, "s", "c", day};
    const std::vector<StoredClassRecord> records{{"i1", "sitting", "attempt", 1, "one"},
                                                 {"i2", "sitting", "attempt", 2, "two"}};
    CHECK(classes.collect(hand_in, records).value().records == 2);
    CHECK(classes.collect(hand_in, records).value().records == 0);
    CHECK_FALSE(classes.collect(hand_in, records).value().hand_in);
    CHECK(classes.records(number.value()).value().size() == 2);
    CHECK(classes.hand_ins(number.value()).value()[0].records == hand_in.records);
    StoredHandIn foreign = hand_in;
    foreign.sitting = "elsewhere";
    foreign.attempt = "other";
    CHECK_FALSE(classes.collect(foreign, {{"i3", "elsewhere", "other", 1, "three"}}).ok());
    CHECK(classes.records(number.value()).value().size() == 2);
    CHECK(classes.records(number.value() + 1).value().empty());
}
