// Keys that come faster than frames.
#include "app/window/input.hpp"

#include <catch2/catch.hpp>

#include "harness.hpp"

using namespace hardover::window;
using namespace hardover_tests;

namespace {

// One text field and one button that counts.
struct Desk {
    std::string text;
    int pressed = 0;
    int cancelled = 0;
    int committed = 0;

    void draw(Kit& kit) {
        kit.pane("desk", {0, 0, 600, 400}, {}, [&] {
            const FieldEvent event = kit.field("field", kit.take(50), text, {.name = "Field"});
            if (event.cancelled) ++cancelled;
            if (event.committed) ++committed;
            kit.gap(10);
            if (kit.button("button", kit.take(50), {.label = "Press"})) ++pressed;
            if (kit.take_digit()) pressed += 100;
        });
    }
};

}  // namespace

TEST_CASE("Letters and Backspaces typed at once all arrive, in order") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.click("field");
    harness.type("31.57777");
    for (int i = 0; i < 4; ++i) harness.press(Key::backspace);
    harness.type(" bar");
    CHECK(desk.text == "31.5 bar");
    CHECK(desk.pressed == 0);
}

TEST_CASE("Tab and a number typed straight after it go into the field") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.queue({Key::tab});
    for (const char letter : std::string("42 in")) {
        harness.queue({Key::character, static_cast<char32_t>(letter)});
    }
    harness.frames(30);
    CHECK(harness.focused() == "field");
    CHECK(desk.text == "42 in");
    CHECK(desk.pressed == 0);
}

TEST_CASE("A Tab typed straight after a text does not lose the text") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.queue({Key::tab});
    for (const char letter : std::string("Heron")) {
        harness.queue({Key::character, static_cast<char32_t>(letter)});
    }
    harness.queue({Key::tab});
    harness.queue({Key::enter});
    harness.frames(40);
    CHECK(desk.text == "Heron");
    CHECK(desk.committed == 1);
    CHECK(desk.pressed == 1);
}

TEST_CASE("Digits outside a field are commands, inside it they are text") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.type("7");
    CHECK(desk.pressed == 100);
    harness.click("field");
    harness.type("7");
    CHECK(desk.pressed == 100);
    CHECK(desk.text == "7");
}

TEST_CASE("Enter and Space press what has the focus, once") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.press(Key::tab);
    harness.press(Key::tab);
    REQUIRE(harness.focused() == "button");
    harness.press(Key::enter);
    CHECK(desk.pressed == 1);
    harness.type(" ");
    CHECK(desk.pressed == 2);
}

TEST_CASE("Enter and leaving a field hand its text over, Esc does not") {
    Desk desk;
    Harness harness(600, 400, 1, Look::light, [&](Kit& kit) { desk.draw(kit); });
    harness.click("field");
    harness.type("5");
    harness.press(Key::enter);
    CHECK(desk.committed == 1);
    harness.click("field");
    harness.type("6");
    harness.press(Key::tab);
    CHECK(desk.committed == 2);
    harness.click("field");
    harness.type("7");
    harness.press(Key::escape);
    CHECK(desk.cancelled == 1);
    CHECK(desk.committed == 2);
}

TEST_CASE("A pane is pulled by hand without pressing what is under the finger") {
    int pressed = 0;
    Harness harness(400, 300, 1, Look::light, [&](Kit& kit) {
        kit.pane("long", {0, 0, 400, 300}, {}, [&] {
            for (int i = 0; i < 20; ++i) {
                if (kit.button("row " + std::to_string(i), kit.take(50), {.label = "Row"})) ++pressed;
            }
        });
    });
    const float before = harness.get("row 0").box.y;
    harness.drag(200, 250, 200, 100);
    CHECK(harness.get("row 0").box.y < before - 100);
    CHECK(pressed == 0);
    harness.click("row 4");
    CHECK(pressed == 1);
}
