// A job from the boat coming in to handing it back, with keys alone, kept in the records.
#include "app/window/app_state.hpp"

#include <catch2/catch.hpp>
#include <set>

#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

// Presses what leads on: the soundest reading, can't tell where a number is wanted, no change after a remedy.
void lead_on(Shop& shop) {
    const StepCard& card = shop.state->page.card;
    if (card.kind == StepCard::Kind::remedy) {
        shop.harness->type("3");
    } else if (!card.questions.empty() && card.questions.front().fields.empty()) {
        shop.harness->type(std::to_string(card.questions.front().choices.size()));
    } else {
        shop.harness->type("c");
    }
}

bool at_end(const Shop& shop) {
    const StepCard::Kind kind = shop.state->page.card.kind;
    return kind == StepCard::Kind::call_for_help || kind == StepCard::Kind::after ||
           kind == StepCard::Kind::handed_back;
}

void begin(Shop& shop) {
    shop.start_job("Grey Heron", "tight to port");
    shop.harness->click("complaint." + shop.state->page.complaints.front().id);
    shop.harness->click("dock.begin");
    REQUIRE(shop.state->view.showing == Showing::step);
}

}  // namespace

TEST_CASE("A job is led from intake to the end by keys alone, and every entry is kept") {
    Shop shop;
    begin(shop);
    int steps = 0;
    while (!at_end(shop) && steps < 150) {
        const std::size_t before = shop.state->job->events.size();
        const std::string heading = shop.state->page.card.heading;
        lead_on(shop);
        INFO(heading << " | " << shop.state->view.trouble);
        REQUIRE(shop.state->job->events.size() == before + 1);
        ++steps;
    }
    CHECK(at_end(shop));
    const std::size_t events = shop.state->job->events.size();
    shop.start_again();
    REQUIRE(shop.state->bench.in_hand.size() == 1);
    shop.harness->type("1");
    REQUIRE(shop.state->job.has_value());
    CHECK(shop.state->job->events.size() == events);
    CHECK(shop.state->job->boat == "Grey Heron");
}

TEST_CASE("A cured boat is handed back with its cause and stands under handed back") {
    Shop shop;
    begin(shop);
    for (int i = 0; i < 150 && shop.state->page.card.kind != StepCard::Kind::remedy; ++i) {
        REQUIRE_FALSE(at_end(shop));
        const std::vector<QuestionText>& questions = shop.state->page.card.questions;
        const bool kinked = !questions.empty() && questions.front().finding == "hose_at_lock";
        if (kinked) {
            shop.harness->type("1");
        } else {
            lead_on(shop);
        }
    }
    REQUIRE(shop.state->page.card.kind == StepCard::Kind::remedy);
    shop.harness->type("1");
    REQUIRE(shop.state->page.card.kind == StepCard::Kind::after);
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->view.showing == Showing::hand_back);
    const std::string cause = shop.state->page.causes.front().id;
    shop.state->view.hand_back_causes = {{cause, "not_listed"}};
    shop.state->view.hand_back_seen = {{cause, true}, {"not_listed", false}};
    shop.harness->frames(3);
    shop.harness->press(Key::enter);
    CHECK(shop.state->page.phase == "Handed back");
    REQUIRE(shop.state->job->handed_back.has_value());
    CHECK(causes_of(*shop.state->job->handed_back) ==
          std::vector<RecordedCause>{{cause, true}, {"not_listed", false}});
    shop.harness->press(Key::escape);
    CHECK(shop.state->bench.in_hand.empty());
    CHECK(shop.state->bench.handed_back.size() == 1);
}

TEST_CASE("Two faults that were proved and put right are handed back with two presses of the enter key") {
    Shop shop;
    shop.start_job("Tern", "it clunks");
    const auto tell = [&shop](const Event& event) {
        REQUIRE_OK(
            record(*shop.store, shop.state->prepared, *shop.state->job, event, "2026-11-25T15:03:13Z"));
    };
    tell(ComplaintsSet{{"loose_or_clunking"}});
    tell(Answered{"rod_end_play", "loose"});
    tell(Answered{"bracket_bolts", "loose"});
    tell(Tried{"torque_bracket", "better"});
    tell(Tried{"renew_rod_ends", "cured"});
    shop.start_again();
    shop.harness->type("1");
    REQUIRE(shop.state->page.card.kind == StepCard::Kind::after);
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->view.showing == Showing::hand_back);
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->job->handed_back.has_value());
    const HandedBack& back = *shop.state->job->handed_back;
    CHECK(back.confirmed);
    REQUIRE(back.further.size() == 1);
    CHECK(back.further.front().confirmed);
    std::set<std::string> causes{back.cause, back.further.front().cause};
    CHECK(causes == std::set<std::string>{"bracket_loose", "rod_ends_worn"});
}

TEST_CASE("The question stays in sight when the window narrows step by step, or the text grows") {
    Shop shop;
    begin(shop);
    const std::string asked = shop.state->page.card.heading;
    for (const float w : {1280.0F, 1000.0F, 900.0F, 800.0F, 700.0F, 640.0F}) {
        shop.harness->resize(w, 800);
        INFO(w << " wide, " << asked);
        CHECK(shop.harness->shows(asked));
    }
    CHECK(shop.harness->has("tab.now"));  // the narrowest form was reached
}

TEST_CASE("Backspace takes back the last answer, and the step is as it was") {
    Shop shop;
    begin(shop);
    const std::string heading = shop.state->page.card.heading;
    const std::size_t answers = shop.state->job->facts.answers.size();
    lead_on(shop);
    CHECK(shop.state->job->facts.answers.size() > answers);
    shop.harness->press(Key::backspace);
    CHECK(shop.state->job->facts.answers.size() == answers);
    CHECK(shop.state->page.card.heading == heading);
}

TEST_CASE("A figure of the rig that cannot be read stays as typed, with what would be right") {
    Shop shop;
    shop.start_job("Grey Heron", "");
    std::string field;
    for (const RigLine& line : shop.state->page.rig) {
        if (field.empty() && line.choices.empty() && line.field.unit == "in") field = line.field.id;
    }
    REQUIRE_FALSE(field.empty());
    shop.state->view.open = {"rig_sizes"};
    carry_out(*shop.state, GiveNumber{field, "three bananas", true});
    shop.harness->frames(3);
    const Draft& draft = shop.state->view.drafts.of(field, "");
    CHECK(draft.text == "three bananas");
    CHECK_FALSE(draft.error.empty());
    CHECK(shop.harness->shows(draft.error));
    CHECK(shop.state->job->facts.rig.empty());
    carry_out(*shop.state, GiveNumber{field, "4 in", true});
    shop.harness->frames(3);
    CHECK(shop.state->job->facts.rig.size() == 1);
}

TEST_CASE("A boat without a name is not taken in: its field opens, and Enter leads on from there") {
    Shop shop;
    shop.harness->type("n");
    CHECK_FALSE(shop.state->job.has_value());
    CHECK(shop.harness->shows("A name or a number is needed"));
    CHECK(shop.harness->focused() == "new.boat");
    shop.harness->type("Tern");
    shop.harness->press(Key::enter);
    CHECK_FALSE(shop.state->job.has_value());
    CHECK(shop.harness->focused() == "new.words");
    shop.harness->type("stiff");
    shop.harness->press(Key::enter);
    REQUIRE(shop.state->job.has_value());
    CHECK(shop.state->job->words == "stiff");
}

TEST_CASE("A boat whose name is refused is told where it was asked for") {
    Shop shop;
    carry_out(*shop.state, StartJob{"", "stiff"});
    shop.harness->frames(3);
    CHECK_FALSE(shop.state->job.has_value());
    CHECK(shop.harness->shows("the boat has no name"));
}

TEST_CASE("A check stays in hand while findings on the way are answered") {
    Shop shop;
    begin(shop);
    for (int i = 0; i < 150 && shop.state->page.card.questions.size() < 2; ++i) {
        if (at_end(shop)) return;  // this knowledge has no check with two findings on this way
        lead_on(shop);
    }
    const StepCard card = shop.state->page.card;
    const QuestionText& other = card.questions.back();
    if (other.choices.empty()) return;
    carry_out(*shop.state, GiveAnswer{other.finding, other.choices.back().id});
    const StepCard& now = shop.state->looked_at ? *shop.state->looked_at : shop.state->page.card;
    REQUIRE_FALSE(now.questions.empty());
    CHECK(now.questions.front().finding == card.questions.front().finding);
}

TEST_CASE("Theme and text size are kept in their file, and a broken file is said so") {
    ScratchFolder folder;
    const std::string path = folder.file("deep/window.json");
    REQUIRE_OK(read_preferences(path));
    REQUIRE_OK(write_preferences(path, {Look::dark, 175}));
    const auto again = read_preferences(path);
    REQUIRE_OK(again);
    CHECK(again.value() == Preferences{Look::dark, 175});
    std::ofstream(path) << "[1, 2";
    CHECK_FALSE(read_preferences(path).ok());
}

TEST_CASE("Text size stays between 100 and 250 percent") {
    Shop shop;
    for (int i = 0; i < 12; ++i) shop.harness->press(Key::larger);
    CHECK(shop.state->preferences.text_percent == 250);
    for (int i = 0; i < 12; ++i) shop.harness->press(Key::smaller);
    CHECK(shop.state->preferences.text_percent == 100);
    shop.harness->press(Key::f6);
    CHECK(shop.state->preferences.look == Look::dark);
}
