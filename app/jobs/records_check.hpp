// Looks through the records as far as a person could ask: is every event there and readable, does the list
// say what the events say, do handed-back jobs still come to the same assessment, are the photos there.
// Writes nothing.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/records/store.hpp"
#include "rules/reasoning/prepared_knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct RecordsFinding {
    std::string where;  // "job 12, event 7"
    std::string what;
    std::string cure;    // what to do
    bool grave = false;  // something is lost or altered; else worth knowing only
};

struct RecordsChecked {
    std::vector<RecordsFinding> findings;
    int jobs = 0;
    int events = 0;
    int photos = 0;
    int compared = 0;          // handed-back jobs that came to the same assessment, or are among the findings
    int ranking_compared = 0;  // of these, also the ranking: with the same odds
    int not_comparable = 0;    // handed back with other knowledge, or by an older program that kept no digest
    std::vector<std::string> told;  // the figures in words

    std::vector<std::string> damaged;  // rows that are not as they were written: among the findings too

    bool in_order() const;  // nothing grave
};

// `watched` is told how many jobs are done, of how many; told to stop, it gives what it found so far. Error:
// the file itself is damaged or cannot be read.
Result<RecordsChecked> check_records(const Store& store, const PreparedKnowledge& prepared,
                                     const Watched& watched = {});

}  // namespace hardover
