// Mending records with rows that are not as they were written, told in words. Both front ends may call it;
// the clock is passed in.
#pragma once

#include <string>
#include <vector>

#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct RecordsMended {
    std::vector<std::string> lines;  // what was done, for people
    bool all = false;                // nothing is damaged any more
    bool left = false;               // rows are damaged that no bit and no backup brings back
};

// Keeps the file as it is among the backups, then mends what is damaged: by turning one bit back where the
// checksum proves it, from the backups beside the records, and, when `as_it_reads`, by letting the rest count
// as it reads now. Lines of the list of jobs are made anew from the events. `store`: from
// Store::open_to_mend.
Result<RecordsMended> mend_records(Store& store, const Knowledge& knowledge, bool as_it_reads,
                                   const std::string& now);

}  // namespace hardover
