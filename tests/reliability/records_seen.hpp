// What stands in a records file, seen with SQLite alone and on a copy: the program's own library has no part
// in it, and the file is left as a killed program left it.
#pragma once

#include <string>
#include <vector>

namespace hardover_tests {

struct RecordsSeen {
    std::vector<std::string> rows;  // first column of what was asked for
    std::string trouble;            // "" when integrity, foreign keys and the list of jobs are in order
    long version = 0;               // of the layout
    bool left_open = false;         // a log or a journal lay beside the file
};

// `wanted` is a SELECT with one column, or "". A file that is not there is an empty one.
RecordsSeen see_records(const std::string& path, const std::string& wanted);

// How many of the first `confirmed` of `fed` are missing from `found`, where `before` was on record already
// and has to be there still, in its order. Anything that was never fed counts as lost too: it took the place
// of something.
long count_lost(const std::vector<std::string>& before, const std::vector<std::string>& fed,
                std::size_t confirmed, const std::vector<std::string>& found);

}  // namespace hardover_tests
