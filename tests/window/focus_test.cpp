// Tab order and arrow keys, without a screen.
#include "app/window/focus.hpp"

#include <catch2/catch.hpp>

using namespace hardover::window;

namespace {

// Two answers side by side, a third under the first.
void draw(FocusOrder& order) {
    order.begin_frame();
    order.add("one", {0, 0, 100, 50}, true);
    order.add("two", {110, 0, 100, 50}, true);
    order.add("shut", {220, 0, 100, 50}, false);
    order.add("three", {0, 60, 100, 50}, true);
}

}  // namespace

TEST_CASE("Tab walks through what can be pressed and around the end, Shift Tab the other way") {
    FocusOrder order;
    draw(order);
    draw(order);
    std::string seen;
    for (int i = 0; i < 4; ++i) {
        order.next();
        seen += order.focused() + " ";
    }
    CHECK(seen == "one two three one ");
    order.previous();
    CHECK(order.focused() == "three");
}

TEST_CASE("Arrows go to the control that lies that way") {
    FocusOrder order;
    draw(order);
    draw(order);
    order.set("one");
    CHECK(order.toward(Direction::right));
    CHECK(order.focused() == "two");
    CHECK(order.toward(Direction::down));
    CHECK(order.focused() == "three");
    CHECK(order.toward(Direction::up));
    CHECK(order.focused() == "one");
    CHECK_FALSE(order.toward(Direction::left));
    CHECK(order.focused() == "one");
}

TEST_CASE("The focus is dropped when its control is gone") {
    FocusOrder order;
    draw(order);
    draw(order);
    order.set("three");
    draw(order);
    CHECK(order.focused() == "three");
    order.begin_frame();
    order.add("other", {0, 0, 10, 10}, true);
    order.begin_frame();
    CHECK(order.focused().empty());
}

TEST_CASE("Tab begins at the answers, not at the window's edge") {
    FocusOrder order;
    draw(order);
    draw(order);
    order.start_at("two");
    order.next();
    CHECK(order.focused() == "two");
    order.next();
    CHECK(order.focused() == "three");
}
