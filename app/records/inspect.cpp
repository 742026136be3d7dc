// The look before the leap: header, version and damage of a records file, without touching it.
#include "app/records/inspect.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <string_view>
#include <system_error>
#include <thread>
#include <utility>

#include "app/records/database.hpp"
#include "app/records/layout.hpp"

namespace hardover::records_detail {

namespace fs = std::filesystem;

namespace {

// The first bytes of every SQLite file; places and meanings as in "Database File Format", section 1.3,
// published with SQLite.
constexpr std::size_t header_size = 100;
using Header = std::array<unsigned char, header_size>;
constexpr std::string_view magic("SQLite format 3\0", 16);
constexpr std::size_t page_size_at = 16;  // two bytes
constexpr std::size_t write_version_at = 18;
constexpr std::size_t read_version_at = 19;
constexpr std::size_t user_version_at = 60;
constexpr std::size_t application_id_at = 68;
constexpr unsigned char newest_file_format = 2;  // 1: rollback journal, 2: write-ahead log

std::int32_t big_endian(const Header& header, std::size_t at) {
    const std::uint32_t bits = (std::uint32_t{header[at]} << 24) | (std::uint32_t{header[at + 1]} << 16) |
                               (std::uint32_t{header[at + 2]} << 8) | std::uint32_t{header[at + 3]};
    return static_cast<std::int32_t>(bits);
}

bool has_content(const std::string& path) {
    std::error_code failed;
    const auto size = fs::file_size(path, failed);
    return !failed && size > 0;
}

bool exists(const std::string& path) {
    std::error_code failed;
    return fs::exists(path, failed);
}

Error not_ours(const std::string& path, std::string what) {
    return {Error::Kind::storage, std::move(what), path, "it was left as it is; name another file"};
}

// Bytes in a page; 0 when the header gives a size that cannot be.
std::uintmax_t page_size(const Header& header) {
    const unsigned size = header[page_size_at] * 256U + header[page_size_at + 1];
    return size == 1 ? 65536 : size;
}

// "file:" URI of a path, with the letters that mean something in a URI escaped.
std::string uri_of(const std::string& path) {
    std::string uri = "file:";
    for (const char letter : path) {
        if (letter == '%') {
            uri += "%25";
        } else if (letter == '?') {
            uri += "%3f";
        } else if (letter == '#') {
            uri += "%23";
        } else {
            uri += letter;
        }
    }
    return uri;
}

// Whether the very first write to the file was cut off, so that no header is there: a rollback journal beside
// it takes it back to nothing ("Database File Format", section 3). SQLite will do so.
bool was_being_made(const std::string& path, const std::string& start_of_file) {
    if (start_of_file.find_first_not_of('\0') != std::string::npos) return false;
    constexpr std::string_view mark("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8);
    constexpr std::size_t pages_at = 16;  // four bytes: how many pages the file had before
    constexpr std::size_t pages_end = pages_at + 4;
    std::array<char, pages_end> start{};
    std::ifstream journal(path + "-journal", std::ios::binary);
    if (!journal.read(start.data(), start.size())) return false;
    const std::string_view seen(start.data(), start.size());
    return seen.substr(0, mark.size()) == mark && seen.substr(pages_at) == std::string_view("\0\0\0\0", 4);
}

// The first bytes of a file that has some.
Result<std::string> start_of(const std::string& path) {
    const auto file = Database::open(path, SQLITE_OPEN_READONLY, std::chrono::milliseconds(0),
                                     uri_of(path) + "?immutable=1");
    if (!file.ok()) return file.error();
    std::string start = file.value().first_bytes(header_size);
    if (start.empty()) return storage_error(path, SQLITE_CANTOPEN);
    return start;
}

// The header of a records file this program knows, or why it is none.
Result<Header> header_of(const std::string& path, const std::string& start) {
    const std::size_t got = start.size();
    Header header{};
    std::copy(start.begin(), start.end(), header.begin());
    if (start.substr(0, magic.size()) != magic.substr(0, got)) {
        return not_ours(path, "this is not a records file of Hardover");
    }
    if (got < header_size) return damaged_error(path, "it is cut short");
    if (big_endian(header, application_id_at) != application_id) {
        return not_ours(path, "this is another program's database, not a records file of Hardover");
    }
    const auto version = big_endian(header, user_version_at);
    if (version > static_cast<std::int32_t>(migration_steps().size())) return newer_error(path, version);
    if (version < 1 || header[write_version_at] > newest_file_format ||
        header[read_version_at] > newest_file_format) {
        return damaged_error(path, "its header makes no sense");
    }
    return header;
}

// Reads the whole file as if it could not change: no lock, no -wal, no -shm is made.
Result<void> check_content(const std::string& path, const Header& header, Rows rows) {
    // SQLite takes a last page that is cut short for one that ends in zeros.
    std::error_code failed;
    const auto size = fs::file_size(path, failed);
    const auto page = page_size(header);
    if (failed || page == 0 || size % page != 0) return damaged_error(path, "its last page is cut short");
    auto database = Database::open(path, SQLITE_OPEN_READONLY, std::chrono::milliseconds(0),
                                   uri_of(path) + "?immutable=1");
    if (!database.ok()) return database.error();
    return look_for_damage(database.value(), rows);
}

// What changes when another program writes to the file.
std::pair<std::uintmax_t, fs::file_time_type> stamp(const std::string& path) {
    std::error_code failed;
    const auto size = fs::file_size(path, failed);
    return {size, fs::last_write_time(path, failed)};
}

Result<FileState> inspect_once(const std::string& path, Rows rows) {
    std::error_code failed;
    const auto status = fs::status(path, failed);
    if (fs::is_directory(status)) return not_ours(path, "this is a folder, not a records file");
    const bool present = fs::exists(status);
    if (present && !fs::is_regular_file(status)) return not_ours(path, "this is not a plain file");
    if (!present || !has_content(path)) {
        // SQLite would throw the log away together with the steps that stand only there.
        if (has_content(path + "-wal")) return damaged_error(path, "it is empty, but its -wal file is not");
        return FileState::fresh;
    }
    const auto start = start_of(path);
    if (!start.ok()) return start.error();
    if (was_being_made(path, start.value())) return FileState::fresh;
    const auto header = header_of(path, start.value());
    if (!header.ok()) return header.error();
    if (exists(path + "-wal") || exists(path + "-journal")) return FileState::unsettled;
    if (auto content = check_content(path, header.value(), rows); !content.ok()) return content.error();
    return FileState::sound;
}

}  // namespace

Error newer_error(const std::string& path, long long version) {
    return {Error::Kind::unsupported,
            "this records file was made by a newer version of Hardover: its layout is " +
                std::to_string(version) + ", this program knows up to " +
                std::to_string(migration_steps().size()),
            path, "it was left as it is; open it with the newer version"};
}

Result<FileState> inspect(const std::string& path, Rows rows) {
    // Without a lock a file that another program is just writing can look damaged: a refusal needs two looks
    // at a file that nobody touches meanwhile.
    constexpr int most_looks = 6;
    for (int look = 1;; ++look) {
        const auto before = stamp(path);
        auto state = inspect_once(path, rows);
        const bool settled = look > 1 && stamp(path) == before;
        if (state.ok() || settled || look == most_looks) return state;
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
}

}  // namespace hardover::records_detail
