// Pictures of the worksheets, drawn without a display.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/worksheets.hpp"
#include "sample_places.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

void take(const std::string& path, Look look, float scale, const Harness::Draw& draw) {
    Harness harness(1280, 800, scale, look, draw);
    harness.save_picture(path);
    INFO(path);
    CHECK(std::filesystem::file_size(path) > 10000);  // a picture of one colour packs into almost nothing
}

}  // namespace

TEST_CASE("The worksheets can be drawn in both themes and at twice the text size", "[pictures]") {
    const Album album;
    for (const char* id :
         {"", "turns_lock_to_lock", "rim_force", "ram_centring", "fitting_figures", "units"}) {
        SheetsState sheets = sample_sheets(id);
        sheets.view.choosing_plot = false;
        sheets.view.notice = "";
        const std::string name = std::string("worksheets-") + (*id == 0 ? "all" : id);
        const auto draw = [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::worksheets, true});
            draw_worksheets(kit, sheets);
        };
        take(album.path(name + "-light"), Look::light, 1, draw);
        take(album.path(name + "-dark"), Look::dark, 1, draw);
        take(album.path(name + "-200"), Look::light, 2, draw);
    }
}
