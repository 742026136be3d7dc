// SQLite's calls and codes turned into Result and Error, in one place.
#include "app/records/database.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <system_error>
#include <utility>

#include "app/records/checksum.hpp"
#include "app/records/folded.hpp"
#include "app/records/way_back.hpp"

namespace hardover::records_detail {

namespace {
constexpr const char* damaged_text = "the records file is damaged";

// Less is left on the disk of this file than the index of the write-ahead log needs.
bool no_room_at(const std::string& path) {
    constexpr std::uintmax_t least = 64 * 1024;
    std::error_code failed;
    const auto folder = std::filesystem::absolute(path, failed).parent_path();
    const auto room = std::filesystem::space(folder, failed);
    return !failed && room.available < least;
}

}  // namespace

Error damaged_error(const std::string& path, const std::string& detail) {
    Error error{Error::Kind::storage, damaged_text, path,
                std::string("keep it as it is and ") + go_on_with_a_copy};
    if (!detail.empty()) error.what += ": " + detail;
    return error;
}

bool is_damage(const Error& error) {
    return error.what.starts_with(damaged_text);
}

Error storage_error(const std::string& path, int code, const std::string& detail) {
    const auto make = [&path](std::string what, std::string cure) {
        return Error{Error::Kind::storage, std::move(what), path, std::move(cure)};
    };
    if (code == SQLITE_READONLY_DBMOVED) {
        return make("the records file was moved or deleted while it was open",
                    "put it back, then start again");
    }
    const auto full = [&] {
        return make("the disk is full; this step was not written", "make room on the disk, then do it again");
    };
    switch (code & 0xff) {
        case SQLITE_FULL:
            return full();
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return make("another program is holding the records file",
                        "close it there or wait a moment, then do it again");
        case SQLITE_READONLY:
        case SQLITE_PERM:
            return make("the records file cannot be written: it is read-only here",
                        "get the right to write the file and its folder");
        case SQLITE_CANTOPEN:
            return make("the records file cannot be opened",
                        "check that its folder exists and may be written");
        case SQLITE_CORRUPT:
            return damaged_error(path, detail);
        case SQLITE_NOTADB:
            return make("this is not a records file of Hardover", "name another file");
        case SQLITE_IOERR:
            if (code == SQLITE_IOERR_LOCK || code == SQLITE_IOERR_RDLOCK || code == SQLITE_IOERR_UNLOCK) {
                return make(
                    "this disk cannot lock files, so that two programs would spoil each other's work",
                    "keep the records on a disk of this computer, or have the share set up with locks");
            }
            if (no_room_at(path)) return full();  // the index beside the write-ahead log has no room either
            return make("the disk could not be read or written", "check the disk, then do it again");
        case SQLITE_NOMEM:
            return make("there is not enough memory", "close other programs, then do it again");
        default:
            return make("the records could not be used: " + detail, "");
    }
}

Result<Database> Database::open(const std::string& path, int flags, std::chrono::milliseconds wait,
                                const std::string& uri) {
    if (!uri.empty()) flags |= SQLITE_OPEN_URI;
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(uri.empty() ? path.c_str() : uri.c_str(), &handle,
                                     flags | SQLITE_OPEN_EXRESCODE, nullptr);
    Database database(handle, path);  // closes the handle, which SQLite gives even when opening failed
    if (code != SQLITE_OK) return storage_error(path, code, sqlite3_errstr(code));
    sqlite3_busy_timeout(handle, static_cast<int>(wait.count()));
    if (const int added = add_checksum_function(handle); added != SQLITE_OK) return database.error(added);
    if (const int added = add_folded_function(handle); added != SQLITE_OK) return database.error(added);
    return database;
}

Database::Database(Database&& other) noexcept
    : handle_(std::exchange(other.handle_, nullptr)), path_(std::move(other.path_)) {}

Database& Database::operator=(Database&& other) noexcept {
    std::swap(handle_, other.handle_);
    std::swap(path_, other.path_);
    return *this;
}

Database::~Database() {
    sqlite3_close_v2(handle_);
}

Error Database::error(int code) const {
    return storage_error(path_, code, sqlite3_errmsg(handle_));
}

Result<void> Database::run(const char* sql) const {
    const int code = sqlite3_exec(handle_, sql, nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return error(code);
    return {};
}

Result<std::optional<std::string>> Database::first_text(const char* sql) const {
    Statement statement(*this, sql);
    const int code = statement.step();
    if (code == SQLITE_DONE) return std::optional<std::string>();
    if (code != SQLITE_ROW) return error(code);
    return std::optional<std::string>(statement.text(0));
}

Result<std::int64_t> Database::number(const char* sql) const {
    Statement statement(*this, sql);
    const int code = statement.step();
    if (code == SQLITE_ROW) return statement.number(0);
    return error(code == SQLITE_DONE ? SQLITE_CORRUPT : code);
}

void Database::checkpoint_on_close(bool wanted) const {
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, wanted ? 0 : 1, nullptr);
}

Statement::Statement(const Database& database, const char* sql) {
    code_ = sqlite3_prepare_v2(database.handle(), sql, -1, &statement_, nullptr);
}

Statement::~Statement() {
    sqlite3_finalize(statement_);
}

Statement& Statement::bind(std::int64_t number) {
    if (code_ == SQLITE_OK) code_ = sqlite3_bind_int64(statement_, ++bound_, number);
    return *this;
}

Statement& Statement::bind(const std::string& text) {
    if (code_ == SQLITE_OK) {
        code_ = sqlite3_bind_text64(statement_, ++bound_, text.data(), text.size(), SQLITE_TRANSIENT,
                                    SQLITE_UTF8);
    }
    return *this;
}

int Statement::step() {
    return code_ == SQLITE_OK ? sqlite3_step(statement_) : code_;
}

void Statement::again() {
    sqlite3_reset(statement_);
    bound_ = 0;
}

std::int64_t Statement::number(int column) const {
    return sqlite3_column_int64(statement_, column);
}

std::string Statement::text(int column) const {
    const unsigned char* text = sqlite3_column_text(statement_, column);
    if (text == nullptr) return "";
    return std::string(reinterpret_cast<const char*>(text),
                       static_cast<std::size_t>(sqlite3_column_bytes(statement_, column)));
}

Transaction::~Transaction() {
    // Nothing more can be done should the rollback fail as well: SQLite undoes the step when the file is next
    // opened.
    if (sqlite3_get_autocommit(database_.handle()) == 0) {
        sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
    }
}

Result<void> Transaction::begin() {
    return database_.run("BEGIN IMMEDIATE");
}

Result<void> Transaction::commit() {
    return database_.run("COMMIT");
}

std::string Database::first_bytes(std::size_t count) const {
    sqlite3_file* file = nullptr;
    sqlite3_file_control(handle(), "main", SQLITE_FCNTL_FILE_POINTER, &file);
    if (file == nullptr || file->pMethods == nullptr) return {};
    sqlite3_int64 size = 0;
    if (file->pMethods->xFileSize(file, &size) != SQLITE_OK) return {};
    std::string bytes(std::min<std::size_t>(count, static_cast<std::size_t>(size)), '\0');
    const int code = file->pMethods->xRead(file, bytes.data(), static_cast<int>(bytes.size()), 0);
    return code == SQLITE_OK ? bytes : std::string();
}

}  // namespace hardover::records_detail
