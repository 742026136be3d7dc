// Backups in a folder: numbered, kept so many, looked through; and bringing one back.
#include "app/records/backups.hpp"

#include "app/records/way_back.hpp"
#include "faulty_disk.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const std::string noon = "2026-11-26T12:00:00Z";

Store opened(const std::string& path) {
    auto store = Store::open(path);
    REQUIRE_OK(store);
    return std::move(store.value());
}

BackupMade made(const Store& store, int keep, const std::string& at = noon) {
    auto backup = make_backup(store, {"", at, {}, keep, false});
    REQUIRE_OK(backup);
    return std::move(backup.value());
}

std::vector<std::int64_t> numbers(const Store& store) {
    std::vector<std::int64_t> all;
    for (const Backup& backup : list_backups(backups_folder(store.path()), store.path())) {
        all.push_back(backup.number);
    }
    return all;
}

// All files below a folder with their bytes, but for what SQLite makes and takes away by itself.
std::map<std::string, std::string> tree(const std::string& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.is_regular_file()) files[entry.path().string()] = file_text(entry.path().string());
    }
    return files;
}

}  // namespace

TEST_CASE("Backups are numbered and named by their time, and only so many stay") {
    const TemporaryFolder folder;
    make_records(folder.file("records.db"), 2);
    const Store store = opened(folder.file("records.db"));
    for (int i = 0; i < 5; ++i) made(store, 3);
    CHECK(numbers(store) == std::vector<std::int64_t>{5, 4, 3});
    CHECK(fs::path(list_backups(folder.file("backups"), store.path()).front().path).filename() ==
          "records-00005-2026-11-26T12-00-00Z.db");
    CHECK(list_backups(folder.file("backups"), store.path()).front().at == noon);
}

TEST_CASE("A clock set back does not make the newest backup go first") {
    const TemporaryFolder folder;
    make_records(folder.file("records.db"), 2);
    const Store store = opened(folder.file("records.db"));
    made(store, 2, "2031-01-01T00:00:00Z");
    made(store, 2, "2031-01-01T01:00:00Z");
    made(store, 2, noon);
    CHECK(numbers(store) == std::vector<std::int64_t>{3, 2});
}

TEST_CASE("A busy day does not push out the last backup of each of the days before") {
    const TemporaryFolder folder;
    make_records(folder.file("records.db"), 2);
    const Store store = opened(folder.file("records.db"));
    for (int day = 1; day <= 9; ++day) {
        const std::string at = "2026-11-0" + std::to_string(day) + "T";
        for (const char* hour : {"08", "12", "18"}) made(store, 2, at + hour + ":00:00Z");
    }
    // Two of the 9th, and the evenings of the 3rd to the 8th.
    CHECK(numbers(store) == std::vector<std::int64_t>{27, 26, 24, 21, 18, 15, 12, 9});
}

TEST_CASE("A backup makes its own folder, but not those above it") {
    const TemporaryFolder folder;
    make_records(folder.file("records.db"), 2);
    const Store store = opened(folder.file("records.db"));
    REQUIRE_OK(make_backup(store, {folder.file("stick"), noon, {}, 0, false}));
    REQUIRE_OK(make_backup(store, {folder.file("stick") + "/", noon, {}, 0, false}));
    const auto refused = make_backup(store, {folder.file("no_stick/backups"), noon, {}, 0, false});
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().where == folder.file("no_stick"));
    CHECK_FALSE(fs::exists(folder.file("no_stick")));
}

TEST_CASE("Other files in the folder of backups are left alone") {
    const TemporaryFolder folder;
    make_records(folder.file("records.db"), 2);
    make_records(folder.file("other.db"), 2);
    const Store store = opened(folder.file("records.db"));
    const Store other = opened(folder.file("other.db"));
    made(other, 1);
    write_file(folder.file("backups/holiday.db"), "not ours");
    for (int i = 0; i < 3; ++i) made(store, 1);
    CHECK(fs::exists(folder.file("backups/holiday.db")));
    CHECK(numbers(other) == std::vector<std::int64_t>{1});
    CHECK(numbers(store) == std::vector<std::int64_t>{3});
}

TEST_CASE("A backup that cannot be made leaves nothing, and the older ones stay") {
    FaultyDisk disk;
    bool refused = true;
    for (int n = 1; refused; ++n) {
        INFO("full from write " << n);
        REQUIRE(n < 400);
        const TemporaryFolder folder;
        make_records(folder.file("records.db"), 3);
        const Store store = opened(folder.file("records.db"));
        made(store, 1);
        disk.full_from_write(n);
        const auto second = make_backup(store, {"", noon, {}, 1, false});
        refused = disk.refused_any();
        disk.mend();
        if (second.ok()) continue;
        CHECK(second.error().what == "the disk is full; this step was not written");
        CHECK(numbers(store) == std::vector<std::int64_t>{1});
        CHECK(tree(folder.file("backups")).size() == 1);
    }
}

TEST_CASE(
    "A restore brings the backup back and keeps aside what was there, also under another open program") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 2);
    std::string backup;
    {
        const Store store = opened(path);
        backup = made(store, 0).backup.path;
    }
    Store window = opened(path);
    REQUIRE_OK(window.append(1, event(3), summary()));
    REQUIRE_OK(window.start_job(event(1), summary()));
    {
        const auto copy = BorrowedCopy::of(backup);
        REQUIRE_OK(copy);
        const auto aside = restore(copy.value().store(), path, {}, noon);
        REQUIRE_OK(aside);
        CHECK_FALSE(aside.value().damaged);
        CHECK(aside.value().jobs == 2);
        const Store kept = opened(aside.value().path);
        CHECK(kept.events(1).value().size() == 3);
    }
    CHECK(window.jobs().value().size() == 1);
    CHECK(window.events(1).value().size() == 2);
    REQUIRE_OK(window.append(1, event(3), summary()));
    REQUIRE_OK(window.check());
    // What was kept aside does not go with the older backups.
    for (int i = 0; i < 3; ++i) made(window, 1);
    CHECK(numbers(window) == std::vector<std::int64_t>{5, 2});
}

TEST_CASE("A restore takes the place of damaged records and keeps them as they were") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 2);
    const std::string backup = made(opened(path), 0).backup.path;
    std::string damaged = file_text(path);
    damaged.resize(damaged.size() - 1000);
    write_file(path, damaged);
    REQUIRE_FALSE(Store::open(path).ok());
    const auto copy = BorrowedCopy::of(backup);
    REQUIRE_OK(copy);
    const auto aside = restore(copy.value().store(), path, {}, noon);
    REQUIRE_OK(aside);
    CHECK(aside.value().damaged);
    CHECK(file_text(aside.value().path) == damaged);
    CHECK(opened(path).events(1).value().size() == 2);
}

TEST_CASE("A restore puts records where there are none") {
    const TemporaryFolder folder;
    make_records(folder.file("elsewhere.db"), 4);
    const auto copy = BorrowedCopy::of(folder.file("elsewhere.db"));
    REQUIRE_OK(copy);
    const auto aside = restore(copy.value().store(), folder.file("new/records.db"), {}, noon);
    REQUIRE_OK(aside);
    CHECK(aside.value().path.empty());
    CHECK(opened(folder.file("new/records.db")).events(1).value().size() == 4);
}

TEST_CASE("A file that is no records file is never moved away by a restore") {
    const TemporaryFolder folder;
    make_records(folder.file("backup.db"), 2);
    write_file(folder.file("letter.txt"), std::string(5000, 'x'));
    const auto copy = BorrowedCopy::of(folder.file("backup.db"));
    REQUIRE_OK(copy);
    CHECK_FALSE(restore(copy.value().store(), folder.file("letter.txt"), {}, noon).ok());
    CHECK(file_text(folder.file("letter.txt")) == std::string(5000, 'x'));
}

TEST_CASE("When the disk fills during a restore, the records are the old or the new ones, whole") {
    FaultyDisk disk;
    bool refused = true;
    for (int n = 1; refused; n += 2) {
        INFO("full from write " << n);
        REQUIRE(n < 1000);
        const TemporaryFolder folder;
        const std::string path = folder.file("records.db");
        make_records(folder.file("backup.db"), 5);
        make_records(path, 2);
        const auto copy = BorrowedCopy::of(folder.file("backup.db"));
        REQUIRE_OK(copy);
        disk.full_from_write(n);
        const auto aside = restore(copy.value().store(), path, {}, noon);
        refused = disk.refused_any();
        disk.mend();
        const Store after = opened(path);
        REQUIRE_OK(after.check());
        CHECK(after.events(1).value().size() == (aside.ok() ? 5U : 2U));
    }
}

TEST_CASE("A backup refused for damage names the records, not the copy that is gone with the refusal") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    make_records(path, 5);
    std::string bytes = file_text(path);
    for (std::size_t at; (at = bytes.find("event 3")) != std::string::npos;) bytes[at] = '#';
    write_file(path, bytes);
    const auto refused = make_backup(opened(path), {"", noon, {}, 0, false});
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.error().where == path);
    CHECK(refused.error().what == "the records file is damaged: job 1, event 3, is not as it was written");
    CHECK(fs::is_empty(folder.file("backups")));
}

TEST_CASE("Records that were never begun are told apart from records that are lost beside their backups") {
    const TemporaryFolder folder;
    const std::string path = folder.file("records.db");
    CHECK(not_lost(path).ok());
    REQUIRE_FALSE(records_there(path).ok());
    CHECK(records_there(path).error().kind == Error::Kind::not_found);
    make_records(path, 2);
    made(opened(path), 0);
    CHECK(records_there(path).ok());
    for (const bool emptied : {false, true}) {
        fs::remove(path);
        if (emptied) write_file(path, "");
        REQUIRE_FALSE(not_lost(path).ok());
        CHECK(not_lost(path).error().where == path);
        CHECK(not_lost(path).error().cure ==
              "bring the newest back with: hardover records restore 1; to begin anew, move the folder "
              "'backups' "
              "away");
        CHECK(records_there(path).error().kind == Error::Kind::storage);
    }
    CHECK(not_lost(folder.file("other.db")).ok());  // those are not its backups
}

TEST_CASE(
    "A log or journal left of records that are gone is put aside by a restore, not played into what comes") {
    for (const std::string end : {"-wal", "-journal"}) {
        INFO(end);
        const TemporaryFolder folder;
        const std::string path = folder.file("records.db");
        make_records(path, 2);
        const BackupMade backup = made(opened(path), 0);
        fs::remove(path);
        write_file(path + end, "steps of the file that is gone");
        const auto copy = BorrowedCopy::of(backup.backup.path);
        REQUIRE_OK(copy);
        REQUIRE_OK(restore(copy.value().store(), path, {}, noon));
        CHECK_FALSE(fs::exists(path + end));
        bool kept = false;
        for (const auto& [name, bytes] : tree(folder.file("backups"))) {
            kept = kept || bytes == "steps of the file that is gone";
        }
        CHECK(kept);
        CHECK(opened(path).number_of_jobs().value() == 1);
    }
}
