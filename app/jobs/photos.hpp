// Photos and other files of a job: put into the records' folder and onto the job, and told in words.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/records/photos.hpp"

namespace hardover {

// Copies the file beside the records, whole or not at all, then appends the event. On an error the job is as
// before. `path` may be any file a person would put with a job.
Result<void> attach_photo(Store& store, const PreparedKnowledge& prepared, Job& job, const std::string& path,
                          const std::string& caption, const std::string& now);

struct PhotoLine {
    std::string path;  // to be opened or copied
    std::string name;
    std::string caption;
    PhotoState state = PhotoState::whole;
    std::string text;  // "bracket.jpg: crack at the aft bolt", and whether it is missing or was altered
};

// Reads every file through, to see whether it is what was attached.
std::vector<PhotoLine> photo_lines(const std::string& records_path, const Job& job);

// "bracket.jpg: crack at the aft bolt", or the name alone.
std::string photo_name(const Attached& photo);

// The files that jobs of these records name, each once.
Result<std::vector<std::string>> photos_named(const Store& store);

// What came of copying photos, for people; "" when there was nothing to do.
std::string copied_text(const CopiedPhotos& photos);

}  // namespace hardover
