// A knowledge base several times as large: every complaint, finding, check, cause, remedy and rule
// again under other ids. Knows the files only as text.
#pragma once

#include <vector>

#include "rules/reading/reading.hpp"

namespace hardover_bench {

// All *.yaml of a folder, sorted by name. Ends the program when there are none.
std::vector<hardover::KnowledgeFile> files_of(const std::string& folder);

// The files and `times` - 1 copies of each.
std::vector<hardover::KnowledgeFile> enlarged(const std::vector<hardover::KnowledgeFile>& files, int times);

}  // namespace hardover_bench
