// A disk that fails: SQLite's own file layer with a counter in front of what may be refused.
#pragma once

namespace hardover_tests {

// Stands in for SQLite's file layer while it lives: every file opened meanwhile may be refused something.
class FaultyDisk {
  public:
    // Every kind of call that changes or reads a file, and that a real disk refuses at times.
    enum class Call { open, read, write, sync, truncate, size, remove, shared_memory, lock };

    FaultyDisk();
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
