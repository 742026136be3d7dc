// A copy of a records file to read from, made so that the file itself keeps every byte.
#include <stdlib.h>

#include <filesystem>
#include <system_error>
#include <thread>
#include <utility>

#include "app/records/backups.hpp"
#include "app/records/connection.hpp"
#include "app/records/copying.hpp"
#include "app/records/inspect.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

using namespace records_detail;
namespace fs = std::filesystem;

namespace {

bool is_there(const std::string& path) {
    std::error_code failed;
    return fs::exists(path, failed);
}

std::pair<std::uintmax_t, fs::file_time_type> stamp(const std::string& path) {
    std::error_code failed;
    const auto size = fs::file_size(path, failed);
    return {size, fs::last_write_time(path, failed)};
}

// Byte by byte, with the log where there is one. Looks again when a program wrote meanwhile.
Result<void> copy_bytes(const std::string& from, const std::string& to) {
    constexpr int most_tries = 5;
    for (int attempt = 1;; ++attempt) {
        const auto before = std::pair(stamp(from), stamp(from + "-wal"));
        for (const char* end : {"", "-wal", "-journal"}) {
            if (!is_there(from + end)) continue;
            const auto copied = copy_whole_file(from + end, to + end);
            if (!copied.ok()) return copied.error();
        }
        if (before == std::pair(stamp(from), stamp(from + "-wal"))) return {};
        if (attempt == most_tries) return storage_error(from, SQLITE_BUSY);
        std::this_thread::sleep_for(std::chrono::milliseconds(50));
    }
}

// By SQLite, beside whoever has the file open; its log is there already, so nothing new is made beside it.
Result<void> copy_beside_others(const std::string& from, const std::string& to) {
    auto source = Database::open(from, SQLITE_OPEN_READWRITE, std::chrono::seconds(5));
    if (!source.ok()) return source.error();
    source.value().checkpoint_on_close(false);
    auto target = Database::open(to, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE, std::chrono::seconds(5));
    if (!target.ok()) return target.error();
    return copy_all(source.value(), target.value());
}

Result<void> copy_to(const std::string& from, const std::string& to) {
    // A file that nobody has open, or that stands where nothing can be written, is copied byte by byte.
    if (is_there(from + "-shm") && copy_beside_others(from, to).ok()) return {};
    std::error_code failed;
    fs::remove(to, failed);
    return copy_bytes(from, to);
}

Result<std::string> new_folder() {
    std::error_code failed;
    const fs::path room = fs::temp_directory_path(failed);
    std::string pattern = (room / "hardover-copy-XXXXXX").string();
    if (mkdtemp(pattern.data()) != nullptr) return pattern;
    return Error{Error::Kind::storage, "there is no room to look at a copy of it", room.string(),
                 "make room, or get the right to write there"};
}

}  // namespace

BorrowedCopy::BorrowedCopy(BorrowedCopy&& other) noexcept
    : folder_(std::exchange(other.folder_, "")), store_(std::move(other.store_)) {}

BorrowedCopy::~BorrowedCopy() {
    store_.clear();
    std::error_code failed;
    if (!folder_.empty()) fs::remove_all(folder_, failed);
}

Result<BorrowedCopy> BorrowedCopy::of(const std::string& path) {
    if (!is_there(path)) {
        return Error{Error::Kind::not_found, "there is no such file", path, "check its name"};
    }
    const auto state = inspect(path, Rows::as_written);
    if (!state.ok()) return state.error();
    if (state.value() == FileState::fresh) {
        return Error{Error::Kind::bad_input, "this file is empty", path, "name a records file or a backup"};
    }
    auto folder = new_folder();
    if (!folder.ok()) return folder.error();
    BorrowedCopy copy;
    copy.folder_ = std::move(folder.value());
    const std::string file = copy.folder_ + "/" + fs::path(path).filename().string();
    if (auto copied = copy_to(path, file); !copied.ok()) return copied.error();
    auto store = Store::open(file);
    if (!store.ok()) return store.error();
    if (auto sound = store.value().check(); !sound.ok()) return damaged_error(path, sound.error().what);
    copy.store_.push_back(std::move(store.value()));
    return copy;
}

}  // namespace hardover
