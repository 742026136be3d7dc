// What every command of the terminal shares: streams, and where knowledge and records are.
#pragma once

#include <cstdint>
#include <optional>
#include <ostream>
#include <string>

#include "app/jobs/walk.hpp"
#include "app/records/store.hpp"
#include "app/terminal/terminal.hpp"
#include "rules/model/knowledge.hpp"
#include "rules/reading/reading.hpp"

namespace hardover {

struct Context {
    Streams streams;
    std::string knowledge_folder;  // as given; "" = the shipped one
    std::string records_file;      // as given; "" = in the user's data folder
};

// How a job sheet is wanted.
struct SheetWish {
    std::string file;   // "" = none
    std::string paper;  // "" = as the shop has settled
    std::string shop;   // "" = as named the last time
    bool json = false;
};

// Prints "hardover: what" on err and gives exit code 1. Damage of the records in use is told with the backup
// to bring back.
int refuse(Context& context, const Error& error);

// Prints every fault on err; the error says how many.
Result<Knowledge> load_knowledge(Context& context);

// The knowledge to work on jobs with: loaded, and with the odds learned from the closed jobs in `store`.
Result<Knowledge> load_knowledge(Context& context, const Store& store);

// The folder that --knowledge or the shipped default names.
Result<std::string> knowledge_folder(const Context& context);

// The records file that --records or the data folder names.
Result<std::string> records_path(const Context& context);

// Error: --records names a folder, or a file in a folder that is not there. Nothing is looked at without it.
Result<void> records_named_well(const Context& context);

// Opens the records; where there are none yet, they are begun. Errors: as Store::open and not_lost.
Result<Store> open_records(const Context& context);

// For what only reads, or goes on with what is there: begins none. Errors: as Store::open and records_there.
Result<Store> open_records_on_file(const Context& context);

// The units that the shop has settled on; US where there are no records yet, or none that can be read.
UnitSystem units_in_use(const Context& context);

// A whole file as text.
Result<std::string> read_file(const std::string& path);

int run_interview(Context& context, JobNumber job, const std::string& boat);
int run_assess(Context& context, const std::string& case_file, bool json);
int run_worksheet_list(Context& context, bool json);
int run_worksheet(Context& context, const std::string& id, const std::vector<std::string>& inputs, bool json);
int run_knowledge_check(Context& context, const std::string& folder, bool strict);
int run_knowledge_figures(Context& context, bool json);
int run_knowledge_list(Context& context, const std::string& kind);
int run_knowledge_show(Context& context, const std::string& id);
int run_knowledge_compare_with_rig(Context& context, bool all, int boats, std::uint64_t seed);
int run_knowledge_book(Context& context, const std::string& folder);
int run_knowledge_try(Context& context, const WalkWish& wish, bool json);
int run_knowledge_try_all(Context& context, const WalkWish& wish, bool json);
// The same with knowledge that is already loaded.
int run_worksheet(Context& context, const Knowledge& knowledge, const std::string& id,
                  const std::vector<std::string>& inputs, bool json);
struct QuizRequest {
    std::string topic;  // "": all
    int count = 10;
    std::optional<unsigned> seed;  // empty: from the clock
    std::string learner;           // "": nothing is kept
};
int run_quiz(Context& context, const QuizRequest& request);
int run_quiz_topics(Context& context);
int run_quiz_figures(Context& context, unsigned seed, bool json);
struct PracticeRequest {
    std::optional<std::uint64_t> seed;  // empty: from the clock
    std::optional<int> level;           // empty: as the learner's record says
    std::string learner;                // "": nothing is kept
    std::string guidance;               // "": as the learner's record, or the level, says
    bool start_new = false;             // even though one is not finished
    bool json = false;                  // the debrief; the dialogue goes to the error stream
};
int run_practice(Context& context, const PracticeRequest& request);
int run_practice_replay(Context& context, const std::string& id, bool json);
int run_practice_list(Context& context);
int run_practice_levels(Context& context);
int run_practice_figures(Context& context, int boats, bool json);
struct ProjectRequest {
    std::optional<std::uint64_t> seed;  // with the level: a new boat; neither: the one not finished, or any
    std::optional<int> level;
};
int run_class_project(Context& context, const ProjectRequest& request);
int run_learner_add(Context& context, const std::string& name);
int run_learner_list(Context& context, bool json);
int run_learner_show(Context& context, const std::string& name, bool json);
// Review times by the learner's own history, or back to the usual ones.
int run_learner_fit(Context& context, const std::string& name, bool usual);
int run_job_show(Context& context, JobNumber job);
int run_job_events(Context& context, JobNumber job);
int run_job_sheet(Context& context, JobNumber job, const SheetWish& wish);
int run_learning_show(Context& context, bool json);
int run_learning_switch(Context& context, bool on, bool how_often);
int run_learning_strength(Context& context, int strength);
int run_learning_reset(Context& context, const std::string& before, bool count_all);
int run_learning_export(Context& context, const std::string& file);
int run_learning_merge(Context& context, const std::vector<std::string>& files);
int run_learning_calibration(Context& context, bool json);

}  // namespace hardover
