// What a person can ask for about the shop's records: found, handed on, kept safe.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "app/records/store.hpp"

namespace hardover::window {

struct FindJobs {
    std::string state;  // "": any
    std::string boat;
    std::string words;
};
// All jobs of a boat beside each other; "": no longer.
struct ShowEarlierJobs {
    std::string boat;
};
struct AttachPhoto {
    std::string path;
};
struct OpenPhoto {
    std::string file;
};
struct ExportJobs {
    JobNumber job = 0;  // 0: all
};
struct ImportJobs {
    std::string path;
};
struct CheckRecords {};
// Rows that are not as they were written are brought back from their checksum or a backup.
struct MendRecords {
    bool as_it_reads = false;  // what cannot be brought back counts as it reads now
};
struct BackUpRecords {};
struct RestoreBackup {
    std::string path;
    bool sure = false;
};
struct KeepBackups {
    int count = 0;
};
struct StopRecordsWork {};  // long work that is being done
// Files let fall on the window.
struct DropFiles {
    std::vector<std::string> paths;
};

using RecordsAction =
    std::variant<FindJobs, ShowEarlierJobs, AttachPhoto, OpenPhoto, ExportJobs, ImportJobs, CheckRecords,
                 MendRecords, BackUpRecords, RestoreBackup, KeepBackups, StopRecordsWork, DropFiles>;

}  // namespace hardover::window
