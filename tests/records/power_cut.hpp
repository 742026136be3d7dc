// A disk that loses its cache when the power goes: of what was written since a file was last synced, any part
// may be on it afterwards, whole, torn or not at all.
#pragma once

#include <map>
#include <random>
#include <string>
#include <vector>

#include "records/faulty_disk.hpp"

namespace hardover_tests {

class PowerCut : public DiskWatcher {
  public:
    // Of the files that stand at `path` and beside it (-wal, -journal), as they are now on the disk for good.
    // The power goes at the n-th change (1: the next), of which itself any part may be on the disk; from then
    // on every call is refused.
    PowerCut(const std::string& path, unsigned seed, int n);

    bool is_off() const { return off_; }
    int changes() const { return changes_; }

    // Puts on the disk what a computer finds that is switched on again. Nobody may have the files open.
    void switch_on();

    int opens(std::string_view path, bool may_create) override;
    int writes(std::string_view path, std::string_view bytes, std::int64_t at) override;
    int truncates(std::string_view path, std::int64_t size) override;
    int syncs(std::string_view path) override;
    int removes(std::string_view path, bool sync_folder) override;

  private:
    // A change that is in the disk's cache: bytes at a place, or the length cut to `at`.
    struct Change {
        bool cuts = false;
        std::string bytes;
        std::int64_t at = 0;
    };
    struct File {
        bool is_there = false;        // as programs see it
        bool there_for_good = false;  // its name is on the disk
        std::string on_disk;
        std::vector<Change> cached;
    };

    bool chance(double probability);
    std::string torn(const std::string& before, const Change& change);
    std::string after_cut(const File& file);
    int count(bool has_effect);
    int cache(std::string_view path, Change change);

    std::string path_;
    std::mt19937 random_;
    int left_;
    int changes_ = 0;
    bool off_ = false;
    std::map<std::string, File, std::less<>> files_;
};

}  // namespace hardover_tests
