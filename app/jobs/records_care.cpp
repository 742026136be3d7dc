#include "app/jobs/records_care.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <filesystem>

#include "app/jobs/moment.hpp"
#include "app/jobs/photos.hpp"
#include "app/records/whole_file.hpp"

namespace hardover {

namespace fs = std::filesystem;

namespace {

constexpr const char* kept_key = "backups_kept";  // once written, it stays

constexpr std::size_t photos_at_a_time = 16;

std::optional<int> whole_number(const std::string& text) {
    int number = 0;
    const auto [end, failed] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (failed != std::errc() || end != text.data() + text.size()) return std::nullopt;
    return number;
}

std::string size_text(std::int64_t bytes) {
    if (bytes < 1'000'000) return fmt::format("{} kB", (bytes + 999) / 1000);
    return fmt::format("{:.1f} MB", static_cast<double>(bytes) / 1e6);
}

std::string jobs_text(std::int64_t jobs) {
    return fmt::format("{} job{}", jobs, jobs == 1 ? "" : "s");
}

Result<std::string> file_of(const std::string& records_path, const std::string& which) {
    const auto number = whole_number(which);
    std::error_code failed;
    if (!number || fs::exists(which, failed)) return which;
    const std::string folder = backups_folder(records_path);
    for (const Backup& backup : list_backups(folder, records_path)) {
        if (backup.number == *number) return backup.path;
    }
    return Error{Error::Kind::not_found, fmt::format("there is no backup {}", *number), folder,
                 "list them with: hardover records list-backups"};
}

void add(std::vector<std::string>& all, const std::vector<std::string>& some) {
    all.insert(all.end(), some.begin(), some.end());
}

// A few at a time, so that how far it has come is told and a stop is heard.
Result<CopiedPhotos> copy_watched(const std::vector<std::string>& files, const std::string& from,
                                  const std::string& to, const Watched& watched) {
    const Error stopped{Error::Kind::storage, "it was stopped before its end", "", "start it again"};
    CopiedPhotos all;
    for (std::size_t at = 0; at < files.size(); at += photos_at_a_time) {
        if (!goes_on(watched, at, files.size())) return stopped;
        const auto begin = files.begin() + static_cast<std::ptrdiff_t>(at);
        const std::size_t count = std::min(photos_at_a_time, files.size() - at);
        const auto some = copy_photos({begin, begin + static_cast<std::ptrdiff_t>(count)}, from, to);
        if (!some.ok()) return some.error();
        all.copied += some.value().copied;
        all.there += some.value().there;
        add(all.missing, some.value().missing);
        add(all.altered, some.value().altered);
    }
    if (!goes_on(watched, files.size(), files.size())) return stopped;
    return all;
}

}  // namespace

Result<int> backups_kept(const Store& store) {
    const auto settings = store.settings();
    if (!settings.ok()) return settings.error();
    const auto kept = settings.value().find(kept_key);
    if (kept == settings.value().end()) return backups_kept_as_shipped;
    const auto number = whole_number(kept->second);
    // A value that makes no sense must not lose a backup.
    return number && *number >= 0 && *number <= most_backups_kept ? *number : backups_kept_as_shipped;
}

Result<void> keep_backups(Store& store, int count) {
    if (count < 0 || count > most_backups_kept) {
        return Error{Error::Kind::bad_input, fmt::format("{} backups cannot be kept", count), "",
                     fmt::format("a number from 0 (none is made by itself) to {}", most_backups_kept)};
    }
    return store.keep({{{kept_key, std::to_string(count)}}, false, {}});
}

Result<std::optional<BackupMade>> back_up_on_close(const Store& store, const std::string& now) {
    if (!store.has_written()) return std::optional<BackupMade>();
    const auto kept = backups_kept(store);
    if (!kept.ok()) return kept.error();
    if (kept.value() == 0) return std::optional<BackupMade>();
    auto made = back_up(store, "", now);
    if (!made.ok()) return made.error();
    return std::optional<BackupMade>(std::move(made.value()));
}

Result<BackupMade> back_up(const Store& store, const std::string& folder, const std::string& now,
                           const Watched& watched) {
    const auto photos = photos_named(store);
    if (!photos.ok()) return photos.error();
    const auto kept = backups_kept(store);
    if (!kept.ok()) return kept.error();
    const fs::path to = folder.empty() ? backups_folder(store.path()) : folder;
    // The photos go first and make the folder, so a mistyped stick is found out before them.
    if (auto there = folder_above(to.string()); !there.ok()) return there.error();
    auto copied =
        copy_watched(photos.value(), photos_folder(store.path()), (to / "photos").string(), watched);
    if (!copied.ok()) return copied.error();
    auto made = make_backup(store, {folder, now, {}, folder.empty() ? kept.value() : 0, false});
    if (made.ok()) made.value().photos = std::move(copied.value());
    return made;
}

std::vector<std::string> backup_lines(const BackupMade& made) {
    std::vector<std::string> lines = {fmt::format("Backup {}: {}, {}, {}", made.backup.number,
                                                  jobs_text(made.jobs), size_text(made.backup.bytes),
                                                  made.backup.path)};
    if (const std::string photos = copied_text(made.photos); !photos.empty()) lines.push_back(photos);
    if (made.cleared > 0) {
        lines.push_back(
            fmt::format("{} older backup{} cleared away.", made.cleared, made.cleared == 1 ? "" : "s"));
    }
    return lines;
}

std::vector<std::string> list_lines(const std::vector<Backup>& backups, const std::string& folder) {
    if (backups.empty()) return {"No backups in " + folder + ". Make one with: hardover records backup"};
    std::vector<std::string> lines;
    for (const Backup& backup : backups) {
        lines.push_back(fmt::format("{}  {}  {}  {}{}", backup.number, local_moment(backup.at),
                                    size_text(backup.bytes), fs::path(backup.path).filename().string(),
                                    backup.kept_aside ? "  (as it was before a restore)" : ""));
    }
    return lines;
}

Result<std::vector<std::string>> restore_records(const std::string& records_path, const std::string& which,
                                                 const std::string& now, const Watched& watched) {
    const auto file = file_of(records_path, which);
    if (!file.ok()) return file.error();
    std::error_code failed;
    if (fs::equivalent(file.value(), records_path, failed)) {
        return Error{Error::Kind::bad_input, "this is the records file in use", records_path,
                     "name a backup; list them with: hardover records list-backups"};
    }
    const auto copy = BorrowedCopy::of(file.value());
    if (!copy.ok()) return copy.error();
    const Store& store = copy.value().store();
    const auto jobs = store.number_of_jobs();
    if (!jobs.ok()) return jobs.error();
    const auto photos = photos_named(store);
    if (!photos.ok()) return photos.error();
    // The photos first: jobs that name photos which are not there yet would be told as damaged.
    const auto copied = copy_watched(photos.value(), photos_folder(fs::absolute(file.value()).string()),
                                     photos_folder(fs::absolute(records_path).string()), watched);
    if (!copied.ok()) return copied.error();
    const auto aside = restore(store, records_path, photos.value(), now);
    if (!aside.ok()) return aside.error();
    std::vector<std::string> lines = {
        fmt::format("{} brought back from {}", jobs_text(jobs.value()), file.value())};
    if (const std::string text = copied_text(copied.value()); !text.empty()) lines.push_back(text);
    if (aside.value().damaged) {
        lines.push_back("What was here was damaged. It is kept as it was: " + aside.value().path);
    } else if (!aside.value().path.empty()) {
        lines.push_back(fmt::format("What was here before ({}) is kept: {}", jobs_text(aside.value().jobs),
                                    aside.value().path));
    }
    return lines;
}

}  // namespace hardover
