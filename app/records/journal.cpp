#include "app/records/journal.hpp"

#include <sys/vfs.h>

#include <algorithm>
#include <array>
#include <thread>

namespace hardover::records_detail {

namespace {

// Sets a journal mode. SQLite does not wait for the lock itself when the mode changes, so that is done here.
// Gives the mode the file has then.
Result<std::string> change_journal(const Database& database, const char* sql,
                                   std::chrono::milliseconds wait) {
    const auto give_up = std::chrono::steady_clock::now() + wait;
    for (;;) {
        Statement change(database, sql);
        const int code = change.step();
        if (code == SQLITE_ROW) return change.text(0);
        const bool held = (code & 0xff) == SQLITE_BUSY;
        if (!held || std::chrono::steady_clock::now() >= give_up) return database.error(code);
        std::this_thread::sleep_for(std::chrono::milliseconds(5));
    }
}

bool file_layer_shares_memory(const Database& database) {
    sqlite3_file* file = nullptr;
    sqlite3_file_control(database.handle(), "main", SQLITE_FCNTL_FILE_POINTER, &file);
    return file != nullptr && file->pMethods != nullptr && file->pMethods->iVersion >= 2 &&
           file->pMethods->xShmMap != nullptr;
}

}  // namespace

bool is_of_the_network(std::uint64_t type) {
    // From linux/magic.h and the sources of the file systems that are not in it.
    constexpr std::array<std::uint64_t, 14> network = {
        0x6969,      // NFS
        0x517b,      // SMB
        0xff534d42,  // CIFS
        0xfe534d42,  // SMB2
        0x65735546,  // FUSE: sshfs and many others; which one cannot be told
        0x01021997,  // 9P
        0x5346414f,  // AFS
        0x6b414653,  // kAFS
        0x73757245,  // Coda
        0x00c36400,  // Ceph
        0x01161970,  // GFS2
        0x7461636f,  // OCFS2
        0x0bd00bd0,  // Lustre
        0x564c,      // NCP
    };
    return std::find(network.begin(), network.end(), type & 0xffffffffU) != network.end();
}

bool memory_is_shared(const Database& database) {
    struct statfs disk {};
    const bool told = statfs(database.path().c_str(), &disk) == 0;
    if (told && is_of_the_network(static_cast<std::uint64_t>(disk.f_type))) return false;
    return file_layer_shares_memory(database);
}

bool has_write_ahead_mark(const Database& database) {
    constexpr std::size_t read_version_at = 19;  // "Database File Format", section 1.3
    const std::string start = database.first_bytes(read_version_at + 1);
    return start.size() > read_version_at && start[read_version_at] == 2;
}

Result<void> hold_alone(const Database& database) {
    return database.run("PRAGMA locking_mode = EXCLUSIVE");
}

Result<Journal> settle_journal(const Database& database, bool fresh, std::chrono::milliseconds wait) {
    const bool shared = memory_is_shared(database);
    if (shared && (fresh || has_write_ahead_mark(database))) {
        const auto mode = change_journal(database, "PRAGMA journal_mode = WAL", wait);
        if (!mode.ok()) return mode.error();
        if (mode.value() == "wal") {
            if (auto set = database.run("PRAGMA synchronous = FULL"); !set.ok()) return set.error();
            return Journal::write_ahead;
        }
    }
    const auto mode = change_journal(database, "PRAGMA journal_mode = DELETE", wait);
    if (!mode.ok()) return mode.error();
    if (mode.value() != "delete") {
        return Error{Error::Kind::unsupported, "this disk cannot keep the records safely (no journal)",
                     database.path(), "name a file on another disk"};
    }
    // EXTRA: also the folder, from which the journal goes, is on the disk before a step counts. The reading
    // lets go of a file that was held alone.
    if (auto set = database.run("PRAGMA synchronous = EXTRA; PRAGMA locking_mode = NORMAL; "
                                "SELECT number FROM jobs LIMIT 1");
        !set.ok()) {
        return set.error();
    }
    return Journal::rollback;
}

}  // namespace hardover::records_detail
