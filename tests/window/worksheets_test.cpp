// The place Worksheets: found by a word, filled in by hand or by keys, and taken over by the job in hand.
#include <catch2/catch.hpp>

#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

void open_sheets(Shop& shop) {
    shop.harness->queue({Key::place, U'4', false, true});
    shop.harness->frames(8);
    REQUIRE(shop.state->place == hardover::window::Place::worksheets);
}

}  // namespace

TEST_CASE("A worksheet is found by a word of its inputs, filled in and worked out with keys alone") {
    Shop shop;
    open_sheets(shop);
    shop.harness->type("/");
    shop.harness->type("rim force");
    CHECK(shop.harness->has("sheet.rim_force"));
    CHECK_FALSE(shop.harness->has("sheet.units"));
    shop.harness->press(Key::tab);
    shop.harness->press(Key::tab);
    for (int i = 0; i < 30 && shop.harness->focused() != "sheet.rim_force"; ++i)
        shop.harness->press(Key::tab);
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->sheets.open == "rim_force");
    for (int i = 0; i < 3 && shop.harness->focused() != "input.port"; ++i) shop.harness->press(Key::tab);
    REQUIRE(shop.harness->focused() == "input.port");
    shop.harness->type("14");
    shop.harness->press(Key::tab);
    CHECK(shop.harness->focused() == "input.starboard");
    shop.harness->type("6");
    shop.harness->press(Key::enter);
    CHECK(shop.harness->shows("8 lbf"));
    CHECK(shop.harness->shows("Clearly heavier one way"));
    CHECK(shop.harness->shows("Now 8 lbf"));  // on the plot
    shop.harness->press(Key::escape);
    shop.harness->press(Key::escape);
    CHECK(shop.state->sheets.open.empty());
}

TEST_CASE("A wrong number keeps its letters and says at its field what would be right") {
    Shop shop;
    open_sheets(shop);
    shop.harness->click("sheet.rim_force");
    shop.harness->click("input.port");
    shop.harness->type("14 psi");
    shop.harness->press(Key::enter);
    CHECK(shop.state->sheets.page.fields.front().text == "14 psi");
    CHECK(shop.harness->shows("lbf"));
    CHECK_FALSE(shop.state->sheets.page.fields.front().error.empty());
    CHECK(shop.harness->shows(shop.state->sheets.page.fields.front().error));
}

TEST_CASE("The job takes a sheet over as events of its own, says so, and gives it back by undo") {
    Shop shop;
    shop.start_job("Grey Heron", "tight to port");
    const std::size_t before = shop.state->job->events.size();
    open_sheets(shop);
    carry_out(*shop.state, SheetAction{OpenSheet{"rim_force"}});
    carry_out(*shop.state, SheetAction{EnterInput{"port", "14"}});
    carry_out(*shop.state, SheetAction{EnterInput{"starboard", "6"}});
    shop.harness->frames(4);
    shop.harness->type("u");
    CHECK(shop.state->job->events.size() == before + 2);
    CHECK(shop.state->sheets.view.notice.find("Rim force to port: 14 lbf") != std::string::npos);
    CHECK(shop.harness->shows("From job 1, measured."));
    CHECK_FALSE(shop.state->sheets.page.any_typed);
    carry_out(*shop.state, JobAction{UndoLast{}});
    carry_out(*shop.state, GoTo{hardover::window::Place::worksheets});
    CHECK(shop.state->sheets.page.fields[1].text.empty());
    CHECK(shop.state->sheets.page.fields[0].text.rfind("14 lbf", 0) == 0);
}

TEST_CASE("What was entered in a sheet stays while one looks elsewhere, and can be cleared") {
    Shop shop;
    open_sheets(shop);
    shop.harness->click("sheet.rim_force");
    carry_out(*shop.state, SheetAction{EnterInput{"port", "14"}});
    carry_out(*shop.state, GoTo{hardover::window::Place::bench});
    open_sheets(shop);
    CHECK(shop.state->sheets.page.fields.front().text == "14");
    shop.harness->click("sheets.clear");
    CHECK(shop.state->sheets.page.fields.front().text.empty());
}
