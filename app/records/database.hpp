// A thin, owning wrapper of SQLite: connection, statement, transaction, and SQLite's codes in plain words.
// Knows nothing of jobs or of the layout of the records.
#pragma once

#include <sqlite3.h>

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "rules/result/result.hpp"

namespace hardover::records_detail {

// What went wrong with the file at `path`, by SQLite's (extended) result code. `detail` may be empty.
Error storage_error(const std::string& path, int code, const std::string& detail = "");

// The error for a file that has lost or changed part of its content.
Error damaged_error(const std::string& path, const std::string& detail);

bool is_damage(const Error& error);

// An open connection. Closes itself. Movable, so that it may be handed out by a function.
class Database {
  public:
    // `path` is absolute. `uri`, if not empty, is opened instead of it; messages name `path`. `wait` is how
    // long another program holding the file is waited for.
    static Result<Database> open(const std::string& path, int flags, std::chrono::milliseconds wait,
                                 const std::string& uri = "");

    Database(Database&& other) noexcept;
    Database& operator=(Database&& other) noexcept;
    ~Database();

    sqlite3* handle() const { return handle_; }
    const std::string& path() const { return path_; }

    // Runs statements that give no rows.
    Result<void> run(const char* sql) const;

    // The first column of the first row, as text; not set when there is no row.
    Result<std::optional<std::string>> first_text(const char* sql) const;
    Result<std::int64_t> number(const char* sql) const;

    // Whether closing the last connection moves the write-ahead log into the file. Off while the file is only
    // being looked at, so that a refused file keeps its bytes.
    // The first bytes of the file as they lie on the disk, fewer where it is shorter. Read through SQLite's
    // own handle: closing another one of the same file would let go of all locks this process has on it
    // (POSIX), and programs that write side by side would lose each other's work.
    std::string first_bytes(std::size_t count) const;

    void checkpoint_on_close(bool wanted) const;

    // The error for a code this connection gave.
    Error error(int code) const;

  private:
    Database(sqlite3* handle, std::string path) : handle_(handle), path_(std::move(path)) {}
    sqlite3* handle_ = nullptr;
    std::string path_;
};

// A prepared statement. A fault in preparing or binding is kept and comes out of step().
class Statement {
  public:
    Statement(const Database& database, const char* sql);
    Statement(const Database& database, const std::string& sql) : Statement(database, sql.c_str()) {}
    ~Statement();
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;

    Statement& bind(std::int64_t number);
    Statement& bind(const std::string& text);

    // SQLITE_ROW, SQLITE_DONE or an error code.
    int step();

    // Ready to be bound and stepped again.
    void again();

    std::int64_t number(int column) const;
    std::string text(int column) const;

  private:
    sqlite3_stmt* statement_ = nullptr;
    int code_ = SQLITE_OK;
    int bound_ = 0;
};

// A write transaction: holds the write lock from its start, and rolls back unless committed.
class Transaction {
  public:
    explicit Transaction(const Database& database) : database_(database) {}
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;

    Result<void> begin();
    Result<void> commit();

  private:
    const Database& database_;
};

}  // namespace hardover::records_detail
