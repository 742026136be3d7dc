// A copy of the records made while they are in use, and looked through before it counts; and such a copy put
// in the place of everything.
#include <fcntl.h>
#include <stdio.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <system_error>

#include "app/records/connection.hpp"
#include "app/records/copying.hpp"

namespace hardover {

using namespace records_detail;

namespace {

constexpr int all_pages = -1;

Result<void> make_copy(const Database& from, const std::string& path) {
    auto to = Database::open(path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, std::chrono::seconds(5));
    if (!to.ok()) return to.error();
    return copy_all(from, to.value());
}

// Gives it its name, unless that is taken.
Result<void> name_it(const std::string& from, const std::string& to) {
    const Error taken{Error::Kind::bad_input, "there is a file of this name already", to,
                      "give another name"};
    if (renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), RENAME_NOREPLACE) == 0) return {};
    if (errno == EEXIST) return taken;
    // Not every disk can do both in one.
    std::error_code failed;
    if (errno == EINVAL || errno == ENOSYS) {
        if (std::filesystem::exists(to, failed)) return taken;
        std::filesystem::rename(from, to, failed);
        if (!failed) return {};
    }
    return storage_error(to, SQLITE_IOERR, std::strerror(errno));
}

Result<void> look_through(const std::string& path) {
    auto copy = Store::open(path);
    if (!copy.ok()) return copy.error();
    return copy.value().check();
}

// The error for damage found in a copy. The copy is gone with the refusal, and most damage in it comes from
// the records: then they are named.
Error whose_damage(const Store& records, const std::string& copy, const Error& found) {
    if (found.where != copy) return found;
    const auto sound = records.check();
    if (!sound.ok()) return sound.error();
    return {Error::Kind::storage, "the copy did not come out as the records are", copy,
            "the records are in order; check the disk the copy goes to, or name another folder"};
}

}  // namespace

Result<void> records_detail::copy_all(const Database& from, const Database& to) {
    sqlite3_backup* copy = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (copy == nullptr) return to.error(sqlite3_extended_errcode(to.handle()));
    const int stepped = sqlite3_backup_step(copy, all_pages);
    const int finished = sqlite3_backup_finish(copy);
    if (stepped != SQLITE_DONE) return to.error(stepped);
    if (finished != SQLITE_OK) return to.error(finished);
    return {};
}

Result<void> Store::backup(const std::string& path) const {
    return copy_to(path, look_through);
}

Result<void> Store::copy_as_it_is(const std::string& path) const {
    return copy_to(path, [](const std::string&) { return Result<void>(); });
}

Result<void> Store::copy_to(const std::string& path,
                            const std::function<Result<void>(const std::string&)>& look) const {
    std::error_code failed;
    if (std::filesystem::exists(path, failed)) {
        return Error{Error::Kind::bad_input, "there is a file of this name already", path,
                     "give another name"};
    }
    // Its own name for each program, so that none takes another's away.
    const std::string unfinished = path + ".unfinished-" + std::to_string(getpid());
    std::filesystem::remove(unfinished, failed);
    Result<void> done = make_copy(connection_->database, unfinished);
    if (done) done = look(unfinished);
    if (!done && is_damage(done.error())) done = whose_damage(*this, unfinished, done.error());
    if (done) done = name_it(unfinished, path);
    for (const char* end : {"", "-wal", "-shm", "-journal"})
        std::filesystem::remove(unfinished + end, failed);
    return done;
}

Result<void> Store::put_back(const std::string& path) {
    const auto from = Database::open(path, SQLITE_OPEN_READWRITE, std::chrono::seconds(5));
    if (!from.ok()) return from.error();
    return copy_all(from.value(), connection_->database);
}

}  // namespace hardover
