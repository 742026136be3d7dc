#include "records/power_cut.hpp"

#include <sqlite3.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>

namespace hardover_tests {

namespace {

constexpr std::size_t sector = 512;  // the least a disk writes whole

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

void put(std::string& content, std::string_view bytes, std::size_t at) {
    if (content.size() < at + bytes.size()) content.resize(at + bytes.size(), '\0');
    std::copy(bytes.begin(), bytes.end(), content.begin() + static_cast<std::ptrdiff_t>(at));
}

}  // namespace

PowerCut::PowerCut(const std::string& path, unsigned seed, int n) : path_(path), random_(seed), left_(n) {
    for (const char* end : {"", "-wal", "-journal"}) {
        const bool there = std::filesystem::exists(path + end);
        files_[path + end] = {there, there, there ? bytes_of(path + end) : "", {}};
    }
}

bool PowerCut::chance(double probability) {
    return std::bernoulli_distribution(probability)(random_);
}

// Of a change that is not there as a whole each sector is on the disk or not.
std::string PowerCut::torn(const std::string& before, const Change& change) {
    std::string after = before;
    if (change.cuts) {
        after.resize(static_cast<std::size_t>(change.at), '\0');
        return after;
    }
    const auto at = static_cast<std::size_t>(change.at);
    const bool whole = chance(0.5);
    for (std::size_t from = 0; from < change.bytes.size();) {
        const std::size_t size = std::min(sector - (at + from) % sector, change.bytes.size() - from);
        if (whole || chance(0.5)) put(after, std::string_view(change.bytes).substr(from, size), at + from);
        from += size;
    }
    return after;
}

std::string PowerCut::after_cut(const File& file) {
    // Sometimes all of the cache gets there, sometimes nothing, mostly some.
    constexpr std::array<double, 5> shares{0.0, 0.5, 0.5, 0.9, 1.0};
    const double kept = shares[random_() % shares.size()];
    std::string content = file.on_disk;
    for (const Change& change : file.cached) {
        if (chance(kept)) content = torn(content, change);
    }
    return content;
}

void PowerCut::switch_on() {
    for (auto& [name, file] : files_) {
        const std::string content = after_cut(file);
        const bool there = file.is_there == file.there_for_good ? file.is_there : chance(0.5);
        std::filesystem::remove(name);
        if (there) std::ofstream(name, std::ios::binary) << content;
    }
    std::filesystem::remove(path_ + "-shm");
}

// Gives the refusal when the power goes here. `has_effect`: the change is in the cache by then.
int PowerCut::count(bool has_effect) {
    ++changes_;
    if (--left_ > 0) return SQLITE_OK;
    off_ = true;
    return has_effect ? SQLITE_OK : SQLITE_IOERR;
}

int PowerCut::cache(std::string_view path, Change change) {
    if (off_) return SQLITE_IOERR;
    const auto found = files_.find(path);
    if (found == files_.end()) return SQLITE_OK;
    found->second.cached.push_back(std::move(change));
    return count(true);
}

int PowerCut::opens(std::string_view path, bool may_create) {
    if (off_) return SQLITE_IOERR;
    const auto found = files_.find(path);
    if (found == files_.end() || found->second.is_there || !may_create) return SQLITE_OK;
    found->second.is_there = true;
    // Where the name of an earlier file is still on the disk, that one may come back.
    return found->second.there_for_good ? cache(path, {true, "", 0}) : count(true);
}

int PowerCut::writes(std::string_view path, std::string_view bytes, std::int64_t at) {
    return cache(path, {false, std::string(bytes), at});
}

int PowerCut::truncates(std::string_view path, std::int64_t size) {
    return cache(path, {true, "", size});
}

// SQLite syncs the folder too with the first sync of a new journal or log, so that all names in it are on the
// disk then. The sync of the records file itself does nothing for its name, as POSIX allows.
int PowerCut::syncs(std::string_view path) {
    if (off_) return SQLITE_IOERR;
    const auto found = files_.find(path);
    if (found == files_.end()) return SQLITE_OK;
    if (const int code = count(false); code != SQLITE_OK) return code;
    File& file = found->second;
    for (const Change& change : file.cached) {
        if (change.cuts) {
            file.on_disk.resize(static_cast<std::size_t>(change.at), '\0');
        } else {
            put(file.on_disk, change.bytes, static_cast<std::size_t>(change.at));
        }
    }
    file.cached.clear();
    if (path != path_ && !file.there_for_good) {
        for (auto& [name, of_folder] : files_) of_folder.there_for_good = of_folder.is_there;
    }
    return SQLITE_OK;
}

int PowerCut::removes(std::string_view path, bool sync_folder) {
    if (off_) return SQLITE_IOERR;
    const auto found = files_.find(path);
    if (found == files_.end()) return SQLITE_OK;
    if (const int code = count(false); code != SQLITE_OK) return code;
    found->second.is_there = false;
    if (sync_folder) found->second = {};
    return SQLITE_OK;
}

}  // namespace hardover_tests
