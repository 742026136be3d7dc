// Files that belong together, written as a folder or as one zip file. Knows nothing of what they hold.
#pragma once

#include <string>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover {

struct PackageFile {
    std::string name;  // with "/" between folders: "items/q01.xml"
    std::string bytes;
};

// Where `path` ends in ".zip" a zip file, which takes the place of one of that name; else files in that
// folder, which is made when missing; files of other names in it are left alone. The same files give the same
// bytes. Errors: what write_whole_file says; the folder cannot be made; the zip cannot be put together.
Result<void> write_package(const std::string& path, const std::vector<PackageFile>& files);

}  // namespace hardover
