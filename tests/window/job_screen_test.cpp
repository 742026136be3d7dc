// What a technician can do on the job screen, by key and by hand, and what comes of it.
#include "app/window/hand_back.hpp"
#include "app/window/screens/job.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "harness.hpp"
#include "sample_pages.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;
using WindowAction = hardover::window::Action;

namespace {

template <typename T>
T as(const WindowAction& action) {
    if constexpr (std::is_same_v<T, GoTo>) {
        REQUIRE(std::holds_alternative<T>(action));
        return std::get<T>(action);
    } else {
        REQUIRE(std::holds_alternative<JobAction>(action));
        REQUIRE(std::holds_alternative<T>(std::get<JobAction>(action)));
        return std::get<T>(std::get<JobAction>(action));
    }
}

// The job screen on a page, noting every action.
struct Screen {
    explicit Screen(JobPage shown, float w = 1280, float h = 800, float scale = 1)
        : page(std::move(shown)), harness(w, h, scale, Look::light, [this](Kit& kit) { draw(kit); }) {}

    void draw(Kit& kit) {
        if (auto action = draw_job(kit, {page, looked_at, rows}, view)) actions.push_back(*action);
    }
    template <typename T>
    T only() {
        REQUIRE(actions.size() == 1);
        const T action = as<T>(actions.front());
        actions.clear();
        return action;
    }

    JobPage page;
    const StepCard* looked_at = nullptr;
    std::vector<LookUpRow> rows = sample_look_up();
    JobView view;
    std::vector<WindowAction> actions;
    Harness harness;
};

}  // namespace

TEST_CASE("A digit answers the question, and 0 or C says that it cannot be told") {
    Screen screen(question_page());
    screen.harness.type("2");
    const GiveAnswer slack = screen.only<GiveAnswer>();
    CHECK(slack.finding == "wheel_feel");
    CHECK(slack.answer == "slack");
    screen.harness.type("0");
    CHECK(screen.only<GiveAnswer>().answer == "cannot_tell");
    screen.harness.type("C");
    CHECK(screen.only<GiveAnswer>().answer == "cannot_tell");
    screen.harness.type("9");
    CHECK(screen.actions.empty());
}

TEST_CASE("A press on an answer gives the same as its digit") {
    Screen screen(question_page());
    screen.harness.click("answer.3");
    CHECK(screen.only<GiveAnswer>().answer == "firm");
}

TEST_CASE("Backspace takes the last entry back") {
    Screen screen(question_page());
    screen.harness.press(Key::backspace);
    screen.only<UndoLast>();
}

TEST_CASE("A number is typed without reaching for its field, and Enter saves it") {
    Screen screen(number_page());
    screen.harness.type("1 1/2");
    CHECK(screen.actions.empty());
    CHECK(screen.harness.focused() == "number.wheel_sponge");
    screen.harness.press(Key::enter);
    const GiveNumber number = screen.only<GiveNumber>();
    CHECK(number.id == "wheel_sponge");
    CHECK(number.text == "1 1/2 in");  // the unit that stands behind it
    CHECK_FALSE(number.of_rig);
}

TEST_CASE("A number that cannot be read stays as typed, and the field says what would be right") {
    Screen screen(number_page());
    screen.harness.type("3 furlongs");
    screen.harness.press(Key::enter);
    const GiveNumber number = screen.only<GiveNumber>();
    screen.view.drafts.refuse(number.id, number.text, "expected a length such as 4 1/2 in");
    screen.harness.frames(3);
    CHECK(screen.view.drafts.of("wheel_sponge", "").text == "3 furlongs");
    CHECK(screen.harness.shows("expected a length such as 4 1/2 in"));
    screen.harness.click("number.wheel_sponge");
    screen.harness.type("x");
    CHECK_FALSE(screen.harness.shows("expected a length"));
}

TEST_CASE("Esc leaves a field as it was before it leaves the job") {
    Screen screen(number_page());
    screen.harness.type("77");
    screen.harness.press(Key::escape);
    CHECK(screen.view.drafts.of("wheel_sponge", "").text.empty());
    CHECK(screen.actions.empty());
    screen.harness.press(Key::escape);
    CHECK(screen.only<GoTo>().place == hardover::window::Place::bench);
}

TEST_CASE("Digits never answer where a number is asked for") {
    Screen screen(prove_page());
    screen.harness.type("2");
    screen.harness.press(Key::escape);
    CHECK(screen.actions.empty());
    screen.harness.type("c");
    CHECK(screen.only<GiveAnswer>().answer == "cannot_tell");
}

TEST_CASE("Several numbers are typed beside the steps, beginning with the first that is open") {
    Screen screen(worksheet_page());
    screen.harness.type("5.5");
    CHECK(screen.harness.focused() == "number.turns_counted_starboard");
    screen.harness.press(Key::tab);
    CHECK(screen.only<GiveNumber>().id == "turns_counted_starboard");
    CHECK(screen.harness.focused() == "number.helm_displacement");
}

TEST_CASE("At intake a digit marks a complaint, and the job goes on once there is one") {
    Screen screen(intake_page());
    screen.view.showing = Showing::intake;
    screen.harness.type("2");
    CHECK(screen.only<SwitchComplaint>().complaint == "wander");
    CHECK_FALSE(screen.harness.get("dock.begin").enabled);
    screen.page.card.kind = StepCard::Kind::question;
    screen.harness.frames(2);
    screen.harness.press(Key::enter);
    CHECK(screen.only<Show>().showing == Showing::step);
}

TEST_CASE("A remedy is answered by its outcome") {
    Screen screen(remedy_page());
    screen.harness.type("3");
    const Try tried = screen.only<Try>();
    CHECK(tried.remedy == "bleed_lock_to_lock");
    CHECK(tried.outcome == "not_cured");
}

TEST_CASE("Cautions are read before the first step") {
    Screen screen(remedy_page());
    float caution = -1, step = -1;
    for (const Mark& mark : screen.harness.marks()) {
        if (mark.text == "Oil under pressure") caution = mark.box.y;
        if (mark.text.find("Fill the reservoir") == 0) step = mark.box.y;
    }
    REQUIRE(caution >= 0);
    CHECK(caution < step);
}

TEST_CASE("A stop is the first thing under the header, in full") {
    Screen screen(stopped_page());
    const std::string stop = screen.page.stops.front();
    bool seen = false;
    for (const Mark& mark : screen.harness.marks()) {
        if (mark.text != stop) continue;
        seen = true;
        CHECK_FALSE(mark.cut);
        CHECK(mark.visible.h == Approx(mark.box.h).margin(1));
        CHECK(mark.box.y < 200);
    }
    CHECK(seen);
}

TEST_CASE("A boat is handed back only after saying what it was and how sure that is") {
    Screen screen(after_page());
    screen.harness.press(Key::enter);
    CHECK(screen.only<Show>().showing == Showing::hand_back);
    screen.view.showing = Showing::hand_back;
    screen.harness.frames(3);
    CHECK_FALSE(screen.harness.get("dock.hand_back_now").enabled);
    screen.harness.press(Key::enter);
    CHECK(screen.actions.empty());
    screen.harness.click("hand_back.air_in_oil");
    CHECK_FALSE(screen.harness.get("dock.hand_back_now").enabled);
    screen.harness.click("hand_back.proved.air_in_oil");
    CHECK(screen.harness.get("dock.hand_back_now").enabled);
    screen.harness.click("dock.hand_back_now");
    screen.only<HandBack>();
}

TEST_CASE(
    "What was proved and put right is ticked and not asked for again, and another fault can be ticked") {
    JobPage page = after_page();
    page.put_right = {page.causes[0]};
    page.put_right[0].proved = true;
    Screen screen(page);
    screen.view.showing = Showing::hand_back;
    screen.harness.frames(3);
    const std::string proved = page.causes[0].id, other = page.causes[1].id;
    CHECK_FALSE(screen.harness.has("hand_back.proved." + proved));
    CHECK(screen.harness.get("dock.hand_back_now").enabled);
    screen.harness.click("hand_back." + other);
    CHECK_FALSE(screen.harness.get("dock.hand_back_now").enabled);
    CHECK_FALSE(screen.harness.has("hand_back.proved." + proved));
    screen.harness.click("hand_back.assumed." + other);
    CHECK(screen.harness.get("dock.hand_back_now").enabled);
    CHECK(causes_told(screen.view, screen.page) ==
          std::vector<RecordedCause>{{proved, false}, {other, false}});
    screen.harness.click("hand_back." + proved);
    CHECK(causes_ticked(screen.view, screen.page) == std::vector<std::string>{other});
    screen.harness.click("hand_back." + other);
    CHECK_FALSE(screen.harness.get("dock.hand_back_now").enabled);
}

TEST_CASE("Any finding can be looked up by a word and answered") {
    Screen screen(question_page());
    screen.harness.type("/");
    CHECK(screen.only<Show>().showing == Showing::look_up);
    screen.view.showing = Showing::look_up;
    screen.harness.type("oil look");  // the field is open already
    CHECK(screen.harness.has("find.reservoir_oil"));
    CHECK_FALSE(screen.harness.has("find.wheel_feel"));
    screen.harness.click("find.reservoir_oil");
    CHECK(screen.only<Show>().finding == "reservoir_oil");
}

TEST_CASE("An answer is reached again from what is known, worked out ones are not") {
    Screen screen(question_page());
    screen.harness.click("known.wander_at_speed");
    CHECK(screen.only<Show>().finding == "wander_at_speed");
    CHECK_FALSE(screen.harness.has("known.turns_excess"));
}

TEST_CASE("Tab visits every control once") {
    for (const NamedPage& named : all_sample_pages()) {
        INFO(named.name);
        Screen screen(named.page);
        std::set<std::string> wanted;
        for (const Mark& mark : screen.harness.marks()) {
            if (mark.control && mark.enabled) wanted.insert(mark.id);
        }
        std::set<std::string> visited;
        for (std::size_t i = 0; i < wanted.size(); ++i) {
            screen.harness.press(Key::tab);
            INFO("twice: " << screen.harness.focused());
            CHECK(visited.insert(screen.harness.focused()).second);
        }
        CHECK(visited == wanted);
    }
}

TEST_CASE("The control that has the focus is brought into sight") {
    Screen screen(intake_page(), 1024, 640);
    for (int i = 0; i < 60; ++i) {
        screen.harness.press(Key::tab);
        const Mark& mark = screen.harness.get(screen.harness.focused());
        INFO(mark.id);
        CHECK(mark.visible.h > std::min(mark.box.h, 40.0F));
    }
}
