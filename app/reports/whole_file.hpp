// Writes a file as a whole or not at all.
#pragma once

#include <string>

#include "rules/result/result.hpp"

namespace hardover {

// Writes beside `path` first and then takes its place, so that a file of that name is the old or the new one,
// never half of it. Error: the folder is missing or not writable, `path` is a folder, the disk is full;
// nothing is left behind then.
Result<void> write_whole_file(const std::string& path, const std::string& bytes);

}  // namespace hardover
