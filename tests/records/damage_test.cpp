// Files that are not ours, are damaged or too new: each is refused in plain words and keeps every byte.
#include <sqlite3.h>

#include "app/records/layout.hpp"
#include "records_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

void run_sql(const std::string& path, const std::string& sql) {
    sqlite3* handle = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &handle) == SQLITE_OK);
    CHECK(sqlite3_exec(handle, sql.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_close(handle);
}

// Opens the file and requires a refusal that leaves the whole folder as it was.
Error refused(const TemporaryFolder& folder, const std::string& path) {
    const auto before = folder.content();
    const auto store = Store::open(path);
    REQUIRE_FALSE(store.ok());
    CHECK(folder.content() == before);
    CHECK(store.error().where == path);
    CHECK_FALSE(store.error().cure.empty());
    return store.error();
}

}  // namespace

TEST_CASE("A text file is refused and kept") {
    const TemporaryFolder folder;
    for (const std::string text : {"x", "SQLite", "Notes of the yard at Saltmarsh Landing\n"}) {
        write_file(folder.file("notes.txt"), text);
        CHECK_FALSE(Store::open(folder.file("notes.txt")).ok());
        CHECK(file_text(folder.file("notes.txt")) == text);
    }
    CHECK(refused(folder, folder.file("notes.txt")).what == "this is not a records file of Hardover");
}

TEST_CASE("Another program's database is refused and kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("other.db");
    run_sql(path, "PRAGMA application_id = 7; CREATE TABLE jobs (number); INSERT INTO jobs VALUES (1)");
    CHECK(refused(folder, path).what == "this is another program's database, not a records file of Hardover");
}

TEST_CASE("A database without any mark is refused, in write-ahead mode too") {
    const TemporaryFolder folder;
    const std::string path = folder.file("other.db");
    run_sql(path, "PRAGMA journal_mode = WAL; CREATE TABLE t (a)");
    CHECK(refused(folder, path).what == "this is another program's database, not a records file of Hardover");
}

TEST_CASE("A records file of a newer version is refused and kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 3);
    const std::string newer = std::to_string(records_version + 1);
    run_sql(path, "PRAGMA user_version = " + newer);
    const Error error = refused(folder, path);
    CHECK(error.kind == Error::Kind::unsupported);
    CHECK(error.what == "this records file was made by a newer version of Hardover: its layout is " + newer +
                            ", this program knows up to " + std::to_string(records_version));
}

TEST_CASE("A newer version that stands only in the write-ahead log is refused, and file and log are kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 3);
    const std::string known_version = file_text(path);
    sqlite3* other = nullptr;
    REQUIRE(sqlite3_open(path.c_str(), &other) == SQLITE_OK);
    const std::string newer = "PRAGMA user_version = " + std::to_string(records_version + 1);
    REQUIRE(sqlite3_exec(other, newer.c_str(), nullptr, nullptr, nullptr) == SQLITE_OK);
    const std::string log = file_text(path + "-wal");
    REQUIRE_FALSE(log.empty());
    REQUIRE(file_text(path) == known_version);

    const auto store = Store::open(path);
    REQUIRE_FALSE(store.ok());
    CHECK(store.error().kind == Error::Kind::unsupported);
    CHECK(file_text(path) == known_version);
    CHECK(file_text(path + "-wal") == log);
    sqlite3_close(other);
}

TEST_CASE("A records file cut short anywhere is refused and kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 200);
    const std::string whole = file_text(path);
    REQUIRE(whole.size() > 3 * 4096);
    for (const std::size_t size : {std::size_t{1}, std::size_t{15}, std::size_t{16}, std::size_t{99},
                                   std::size_t{100}, std::size_t{511}, std::size_t{4095}, std::size_t{4096},
                                   std::size_t{8192}, whole.size() - 4096, whole.size() - 1}) {
        INFO("cut to " << size << " bytes");
        write_file(path, whole.substr(0, size));
        const Error error = refused(folder, path);
        CHECK(error.kind == Error::Kind::storage);
        if (size >= 16) CHECK(error.what.find("the records file is damaged") == 0);
    }
}

TEST_CASE("An emptied file beside a full log is refused, so that the log is not thrown away") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    write_file(path, "");
    write_file(path + "-wal", "steps that stand only here");
    CHECK(refused(folder, path).what == "the records file is damaged: it is empty, but its -wal file is not");
    fs::remove(path);
    refused(folder, path);
}

TEST_CASE("One wrong bit in the header is refused, or does no harm to the events") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 60);
    const std::string whole = file_text(path);
    int refusals = 0;
    for (std::size_t bit = 0; bit < 800; ++bit) {
        INFO("bit " << bit % 8 << " of byte " << bit / 8);
        std::string wrong = whole;
        wrong[bit / 8] = static_cast<char>(static_cast<unsigned char>(wrong[bit / 8]) ^ (1U << (bit % 8)));
        write_file(path, wrong);
        const auto before = folder.content();
        const auto store = Store::open(path);
        if (store.ok()) {
            const auto events = store.value().events(1);
            REQUIRE_OK(events);
            REQUIRE(events.value().size() == 60);
            REQUIRE(in_order(events.value()));
        } else {
            ++refusals;
            REQUIRE(folder.content() == before);
        }
    }
    // The marks of SQLite and of this program alone are 20 bytes.
    CHECK(refusals >= 160);
}

TEST_CASE("However many free pages a file has, it is read on opening while little is in it") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 60);
    const std::string much = std::to_string(records_detail::most_bytes_read_on_opening + 1);
    run_sql(path, "CREATE TABLE much (a); INSERT INTO much VALUES (zeroblob(" + much + ")); DROP TABLE much");
    REQUIRE(fs::file_size(path) > static_cast<std::uintmax_t>(records_detail::most_bytes_read_on_opening));
    REQUIRE_OK(Store::open(path));
    run_sql(path, "UPDATE learners SET name = name; INSERT INTO learners VALUES (1, 'A07', '', 0, 12345)");
    const auto store = Store::open(path);
    REQUIRE_FALSE(store.ok());
    CHECK(records_detail::is_damage(store.error()));
}

TEST_CASE("A page overwritten in the middle of the file is found before anything is written") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    make_records(path, 400);
    const std::string whole = file_text(path);
    for (std::size_t page = 1; (page + 1) * 4096 <= whole.size(); ++page) {
        INFO("page " << page + 1);
        std::string wrong = whole;
        wrong.replace(page * 4096, 4096, std::string(4096, '\xA5'));
        write_file(path, wrong);
        CHECK(refused(folder, path).what.find("the records file is damaged") == 0);
    }
}

TEST_CASE("A file with our mark but without our tables is refused and kept") {
    const TemporaryFolder folder;
    const std::string path = folder.file("jobs.db");
    run_sql(path, "PRAGMA application_id = " + std::to_string(records_detail::application_id) +
                      "; PRAGMA user_version = 1; CREATE TABLE jobs (number)");
    CHECK(refused(folder, path).what.find("the records file is damaged: no such column") == 0);
}

TEST_CASE("Folders and places that cannot hold a file are refused in words") {
    const TemporaryFolder folder;
    fs::create_directory(folder.file("shop"));
    CHECK(refused(folder, folder.file("shop")).what == "this is a folder, not a records file");
    CHECK_FALSE(Store::open("/dev/null").ok());

    write_file(folder.file("plain"), "text");
    const auto below_a_file = Store::open(folder.file("plain/jobs.db"));
    REQUIRE_FALSE(below_a_file.ok());
    CHECK(below_a_file.error().kind == Error::Kind::storage);
    CHECK(below_a_file.error().what.find("the folder for the records cannot be made: ") == 0);
    CHECK(file_text(folder.file("plain")) == "text");

    // /proc takes no new files, not even from an administrator.
    const auto in_proc = Store::open("/proc/jobs.db");
    REQUIRE_FALSE(in_proc.ok());
    CHECK(in_proc.error().what == "the records file cannot be opened");
}
