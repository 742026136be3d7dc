// A copy of the records made while they are in use, and looked through before it counts.
#include <filesystem>
#include <system_error>

#include "app/records/connection.hpp"

namespace hardover {

using namespace records_detail;

namespace {

constexpr int all_pages = -1;

// SQLite's own online copy: a whole state of the file, whatever is written meanwhile.
Result<void> copy_all(const Database& from, const Database& to) {
    sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (copy == nullptr) return to.error(sqlite3_extended_errcode(to.handle()));
    const int stepped = sqlite3_backup_step(copy, all_pages);
    const int finished = sqlite3_backup_finish(copy);
    if (stepped != SQLITE_DONE) return to.error(stepped);
    if (finished != SQLITE_OK) return to.error(finished);
    return {};
}

Result<void> make_copy(const Database& from, const std::string& path) {
    auto to = Database::open(path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, std::chrono::seconds(5));
    if (!to.ok()) return to.error();
    return copy_all(from, to.value());
}

Result<void> look_through(const std::string& path) {
    auto copy = Store::open(path);
    if (!copy.ok()) return copy.error();
    return copy.value().check();
}

}  // namespace

Result<void> Store::backup(const std::string& path) const {
    std::error_code failed;
    if (std::filesystem::exists(path, failed)) {
        return Error{Error::Kind::bad_input, "there is a file of this name already", path,
                     "give another name"};
    }
    const std::string unfinished = path + ".unfinished";
    std::filesystem::remove(unfinished, failed);
    Result<void> done = make_copy(connection_->database, unfinished);
    if (done) done = look_through(unfinished);
    if (done) {
        std::filesystem::rename(unfinished, path, failed);
        if (failed) done = storage_error(path, SQLITE_IOERR, failed.message());
    }
    for (const char* end : {"", "-wal", "-shm"}) std::filesystem::remove(unfinished + end, failed);
    return done;
}

}  // namespace hardover
