// Pictures of every state, drawn without a display. They land in the folder that HARDOVER_PICTURES names, for
// the documents and for looking at; without it, in a folder that is removed again.
#include <catch2/catch.hpp>
#include <cstdlib>

#include "app/window/screens/bench.hpp"
#include "app/window/screens/job.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/study/study.hpp"
#include "app/window/screens/worksheets.hpp"
#include "sample_pages.hpp"
#include "sample_places.hpp"
#include "shop.hpp"
#include "study_samples.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

std::string look_name(Look look) {
    return look == Look::light ? "light" : "dark";
}

// A picture of one colour packs into almost nothing; one with text does not.
void check_picture(const std::string& path) {
    INFO(path);
    CHECK(std::filesystem::file_size(path) > 20000);
}

// Where a picture goes: the folder asked for, or one that is removed again.
class Pictures {
  public:
    std::string path(const std::string& name) const {
        const char* wanted = std::getenv("HARDOVER_PICTURES");
        return wanted == nullptr ? scratch_.file(name + ".png") : std::string(wanted) + "/" + name + ".png";
    }
    // One place in both themes at 1280 x 800, and at twice the text size.
    void take(const std::string& name, const Harness::Draw& draw) const {
        for (const Look look : {Look::light, Look::dark}) {
            Harness harness(1280, 800, 1, look, draw);
            const std::string to = path(name + "-" + look_name(look));
            harness.save_picture(to);
            check_picture(to);
        }
        Harness large(1280, 800, 2, Look::light, draw);
        large.save_picture(path(name + "-200"));
        check_picture(path(name + "-200"));
    }
    std::string file(const std::string& name) const { return scratch_.file(name); }

  private:
    ScratchFolder scratch_;
};

}  // namespace

TEST_CASE("The worksheets can be drawn in both themes and at twice the text size") {
    const Pictures pictures;
    for (const char* id :
         {"", "turns_lock_to_lock", "rim_force", "ram_centring", "fitting_figures", "units"}) {
        SheetsState sheets = sample_sheets(id);
        sheets.view.choosing_plot = false;
        sheets.view.notice = "";
        const std::string name = std::string("worksheets-") + (*id == 0 ? "all" : id);
        pictures.take(name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::worksheets, true});
            draw_worksheets(kit, sheets);
        });
    }
}

TEST_CASE("Every state of the job screen and the bench can be drawn in both themes") {
    const Pictures pictures;
    const auto path = [&](const std::string& name) { return pictures.path(name); };
    const auto rows = sample_look_up();
    const BenchPage bench = sample_bench();
    for (const Look look : {Look::light, Look::dark}) {
        for (const NamedPage& named : all_sample_pages()) {
            JobView view;
            Harness harness(1280, 800, 1, look, [&](Kit& kit) {
                draw_job(kit, {named.page, nullptr, rows}, view);
            });
            harness.save_picture(path("job-" + named.name + "-" + look_name(look)));
            check_picture(path("job-" + named.name + "-" + look_name(look)));
        }
        BenchView view;
        Harness harness(1280, 800, 1, look, [&](Kit& kit) { draw_bench(kit, bench, view); });
        harness.save_picture(path("bench-" + look_name(look)));
        check_picture(path("bench-" + look_name(look)));
    }
}

TEST_CASE(
    "The boat can be drawn on every mount, sound and with faults, in both themes and in large letters") {
    const Pictures album;
    auto opened = Store::open(album.file("records.db"));
    REQUIRE_OK(opened);
    struct Shown {
        const char* name;
        const char* mount;
        const char* drives;
        const char* fault;
        BoatTab tab;
        Look look;
        float w, h, scale;
    };
    for (const Shown& shown :
         {Shown{"sterndrive", "sterndrive_external", "1", "", BoatTab::gauges, Look::light, 1280, 800, 1},
          Shown{"crossed", "sterndrive_external", "1", "hoses_crossed", BoatTab::gauges, Look::light, 1280,
                800, 1},
          Shown{"outboards", "outboard_centre", "2", "", BoatTab::faults, Look::light, 1280, 800, 1},
          Shown{"outboard", "outboard_centre", "1", "air_in_oil", BoatTab::gauges, Look::dark, 1280, 800, 1},
          Shown{"rudder", "inboard_tiller", "1", "", BoatTab::place, Look::light, 1280, 800, 1},
          Shown{"rudders", "inboard_tiller", "2", "reservoir_low", BoatTab::rig, Look::dark, 1600, 1000,
                1.25F},
          Shown{"large", "sterndrive_external", "1", "hose_kinked", BoatTab::drawing, Look::light, 1280, 800,
                2},
          Shown{"small", "sterndrive_external", "2", "", BoatTab::gauges, Look::light, 1024, 640, 1}}) {
        AppState state(shipped(), opened.value(), [] { return "2026-11-25T15:03:13Z"; });
        carry_out(state, GoTo{hardover::window::Place::boat});
        carry_out(state, ChooseRig{"mount", shown.mount});
        carry_out(state, ChooseRig{"drives", shown.drives});
        if (*shown.fault != 0) carry_out(state, PutFaultIn{shown.fault});
        carry_out(state, TurnTo{0.3});
        carry_out(state, TrimTo{0.14});
        carry_out(state, GoAt{8});
        if (shown.tab == BoatTab::place) carry_out(state, LookAtPart{"ram_port"});
        state.boat_view.tab = shown.tab;
        Harness harness(shown.w, shown.h, shown.scale, shown.look, [&](Kit& kit) { draw_app(kit, state); });
        harness.save_picture(album.path(std::string("boat-") + shown.name));
        check_picture(album.path(std::string("boat-") + shown.name));
    }
}

TEST_CASE("The place Study can be drawn in every state, in both themes and at twice the text size") {
    const Pictures pictures;
    for (const StudyState& state : study_states()) {
        StudyView view = state.view;
        pictures.take("study-" + state.name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::study, true});
            draw_study(kit, state.page, view);
        });
    }
}
