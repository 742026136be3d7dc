// A disk over which programs share no memory, as one of the network: SQLite's own file layer without that
// part.
#pragma once

namespace hardover_tests {

// Stands in for SQLite's file layer while it lives.
class NoSharedMemory {
  public:
    NoSharedMemory();
    ~NoSharedMemory();
    NoSharedMemory(const NoSharedMemory&) = delete;
    NoSharedMemory& operator=(const NoSharedMemory&) = delete;
};

}  // namespace hardover_tests
