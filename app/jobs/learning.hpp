// Learning from the shop's closed jobs and from the counts of other shops: what is counted, how it is
// switched, and the knowledge that both front ends use. Only causes that were confirmed count, never what the
// program itself put first. Knows no screen; the records are the only side effect.
#pragma once

#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/jobs/closed_job.hpp"
#include "app/jobs/count_file.hpp"
#include "app/records/store.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reasoning/learning.hpp"
#include "rules/result/result.hpp"

namespace hardover {

struct LearningSettings {
    bool on = true;
    LearningWay way;
    std::string from;  // own jobs handed back at or before this moment (UTC) do not count; "" = all count
};

// Error: a setting of the records that makes no sense, with the command that puts it right.
Result<LearningSettings> learning_settings(const Store& store);

Result<void> switch_learning(Store& store, bool on, bool how_often);

// Error bad_input: not from least_strength to greatest_strength.
Result<void> set_learning_strength(Store& store, int strength);

// Own jobs handed back at or before `moment` (UTC, or its first part such as a date) no longer count; ""
// counts all again. With `drop_others` the counts of other shops go too. No job is changed.
Result<void> reset_learning(Store& store, const std::string& moment, bool drop_others);

// Whether a job counts: a cause of it was confirmed, and no reset has left it out.
bool is_counted(const ClosedJob& job, const LearningSettings& settings);

// Adds a job that counts: each cause that was confirmed once. `with_readings`: also which readings were found
// before its cure.
void count_job(const Knowledge& knowledge, const ClosedJob& job, bool with_readings, ClosedJobs& sum);

struct CountedJobs {
    ClosedJobs own;  // a job with two confirmed causes stands under both, so that it counts as two
    Shops others;
    std::int64_t own_jobs = 0;       // that count, each once
    std::int64_t not_confirmed = 0;  // own jobs handed back with causes that were only assumed
    std::int64_t before = 0;         // own confirmed jobs that a reset left out

    ClosedJobs sum() const;
};

// Counts the own jobs and reads the other shops' counts.
Result<CountedJobs> count_jobs(const Knowledge& knowledge, const Store& store,
                               const LearningSettings& settings, bool with_readings);

// The knowledge to work with: the shipped one when learning is off, else with the odds that the closed jobs
// give. Read once when the program starts, so that odds do not move while a job is in hand.
Result<Knowledge> learned_knowledge(const Knowledge& shipped, const Store& store);

// Learned odds beside the shipped ones, per 1000 comebacks.
struct LearnedOdds {
    std::string cause;  // id
    std::string name;
    std::int64_t jobs = 0;
    double shipped = 0;
    double learned = 0;
    double deviation = 0;  // standard deviation of the learned odds
};
struct LearnedHistory {
    std::string history;  // id
    std::string name;
    std::int64_t jobs = 0;
    std::vector<LearnedOdds> odds;  // in knowledge order
};
// A cause's readings as often as learned; only those that jobs were found for.
struct LearnedShows {
    std::string cause;
    std::string finding;
    std::string name;  // of the finding
    std::vector<std::string> readings;
    std::vector<std::int64_t> jobs;
    std::vector<double> shipped;
    std::vector<double> learned;
};
struct LearningTable {
    LearningSettings settings;
    CountedJobs counted;
    std::vector<LearnedHistory> histories;
    LearnedOdds not_listed;
    std::vector<LearnedShows> shows;    // empty unless how often is learned
    std::int64_t without_history = 0;   // jobs of a history nobody told, or that this knowledge lacks
    std::int64_t without_cause = 0;     // jobs of causes that this knowledge lacks
    std::optional<int> foretells_best;  // the strength that would have foretold the jobs best
};
Result<LearningTable> learning_table(const Knowledge& shipped, const Store& store);

// The counts to hand on: the own ones and those merged, under this shop's id. The id is drawn at random at
// the first export; the number goes up when the own counts have changed since the last one. Both are kept
// before the text is given.
Result<std::string> export_counts(const Knowledge& knowledge, Store& store);

// The id this shop's exports bear; "" before the first.
Result<std::string> own_shop_id(const Store& store);

// The shops whose jobs are among the own ones, itself and those whose records were merged: their counts would
// count twice.
Result<std::set<std::string>> shops_counted_as_own(const Store& store);

// The setting that says so of a shop whose records were merged.
std::string joined_shop_setting(const std::string& shop);

struct CountFile {
    std::string name;
    std::string text;
};
struct Merging {
    int shops_new = 0;
    int shops_newer = 0;  // in the place of an earlier export
    int shops_known = 0;  // nothing new in them
    bool own = false;     // the shop's own counts stood in a file; they count already
};
// All files or, on an error, none.
Result<Merging> merge_counts(Store& store, const std::vector<CountFile>& files);

}  // namespace hardover
