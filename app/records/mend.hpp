// What can be wished of Store::mend, which brings rows back that are not as they were written, and what came
// of it.
#pragma once

#include <string>
#include <vector>

namespace hardover {

struct Mended {
    std::vector<std::string> by_bit;     // "job 12, event 7": one bit was turned back, as the checksum proves
    std::vector<std::string> by_backup;  // "job 12, event 7, from FILE"
    std::vector<std::string> as_they_read;
    std::vector<std::string> left;  // still damaged
};

struct MendWish {
    std::vector<std::string> backups;  // files to look into, in this order, when a bit does not do
    bool as_it_reads = false;          // what is left then counts as it reads now
};

}  // namespace hardover
