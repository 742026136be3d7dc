// A disk that is full from its n-th write on: SQLite's own file layer with a counter in front of its writes.
#pragma once

namespace hardover_tests {

// Stands in for SQLite's file layer while it lives: every file opened meanwhile counts its writes.
class FullDisk {
  public:
    FullDisk();
    ~FullDisk();
    FullDisk(const FullDisk&) = delete;
    FullDisk& operator=(const FullDisk&) = delete;

    // From the n-th write on (1: the next) every write and every growth of a file is refused.
    void full_from_write(int n);
    void make_room();
    bool refused_any() const;
};

}  // namespace hardover_tests
