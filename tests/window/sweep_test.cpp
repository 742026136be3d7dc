// Every state at many window and text sizes: nothing cut, nothing on top of something else, nothing too small
// to be pressed with a glove.
#include <catch2/catch.hpp>

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/knowledge.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/study/study.hpp"
#include "app/window/screens/worksheets.hpp"
#include "fit.hpp"
#include "sample_pages.hpp"
#include "sample_places.hpp"
#include "shipped.hpp"
#include "study_samples.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("Nothing is cut, covered or too small on the job screen, in any state and size") {
    const auto rows = sample_look_up();
    const QuestionOutlook outlook = sample_outlook();
    const TurningSketch turning = sample_turning();
    for (const NamedPage& named : all_sample_pages()) {
        for (const JobTab tab : {JobTab::now, JobTab::ahead, JobTab::known}) {
            JobView view;
            view.tab = tab;
            view.open = {"trace", "turning", "out", "cause.ram_seal"};
            if (named.page.card.kind != StepCard::Kind::question) view.open.insert("outlook");
            sweep(named.name + ", tab " + std::to_string(static_cast<int>(tab)), [&](Kit& kit) {
                draw_job(kit, {named.page, nullptr, rows, &outlook, &turning}, view);
            });
        }
    }
}

TEST_CASE("Nothing is cut, covered or too small where something else stands in the middle") {
    const auto rows = sample_look_up();
    const JobPage page = after_page();
    for (const Showing showing :
         {Showing::intake, Showing::look_up, Showing::hand_back, Showing::time_line}) {
        JobView view;
        view.showing = showing;
        view.open = {"rig_built", "rig_sizes"};
        view.sheet = {"/home/bench/hardover/job sheets/Job 12 Grey Heron.pdf", "",
                      "the folder for the job sheets cannot be made: permission denied"};
        sweep("showing " + std::to_string(static_cast<int>(showing)), [&](Kit& kit) {
            draw_job(kit, {page, nullptr, rows}, view);
        });
    }
}

TEST_CASE("Nothing is cut, covered or too small on the bench") {
    const BenchPage page = sample_bench();
    BenchView view;
    view.handed_back_open = true;
    sweep("bench", [&](Kit& kit) { draw_bench(kit, page, view); });
}

TEST_CASE(
    "Nothing is cut, covered or too small on the rail beside a place, and on the lists of places and keys") {
    const BenchPage page = sample_bench();
    const JobPage job = after_page();
    const auto rows = sample_look_up();
    const RailLook look{.job_in_hand = true};
    BenchView view;
    JobView job_view;
    sweep("rail and bench", [&](Kit& kit) {
        draw_rail(kit, look);
        draw_bench(kit, page, view);
    });
    sweep("rail and job", [&](Kit& kit) {
        draw_rail(kit, look);
        draw_job(kit, {job, nullptr, rows}, job_view);
    });
    sweep("places", [&](Kit& kit) { draw_place_list(kit, look); });
    sweep("keys", [&](Kit& kit) {
        kit.set_hints({{"N", "start a job"}, {"Backspace", "undo"}, {"Page down", "further down"}});
        draw_key_list(kit, look);
    });
}

TEST_CASE("Nothing is cut, covered or too small among the worksheets and on each of them") {
    SheetsState list = sample_sheets("");
    sweep("worksheets", [&](Kit& kit) { draw_worksheets(kit, list); });
    for (const char* id : {"turns_lock_to_lock", "fitting_figures", "units", "galvanic_pair"}) {
        SheetsState sheets = sample_sheets(id);
        sweep(id, [&](Kit& kit) { draw_worksheets(kit, sheets); });
    }
}

TEST_CASE("Every shipped worksheet fits with its examples, its plot and all that can be drawn") {
    for (const Worksheet& worksheet : shipped().worksheets) {
        SheetsState sheets = sample_sheets(worksheet.id);
        short_sweep(worksheet.id, [&](Kit& kit) { draw_worksheets(kit, sheets); });
    }
}

TEST_CASE("Nothing is cut, covered or too small at the place Study, in any state and size") {
    for (const StudyState& state : study_states()) {
        StudyView view = state.view;
        sweep("study " + state.name, [&](Kit& kit) { draw_study(kit, state.page, view); });
    }
}

TEST_CASE("Nothing is cut, covered or too small in the knowledge, in its list, and among what was found") {
    KnowledgeState list = sample_knowledge("cause", "");
    sweep("list of causes", [&](Kit& kit) { draw_knowledge(kit, list); });
    KnowledgeState found = list;
    found.filter = "tight to starboard";
    found.hits = SearchIndex(shipped()).find(found.filter, {}, 12);
    sweep("found", [&](Kit& kit) { draw_knowledge(kit, found); });
    for (const auto& [kind, id] :
         {std::pair("cause", "air_in_oil"), std::pair("check", "sponge_test"),
          std::pair("worksheet", "turns_lock_to_lock"), std::pair("finding", "wheel_feel")}) {
        KnowledgeState entry = sample_knowledge(kind, id);
        sweep(std::string(kind) + " " + id, [&](Kit& kit) { draw_knowledge(kit, entry); });
    }
}

TEST_CASE("Entries of every kind in the shipped knowledge fit on their pages") {
    for (const KindCount& kind : browsable_kinds(shipped())) {
        const auto entries = entries_of(shipped(), kind.kind);
        for (std::size_t i = 0; i < entries.size(); i += 21) {
            KnowledgeState known = sample_knowledge(kind.kind, entries[i].key.id);
            short_sweep(kind.kind + " " + entries[i].key.id, [&](Kit& kit) { draw_knowledge(kit, known); });
        }
    }
}

TEST_CASE("Nothing is cut, covered or too small among what the bench finds") {
    BenchPage page = sample_bench();
    BenchView view;
    view.search = "groans when hard over";
    view.complaint = "noise_at_full_lock";
    view.complaint_name = "Noise at full lock";
    page.hits = search(SearchIndex(shipped()), shipped(), {}, view.search, 12);
    REQUIRE(page.hits.size() > 3);
    sweep("bench, found", [&](Kit& kit) { draw_bench(kit, page, view); });
}
