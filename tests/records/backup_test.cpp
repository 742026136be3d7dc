// A copy of the records made while they are in use.
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

StoredEvent opened() {
    return {1, "2026-11-25T15:03:13Z", "opened", "{}"};
}

}  // namespace

TEST_CASE("A backup holds what was written up to it, and nothing written after") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().start_job(opened(), {"Grey Heron", "in hand", ""}));
    const std::string copy = folder.file("copy.db");
    REQUIRE_OK(store.value().backup(copy));
    REQUIRE_OK(store.value().start_job(opened(), {"Little Auk", "in hand", ""}));
    const auto read = Store::open(copy);
    REQUIRE_OK(read);
    const auto jobs = read.value().jobs();
    REQUIRE_OK(jobs);
    REQUIRE(jobs.value().size() == 1);
    CHECK(jobs.value().front().summary.boat == "Grey Heron");
    REQUIRE_OK(read.value().check());
}

TEST_CASE("A backup leaves one file and never writes over another") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    const std::string copy = folder.file("copy.db");
    REQUIRE_OK(store.value().backup(copy));
    CHECK(folder.content().count("copy.db") == 1);
    for (const char* more : {"copy.db-wal", "copy.db-shm", "copy.db-journal"}) {
        CHECK(folder.content().count(more) == 0);
    }
    const std::string before = file_text(copy);
    CHECK(store.value().backup(copy).error().what == "there is a file of this name already");
    CHECK(file_text(copy) == before);
}

TEST_CASE("A backup into a folder that is not there is refused and leaves nothing") {
    const TemporaryFolder folder;
    auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    const auto done = store.value().backup(folder.file("gone/copy.db"));
    REQUIRE_FALSE(done.ok());
    CHECK(done.error().kind == Error::Kind::storage);
    CHECK_FALSE(fs::exists(folder.file("gone")));
}
