#include "app/records/way_back.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "app/records/backups.hpp"

namespace hardover {

namespace fs = std::filesystem;

std::int64_t newest_backup(const std::string& records_path) {
    const auto backups = list_backups(backups_folder(records_path), records_path);
    const auto made =
        std::find_if(backups.begin(), backups.end(), [](const Backup& backup) { return !backup.kept_aside; });
    if (made != backups.end()) return made->number;
    return backups.empty() ? 0 : backups.front().number;
}

bool records_begun(const std::string& records_path) {
    std::error_code failed;
    const auto state = fs::status(records_path, failed);
    // What is no plain file, or cannot be looked at, is told of by Store::open.
    if (state.type() != fs::file_type::not_found && state.type() != fs::file_type::regular) return true;
    for (const char* end : {"", "-wal"}) {
        const auto bytes = fs::file_size(records_path + end, failed);
        if (!failed && bytes > 0) return true;
    }
    return false;
}

Result<void> not_lost(const std::string& records_path) {
    if (records_begun(records_path)) return {};
    const std::int64_t newest = newest_backup(records_path);
    if (newest == 0) return {};
    std::error_code failed;
    return Error{Error::Kind::storage,
                 std::string("the records file is ") +
                     (fs::exists(records_path, failed) ? "empty" : "not there") +
                     ", but backups of it stand beside it",
                 records_path,
                 "bring the newest back with: hardover records restore " + std::to_string(newest) +
                     "; to begin anew, move the folder 'backups' away"};
}

Result<void> records_there(const std::string& records_path) {
    if (auto lost = not_lost(records_path); !lost.ok()) return lost;
    if (records_begun(records_path)) return {};
    return Error{
        Error::Kind::not_found, "there are no records there yet", records_path,
        "look whether the name is right; records begin with: hardover interview, learner add NAME, or "
        "class new NAME"};
}

Error with_way_back(const Error& error, const std::string& records_path) {
    std::error_code failed;
    const std::size_t at = error.cure.find(records_detail::go_on_with_a_copy);
    if (at == std::string::npos || error.where != fs::absolute(records_path, failed).string()) return error;
    const std::int64_t newest = newest_backup(records_path);
    if (newest == 0) return error;
    Error told = error;
    told.cure = error.cure.substr(0, at) + "bring the newest backup back with: hardover records restore " +
                std::to_string(newest);
    return told;
}

}  // namespace hardover
