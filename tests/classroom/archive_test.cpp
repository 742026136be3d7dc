// Results are kept for 24 months after their set was last used, then offered for deletion, and gone where the
// instructor wants it.
#include "app/classroom/archive.hpp"

#include <sqlite3.h>

#include <catch2/catch.hpp>

#include "classroom_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

namespace {

StoredSet set_of(const std::string& id, const std::string& made_at) {
    return {"sitting of " + id, id, made_at, "file of " + id};
}

void collect(ClassOfOwn& own, const std::string& id, const std::string& at) {
    const std::string sitting = "sitting of " + id;
    const StoredHandIn hand_in{"attempt at " + id,  "last",      "key",     sitting, "A01",
                               {"record of " + id}, "signature", "counter", at};
    REQUIRE_OK(own.class_store.collect(
        hand_in, {{"record of " + id, sitting, "attempt at " + id, 1, "answers given to " + id}}));
}

std::vector<std::string> ids(const std::vector<OldSet>& sets) {
    std::vector<std::string> all;
    for (const OldSet& set : sets) all.push_back(set.set.id);
    return all;
}

}  // namespace

TEST_CASE("A set is old when neither it nor a hand-in of it is from the last 24 months") {
    ClassOfOwn own;
    REQUIRE_OK(own.class_store.add_set(own.of.number, set_of("new", "2025-01-10T18:00:00Z")));
    REQUIRE_OK(own.class_store.add_set(own.of.number, set_of("used", "2023-01-10T18:00:00Z")));
    REQUIRE_OK(own.class_store.add_set(own.of.number, set_of("old", "2023-02-10T18:00:00Z")));
    REQUIRE_OK(own.class_store.add_set(own.of.number, set_of("older", "2022-02-10T18:00:00Z")));
    collect(own, "used", "2025-02-01T18:00:00Z");
    collect(own, "old", "2024-11-24T18:00:00Z");
    const auto old = old_sets(own.class_store, own.of, "2026-11-25");
    REQUIRE_OK(old);
    CHECK(ids(old.value()) == std::vector<std::string>{"older", "old"});
    CHECK(old.value()[1].last_used == "2024-11-24");
    CHECK(old.value()[1].hand_ins == 1);
    // To the day, and over the turn of a year.
    CHECK(ids(old_sets(own.class_store, own.of, "2026-11-24").value()) == std::vector<std::string>{"older"});
    CHECK(ids(old_sets(own.class_store, own.of, "2025-01-09", 23).value()) ==
          std::vector<std::string>{"older"});
    CHECK(ids(old_sets(own.class_store, own.of, "2026-10-30", 1).value()).size() == 4);
}

TEST_CASE("A set that is forgotten is off the disk with its hand-ins, and no other is touched") {
    ClassOfOwn own;
    for (const char* id : {"gone", "kept"}) {
        REQUIRE_OK(own.class_store.add_set(own.of.number, set_of(id, "2023-01-10T18:00:00Z")));
        collect(own, id, "2023-01-11T18:00:00Z");
    }
    REQUIRE_OK(own.class_store.keep_marks({{"attempt at gone", "marks"}}));
    REQUIRE_OK(own.class_store.forget_set("sitting of gone"));
    const auto sets = own.class_store.sets(own.of.number);
    REQUIRE_OK(sets);
    REQUIRE(sets.value().size() == 1);
    CHECK(sets.value().front().id == "kept");
    CHECK(own.merged().find("answers given to kept") != std::string::npos);
    CHECK(own.merged().find("gone") == std::string::npos);
    CHECK_FALSE(own.class_store.marks("attempt at gone").value());
    CHECK(file_text(own.records_file()).find("answers given to gone") == std::string::npos);
    CHECK(file_text(own.records_file() + "-wal").find("answers given to gone") == std::string::npos);
    // What is left is still never changed or deleted by any other way.
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(own.records_file().c_str(), &other) == SQLITE_OK);
    CHECK(sqlite3_exec(other, "DELETE FROM class_records", nullptr, nullptr, nullptr) != SQLITE_OK);
    CHECK(sqlite3_exec(other, "DELETE FROM class_sets", nullptr, nullptr, nullptr) != SQLITE_OK);
    sqlite3_close(other);
}
