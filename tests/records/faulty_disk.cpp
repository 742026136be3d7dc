#include "faulty_disk.hpp"

#include <sqlite3.h>

#include <climits>
#include <cstddef>
#include <memory>
#include <new>

namespace hardover_tests {

namespace {

sqlite3_vfs* real = nullptr;
sqlite3_vfs counting;
FaultyDisk::Call failing = FaultyDisk::Call::write;
int calls_left = INT_MAX;  // up to the one that fails; INT_MAX: the disk is sound
int failing_code = SQLITE_OK;
bool goes_on_failing = false;
bool any_refused = false;
DiskWatcher* watching = nullptr;

// Our file, followed in memory by the real one, as SQLite's file layers are stacked.
struct CountedFile {
    sqlite3_file base;
    const char* name;  // SQLite's, valid while the file is open; none for a temporary one
};
constexpr int file_size = (static_cast<int>(sizeof(CountedFile)) + 15) / 16 * 16;

sqlite3_file* real_file(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<char*>(file) + file_size);
}

// Whether the watcher is told of this file.
const char* watched_name(sqlite3_file* file) {
    return watching == nullptr ? nullptr : reinterpret_cast<CountedFile*>(file)->name;
}

// SQLITE_OK, or what this call is refused with.
int refusal(FaultyDisk::Call call) {
    if (call != failing || calls_left == INT_MAX) return SQLITE_OK;
    if (calls_left > 0) --calls_left;
    if (calls_left > 0) return SQLITE_OK;
    if (any_refused && !goes_on_failing) return SQLITE_OK;
    any_refused = true;
    return failing_code;
}

const sqlite3_io_methods* methods_of(sqlite3_file* file) {
    return real_file(file)->pMethods;
}

int close_file(sqlite3_file* file) {
    return methods_of(file)->xClose(real_file(file));
}
int read_file(sqlite3_file* file, void* data, int size, sqlite3_int64 at) {
    if (const int code = refusal(FaultyDisk::Call::read); code != SQLITE_OK) return code;
    return methods_of(file)->xRead(real_file(file), data, size, at);
}
int write_to_file(sqlite3_file* file, const void* data, int size, sqlite3_int64 at) {
    if (const int code = refusal(FaultyDisk::Call::write); code != SQLITE_OK) return code;
    if (const char* name = watched_name(file)) {
        const std::string_view bytes(static_cast<const char*>(data), static_cast<std::size_t>(size));
        if (const int code = watching->writes(name, bytes, at); code != SQLITE_OK) return code;
    }
    return methods_of(file)->xWrite(real_file(file), data, size, at);
}
int truncate_file(sqlite3_file* file, sqlite3_int64 size) {
    if (const int code = refusal(FaultyDisk::Call::truncate); code != SQLITE_OK) return code;
    if (const char* name = watched_name(file)) {
        if (const int code = watching->truncates(name, size); code != SQLITE_OK) return code;
    }
    return methods_of(file)->xTruncate(real_file(file), size);
}
int sync_file(sqlite3_file* file, int flags) {
    if (const int code = refusal(FaultyDisk::Call::sync); code != SQLITE_OK) return code;
    if (const char* name = watched_name(file)) {
        if (const int code = watching->syncs(name); code != SQLITE_OK) return code;
    }
    return methods_of(file)->xSync(real_file(file), flags);
}
int size_of_file(sqlite3_file* file, sqlite3_int64* size) {
    if (const int code = refusal(FaultyDisk::Call::size); code != SQLITE_OK) return code;
    return methods_of(file)->xFileSize(real_file(file), size);
}
int lock_file(sqlite3_file* file, int level) {
    if (const int code = refusal(FaultyDisk::Call::lock); code != SQLITE_OK) return code;
    return methods_of(file)->xLock(real_file(file), level);
}
int unlock_file(sqlite3_file* file, int level) {
    return methods_of(file)->xUnlock(real_file(file), level);
}
int check_lock(sqlite3_file* file, int* held) {
    return methods_of(file)->xCheckReservedLock(real_file(file), held);
}
int control_file(sqlite3_file* file, int operation, void* argument) {
    return methods_of(file)->xFileControl(real_file(file), operation, argument);
}
int sector_size(sqlite3_file* file) {
    return methods_of(file)->xSectorSize(real_file(file));
}
int characteristics(sqlite3_file* file) {
    return methods_of(file)->xDeviceCharacteristics(real_file(file));
}
int map_shared(sqlite3_file* file, int page, int size, int extend, void volatile** memory) {
    if (const int code = refusal(FaultyDisk::Call::shared_memory); code != SQLITE_OK) return code;
    return methods_of(file)->xShmMap(real_file(file), page, size, extend, memory);
}
int lock_shared(sqlite3_file* file, int offset, int count, int flags) {
    return methods_of(file)->xShmLock(real_file(file), offset, count, flags);
}
void barrier(sqlite3_file* file) {
    methods_of(file)->xShmBarrier(real_file(file));
}
int unmap_shared(sqlite3_file* file, int remove) {
    return methods_of(file)->xShmUnmap(real_file(file), remove);
}

const sqlite3_io_methods counted_methods = {
    2,           close_file,  read_file,    write_to_file, truncate_file, sync_file,       size_of_file,
    lock_file,   unlock_file, check_lock,   control_file,  sector_size,   characteristics, map_shared,
    lock_shared, barrier,     unmap_shared, nullptr,       nullptr};

int open_file(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* flags_out) {
    file->pMethods = nullptr;
    if (const int code = refusal(FaultyDisk::Call::open); code != SQLITE_OK) return code;
    reinterpret_cast<CountedFile*>(file)->name = name;
    if (watching != nullptr && name != nullptr) {
        const int code = watching->opens(name, (flags & SQLITE_OPEN_CREATE) != 0);
        if (code != SQLITE_OK) return code;
    }
    const int code = real->xOpen(real, name, real_file(file), flags, flags_out);
    if (code == SQLITE_OK) file->pMethods = &counted_methods;
    return code;
}

int remove_file(sqlite3_vfs*, const char* name, int sync_folder) {
    if (const int code = refusal(FaultyDisk::Call::remove); code != SQLITE_OK) return code;
    if (watching != nullptr) {
        if (const int code = watching->removes(name, sync_folder != 0); code != SQLITE_OK) return code;
    }
    return real->xDelete(real, name, sync_folder);
}

}  // namespace

FaultyDisk::FaultyDisk(DiskWatcher* watcher) {
    watching = watcher;
    real = sqlite3_vfs_find(nullptr);
    counting = *real;
    counting.zName = "faulty-disk";
    counting.szOsFile = file_size + real->szOsFile;
    counting.xOpen = open_file;
    counting.xDelete = remove_file;
    sqlite3_vfs_register(&counting, 1);
    mend();
}

FaultyDisk::~FaultyDisk() {
    sqlite3_vfs_unregister(&counting);
    sqlite3_vfs_register(real, 1);
    watching = nullptr;
}

void FaultyDisk::fail(Call call, int n, int code, bool lasting) {
    failing = call;
    calls_left = n;
    failing_code = code;
    goes_on_failing = lasting;
    any_refused = false;
}

void FaultyDisk::full_from_write(int n) {
    fail(Call::write, n, SQLITE_FULL, true);
}

void FaultyDisk::mend() {
    fail(Call::write, INT_MAX, SQLITE_OK, false);
}

bool FaultyDisk::refused_any() const {
    return any_refused;
}

}  // namespace hardover_tests
