// The power goes while something is written: whatever of its cache the disk lost, every confirmed event is
// there afterwards and the file is sound.
#include <sqlite3.h>

#include <optional>

#include "no_shared_memory.hpp"
#include "power_cut.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

constexpr int seeds = 200;

enum class Kept { write_ahead, rollback };

// What programs find below them: the disk that is watched, and over it, for a rollback journal, no shared
// memory.
class Surroundings {
  public:
    explicit Surroundings(Kept kept, DiskWatcher* watcher) : disk_(watcher) {
        if (kept == Kept::rollback) network_.emplace();
    }

  private:
    FaultyDisk disk_;
    std::optional<NoSharedMemory> network_;
};

// The work of two sittings: six events each, the file closed in between. Gives the last one confirmed.
int work(const std::string& path, int from) {
    int confirmed = from;
    for (int sitting = 0; sitting < 2; ++sitting) {
        auto store = Store::open(path, std::chrono::milliseconds(0));
        for (int i = 0; store.ok() && i < 6; ++i) {
            if (!store.value().append(1, event(confirmed + 1), summary()).ok()) return confirmed;
            ++confirmed;
        }
    }
    return confirmed;
}

std::string records_in(const TemporaryFolder& folder, Kept kept) {
    const Surroundings sound(kept, nullptr);
    make_records(folder.file("records.db"), 3);
    return folder.file("records.db");
}

// How many changes the disk sees in all the work.
int changes_in_all(Kept kept) {
    const TemporaryFolder folder;
    const std::string path = records_in(folder, kept);
    PowerCut never(path, 0, 1'000'000);
    const Surroundings watched(kept, &never);
    CHECK(work(path, 3) == 15);
    return never.changes();
}

void try_power_cut(Kept kept, unsigned seed, int moment) {
    INFO("seed " << seed << ", the power goes at change " << moment);
    const TemporaryFolder folder;
    const std::string path = records_in(folder, kept);
    PowerCut power(path, seed, moment);
    int confirmed = 0;
    {
        const Surroundings watched(kept, &power);
        confirmed = work(path, 3);
    }
    REQUIRE(power.is_off());
    power.switch_on();
    const Surroundings sound(kept, nullptr);
    const auto store = Store::open(path);
    REQUIRE_OK(store);
    CHECK(store.value().writes_ahead() == (kept == Kept::write_ahead));
    REQUIRE_OK(store.value().check());
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    const int found = static_cast<int>(events.value().size());
    CHECK(found >= confirmed);
    CHECK(found <= confirmed + 1);
    CHECK(in_order(events.value()));
}

void try_all(Kept kept) {
    const int all = changes_in_all(kept);
    CHECK(all > 50);
    std::mt19937 random(20261126);
    std::uniform_int_distribution<int> moments(1, all);
    for (unsigned seed = 1; seed <= seeds; ++seed) try_power_cut(kept, seed, moments(random));
}

// The first records of a shop, in an empty folder: a job with eight events, the file closed after each. Gives
// how many were confirmed.
int begin_shop(const std::string& path) {
    int confirmed = 0;
    for (int i = 1; i <= 8; ++i) {
        auto store = Store::open(path, std::chrono::milliseconds(0));
        if (!store.ok()) break;
        const bool kept = i == 1 ? store.value().start_job(event(1), summary()).ok()
                                 : store.value().append(1, event(i), summary()).ok();
        if (!kept) break;
        confirmed = i;
    }
    return confirmed;
}

void try_first_records(Kept kept, unsigned seed, int moment) {
    INFO("seed " << seed << ", the power goes at change " << moment);
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    PowerCut power(path, seed, moment);
    int confirmed = 0;
    {
        const Surroundings watched(kept, &power);
        confirmed = begin_shop(path);
    }
    REQUIRE(power.is_off());
    power.switch_on();
    const Surroundings sound(kept, nullptr);
    const auto store = Store::open(path);
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().check());
    if (confirmed == 0) return;
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    const int found = static_cast<int>(events.value().size());
    CHECK((found == confirmed || found == confirmed + 1));
    CHECK(in_order(events.value()));
}

// A plain database. Gives SQLite's code of what is run, and how many rows it changed.
int run_plain(const std::string& path, const std::string& sql, int* rows = nullptr) {
    sqlite3* handle = nullptr;
    sqlite3_open(path.c_str(), &handle);
    const int code = sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr);
    if (rows != nullptr) *rows = sqlite3_total_changes(handle);
    sqlite3_close(handle);
    return code;
}

// Rows written one by one with these settings until the power goes. Gives how many were confirmed.
int write_plain(const std::string& path, const std::string& settings) {
    sqlite3* handle = nullptr;
    sqlite3_open(path.c_str(), &handle);
    sqlite3_exec(handle, settings.c_str(), nullptr, nullptr, nullptr);
    int confirmed = 0;
    const char* insert = "INSERT INTO t VALUES (1)";
    while (sqlite3_exec(handle, insert, nullptr, nullptr, nullptr) == SQLITE_OK) ++confirmed;
    sqlite3_close(handle);
    return confirmed;
}

// How many of 60 seeds lose a confirmed row, or the whole file, with these settings.
int losses(const char* journal, const std::string& settings) {
    int lost = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        const TemporaryFolder folder;
        const std::string path = folder.file("plain.db");
        REQUIRE(run_plain(path, std::string(journal) + "CREATE TABLE t (a)") == SQLITE_OK);
        PowerCut power(path, seed, 12 + static_cast<int>(seed % 40));
        int confirmed = 0;
        {
            const FaultyDisk disk(&power);
            confirmed = write_plain(path, settings);
        }
        power.switch_on();
        int found = 0;
        const bool sound = run_plain(path, "UPDATE t SET a = 2", &found) == SQLITE_OK;
        lost += !sound || found < confirmed ? 1 : 0;
    }
    return lost;
}

}  // namespace

TEST_CASE("When the power goes, a write-ahead log loses no confirmed event, whatever the disk's cache lost") {
    try_all(Kept::write_ahead);
}

TEST_CASE(
    "When the power goes, a rollback journal loses no confirmed event, whatever the disk's cache lost") {
    try_all(Kept::rollback);
}

TEST_CASE(
    "When the power goes over the first records, neither file nor confirmed event is lost with its name") {
    for (const Kept kept : {Kept::write_ahead, Kept::rollback}) {
        const TemporaryFolder folder;
        const std::string path = folder.file("records.db");
        PowerCut never(path, 0, 1'000'000);
        {
            const Surroundings watched(kept, &never);
            REQUIRE(begin_shop(path) == 8);
        }
        REQUIRE(never.changes() > 50);
        for (int moment = 1; moment <= never.changes(); ++moment) {
            try_first_records(kept, 100 + static_cast<unsigned>(moment), moment);
        }
    }
}

TEST_CASE("A new file whose name never gets to the disk is lost there, so that a power cut can show it") {
    int gone = 0;
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const TemporaryFolder folder;
        const std::string path = folder.file("plain.db");
        PowerCut power(path, seed, 40);
        {
            const FaultyDisk disk(&power);
            write_plain(path, "PRAGMA journal_mode = MEMORY; CREATE TABLE t (a)");
        }
        REQUIRE(power.is_off());
        power.switch_on();
        gone += fs::exists(path) ? 0 : 1;
    }
    CHECK(gone > 3);
}

TEST_CASE("Of weaker settings than the program's own a power cut shows what they lose") {
    const char* ahead = "PRAGMA journal_mode = WAL; ";
    const char* rollback = "PRAGMA journal_mode = DELETE; ";
    CHECK(losses(ahead, "PRAGMA synchronous = NORMAL") > 5);
    CHECK(losses(ahead, "PRAGMA synchronous = FULL") == 0);
    CHECK(losses(rollback, "PRAGMA synchronous = FULL") > 0);
    CHECK(losses(rollback, "PRAGMA synchronous = EXTRA") == 0);
}
