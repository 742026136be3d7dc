// Jobs as a JSON file for other programs and for taking elsewhere, written and read again without loss. Its
// form stands in the README; names of fields, once written, stay, and a new form raises `hardover_jobs`.
#pragma once

#include <string>
#include <vector>

#include "app/jobs/watched.hpp"
#include "app/records/arriving.hpp"
#include "app/records/photos.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct JobFileWritten {
    int jobs = 0;
    CopiedPhotos photos;  // with photos only
};

// Writes these jobs (none: all) to `path`, whole or not at all; equal records give equal bytes.
// `with_photos`: copies what the jobs name into the folder `photos` beside it first. `watched` is told how
// many jobs are written, of how many; told to stop, it writes nothing and gives no jobs. Errors: no such job,
// the file or folder cannot be written, the disk is full.
Result<JobFileWritten> write_job_file(const Store& store, const std::string& path,
                                      const std::vector<JobNumber>& jobs, bool with_photos,
                                      const Watched& watched = {});

struct JobFileRead {
    Arriving arriving;
    std::vector<std::string> photos;  // the files the jobs name, each once
};

// Reads a job file. The rows of the list are made with `knowledge`, the events are taken as they stand, also
// of kinds that only a newer program knows. Error bad_input: what is wrong, and where.
Result<JobFileRead> read_job_file(const Knowledge& knowledge, const std::string& path);

// The same of a text; `path` is what refusals name.
Result<JobFileRead> job_file_of(const Knowledge& knowledge, const std::string& text, const std::string& path);

// The rows of jobs as a table for a spreadsheet (CSV, RFC 4180), the columns in job_table_columns().
// `watched` as above.
Result<int> write_job_table(const Store& store, const Knowledge& knowledge, const std::string& path,
                            const std::vector<JobNumber>& jobs, const Watched& watched = {});
// The events of jobs as a table: job, sequence, at, kind, body.
Result<int> write_event_table(const Store& store, const std::string& path,
                              const std::vector<JobNumber>& jobs);

const std::vector<std::string>& job_table_columns();

}  // namespace hardover
