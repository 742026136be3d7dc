// Writes a file as a whole or not at all, copies one, and names its content by a hash. Knows no records.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "rules/result/result.hpp"

namespace hardover {

// A file on its way: written beside `path`, it takes that place when it is finished, so that a file of that
// name is the old or the new one, never half of it. Given up unfinished, it leaves nothing behind.
class WholeFile {
  public:
    // Error: the folder is missing or not writable, `path` is a folder, a device or a pipe.
    static Result<WholeFile> start(const std::string& path);

    WholeFile(WholeFile&& other) noexcept;
    WholeFile& operator=(WholeFile&&) = delete;
    ~WholeFile();

    // Error: the disk is full or fails.
    Result<void> add(std::string_view bytes);

    // Brings it to the disk and to its place.
    Result<void> finish();

  private:
    WholeFile(std::string path, std::string beside, int file);
    std::string path_;
    std::string beside_;
    int file_ = -1;
};

// Brings the names in the folder of `path` to the disk: a new file or folder is there after a power cut only
// when the folder that it stands in is. A folder that cannot be opened for that is left as it is.
void settle_folder(const std::string& path);

// Before a folder is made by the name a person gave. Error not_found: the folder it is to stand in is not
// there, so that the name may be mistyped, or the stick not plugged in.
Result<void> folder_above(const std::string& folder);

// All in one. Errors as above; nothing is left behind then.
Result<void> write_whole_file(const std::string& path, const std::string& bytes);

// The most bytes of a file that is read into memory: the job file of some 100,000 jobs stays below.
constexpr std::uint64_t most_read = 1'000'000'000;

// Error: it is a folder, a device or a pipe, or has more than `most` bytes. A file that is not there is fine.
Result<void> no_larger_than(const std::string& path, std::uint64_t most);

// A whole file as text. Error: as above; it is not there or cannot be read.
Result<std::string> read_whole_file(const std::string& path, std::uint64_t most = most_read);

// Copies a file as a whole or not at all, and gives the SHA-256 of what was written, as 64 hexadecimal
// digits.
Result<std::string> copy_whole_file(const std::string& from, const std::string& to);

// SHA-256 (FIPS 180-4) of a text or of a file, as 64 hexadecimal digits.
std::string sha256_of(std::string_view bytes);
Result<std::string> sha256_of_file(const std::string& path);

}  // namespace hardover
