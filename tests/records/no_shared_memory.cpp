#include "no_shared_memory.hpp"

#include <sqlite3.h>

namespace hardover_tests {

namespace {

sqlite3_vfs* real = nullptr;
sqlite3_vfs without;
sqlite3_io_methods methods;

// The real file with the first version of the methods: those for shared memory came with the second.
int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flags_out) {
    const int code = real->xOpen(real, name, file, flags, flags_out);
    if (file->pMethods != nullptr) {
        methods = *file->pMethods;
        methods.iVersion = 1;
        file->pMethods = &methods;
    }
    return code;
}

}  // namespace

NoSharedMemory::NoSharedMemory() {
    real = sqlite3_vfs_find(nullptr);
    without = *real;
    without.zName = "no-shared-memory";
    without.xOpen = open_file;
    sqlite3_vfs_register(&without, 1);
}

NoSharedMemory::~NoSharedMemory() {
    sqlite3_vfs_unregister(&without);
    sqlite3_vfs_register(real, 1);
}

}  // namespace hardover_tests
