// Files of the knowledge's folder that the engine passes over and another box reads: with the same reader, so
// that faults are found at file:line:column there too. Knows only their names.
#pragma once

#include <string>
#include <vector>

#include "rules/reading/reading.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// Files whose names begin with "quiz_". They count in the fingerprint.
bool is_read_elsewhere(const std::string& file);

// Those of a folder, sorted by name; none is no error.
Result<std::vector<KnowledgeFile>> files_read_elsewhere(const std::string& folder);

// Warnings where texts of such an entry are too hard to read or too long, as check_sense has them.
void check_prose(const Knowledge& knowledge, const Entry& entry, const char* key,
                 const std::vector<std::string>& texts, std::vector<Fault>& faults);

}  // namespace hardover
