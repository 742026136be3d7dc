#include "app/jobs/photos.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <limits>
#include <set>

#include "app/jobs/wording.hpp"

namespace hardover {

namespace fs = std::filesystem;
using namespace jobs_detail;

namespace {

std::string state_text(PhotoState state) {
    if (state == PhotoState::missing) return " (missing: the file is not in the folder of photos)";
    if (state == PhotoState::altered) return " (altered: the file is not what was attached)";
    return "";
}

bool is_with(const Job& job, const std::string& file, const std::string& caption) {
    return std::any_of(job.photos.begin(), job.photos.end(), [&](const Attached& photo) {
        return photo.file == file && (caption.empty() || photo.caption == caption);
    });
}

}  // namespace

Result<void> attach_photo(Store& store, const PreparedKnowledge& prepared, Job& job, const std::string& path,
                          const std::string& caption, const std::string& now) {
    const auto kept = keep_photo(photos_folder(store.path()), path);
    if (!kept.ok()) return kept.error();
    // One that is with the job already was put right, should its file have been missing; it is not told
    // twice.
    if (is_with(job, kept.value().file, caption)) return {};
    return record(store, prepared, job,
                  Attached{kept.value().file, fs::path(path).filename().string(), caption,
                           static_cast<int>(kept.value().bytes)},
                  now);
}

std::string photo_name(const Attached& photo) {
    return photo.caption.empty() ? photo.name : fmt::format("{}: {}", photo.name, photo.caption);
}

std::vector<PhotoLine> photo_lines(const std::string& records_path, const Job& job) {
    const std::string folder = photos_folder(records_path);
    std::vector<PhotoLine> lines;
    for (const Attached& photo : job.photos) {
        PhotoLine line{(fs::path(folder) / photo.file).string(), photo.name, photo.caption,
                       look_at_photo(folder, photo.file), ""};
        line.text = photo_name(photo) + state_text(line.state);
        lines.push_back(std::move(line));
    }
    return lines;
}

Result<std::vector<std::string>> photos_named(const Store& store) {
    std::set<std::string> files;
    const auto read = store.each_event({"attached"}, [&files](JobNumber, const StoredEvent& stored) {
        const auto event = from_stored(stored);
        if (!event.ok()) return;
        const auto* photo = std::get_if<Attached>(&event.value());
        if (photo != nullptr && is_photo_name(photo->file)) files.insert(photo->file);
    });
    if (!read.ok()) return read.error();
    return std::vector<std::string>(files.begin(), files.end());
}

std::string copied_text(const CopiedPhotos& photos) {
    const auto counted = [](std::size_t n) { return fmt::format("{} photo{}", n, n == 1 ? "" : "s"); };
    std::string text;
    if (photos.copied > 0) add_sentence(text, counted(static_cast<std::size_t>(photos.copied)) + " copied.");
    if (photos.there > 0) {
        add_sentence(text, counted(static_cast<std::size_t>(photos.there)) + " there already.");
    }
    if (!photos.missing.empty()) add_sentence(text, counted(photos.missing.size()) + " missing.");
    if (!photos.altered.empty()) add_sentence(text, counted(photos.altered.size()) + " altered, not copied.");
    return text;
}

}  // namespace hardover
