// Finding jobs among many: by words, boat, complaint, cause, state and days. Reads the records only.
#pragma once

#include <string>
#include <vector>

#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/result/result.hpp"

namespace hardover {

// In the place of what a line of the list says that is not as it was written (JobRow::sound).
inline constexpr const char* damaged_line =
    "This line of the list is damaged; mend it with: hardover records mend.";

// What is empty does not narrow.
struct JobFilter {
    std::string words = {};  // each stands in the boat, complaint, customer's words, notes, captions or cause
    std::string boat = {};   // each word stands in its name
    std::string complaint = {};  // id, or words for it
    std::string cause = {};      // id or words; of jobs that were handed back with it
    std::string state = {};      // "in hand" or "handed back"
    std::string from = {};  // days as "2026-11-25", here and not in UTC: in hand or changed on one of them
    std::string to = {};
    std::size_t most = 0;  // rows; 0: all
};

struct FoundJob {
    JobRow row;
    std::string title;  // "Job 12 · Grey Heron"
    std::string under;  // "Handed back. Wanders. Cause: air left in the oil, seen and proved"
    std::string match;  // where the words stand, when not in the above: "Note: “the bracket is loose”"
};

struct FoundJobs {
    std::vector<FoundJob> jobs;  // the last changed first
    std::size_t total = 0;       // how many fit, shown or not
    std::size_t of = 0;          // all jobs on file
    std::string told;            // "3 of 120 jobs. Complaint: Wanders."
};

// Error bad_input: a day, state, complaint or cause that is none, with what would be right.
Result<FoundJobs> find_jobs(const Store& store, const Knowledge& knowledge, const JobFilter& filter);

// What a job was handed back with: "Cause: air left in the oil, seen and proved", "Causes: " where there were
// several; "" while it is in hand.
Result<std::string> outcome_line(const Store& store, const Knowledge& knowledge, JobNumber job);

}  // namespace hardover
