// Photos and other files of jobs, kept beside the records file in the folder `photos`, each under the SHA-256
// of its content: the same file twice is stored once, and whether one was altered can be told. Knows no job.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover {

// A file as it is kept. `file` is 64 hexadecimal digits and, where the content tells its kind, ".jpg" or the
// like.
struct KeptFile {
    std::string file;
    std::int64_t bytes = 0;
};

// The folder that belongs to a records file, an export or a backup.
std::string photos_folder(const std::string& beside);

// Whether a name is one that this folder gives. Every other is never opened.
bool is_photo_name(const std::string& name);

// Copies a file into the folder, whole or not at all, and reads it back. Error: the file cannot be read, is
// empty, larger than 1 GB or no plain file, the folder cannot be written, the disk is full, what was written
// is not what was read.
Result<KeptFile> keep_photo(const std::string& folder, const std::string& from);

enum class PhotoState { whole, missing, altered };

// Reads the whole file.
PhotoState look_at_photo(const std::string& folder, const std::string& file);

// Whether it is there, without reading it.
bool photo_is_there(const std::string& folder, const std::string& file);

// What came of copying photos from one folder to another. Those that are there already are not copied again.
struct CopiedPhotos {
    int copied = 0;
    int there = 0;
    std::vector<std::string> missing;  // not in the folder they come from
    std::vector<std::string> altered;  // not what they were: not copied
};

// Error: the folder cannot be written or the disk is full. What was copied until then is whole and stays.
Result<CopiedPhotos> copy_photos(const std::vector<std::string>& files, const std::string& from,
                                 const std::string& to);

}  // namespace hardover
