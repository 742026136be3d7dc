// The job sheet of a job as a file of its own beside the records, and what both front ends put at its head.
#pragma once

#include <string>

#include "app/jobs/job.hpp"
#include "app/records/store.hpp"
#include "app/reports/job_sheet.hpp"

namespace hardover {

// The day a moment of the records falls on here: "25 Nov 2026". The moment as it is when it cannot be read.
std::string local_day(const std::string& at);

// Letters and digits of a name only, so that every disk takes it; at most forty.
std::string name_for_file(const std::string& name);

// "Job 12 Grey Heron.pdf": letters and digits of the boat's name only, so that every disk takes it.
std::string sheet_file_name(JobNumber number, const std::string& boat);

// "job sheets" beside the records file.
std::string sheet_folder(const Store& store);

struct SheetFile {
    std::string path;
    std::string remark;  // not empty: the typeface is not the bundled one
};

// Writes the sheet into the folder, which is made when missing; the job's earlier sheet is replaced.
Result<SheetFile> write_job_sheet(const Store& store, const Knowledge& knowledge, const Job& job,
                                  const std::string& fonts_folder);

}  // namespace hardover
