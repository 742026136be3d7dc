// Long work beside the window: what would turn a cause, the questions of a quiz, the marks of a practice
// boat. Nothing old is shown as new, nothing is lost when it is stopped or the window is closed.
#include <catch2/catch.hpp>

#include <memory>

#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

// The shop with long work beside its window. The work ends before the shop does.
struct BusyShop : Shop {
    explicit BusyShop(float width = 1280, float height = 800) : Shop(width, height) {
        use_background(*state, background);
    }
    void finish() {
        background.wait();
        CHECK(take_in_background(*state));
        harness->frames(4);
    }
    StudyDesk& desk() { return state->study; }
    void study(const StudyAction& action) {
        carry_out(*state, action);
        harness->frames(4);
    }
    Background background;
};

void ask_what_would_turn_it(BusyShop& shop) {
    shop.start_job("Grey Heron", "she wanders");
    carry_out(*shop.state, SwitchComplaint{"wander"});
    carry_out(*shop.state, Show{Showing::step, ""});
    shop.harness->frames(4);
    shop.harness->type("x");
    shop.harness->frames(4);
}

void give_up_a_boat(BusyShop& shop) {
    carry_out(*shop.state, GoTo{hardover::window::Place::study});
    shop.study(AddLearner{"Ann"});
    shop.study(BeginBoat{1, "3"});
    shop.study(TakeUpWork{practice::GaveUp{}});
}

}  // namespace

TEST_CASE("What would turn it is said to be worked out until it is there") {
    BusyShop shop;
    ask_what_would_turn_it(shop);
    CHECK_FALSE(shop.state->turning.has_value());
    CHECK(shop.harness->shows("Working it out"));
    shop.finish();
    REQUIRE(shop.state->turning.has_value());
    CHECK(shop.state->turning->probability_text == shop.state->page.causes.front().percent);
    CHECK(shop.harness->shows("FIRST NOW"));
    CHECK_FALSE(shop.harness->shows("Working it out"));
    CHECK_FALSE(shop.background.working_on(turning_work));
}

TEST_CASE("An answer makes what would turn it unknown again, also while the old one is being worked out") {
    BusyShop shop;
    ask_what_would_turn_it(shop);
    shop.background.wait();  // done, but not taken in yet
    carry_out(*shop.state, SetHistory{"just_fitted"});
    CHECK_FALSE(take_in_background(*shop.state));
    CHECK_FALSE(shop.state->turning.has_value());
    shop.harness->frames(4);
    CHECK(shop.harness->shows("Working it out"));
    shop.finish();
    CHECK(shop.state->turning->probability_text == shop.state->page.causes.front().percent);
}

TEST_CASE("Another job never shows what would turn the one before") {
    BusyShop shop;
    ask_what_would_turn_it(shop);
    shop.finish();
    const JobNumber first = shop.state->job->number;
    carry_out(*shop.state, StartJob{"Blue Tern", "stiff"});
    CHECK_FALSE(shop.state->turning.has_value());
    carry_out(*shop.state, OpenJob{first});
    CHECK_FALSE(shop.state->turning.has_value());
}

TEST_CASE("A quiz says that its questions are being made, and then asks them") {
    BusyShop shop;
    carry_out(*shop.state, GoTo{hardover::window::Place::study});
    shop.study(StartQuiz{"proof"});
    REQUIRE(shop.desk().page().working.has_value());
    CHECK(shop.harness->shows("Making the questions"));
    CHECK_FALSE(shop.desk().page().quiz.has_value());
    shop.finish();
    CHECK_FALSE(shop.desk().page().working.has_value());
    REQUIRE(shop.desk().page().quiz.has_value());
    CHECK(shop.harness->shows(shop.desk().page().quiz->question));
}

TEST_CASE("A quiz that is stopped while its questions are made leads back to the start") {
    BusyShop shop;
    carry_out(*shop.state, GoTo{hardover::window::Place::study});
    shop.study(StartQuiz{""});
    SECTION("by hand") {
        shop.harness->click("working.stop");
    }
    SECTION("by key") {
        shop.harness->press(Key::escape);
    }
    CHECK_FALSE(shop.desk().page().working.has_value());
    CHECK(shop.desk().page().showing == StudyShowing::start);
    shop.background.wait();
    CHECK_FALSE(take_in_background(*shop.state));
    CHECK_FALSE(shop.desk().page().quiz.has_value());
}

TEST_CASE("A boat that was handed over is marked beside the window, with how far that has come") {
    BusyShop shop;
    give_up_a_boat(shop);
    REQUIRE(shop.desk().page().working.has_value());
    CHECK(shop.harness->shows("Marking the boat"));
    shop.background.wait();
    shop.desk().note_progress();
    CHECK(shop.desk().page().working->progress.find(" of 3") != std::string::npos);
    shop.finish();
    REQUIRE(shop.desk().page().debrief.has_value());
    CHECK(shop.harness->shows("What was wrong: "));
}

TEST_CASE("Marking that is stopped can be had again, and comes to the same as without stopping") {
    BusyShop shop;
    give_up_a_boat(shop);
    shop.harness->click("working.stop");
    CHECK_FALSE(shop.desk().page().working.has_value());
    CHECK(shop.harness->shows("not marked yet"));
    shop.harness->press(Key::enter);
    shop.finish();
    REQUIRE(shop.desk().page().debrief.has_value());
    shop.harness.reset();  // the drawing library knows one context at a time
    Shop at_once;
    carry_out(*at_once.state, StudyAction(BeginBoat{1, "3"}));
    carry_out(*at_once.state, StudyAction(TakeUpWork{practice::GaveUp{}}));
    CHECK(at_once.state->study.page().debrief->minutes == shop.desk().page().debrief->minutes);
}

TEST_CASE(
    "A window closed while a boat is marked loses nothing: the boat is marked when one goes on with it") {
    auto shop = std::make_unique<BusyShop>();
    give_up_a_boat(*shop);
    shop->background.drop_all();
    shop->state->background = nullptr;
    shop->start_again();
    StudyDesk& desk = shop->state->study;
    desk.carry_out(ChooseLearner{1});
    CHECK_FALSE(desk.page().start.unfinished.empty());
    desk.carry_out(GoOnWithBoat{});
    CHECK(desk.page().debrief.has_value());
    desk.carry_out(ShowStudy{StudyShowing::start});
    CHECK(desk.page().start.unfinished.empty());
}

TEST_CASE("Review times are fitted on wish, too few answers are said to be too few") {
    Shop shop;
    StudyDesk& desk = shop.state->study;
    desk.carry_out(AddLearner{"Ann"});
    desk.carry_out(ShowStudy{StudyShowing::progress});
    REQUIRE(desk.page().progress.has_value());
    CHECK_FALSE(desk.page().progress->fitted);
    desk.carry_out(FitMemory{});
    CHECK(desk.page().notice.find("takes 200 reviews") != std::string::npos);
    CHECK_FALSE(desk.page().progress->fitted);
    CHECK(shop.store->study_events(1).value().empty());
}
