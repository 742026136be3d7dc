// Backups of a records file: numbered copies in a folder, each looked through before it counts, and bringing
// one back. The photos stand beside them by their hash, each once for all backups. Knows nothing of what an
// event means.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "app/records/photos.hpp"
#include "app/records/store.hpp"

namespace hardover {

struct Backup {
    std::int64_t number = 0;  // counts up for ever, so that a clock set back changes nothing
    std::string at;           // UTC as in StoredEvent::at
    std::string path;
    std::int64_t bytes = 0;
    bool kept_aside = false;  // what was there before a restore: never cleared away
};

// The folder `backups` beside a records file.
std::string backups_folder(const std::string& records_path);

// The backups of this records file in a folder, the newest first. None when the folder is not there.
std::vector<Backup> list_backups(const std::string& folder, const std::string& records_path);

struct BackupWish {
    std::string folder;               // "": backups_folder
    std::string at;                   // now, UTC
    std::vector<std::string> photos;  // those the jobs name
    int keep = 0;                     // how many stay there, besides the last of each of 7 days; 0: all
    bool kept_aside = false;
};

struct BackupMade {
    Backup backup;
    std::int64_t jobs = 0;
    CopiedPhotos photos;
    int cleared = 0;  // older ones that went
};

// Error: the folder cannot be written, the disk is full, the records are damaged. No half of a backup is
// left, and no older one has gone then.
Result<BackupMade> make_backup(const Store& store, const BackupWish& wish);

// A whole, checked copy of a records file, open, among the temporary files and gone with this. The file
// itself keeps every byte, also on a disk that cannot be written. Errors as Store::open.
class BorrowedCopy {
  public:
    static Result<BorrowedCopy> of(const std::string& path);
    BorrowedCopy(BorrowedCopy&&) noexcept;
    BorrowedCopy& operator=(BorrowedCopy&&) = delete;
    ~BorrowedCopy();

    const Store& store() const { return store_.front(); }

  private:
    BorrowedCopy() = default;
    std::string folder_;
    std::vector<Store> store_;  // none or one: closed before its folder goes
};

// What is in the way of a restore.
struct PutAside {
    std::string path;      // where what was there is kept; "" when there was nothing
    bool damaged = false;  // it could not be opened, and was moved there as it is
    std::int64_t jobs = 0;
};

// Copies the records as they are, damaged or not, into the folder `backups`, where no backup counts them.
// Gives the file.
Result<std::string> keep_aside_as_it_is(const Store& store, const std::string& at);

// Puts the records of an open file in the place of those at `records_path`: what is there is kept aside in
// the folder `backups` first. All or nothing. Photos are left to the caller.
Result<PutAside> restore(const Store& from, const std::string& records_path,
                         const std::vector<std::string>& photos_there, const std::string& at);

}  // namespace hardover
