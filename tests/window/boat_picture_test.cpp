// Pictures of the boat's place. They land in the folder that HARDOVER_PICTURES names, for looking at; without
// it, in a folder that is removed again.
#include <catch2/catch.hpp>

#include "album.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("The boat can be drawn on every mount, sound and with faults, in both themes and in large letters",
          "[pictures]") {
    const Album album;
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
        CHECK(std::filesystem::file_size(album.path(std::string("boat-") + shown.name)) > 20000);
    }
}
