// Every state at many window and text sizes: nothing cut, nothing on top of something else, nothing too small
// to be pressed with a glove.
#include <catch2/catch.hpp>

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/rail.hpp"
#include "fit.hpp"
#include "sample_pages.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("Nothing is cut, covered or too small on the job screen, in any state and size") {
    const auto rows = sample_look_up();
    for (const NamedPage& named : all_sample_pages()) {
        for (const JobTab tab : {JobTab::now, JobTab::ahead, JobTab::known}) {
            JobView view;
            view.tab = tab;
            view.open = {"branches", "trace", "log", "out", "cause.ram_seal"};
            sweep(named.name + ", tab " + std::to_string(static_cast<int>(tab)), [&](Kit& kit) {
                draw_job(kit, {named.page, nullptr, rows}, view);
            });
        }
    }
}

TEST_CASE("Nothing is cut, covered or too small where something else stands in the middle") {
    const auto rows = sample_look_up();
    const JobPage page = after_page();
    for (const Showing showing : {Showing::intake, Showing::look_up, Showing::hand_back}) {
        JobView view;
        view.showing = showing;
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
