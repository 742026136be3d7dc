// Pictures of the worksheets, drawn without a display.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/window/screens/rail.hpp"
#include "app/window/screens/worksheets.hpp"
#include "sample_places.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

TEST_CASE("The worksheets can be drawn in both themes and at twice the text size", "[pictures]") {
    const Album album;
    for (const char* id :
         {"", "turns_lock_to_lock", "rim_force", "ram_centring", "fitting_figures", "units"}) {
        SheetsState sheets = sample_sheets(id);
        sheets.view.choosing_plot = false;
        sheets.view.notice = "";
        const std::string name = std::string("worksheets-") + (*id == 0 ? "all" : id);
        album.take(name, [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::worksheets, true});
            draw_worksheets(kit, sheets);
        });
    }
}
