// Where no memory is shared between the programs, as on a disk of the network, a rollback journal keeps the
// promise.
#include "app/records/journal.hpp"

#include <sys/statfs.h>
#include <sys/wait.h>
#include <unistd.h>


#include "killed_writer.hpp"
#include "no_shared_memory.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using std::chrono::milliseconds;

TEST_CASE("Disks of the network are known by their type, disks of this computer are not taken for one") {
    // linux/magic.h
    for (const std::uint64_t type :
         {0x6969UL, 0x517bUL, 0xff534d42UL, 0xfe534d42UL, 0x65735546UL, 0x01021997UL}) {
        CHECK(records_detail::is_of_the_network(type));
    }
    for (const std::uint64_t type :
         {0xef53UL, 0x58465342UL, 0x9123683eUL, 0x01021994UL, 0x4d44UL, 0x2011bab0UL}) {
        CHECK_FALSE(records_detail::is_of_the_network(type));
    }
}

TEST_CASE("On a disk of this computer the records have a write-ahead log") {
    const TemporaryFolder folder;
    const auto store = Store::open(folder.file("records.db"));
    REQUIRE_OK(store);
    CHECK(store.value().writes_ahead());
}

TEST_CASE("Without shared memory new records are kept with a rollback journal, and old ones change to it") {
    const TemporaryFolder folder;
    make_records(folder.file("old.db"), 3);
    {
        const NoSharedMemory network;
        for (const char* name : {"old.db", "new.db"}) {
            auto store = Store::open(folder.file(name));
            REQUIRE_OK(store);
            CHECK_FALSE(store.value().writes_ahead());
            REQUIRE_OK(store.value().start_job(event(1), summary()));
            // Another program beside it.
            auto second = Store::open(folder.file(name));
            REQUIRE_OK(second);
            REQUIRE_OK(second.value().start_job(event(1), summary()));
            REQUIRE_OK(store.value().start_job(event(1), summary()));
            REQUIRE_OK(store.value().check());
            CHECK_FALSE(fs::exists(folder.file(std::string(name) + "-wal")));
        }
    }
    // Back on a disk of its own it keeps the journal that every computer can use.
    const auto store = Store::open(folder.file("old.db"));
    REQUIRE_OK(store);
    CHECK_FALSE(store.value().writes_ahead());
    CHECK(store.value().jobs().value().size() == 4);
}

TEST_CASE("With a rollback journal several programs write at once and no event is lost or doubled") {
    const NoSharedMemory network;
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 1);
    constexpr int programs = 4, events_each = 15;
    std::vector<pid_t> children;
    for (int i = 0; i < programs; ++i) {
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            auto store = Store::open(path);
            if (!store.ok()) ::_exit(2);
            const auto job = store.value().start_job(event(1), summary());
            if (!job.ok()) ::_exit(3);
            for (int n = 2; n <= events_each; ++n) {
                if (!store.value().append(job.value(), event(n), summary()).ok()) ::_exit(4);
            }
            ::_exit(0);
        }
        children.push_back(child);
    }
    for (const pid_t child : children) {
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        CHECK(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
    }
    const auto store = Store::open(path);
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().check());
    CHECK(store.value().jobs().value().size() == programs + 1);
    for (int job = 2; job <= programs + 1; ++job) {
        CHECK(store.value().events(job).value().size() == events_each);
    }
}

TEST_CASE("With a rollback journal a program killed at any moment loses no event it had confirmed") {
    const NoSharedMemory network;
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 1);
    CHECK(kill_writers(path, 15, 7) > 7);
}

TEST_CASE("With a rollback journal a program that holds the file is waited for, and then named") {
    const NoSharedMemory network;
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 2);
    auto store = Store::open(path, milliseconds(30));
    REQUIRE_OK(store);
    sqlite3* other = nullptr;
    sqlite3_open(path.c_str(), &other);
    REQUIRE(sqlite3_exec(other, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr) == SQLITE_OK);
    CHECK(store.value().append(1, event(3), summary()).error().what ==
          "another program is holding the records file");
    sqlite3_close(other);
    REQUIRE_OK(store.value().append(1, event(3), summary()));
}
