// What a learner can do at the place Study, by key and by hand, and what is on record after it.
#include <catch2/catch.hpp>

#include <algorithm>

#include "app/study/item_text.hpp"
#include "app/window/screens/study/study_parts.hpp"
#include "shop.hpp"
#include "study_samples.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

const StudyPage& page_of(const Shop& shop) {
    return shop.state->study.page();
}

void go_to_study(Shop& shop) {
    const auto at =
        std::find_if(places().begin(), places().end(), [](const PlaceRow& row) { return row.id == "study"; });
    const auto digit = static_cast<char32_t>(U'1' + (at - places().begin()));
    shop.harness->queue({Key::place, digit, false, true});
    shop.harness->frames(8);
    REQUIRE(shop.state->place == hardover::window::Place::study);
}

// Its window stands at the place Study.
struct StudyShop : Shop {
    explicit StudyShop(float width = 1280, float height = 800) : Shop(width, height) { go_to_study(*this); }
};

// By keys alone: the place, then the field for a name.
void add_ann(Shop& shop) {
    shop.harness->press(Key::tab);
    shop.harness->type("Ann");
    shop.harness->press(Key::enter);
    REQUIRE(page_of(shop).learner == "Ann");
}

std::size_t events_of(Shop& shop) {
    return shop.store->study_events(shop.store->learners().value().front().number).value().size();
}

// A boat on its own that has nothing to do with a learner.
void begin_boat(Shop& shop, int level, const std::string& seed) {
    carry_out(*shop.state, StudyAction(BeginBoat{level, seed}));
    REQUIRE(page_of(shop).boat.has_value());
    shop.harness->frames(8);
}

float top_of(const Shop& shop, const std::string& text) {
    for (const Mark& mark : shop.harness->marks()) {
        if (mark.text.find(text) != std::string::npos) return mark.box.y;
    }
    FAIL("not on the screen: " << text);
    return 0;
}

}  // namespace

TEST_CASE("A learner is added by name, chosen by a press, and still there after a restart") {
    StudyShop shop;
    CHECK(shop.harness->shows("Nobody is chosen"));
    add_ann(shop);
    CHECK(shop.harness->shows("Nothing is due today."));
    shop.start_again();
    go_to_study(shop);
    CHECK(page_of(shop).learner.empty());
    shop.harness->click("learner.1");
    CHECK(page_of(shop).learner == "Ann");
    shop.harness->click("learner.nobody");
    CHECK(page_of(shop).learner.empty());
}

TEST_CASE("A name that is taken, or none, is refused in words") {
    StudyShop shop;
    shop.harness->click("learner.add");
    CHECK(shop.harness->shows("a learner needs a name"));
    shop.harness->click("learner.name");
    shop.harness->type("Ann");
    shop.harness->click("learner.add");
    CHECK(page_of(shop).learner == "Ann");
    CHECK_FALSE(shop.harness->shows("a learner needs a name"));
    carry_out(*shop.state, StudyAction(AddLearner{"ann"}));
    shop.harness->frames(4);
    CHECK(shop.harness->shows("there is a learner 'Ann' already"));
}

TEST_CASE("A quiz is done by keys alone, and each answer is on disk before what was right shows") {
    StudyShop shop;
    add_ann(shop);
    shop.harness->press(Key::escape);
    shop.harness->type("q");
    REQUIRE(page_of(shop).showing == StudyShowing::quiz);
    std::size_t answered = 0;
    while (page_of(shop).quiz->closing.empty()) {
        const study::QuizPage quiz = *page_of(shop).quiz;
        INFO(quiz.heading << ": " << quiz.question);
        if (quiz.way == study::Way::figure) {
            shop.harness->press(Key::tab);
            shop.harness->type("1 in");
        } else {
            shop.harness->type(quiz.way == study::Way::order ? "1d" : "b");
            shop.harness->type("s");
            CHECK(shop.state->study_view.sure == study::sure_steps().front().sure);
        }
        CHECK_FALSE(page_of(shop).quiz->feedback.has_value());
        shop.harness->press(Key::enter);
        REQUIRE(page_of(shop).quiz->feedback.has_value());
        CHECK(events_of(shop) == ++answered);
        CHECK(shop.harness->shows(page_of(shop).quiz->feedback->verdict));
        shop.harness->press(Key::enter);
    }
    CHECK(answered == 10);
    CHECK(shop.harness->shows("Kept for Ann."));
}

TEST_CASE("Right, partly right and not right each have a mark of their own") {
    study::QuizPage page;
    const auto mark_of = [&](double worth) {
        const study::Marked marked{worth, worth >= 0.8, ""};
        page.feedback = study::feedback_text(study::Item(), marked, std::nullopt, 1);
        page.right = marked.right;
        return verdict_icon(page);
    };
    CHECK(mark_of(1) == Icon::tick);
    CHECK(mark_of(0.9) == Icon::half);
    CHECK(mark_of(0.5) == Icon::half);
    CHECK(mark_of(0) == Icon::cross);
}

TEST_CASE("A quiz is answered by hand, with how sure one is, and can be stopped at any time") {
    StudyShop shop;
    shop.harness->click("quiz.topics");
    shop.harness->click("topic.all");
    carry_out(*shop.state, StudyAction(StartQuiz{"proof"}));
    shop.harness->frames(4);
    CHECK_FALSE(shop.harness->get("quiz.answer").enabled);
    shop.harness->click("option.1");
    shop.harness->click("option.2");
    CHECK(shop.state->study_view.chosen == std::vector<std::size_t>{1});
    shop.harness->click("sure.4");
    shop.harness->click("quiz.answer");
    CHECK(shop.harness->shows("80 in 100 sure"));
    CHECK(shop.harness->shows("Source"));
    shop.harness->click("quiz.next");
    CHECK(shop.harness->shows("2 of 10"));
    shop.harness->click("quiz.cannot_tell");
    CHECK(shop.harness->shows("Not right."));
    shop.harness->press(Key::escape);
    CHECK(page_of(shop).showing == StudyShowing::start);
    shop.harness->click("quiz.go_on");
    CHECK(shop.harness->shows("2 of 10"));
}

TEST_CASE("Steps are put in order by their buttons and by U and D") {
    StudyShop shop;
    carry_out(*shop.state, StudyAction(StartQuiz{"order"}));
    shop.harness->frames(4);
    CHECK_FALSE(shop.harness->get("up.1").enabled);
    shop.harness->click("down.1");
    CHECK(shop.state->study_view.chosen[1] == 0);
    shop.harness->click("up.1");
    CHECK(shop.state->study_view.chosen[0] == 0);
    shop.harness->click("order.1");
    shop.harness->type("1");
    shop.harness->type("2");
    shop.harness->type("u");
    CHECK(shop.state->study_view.chosen[0] == 1);
    shop.harness->type("d");
    CHECK(shop.state->study_view.chosen[1] == 1);
}

TEST_CASE("A place is pointed at on the drawing itself, by its letter or by the arrows") {
    StudyShop shop;
    carry_out(*shop.state, StudyAction(StartQuiz{"place"}));
    shop.harness->frames(4);
    REQUIRE(page_of(shop).quiz->drawing.has_value());
    shop.harness->type("b");
    CHECK(shop.state->study_view.chosen == std::vector<std::size_t>{1});
    shop.harness->click("part.A");
    CHECK(shop.state->study_view.chosen == std::vector<std::size_t>{0});
    shop.state->study_view.chosen.clear();
    const Box sheet = shop.harness->get("drawing").box;
    for (int i = 1; i < 20 && shop.state->study_view.chosen.empty(); ++i) {
        const float x = sheet.x + sheet.w * static_cast<float>(i) / 20;
        shop.harness->drag(x, sheet.middle_y(), x, sheet.middle_y());
    }
    REQUIRE(shop.state->study_view.chosen.size() == 1);
    shop.harness->click("quiz.answer");
    CHECK(page_of(shop).quiz->feedback.has_value());
}

TEST_CASE("A worked boat is done by Enter alone and ends in its debrief") {
    StudyShop shop;
    add_ann(shop);
    shop.harness->press(Key::escape);
    shop.harness->type("b");
    REQUIRE(page_of(shop).boat.has_value());
    for (int steps = 0; steps < 80 && !page_of(shop).debrief; ++steps) shop.harness->press(Key::enter);
    REQUIRE(page_of(shop).debrief.has_value());
    CHECK(page_of(shop).debrief->ended.cured);
    CHECK(page_of(shop).debrief->ended.cautions_skipped == 0);
    CHECK(shop.harness->shows("Three things to practise"));
    shop.harness->press(Key::escape);
    CHECK_FALSE(shop.harness->has("boat.go_on"));
}

TEST_CASE("A wrong remedy brings the boat back, and a caution left out stands first in the debrief") {
    StudyShop shop(1280, 3000);
    begin_boat(shop, 5, "11");
    shop.harness->type("r");
    for (const practice::NamedItem& remedy : page_of(shop).boat->remedies) {
        if (page_of(shop).work) break;
        carry_out(*shop.state, StudyAction(TakeUpWork{practice::Remedied{remedy.id}}));
        if (page_of(shop).work && page_of(shop).work->questions.empty()) {
            carry_out(*shop.state, StudyAction(DropWork{}));
        }
    }
    REQUIRE(page_of(shop).work.has_value());
    shop.harness->frames(4);
    CHECK_FALSE(shop.harness->get("caution.done").enabled);
    shop.harness->click("caution.skip");
    REQUIRE_FALSE(page_of(shop).right);
    CHECK(shop.harness->shows("You went on without these"));
    shop.harness->type("h");
    shop.harness->click("call");
    shop.harness->click("call.now");
    REQUIRE(page_of(shop).debrief.has_value());
    CHECK(top_of(shop, "Cautions left out") < top_of(shop, "HOW IT WENT"));
    CHECK(shop.harness->shows("What was wrong: "));
}

TEST_CASE("Help is taken in three levels, and the debrief counts it") {
    StudyShop shop(1280, 3000);
    begin_boat(shop, 4, "5");
    shop.harness->type("h");
    shop.harness->type("1");
    CHECK_FALSE(page_of(shop).hint.empty());
    shop.harness->click("hint.3");
    carry_out(*shop.state, StudyAction(TakeUpWork{practice::GaveUp{}}));
    CHECK(page_of(shop).debrief->ended.hints[0] == 1);
    CHECK(page_of(shop).debrief->ended.hints[2] == 1);
    shop.harness->frames(4);
    CHECK(shop.harness->shows("Help taken: "));
}

TEST_CASE("A suspicion needs how sure one is, and can be proved from where it is said") {
    StudyShop shop(1280, 3000);
    begin_boat(shop, 4, "5");
    shop.harness->type("w");
    const std::string cause = page_of(shop).boat->causes.front().id;
    shop.harness->click("cause." + cause);
    CHECK_FALSE(shop.harness->get("cause.suspect").enabled);
    shop.harness->type("ss");
    shop.harness->type("1");
    REQUIRE(page_of(shop).boat->statements.size() == 1);
    CHECK(shop.harness->shows("40 in 100"));
}

TEST_CASE("What there is to look at is found by its words, with its minutes") {
    StudyShop shop(1280, 3000);
    begin_boat(shop, 4, "5");
    shop.harness->click("look.filter");
    shop.harness->type("oil");
    const practice::FindingItem* found = nullptr;
    for (const practice::FindingGroup& group : page_of(shop).boat->parts) {
        for (const practice::FindingItem& item : group.items) {
            if (item.name.find("oil") != std::string::npos || item.name.find("Oil") != std::string::npos)
                found = &item;
        }
    }
    REQUIRE(found != nullptr);
    CHECK(shop.harness->shows(found->name));
    CHECK(shop.harness->shows(found->minutes));
    shop.harness->press(Key::escape);
    shop.harness->type("L");
    shop.harness->type("1");
    CHECK((page_of(shop).work.has_value() || page_of(shop).boat->work.size() == 1));
}

TEST_CASE("A boat goes on after the program was ended in the middle, with its minutes") {
    StudyShop shop;
    add_ann(shop);
    shop.harness->press(Key::escape);
    shop.harness->type("b");
    for (int steps = 0; steps < 20 && page_of(shop).boat->work.empty(); ++steps)
        shop.harness->press(Key::enter);
    const std::string clock = page_of(shop).boat->clock;
    REQUIRE(clock != "Not begun yet");
    shop.start_again();
    go_to_study(shop);
    shop.harness->click("learner.1");
    shop.harness->type("g");
    REQUIRE(page_of(shop).boat.has_value());
    CHECK(page_of(shop).boat->clock == clock);
}

TEST_CASE("A quiz between two steps of a boat leaves both on record") {
    StudyShop shop;
    add_ann(shop);
    StudyDesk& desk = shop.state->study;
    desk.carry_out(BeginBoat{1, "3"});
    do_carefully(desk, desk.page().boat->led->event);
    desk.carry_out(StartQuiz{"proof"});
    desk.carry_out(AnswerItem{"a", std::nullopt});
    desk.carry_out(GoOnWithBoat{});
    do_carefully(desk, desk.page().boat->led->event);
    CHECK(desk.page().trouble.empty());
    CHECK(desk.page().boat->work.size() == 2);
    shop.start_again();
    shop.state->study.carry_out(ChooseLearner{1});
    shop.state->study.carry_out(GoOnWithBoat{});
    CHECK(shop.state->study.page().boat->work.size() == 2);
}

TEST_CASE("The finished boat opens with its faults where they can be seen at work") {
    StudyShop shop(1280, 3000);
    begin_boat(shop, 4, "5");
    carry_out(*shop.state, StudyAction(TakeUpWork{practice::GaveUp{}}));
    shop.harness->frames(4);
    shop.harness->type("v");
    CHECK(shop.state->place == hardover::window::Place::boat);
    const auto boat = shop.state->study.finished_boat();
    REQUIRE(boat.has_value());
    REQUIRE(shop.state->boat.faults().size() == boat->faults.size());
    CHECK(shop.state->boat.faults().front().cause == boat->faults.front());
}

TEST_CASE("How one is doing shows what was answered just now") {
    StudyShop shop(1280, 3000);
    CHECK_FALSE(shop.harness->get("progress.show").enabled);
    add_ann(shop);
    shop.state->study.carry_out(StartQuiz{"proof"});
    shop.state->study.carry_out(AnswerItem{"a", 0.95});
    shop.state->study.carry_out(ShowStudy{StudyShowing::start});
    shop.harness->frames(4);
    shop.harness->click("progress.show");
    CHECK(shop.harness->shows("1 answer, "));
    CHECK(shop.harness->shows("Certain: 95 in 100"));
    CHECK(shop.harness->shows("By part of the system"));
}
