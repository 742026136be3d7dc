// A boat projected to a class: hands counted by keys alone and by hand, what shows when, and how it looks.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/screens/project/project.hpp"
#include "fit.hpp"
#include "project_samples.hpp"
#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;
using Scene = ProjectPage::Scene;

namespace {

const ProjectPage& page_of(const Shop& shop) {
    return shop.state->project.page();
}

void go_to_class(Shop& shop) {
    shop.harness->queue({Key::place, U'7', false, true});
    shop.harness->frames(8);
    REQUIRE(shop.state->place == hardover::window::Place::classroom);
}

void begin(Shop& shop) {
    go_to_class(shop);
    carry_out(*shop.state, ProjectAction(BeginClassBoat{2, "7"}));
    shop.harness->frames(8);
    REQUIRE(page_of(shop).scene == Scene::vote);
}

}  // namespace

TEST_CASE("A boat is begun, voted on and gone on with by digits, Tab and Enter alone") {
    Shop shop;
    go_to_class(shop);
    shop.harness->type("2");
    REQUIRE(page_of(shop).scene == Scene::vote);
    CHECK_FALSE(shop.harness->has("place.bench"));  // it has the whole window
    const std::string first = page_of(shop).ballot.choices.front().name;
    shop.harness->type("11");
    shop.harness->press(Key::tab);
    shop.harness->type("5");
    shop.harness->press(Key::tab);
    shop.harness->type("0");
    CHECK(shop.state->project_view.hands[0] == "11");
    CHECK(shop.state->project_view.hands[1] == "5");
    CHECK(shop.harness->shows("16 hands. Most for A."));
    shop.harness->press(Key::enter);
    for (int presses = 0; presses < 3 && page_of(shop).scene != Scene::outcome; ++presses)
        shop.harness->press(Key::enter);
    REQUIRE(page_of(shop).scene == Scene::outcome);
    CHECK(shop.harness->shows(first));
    CHECK(shop.harness->shows("min so far"));
    shop.harness->press(Key::enter);
    CHECK(page_of(shop).scene == Scene::vote);
    CHECK(shop.state->project_view.hands[0].empty());
}

TEST_CASE("Hands are counted by hand, and the instructor takes what fewer wanted") {
    Shop shop;
    begin(shop);
    shop.harness->click("choice.B");
    shop.harness->click("hands.more");
    shop.harness->click("hands.more");
    shop.harness->click("hands.less");
    CHECK(shop.state->project_view.hands[1] == "1");
    shop.harness->click("hands.A");
    shop.harness->type("9");
    CHECK(shop.harness->shows("10 hands. Most for A."));
    CHECK(shop.harness->get("go").text == "Take A");
    shop.harness->click("go.other");
    CHECK(page_of(shop).scene != Scene::vote);
    carry_out(*shop.state, ProjectAction(DoAgreed{}));
    CHECK(page_of(shop).scene == Scene::outcome);
}

TEST_CASE("A tie, no hands and what is no count leave the decision open, and say why") {
    Shop shop;
    begin(shop);
    CHECK_FALSE(shop.harness->get("go").enabled);
    CHECK(shop.harness->shows("No hands yet"));
    shop.harness->type("4");
    shop.harness->press(Key::tab);
    shop.harness->type("4");
    CHECK(shop.harness->shows("A and B are level: choose one."));
    shop.harness->press(Key::enter);
    CHECK(page_of(shop).scene == Scene::vote);
    shop.harness->click("hands.B");
    shop.harness->type("x");
    CHECK(shop.harness->shows("A count of hands is a whole number"));
    CHECK_FALSE(shop.harness->get("go").enabled);
}

TEST_CASE("A vote is left out by a letter and Enter") {
    Shop shop;
    begin(shop);
    shop.harness->type("b");
    CHECK(shop.harness->get("go").text == "Take B");
    shop.harness->press(Key::enter);
    CHECK(page_of(shop).scene != Scene::vote);
}

TEST_CASE("What is wrong is asked without the ranking beside it, and the vote takes no time") {
    Shop shop(1280, 800);
    begin(shop);
    CHECK(shop.harness->shows("What it may be"));
    shop.harness->type("w");
    CHECK(shop.harness->shows("What is wrong?"));
    CHECK_FALSE(shop.harness->shows("What it may be"));
    shop.harness->type("7");
    shop.harness->press(Key::enter);
    CHECK(shop.harness->shows("What do we do next?"));
    CHECK(shop.harness->shows("Not begun yet"));
}

TEST_CASE("What somebody in the class thought of becomes a choice") {
    Shop shop;
    begin(shop);
    const std::size_t before = page_of(shop).ballot.choices.size();
    shop.harness->type("i");
    shop.harness->type("call for");
    shop.harness->click("idea.call");
    REQUIRE(page_of(shop).ballot.choices.size() == before + 1);
    CHECK(page_of(shop).ballot.choices.back().name == "Call for help");
    CHECK(shop.state->project_view.hands.size() == before + 1);
}

TEST_CASE("The fault stays hidden beside the vote until it is shown, and then for good") {
    Shop shop;
    begin(shop);
    shop.harness->type("v");
    CHECK(shop.harness->shows("The fault is hidden"));
    CHECK(shop.state->project.faulty_boat() == nullptr);
    shop.harness->click("steer.starboard");
    CHECK(shop.state->project.sound_boat().page().setting.steer > 0);
    shop.harness->click("fault.show");
    REQUIRE(shop.state->project.faulty_boat() != nullptr);
    CHECK(shop.harness->shows("With the fault"));
    shop.harness->click("steer.port");
    CHECK(shop.state->project.faulty_boat()->page().setting.steer ==
          Approx(shop.state->project.sound_boat().page().setting.steer));
    shop.harness->press(Key::escape);
    CHECK(shop.harness->shows("What do we do next?"));
    shop.start_again();
    go_to_class(shop);
    shop.harness->type("g");
    CHECK_FALSE(page_of(shop).boat.faults.empty());
}

TEST_CASE("A projected boat goes on after the program was ended in the middle") {
    Shop shop;
    begin(shop);
    shop.harness->type("b");
    shop.harness->press(Key::enter);
    carry_out(*shop.state, ProjectAction(DoAgreed{}));
    const std::string clock = page_of(shop).boat.clock;
    REQUIRE(clock != "Not begun yet");
    shop.start_again();
    go_to_class(shop);
    CHECK(shop.harness->shows("Class boat 7, level 2"));
    shop.harness->type("g");
    CHECK(page_of(shop).boat.clock == clock);
}

TEST_CASE("The ranking moves for a moment, and not at all where nothing is to move by itself") {
    Shop shop;
    begin(shop);
    const auto step = [&] {
        carry_out(*shop.state, ProjectAction(SettleVote{{}, 0}));
        carry_out(*shop.state, ProjectAction(DoAgreed{}));
        shop.harness->frames(3);
    };
    step();
    CHECK(shop.state->project_view.moved > 0);
    CHECK(shop.state->project_view.moved < 1);
    shop.harness->frames(80);
    CHECK(shop.state->project_view.moved == 1);
    carry_out(*shop.state, ProjectAction(NextQuestion{}));
    carry_out(*shop.state, SettingsAction(KeepStill{true}));
    step();
    CHECK(shop.state->project_view.moved == 1);
}

TEST_CASE("A projected page is large whatever the pixels, and goes larger and smaller by itself") {
    Shop shop;
    const float usual = text_scale(*shop.state, 1, {1280, 800});
    CHECK(usual == 1);
    begin(shop);
    CHECK(text_scale(*shop.state, 1, {1280, 800}) == 2);
    CHECK(text_scale(*shop.state, 1, {3840, 2160}) == Approx(3.6).margin(0.01));
    carry_out(*shop.state, ChangeTextSize{-50});
    CHECK(shop.state->preferences.text_percent == 100);
    CHECK(text_scale(*shop.state, 1, {1280, 800}) == 1.5F);
    carry_out(*shop.state, ProjectAction(LeaveProjector{}));
    CHECK(text_scale(*shop.state, 1, {1280, 800}) == 1);
}

TEST_CASE("Nothing is cut, covered or too small on a projected page, in any state and size") {
    each_project_state([](const ProjectSample& sample) {
        ProjectView view = sample.view;
        sweep("project " + sample.name, [&](Kit& kit) { draw_project(kit, *sample.desk, view, true); });
    });
}

TEST_CASE("A projected page can be drawn in every state and theme", "[pictures]") {
    const Album album;
    each_project_state([&](const ProjectSample& sample) {
        ProjectView view = sample.view;
        album.take("project-" + sample.name, [&](Kit& kit) { draw_project(kit, *sample.desk, view, true); });
    });
}
