// Going from one place to another by key, by hand and in a window without room for the rail.
#include "app/window/places.hpp"

#include <catch2/catch.hpp>

#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

void press_place(Shop& shop, char32_t digit) {
    shop.harness->queue({Key::place, digit, false, true});
    shop.harness->frames(8);
}

}  // namespace

TEST_CASE("The job stays in hand while one looks at another place, and is there again on coming back") {
    Shop shop;
    shop.start_job("Grey Heron", "tight to port");
    REQUIRE(shop.state->place == hardover::window::Place::job);
    const std::string title = shop.state->page.title;
    press_place(shop, U'1');
    CHECK(shop.state->place == hardover::window::Place::bench);
    CHECK(shop.state->job.has_value());
    shop.harness->click("place.job");
    CHECK(shop.state->place == hardover::window::Place::job);
    CHECK(shop.harness->shows(title));
}

TEST_CASE("Without a job in hand the way to it is shut, and its key leads nowhere") {
    Shop shop;
    CHECK_FALSE(shop.harness->get("place.job").enabled);
    press_place(shop, U'2');
    CHECK(shop.state->place == hardover::window::Place::bench);
}

TEST_CASE("A window without room for the rail lists the places instead") {
    Shop shop(800, 640);
    CHECK_FALSE(shop.harness->has("place.bench"));
    shop.start_job("Grey Heron", "");
    shop.harness->click("bar.places");
    shop.harness->click("list.bench");
    CHECK(shop.state->place == hardover::window::Place::bench);
    CHECK(shop.harness->shows("Jobs in hand"));
}

TEST_CASE("F1 lists every key of the place, also those for which the lower edge has no room") {
    Shop shop(800, 640);
    CHECK_FALSE(shop.harness->shows("read knowledge anew"));
    shop.harness->press(Key::f1);
    CHECK(shop.harness->shows("start a job"));
    CHECK(shop.harness->shows("read knowledge anew"));
    shop.harness->press(Key::escape);
    CHECK(shop.harness->shows("Jobs in hand"));
}
