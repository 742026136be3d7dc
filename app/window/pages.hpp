// Pages that only the window shows beside the job's own: the bench with its jobs, and the list of all
// findings. Pure: made from the knowledge and the records' rows.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/search.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::window {

struct BenchRow {
    JobNumber number = 0;
    std::string title;  // "Job 12"
    std::string boat;
    std::string complaint;        // names; "No complaint noted yet" when there is none
    std::string changed;          // "25 Nov 2026, 15:03 UTC"
    std::string ago = {};         // "3 h ago"
    std::string phase = {};       // "Finding the cause"; "" until it has been worked out
    std::string next = {};        // "Next: Push the wheel to and fro ..."
    std::string changed_at = {};  // as the records write it
};

struct BenchPage {
    std::vector<BenchRow> in_hand;      // last changed first
    std::vector<BenchRow> handed_back;  // last changed first
    std::string knowledge;              // "Knowledge: 61 findings, 40 causes"
    std::string records;                // path of the records file
    std::string trouble;                // why the list cannot be shown; else empty
    std::vector<SearchHit> hits = {};   // what was searched for
};

BenchPage make_bench_page(const Knowledge& knowledge, const Result<std::vector<JobRow>>& rows,
                          const std::string& records_path, const std::string& now);

// "2026-11-25T15:03:13Z" -> "25 Nov 2026, 15:03 UTC"; anything else is given back as it is.
std::string shown_time(const std::string& utc);

// "just now", "12 min ago", "3 h ago", "yesterday", "5 days ago"; "" where one of the times is none.
std::string time_ago(const std::string& utc, const std::string& now);

// One finding in the list of everything that can be answered.
struct LookUpRow {
    std::string finding;
    std::string name;
    std::string ask;
    std::string answer;  // as answered so far, or ""
};

std::vector<LookUpRow> make_look_up(const Knowledge& knowledge, const Job& job);

// Whether a row has every word of the filter somewhere in its name, question or answer, whatever the case.
bool matches(const LookUpRow& row, std::string_view filter);

}  // namespace hardover::window
