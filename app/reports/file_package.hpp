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

// Whether write_package makes a zip file of it: it ends in ".zip", in capitals or not.
bool is_zip_name(const std::string& path);

// For files that belong to no others. Error bad_input: the folder is there and not empty.
Result<void> demand_empty_folder(const std::string& path);

// Where is_zip_name a zip file, which takes the place of one of that name; else files in that folder, which
// is made when missing; files of other names in it are left alone. The same files give the same bytes.
// Errors: what write_whole_file says; the folder cannot be made, or not where it is to stand; the zip cannot
// be put together.
Result<void> write_package(const std::string& path, const std::vector<PackageFile>& files);

}  // namespace hardover
