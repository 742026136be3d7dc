// Everything the window shows and remembers, and the one place where it changes.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "app/jobs/job.hpp"
#include "app/jobs/knowledge_in_use.hpp"
#include "app/jobs/outlook.hpp"
#include "app/jobs/page.hpp"
#include "app/window/actions.hpp"
#include "app/window/background.hpp"
#include "app/window/knowledge_state.hpp"
#include "app/window/pages.hpp"
#include "app/window/preferences.hpp"
#include "app/window/project_desk.hpp"
#include "app/window/project_view.hpp"
#include "app/window/sheets_state.hpp"
#include "app/window/study_desk.hpp"
#include "app/window/study_view.hpp"
#include "app/window/views.hpp"

namespace hardover::window {

class ClassDesk;
class RecordsDesk;

// The name under which background work finds out what would turn the first cause.
inline constexpr const char* turning_work = "turning";

// A list that covers the place in hand.
enum class Listed { nothing, places, keys };

struct AppState {
    AppState(const Knowledge& knowledge, Store& store, std::function<std::string()> now);

    const Knowledge& knowledge;
    PreparedKnowledge prepared;
    Store& store;
    std::function<std::string()> now;  // UTC, as the records write it
    Background* background = nullptr;  // for long work; none: it is done at once
    KnowledgeInUse* in_use = nullptr;  // what `knowledge` belongs to; none: it is not read anew
    std::string fonts_folder;          // of the job sheet's letters
    std::function<Result<void>(const std::string& path)> open_outside;  // none: nothing can be opened

    Preferences preferences;
    ShopSettings shop;
    SettingsView settings_view;
    Place place = Place::bench;
    Place before = Place::bench;  // where Back leads
    Listed listed = Listed::nothing;

    BenchPage bench;
    BenchView bench_view;
    SearchIndex search_index;                   // of `knowledge`, made when it is first needed
    std::vector<JobRow> job_rows;               // as the bench was last read
    std::map<JobNumber, BenchRow> looked_into;  // how far jobs had come when they last changed

    std::optional<Job> job;  // in hand, whatever place is shown
    JobPage page;
    std::optional<StepCard> looked_at;
    std::vector<LookUpRow> look_up;
    QuestionOutlook outlook;               // of the question in hand
    std::optional<TurningSketch> turning;  // once asked for, until the job changes
    JobView view;

    BoatDesk boat;  // looked at: the job's, or one of its own
    BoatView boat_view;

    SheetsState sheets;
    KnowledgeState known;

    StudyDesk study{prepared, store, now};
    StudyView study_view;

    ProjectDesk project{prepared, store, now};
    ProjectView project_view;
    std::shared_ptr<ClassDesk> classes;
    std::shared_ptr<RecordsDesk> records;
    std::string held_up;  // something was refused while work beside the window has the records to itself
};

// Long work is done beside the window from now on. `background` must end before the state.
void use_background(AppState& state, Background& background);
// Takes in what was done beside the window, and how far the rest has come. True: something is there.
bool take_in_background(AppState& state);
// A boat is projected: it has the whole window, in large letters.
bool is_projecting(const AppState& state);

// Reads the list of jobs anew.
void show_bench(AppState& state);
// What the bench's search finds, and how far a job has come.
void search_bench(AppState& state);
void look_into(AppState& state, JobNumber number);

// The boat of the job in hand, or one of its own, as it is now.
void show_boat(AppState& state);

// Does what was asked for: records it, or says in the view why not. What was typed stays until it is
// accepted.
void carry_out(AppState& state, const Action& action);

// Inner parts of carry_out, by place. The job must be there.
void carry_out_on_job(AppState& state, const JobAction& action);
void carry_out_on_settings(AppState& state, const SettingsAction& action);
// The shop's settings as the records have them, for the job in hand too.
void take_shop(AppState& state);
// The job's pages anew, after it or what is looked at has changed.
void show_job(AppState& state);
// What would turn the first cause is no longer as it was worked out, or is being.
void forget_turning(AppState& state);

void carry_out_on_records(AppState& state, const RecordsAction& action);

void carry_out_on_knowledge(AppState& state, const KnowledgeAction& action);
// The list or the entry in hand anew.
void show_knowledge(AppState& state);

void carry_out_on_sheets(AppState& state, const SheetAction& action);
// The list of worksheets and the one in hand anew.
void show_sheets(AppState& state);

}  // namespace hardover::window
