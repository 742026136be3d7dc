// Other programs at the same file: locks are waited for and named, and a program killed loses nothing it had
// confirmed.
#include <sqlite3.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <thread>

#include "killed_writer.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using std::chrono::milliseconds;

namespace {

// Another program that holds the file's write lock.
class Holder {
  public:
    Holder(const std::string& path, const char* sql) {
        sqlite3_open(path.c_str(), &handle_);
        REQUIRE(sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr) == SQLITE_OK);
    }
    ~Holder() { sqlite3_close(handle_); }
    Holder(const Holder&) = delete;
    Holder& operator=(const Holder&) = delete;

  private:
    sqlite3* handle_ = nullptr;
};

}  // namespace

TEST_CASE("A file held by another program gives a clear message and nothing is written") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 2);
    auto store = Store::open(path, milliseconds(30));
    REQUIRE_OK(store);
    {
        const Holder holder(path, "BEGIN IMMEDIATE");
        const auto appended = store.value().append(1, event(3), summary());
        REQUIRE_FALSE(appended.ok());
        CHECK(appended.error().text() == path +
                                             ": another program is holding the records file (close it there "
                                             "or wait a moment, then do it again)");
        CHECK_FALSE(store.value().start_job(event(1), summary()).ok());
        CHECK(store.value().events(1).value().size() == 2);  // reading goes on
    }
    REQUIRE_OK(store.value().append(1, event(3), summary()));
}

TEST_CASE("Opening a file that another program keeps to itself gives a clear message") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 2);
    {
        const Holder holder(path, "PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; COMMIT");
        const auto store = Store::open(path, milliseconds(30));
        REQUIRE_FALSE(store.ok());
        CHECK(store.error().what == "another program is holding the records file");
    }
    auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().events(1).value().size() == 2);
}

TEST_CASE("A lock held for a moment is waited for") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 1);
    auto store = Store::open(path);
    REQUIRE_OK(store);
    auto holder = std::make_unique<Holder>(path, "BEGIN IMMEDIATE");
    std::thread lets_go([&holder] {
        std::this_thread::sleep_for(milliseconds(150));
        holder.reset();
    });
    const auto appended = store.value().append(1, event(2), summary());
    lets_go.join();
    REQUIRE_OK(appended);
}

TEST_CASE("Programs that start a new records file at the same moment all get to work") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    constexpr int programs = 6;
    std::vector<pid_t> children;
    for (int i = 0; i < programs; ++i) {
        const pid_t child = ::fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            auto store = Store::open(path);
            ::_exit(store.ok() && store.value().start_job(event(1), summary()).ok() ? 0 : 1);
        }
        children.push_back(child);
    }
    for (const pid_t child : children) {
        int status = 0;
        REQUIRE(::waitpid(child, &status, 0) == child);
        CHECK(WIFEXITED(status));
        CHECK(WEXITSTATUS(status) == 0);
    }
    auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().jobs().value().size() == programs);
}

TEST_CASE("A program killed at any moment loses no event it had confirmed") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 1);
    CHECK(kill_writers(path, 30, 20261125) > 15);
}
