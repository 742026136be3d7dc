// A disk that refuses any one call, or every call from then on, at every moment of the work on a records
// file: what was confirmed stays, what was refused is told in words, and the work goes on when the disk is
// mended.
#include <sqlite3.h>

#include <filesystem>
#include <set>

#include "killed_commands.hpp"
#include "records/faulty_disk.hpp"
#include "records_seen.hpp"
#include "scratch_folder.hpp"
#include "support.hpp"
#include "tally.hpp"

#include "app/records/store.hpp"

using namespace hardover;
using namespace hardover_tests;
using Call = FaultyDisk::Call;

namespace {

const JobSummary summary{"Tern", "in hand", "wander"};

StoredEvent noted(int sequence, const std::string& text) {
    return {sequence, "2026-11-26T08:00:00Z", "noted", "{\"text\":\"" + text + "\"}"};
}

// Everything a program does with its records, once, and what of it was confirmed.
class Work {
  public:
    explicit Work(const ScratchFolder& folder) : folder_(folder) {}

    // Opens a file of an earlier version and works on it; goes on with the next step where one is refused.
    void run() {
        auto store = Store::open(path(), std::chrono::milliseconds(20));
        if (!took("open", store)) return;
        Store& records = store.value();
        took("start", records.start_job(noted(1, "start"), summary));
        took("append", records.append(1, noted(13, "append"), summary));
        took("settings", records.keep({{{"learning", "off"}, {"shop", "Saltmarsh Landing"}}, false, {}}));
        took("counts", records.keep({{}, true, {{"a1", 1, "{}"}, {"b2", 1, "{}"}}}));
        const auto learner = records.add_learner("A07", "2026-11-26T08:00:00Z");
        if (took("learner", learner)) took("study", records.append_study(learner.value(), noted(1, "study")));
        took("backup", records.backup(backup_path()));
        took("second", records.append(2, noted(13, "second"), summary));
        if (took("jobs", records.jobs())) took("events", records.events(1));
    }

    // What was confirmed and is not there now, and what else is wrong.
    std::vector<std::string> lost() const {
        std::vector<std::string> lost;
        const RecordsSeen seen = see_records(path(), "");
        if (!seen.trouble.empty()) lost.push_back(seen.trouble);
        const auto there = [this](const std::string& sql) { return !see_records(path(), sql).rows.empty(); };
        const auto gone = [&](const char* step, const std::string& sql) {
            if (confirmed_.count(step) > 0 && !there(sql)) lost.emplace_back(step);
        };
        gone("start",
             "SELECT 1 FROM events JOIN jobs ON number = job WHERE body LIKE '%start%' AND sequence = 1");
        gone("append", "SELECT 1 FROM events WHERE job = 1 AND sequence = 13");
        gone("second", "SELECT 1 FROM events WHERE job = 2 AND sequence = 13");
        gone("settings", "SELECT 1 FROM settings WHERE name = 'shop'");
        gone("counts", "SELECT 1 FROM counts WHERE shop = 'b2'");
        gone("learner", "SELECT 1 FROM learners WHERE name = 'A07'");
        gone("study", "SELECT 1 FROM study_events WHERE body LIKE '%study%'");
        if (there("SELECT 1 FROM counts") != there("SELECT 1 FROM counts WHERE shop = 'b2'")) {
            lost.emplace_back("half of the counts");
        }
        // Two jobs of twelve events came with the file.
        if (see_records(path(), "SELECT 1 FROM events WHERE sequence <= 12 AND job <= 2").rows.size() != 24) {
            lost.emplace_back("events of before");
        }
        look_at_backup(lost);
        return lost;
    }

    std::size_t confirmed() const { return confirmed_.size(); }
    const std::vector<Error>& refusals() const { return refusals_; }
    std::string path() const { return folder_.file("records.db"); }

  private:
    template <typename Value>
    bool took(const char* step, const Result<Value>& result) {
        if (result.ok()) {
            confirmed_.insert(step);
        } else {
            refusals_.push_back(result.error());
        }
        return result.ok();
    }

    std::string backup_path() const { return folder_.file("copy.db"); }

    void look_at_backup(std::vector<std::string>& lost) const {
        const bool there = std::filesystem::exists(backup_path());
        if (confirmed_.count("backup") == 0) {
            if (there) lost.emplace_back("a backup that was refused is there all the same");
            return;
        }
        const RecordsSeen seen =
            see_records(backup_path(), "SELECT 1 FROM events WHERE sequence <= 12 AND job <= 2");
        if (!there || seen.rows.size() != 24 || !seen.trouble.empty()) lost.emplace_back("backup");
    }

    const ScratchFolder& folder_;
    std::set<std::string> confirmed_;
    std::vector<Error> refusals_;
};

struct Fault {
    const char* name;
    Call call;
    int code;
    bool lasting;
};

const std::vector<Fault> faults = {
    {"disk full from the n-th write on", Call::write, SQLITE_FULL, true},
    {"disk full at the n-th write only", Call::write, SQLITE_FULL, false},
    {"n-th write fails (EIO)", Call::write, SQLITE_IOERR_WRITE, false},
    {"every write fails from the n-th on (EIO)", Call::write, SQLITE_IOERR_WRITE, true},
    {"n-th sync fails (EIO)", Call::sync, SQLITE_IOERR_FSYNC, false},
    {"every sync fails from the n-th on (EIO)", Call::sync, SQLITE_IOERR_FSYNC, true},
    {"n-th file cannot be opened", Call::open, SQLITE_CANTOPEN, false},
    {"no file can be opened from the n-th on", Call::open, SQLITE_CANTOPEN, true},
    {"n-th cutting of a file fails", Call::truncate, SQLITE_IOERR_TRUNCATE, false},
    {"n-th removal of a file fails", Call::remove, SQLITE_IOERR_DELETE, false},
    {"n-th question for a size fails", Call::size, SQLITE_IOERR_FSTAT, false},
    {"n-th use of shared memory fails", Call::shared_memory, SQLITE_IOERR_SHMMAP, false},
    {"n-th lock is refused", Call::lock, SQLITE_BUSY, false},
    {"n-th lock fails (EIO)", Call::lock, SQLITE_IOERR_LOCK, false},
    {"n-th read fails (EIO)", Call::read, SQLITE_IOERR_READ, false},
    {"every read fails from the n-th on (EIO)", Call::read, SQLITE_IOERR_READ, true},
};

// Gives whether the disk refused anything.
bool try_fault(FaultyDisk& disk, const Fault& fault, int n) {
    const ScratchFolder folder;
    make_version_1(folder.file("records.db"), 2);
    Work work(folder);
    disk.fail(fault.call, n, fault.code, fault.lasting);
    work.run();
    const bool refused = disk.refused_any();
    disk.mend();

    INFO(fault.name << ", n = " << n);
    for (const Error& error : work.refusals()) {
        INFO(error.text());
        CHECK(error.kind == Error::Kind::storage);
        CHECK(error.what.find("the records could not be used") == std::string::npos);
        CHECK_FALSE(error.cure.empty());
    }
    const auto lost = work.lost();
    for (const std::string& what : lost) UNSCOPED_INFO("lost: " << what);
    CHECK(lost.empty());
    Tried& line = tried(fault.name);
    line.tried += refused ? 1 : 0;
    line.refused += work.refusals().empty() ? 0 : 1;
    line.carried_on += refused && work.refusals().empty() ? 1 : 0;
    line.confirmed += static_cast<long>(work.confirmed());
    line.lost += static_cast<long>(lost.size());

    // The mended disk: the file opens and takes the next event.
    auto store = Store::open(work.path());
    REQUIRE_OK(store);
    REQUIRE_OK(store.value().check());
    REQUIRE_OK(store.value().start_job(noted(1, "after"), summary));
    return refused;
}

}  // namespace

TEST_CASE(
    "Whatever call the disk refuses, every confirmed write is there and the file works again when mended") {
    FaultyDisk disk;
    const int step = so_many(1, 15);
    for (const Fault& fault : faults) {
        int n = 1;
        while (try_fault(disk, fault, n)) n += step;
        INFO(fault.name);
        CHECK(n > 1);
    }
}
