// The boat's place: steering by key, button and hand, faults put in beside the sound boat, parts to be
// pressed, and nothing cut or covered at any size.
#include "app/window/screens/boat/boat.hpp"

#include <catch2/catch.hpp>
#include <cmath>

#include "app/window/paint_drawing.hpp"
#include "app/window/screens/boat/boat_parts.hpp"
#include "app/window/screens/rail.hpp"
#include "fit.hpp"
#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

using WindowPlace = hardover::window::Place;

// The shop with the boat's place open, no job in hand.
struct AtTheBoat : Shop {
    explicit AtTheBoat(float w = 1280, float h = 800) : Shop(w, h) {
        carry_out(*state, GoTo{WindowPlace::boat});
        harness.reset();
        harness = std::make_unique<Harness>(w, h, 1, Look::light, [this](Kit& kit) {
            if (const auto action = draw_app(kit, *state)) carry_out(*state, *action);
            if (also) also(kit);
        });
    }
    std::function<void(const Kit&)> also;  // in the next frame
    double steer() const { return state->boat.page().setting.steer; }
    const BoatPage& page() const { return state->boat.page(); }
};

// From the port ram's anchor to its pin, in the drawing from above.
drawing::DimensionLine port_ram(const BoatPage& page) {
    REQUIRE(page.sketch.has_value());
    for (const drawing::Shape& shape : page.sketch->above.shapes) {
        const auto* dimension = std::get_if<drawing::DimensionLine>(&shape.form);
        if (dimension != nullptr && shape.part == "ram_port") return *dimension;
    }
    FAIL("no port ram is drawn");
    return {};
}

double ram_length_drawn(const BoatPage& page) {
    const drawing::DimensionLine ram = port_ram(page);
    return std::hypot(ram.to.x - ram.from.x, ram.to.y - ram.from.y);
}

}  // namespace

TEST_CASE("Left and right steer the boat, and the drawing goes along") {
    AtTheBoat shop;
    const double ahead = ram_length_drawn(shop.page());
    shop.harness->press(Key::right);
    shop.harness->press(Key::right);
    CHECK(shop.steer() == Approx(4 * 3.14159265 / 180).epsilon(0.001));
    CHECK(ram_length_drawn(shop.page()) > ahead + 0.005);
    CHECK(shop.harness->shows("4° to starboard"));
    CHECK(shop.harness->shows("Turning to starboard"));
    shop.harness->press(Key::left);
    CHECK(shop.steer() == Approx(2 * 3.14159265 / 180).epsilon(0.001));
    shop.harness->type("a");
    CHECK(std::abs(shop.steer()) < 1e-9);
}

TEST_CASE("The wheel pulled round by hand turns clockwise to starboard, and stops at the lock") {
    AtTheBoat shop;
    const Box wheel = shop.harness->get("boat.wheel").box;
    const float r = wheel.w * 0.35F, x = wheel.middle_x(), y = wheel.middle_y();
    const auto quarter_clockwise = [&] { shop.harness->drag(x, y - r, x + r, y); };
    quarter_clockwise();
    CHECK(shop.page().wheel == Approx(3.14159265 / 2).epsilon(0.15));
    CHECK(shop.steer() > 0);
    for (int i = 0; i < 14; ++i) quarter_clockwise();
    CHECK(shop.steer() == Approx(shop.page().most_steer));
}

TEST_CASE("Buttons steer, trim and speed the boat up") {
    AtTheBoat shop;
    shop.harness->click("boat.port");
    CHECK(shop.steer() == Approx(-5 * 3.14159265 / 180).epsilon(0.001));
    shop.harness->click("boat.trim.more");
    CHECK(shop.page().setting.trim > 0);
    CHECK(shop.harness->shows("Trim 2° up"));
    shop.harness->click("boat.speed.more");
    CHECK(shop.page().setting.speed > 0.5);
    shop.harness->type("uus");
    CHECK(shop.harness->shows("Trim 6° up"));
    CHECK(shop.page().setting.speed == Approx(0).margin(1e-9));
}

TEST_CASE("A slider is pulled along, and takes left and right while it has the focus") {
    AtTheBoat shop;
    const Box trim = shop.harness->get("boat.trim").box;
    shop.harness->drag(trim.middle_x(), trim.middle_y(), trim.right() - 4, trim.middle_y());
    CHECK(shop.page().setting.trim == Approx(shop.page().most_trim));
    REQUIRE(shop.harness->focused() == "boat.trim");
    shop.harness->press(Key::left);
    CHECK(shop.page().setting.trim < shop.page().most_trim);
    CHECK(std::abs(shop.steer()) < 1e-9);
}

TEST_CASE("A fault is found by its words, put in, stands beside the sound boat, and is taken out") {
    AtTheBoat shop;
    CHECK_FALSE(shop.harness->shows("WITH FAULT"));
    shop.harness->type("/");
    shop.harness->type("air left");
    shop.harness->click("boat.put.air_in_oil");
    REQUIRE(shop.state->boat.faults().size() == 1);
    shop.harness->click("boat.tab.gauges");
    CHECK(shop.harness->shows("WITH FAULT"));
    CHECK(shop.harness->shows("Sponge at the rim"));
    CHECK(shop.harness->shows(" more"));
    shop.harness->click("boat.fault.air_in_oil.less");
    CHECK(shop.state->boat.faults().front().strength == Approx(0.5));
    shop.harness->type("x");
    CHECK(shop.state->boat.faults().empty());
    CHECK_FALSE(shop.harness->shows("WITH FAULT"));
}

TEST_CASE("Pressing a ram on the drawing lists what is found and what is wrong there") {
    AtTheBoat shop;
    const Box sheet = shop.harness->get("boat.drawing.above").box;
    const drawing::Drawing& above = shop.page().sketch->above;
    const drawing::DimensionLine ram = port_ram(shop.page());
    drawing::Point at;
    shop.also = [&](const Kit& kit) {
        at = placement_in(kit, drawing_room(kit, sheet, true), above)
                 .on_page({(ram.from.x + ram.to.x) / 2, (ram.from.y + ram.to.y) / 2});
    };
    shop.harness->frames(1);
    shop.also = nullptr;
    const auto x = static_cast<float>(at.x), y = static_cast<float>(at.y);
    shop.harness->drag(x, y, x, y);
    REQUIRE(shop.state->boat.place().part == "ram_port");
    CHECK(shop.harness->shows("Rams"));
    CHECK(shop.harness->has("boat.cause.piston_seal_leaking"));
    CHECK(shop.harness->shows("What can be found here"));
    shop.harness->press(Key::escape);
    CHECK(shop.state->boat.place().part.empty());
}

TEST_CASE("Parts can be chosen by list, and a finding there opens in the job in hand") {
    AtTheBoat shop;
    shop.harness->click("boat.tab.place");
    shop.harness->click("boat.part.helm");
    CHECK(shop.harness->shows("Wheel and helm"));
    CHECK(shop.harness->has("boat.part.none"));
    shop.harness->click("boat.part.none");
    CHECK(shop.harness->has("boat.part.helm"));
}

TEST_CASE("Without a job the rig can be chosen, the job's own rig is shown with one") {
    AtTheBoat shop;
    shop.harness->click("boat.tab.rig");
    shop.harness->click("boat.rig.mount.inboard_tiller");
    CHECK(shop.page().rig.starts_with("Rudder"));
    CHECK(shop.page().least_trim == shop.page().most_trim);
    carry_out(*shop.state, GoTo{WindowPlace::bench});
    shop.harness->frames(4);
    shop.start_job("Grey Heron", "tight to port");
    carry_out(*shop.state, SetRig{"mount", "outboard_centre"});
    carry_out(*shop.state, GoTo{WindowPlace::boat});
    shop.harness->frames(4);
    CHECK(shop.page().rig.starts_with("Outboard"));
    CHECK(shop.state->boat.of_job());
    CHECK_FALSE(shop.harness->has("boat.rig.mount.inboard_tiller"));
}

TEST_CASE("Nothing is cut, covered or too small at the boat, with and without a fault, at every size") {
    ScratchFolder folder;
    auto opened = Store::open(folder.file("records.db"));
    REQUIRE_OK(opened);
    AppState state(shipped(), opened.value(), [] { return "2026-11-25T15:03:13Z"; });
    carry_out(state, GoTo{WindowPlace::boat});
    carry_out(state, TurnTo{0.3});
    const RailLook look{.here = WindowPlace::boat};
    const auto draw = [&](Kit& kit) {
        draw_rail(kit, look);
        draw_boat(kit, state.boat, state.boat_view);
    };
    for (const BoatTab tab :
         {BoatTab::drawing, BoatTab::gauges, BoatTab::faults, BoatTab::place, BoatTab::rig}) {
        state.boat_view.tab = tab;
        sweep("boat, tab " + std::to_string(static_cast<int>(tab)), draw);
    }
    carry_out(state, PutFaultIn{"hoses_crossed"});
    carry_out(state, LookAtPart{"ram_port"});
    for (const BoatTab tab : {BoatTab::drawing, BoatTab::gauges, BoatTab::place}) {
        state.boat_view.tab = tab;
        sweep("boat with a fault, tab " + std::to_string(static_cast<int>(tab)), draw);
    }
    carry_out(state, ChooseRig{"mount", "outboard_centre"});
    carry_out(state, ChooseRig{"drives", "2"});
    state.boat_view.tab = BoatTab::drawing;
    for (int view = 0; view < 3; ++view) {
        state.boat_view.drawing = view;
        sweep("outboards, view " + std::to_string(view), draw);
    }
}
