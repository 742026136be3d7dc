// A disk that fails: SQLite's own file layer with a counter in front of what may be refused, and somebody who
// is told of every change.
#pragma once

#include <cstdint>
#include <string_view>

namespace hardover_tests {

// Is told of every change to a file before it is made, and may refuse it with a code of SQLite (0: go on).
class DiskWatcher {
  public:
    virtual ~DiskWatcher() = default;
    virtual int opens(std::string_view path, bool may_create) = 0;
    virtual int writes(std::string_view path, std::string_view bytes, std::int64_t at) = 0;
    virtual int truncates(std::string_view path, std::int64_t size) = 0;
    virtual int syncs(std::string_view path) = 0;
    virtual int removes(std::string_view path, bool sync_folder) = 0;
};

// Stands in for SQLite's file layer while it lives: every file opened meanwhile may be refused something.
class FaultyDisk {
  public:
    // Every kind of call that changes or reads a file, and that a real disk refuses at times.
    enum class Call { open, read, write, sync, truncate, size, remove, shared_memory, lock };

    explicit FaultyDisk(DiskWatcher* watcher = nullptr);
    ~FaultyDisk();
    FaultyDisk(const FaultyDisk&) = delete;
    FaultyDisk& operator=(const FaultyDisk&) = delete;

    // The n-th such call (1: the next) is refused with this code of SQLite, and when `lasting` all after it.
    void fail(Call call, int n, int code, bool lasting);

    // From the n-th write on (1: the next) every write and every growth of a file is refused.
    void full_from_write(int n);

    void mend();
    bool refused_any() const;
};

}  // namespace hardover_tests
