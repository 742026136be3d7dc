#include "app/records/backups.hpp"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <optional>
#include <regex>
#include <set>
#include <system_error>
#include <utility>

#include "app/records/database.hpp"
#include "app/records/way_back.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

namespace fs = std::filesystem;

namespace {

// "records-00017-2026-11-26T00-52-42Z.db", with "-aside" before the ending for what a restore put aside.
constexpr const char* aside_mark = "-aside";

std::string file_name(const std::string& records_path, std::int64_t number, const std::string& at,
                      bool aside) {
    char digits[32];
    std::snprintf(digits, sizeof digits, "%05lld", static_cast<long long>(number));
    std::string time = at;
    std::replace(time.begin(), time.end(), ':', '-');  // some disks take no colon in a name
    return fs::path(records_path).stem().string() + "-" + digits + "-" + time + (aside ? aside_mark : "") +
           ".db";
}

std::optional<Backup> backup_of(const fs::path& path, const std::string& stem) {
    static const std::regex tail(
        "-(\\d{5,18})-(\\d{4}-\\d\\d-\\d\\dT)(\\d\\d)-(\\d\\d)-(\\d\\dZ)(-aside)?\\.db");
    const std::string name = path.filename().string();
    std::smatch found;
    const std::string rest = name.starts_with(stem) ? name.substr(stem.size()) : "";
    if (!std::regex_match(rest, found, tail)) return std::nullopt;
    std::error_code failed;
    Backup backup;
    backup.number = std::stoll(found[1].str());
    backup.at = found[2].str() + found[3].str() + ":" + found[4].str() + ":" + found[5].str();
    backup.path = path.string();
    backup.bytes = static_cast<std::int64_t>(fs::file_size(path, failed));
    backup.kept_aside = found[6].matched;
    return backup;
}

Result<void> make_folder(const std::string& folder) {
    std::error_code failed;
    fs::create_directories(folder, failed);
    if (!failed) return {};
    return Error{Error::Kind::storage, "the folder for backups cannot be made: " + failed.message(), folder,
                 "name a folder that may be written"};
}

Result<std::int64_t> jobs_in(const std::string& path) {
    const auto copy = Store::open(path);
    if (!copy.ok()) return copy.error();
    return copy.value().number_of_jobs();
}

// Keeps the newest `keep`, and the last of each of the newest days, so that a busy day does not push out
// those of the days before. Gives how many went.
int clear_older(const std::string& folder, const std::string& records_path, int keep) {
    constexpr std::size_t days_kept = 7;  // days with a backup, in UTC
    int seen = 0, gone = 0;
    std::set<std::string> days;
    for (const Backup& backup : list_backups(folder, records_path)) {
        if (backup.kept_aside) continue;
        const std::string day = backup.at.substr(0, 10);
        const bool last_of_day = days.size() < days_kept && days.insert(day).second;
        if (++seen <= keep || last_of_day) continue;
        std::error_code failed;
        if (fs::remove(backup.path, failed)) ++gone;
    }
    return gone;
}

// What a backup that was broken off left behind, an hour ago or longer, so that one still being made is left
// alone.
void clear_unfinished(const std::string& folder) {
    std::error_code failed;
    for (const auto& entry : fs::directory_iterator(folder, failed)) {
        const bool unfinished = entry.path().filename().string().find(".unfinished-") != std::string::npos;
        const auto age = fs::file_time_type::clock::now() - entry.last_write_time(failed);
        if (unfinished && age > std::chrono::hours(1)) fs::remove(entry.path(), failed);
    }
}

// Moves the file and what SQLite keeps beside it, the log first: without it the file would be older than it
// is.
Result<void> move_away(const std::string& from, const std::string& to) {
    for (const char* end : {"-wal", "-journal", "-shm", ""}) {
        std::error_code failed;
        if (!fs::exists(from + end, failed)) continue;
        fs::rename(from + end, to + end, failed);
        if (failed) {
            return Error{Error::Kind::storage, "the damaged records cannot be moved: " + failed.message(),
                         from, "get the right to write the file and its folder"};
        }
    }
    return {};
}

// Where a damaged records file is put, in the folder of the backups.
Result<std::string> place_for_damaged(const std::string& records_path, const std::string& at) {
    const std::string folder = backups_folder(records_path);
    if (auto made = make_folder(folder); !made.ok()) return made.error();
    std::int64_t number = 1;
    for (const Backup& backup : list_backups(folder, records_path)) {
        number = std::max(number, backup.number + 1);
    }
    return (fs::path(folder) / file_name(records_path, number, at, true)).string() + ".damaged";
}

}  // namespace

Result<std::string> keep_aside_as_it_is(const Store& store, const std::string& at) {
    std::string path;
    // Another program, or one just before, may have taken the name.
    for (int attempt = 1;; ++attempt) {
        const auto place = place_for_damaged(store.path(), at);
        if (!place.ok()) return place;
        path = place.value() + (attempt == 1 ? "" : "-" + std::to_string(attempt));
        const auto copied = store.copy_as_it_is(path);
        if (copied.ok()) return path;
        if (copied.error().kind != Error::Kind::bad_input || attempt == 100) return copied.error();
    }
}

std::string backups_folder(const std::string& records_path) {
    return (fs::path(records_path).parent_path() / "backups").string();
}

std::vector<Backup> list_backups(const std::string& folder, const std::string& records_path) {
    std::vector<Backup> backups;
    std::error_code failed;
    const std::string stem = fs::path(records_path).stem().string();
    for (const auto& entry : fs::directory_iterator(folder, failed)) {
        if (auto backup = backup_of(entry.path(), stem)) backups.push_back(std::move(*backup));
    }
    std::sort(backups.begin(), backups.end(),
              [](const Backup& a, const Backup& b) { return a.number > b.number; });
    return backups;
}

Result<BackupMade> make_backup(const Store& store, const BackupWish& wish) {
    const std::string folder = wish.folder.empty() ? backups_folder(store.path()) : wish.folder;
    // A stick that is not there must not become a folder on the disk of the system.
    if (auto there = folder_above(folder); !there.ok()) return there.error();
    if (auto made = make_folder(folder); !made.ok()) return made.error();
    BackupMade done;
    auto photos =
        copy_photos(wish.photos, photos_folder(store.path()), (fs::path(folder) / "photos").string());
    if (!photos.ok()) return photos.error();
    done.photos = std::move(photos.value());
    clear_unfinished(folder);
    const auto before = list_backups(folder, store.path());
    std::int64_t number = before.empty() ? 1 : before.front().number + 1;
    // Another program may make one at the same moment; then the next number is taken.
    for (int attempt = 0;; ++attempt, ++number) {
        const std::string path =
            (fs::path(folder) / file_name(store.path(), number, wish.at, wish.kept_aside)).string();
        const auto copied = store.backup(path);
        if (!copied.ok() && copied.error().kind == Error::Kind::bad_input && attempt < 100) continue;
        if (!copied.ok()) return copied.error();
        std::error_code failed;
        done.backup = {number, wish.at, path, static_cast<std::int64_t>(fs::file_size(path, failed)),
                       wish.kept_aside};
        break;
    }
    const auto jobs = jobs_in(done.backup.path);
    if (!jobs.ok()) return jobs.error();
    done.jobs = jobs.value();
    if (wish.keep > 0) done.cleared = clear_older(folder, store.path(), wish.keep);
    return done;
}

Result<PutAside> restore(const Store& from, const std::string& records_path,
                         const std::vector<std::string>& photos_there, const std::string& at) {
    PutAside aside;
    std::error_code failed;
    // A log alone counts: left beside the file that comes, it would be played into it.
    if (!records_begun(records_path)) {
        if (auto made = make_folder(fs::path(fs::absolute(records_path)).parent_path().string());
            !made.ok()) {
            return made.error();
        }
        if (auto copied = from.backup(records_path + ".coming"); !copied.ok()) return copied.error();
        // A journal left of the file that is gone would be played into the one that comes, too.
        if (fs::exists(records_path + "-journal", failed)) {
            const auto place = place_for_damaged(records_path, at);
            if (!place.ok()) return place.error();
            if (auto moved = move_away(records_path, place.value()); !moved.ok()) return moved.error();
        }
        fs::rename(records_path + ".coming", records_path, failed);
        if (!failed) return aside;
        return Error{Error::Kind::storage, "the records cannot be put in place: " + failed.message(),
                     records_path, "get the right to write the folder"};
    }
    auto present = Store::open(records_path);
    const bool sound = present.ok() && present.value().check().ok();
    if (sound) {
        const auto kept = make_backup(present.value(), {"", at, photos_there, 0, true});
        if (!kept.ok()) return kept.error();
        aside.path = kept.value().backup.path;
        aside.jobs = kept.value().jobs;
        if (auto put = present.value().put_back(from.path()); !put.ok()) return put.error();
        return aside;
    }
    // Held by another program, or made by a newer version: not damaged, so not to be moved.
    if (!present.ok() && !records_detail::is_damage(present.error())) return present.error();
    if (present.ok()) present = Error{};  // closed, before its file is moved
    aside.damaged = true;
    const std::string coming = records_path + ".coming";
    fs::remove(coming, failed);
    if (auto copied = from.backup(coming); !copied.ok()) return copied.error();
    const auto place = place_for_damaged(records_path, at);
    if (!place.ok()) return place.error();
    aside.path = place.value();
    if (auto moved = move_away(records_path, aside.path); !moved.ok()) return moved.error();
    fs::rename(coming, records_path, failed);
    if (!failed) return aside;
    return Error{Error::Kind::storage, "the records cannot be put in place: " + failed.message(),
                 records_path, "rename " + coming + " to it by hand"};
}

}  // namespace hardover
