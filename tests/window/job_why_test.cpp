// Why this question, what would turn it, for and against, and the time line, on a real job.
#include <catch2/catch.hpp>

#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

// A job at its first question that has words for answers.
void ask(Shop& shop) {
    shop.start_job("Grey Heron", "she wanders");
    carry_out(*shop.state, SwitchComplaint{"wander"});
    carry_out(*shop.state, Show{Showing::step, ""});
    for (int i = 0; i < 10 && shop.state->outlook.answers.empty(); ++i) shop.harness->type("c");
    REQUIRE_FALSE(shop.state->outlook.answers.empty());
    shop.harness->frames(4);
}

}  // namespace

TEST_CASE("W shows and hides what each answer would do to the causes, with its chance") {
    Shop shop;
    ask(shop);
    const std::string chance = "chance " + shop.state->outlook.answers.front().chance_text;
    const bool at_first = shop.harness->shows(chance);
    shop.harness->type("w");
    CHECK(shop.harness->shows(chance) != at_first);
    shop.harness->type("w");
    CHECK(shop.harness->shows(chance) == at_first);
}

TEST_CASE("X works out what would turn the first cause, and an answer makes it be worked out anew") {
    Shop shop;
    ask(shop);
    CHECK_FALSE(shop.state->turning.has_value());
    shop.harness->type("x");
    REQUIRE(shop.state->turning.has_value());
    CHECK(shop.state->turning->first == shop.state->page.causes.front().name);
    CHECK(shop.harness->shows("FIRST NOW"));
    carry_out(*shop.state, SetHistory{"just_fitted"});
    CHECK_FALSE(shop.state->turning.has_value());
    shop.harness->frames(3);
    REQUIRE(shop.state->turning.has_value());
    CHECK(shop.state->turning->probability_text == shop.state->page.causes.front().percent);
}

TEST_CASE("E unfolds what speaks for and against every cause, and folds all but the first again") {
    Shop shop;
    ask(shop);
    const auto open = [&](std::size_t cause) {
        return shop.harness->get("cause." + shop.state->page.causes[cause].id).selected;
    };
    CHECK(open(0));
    CHECK_FALSE(open(1));
    shop.harness->type("e");
    CHECK(open(0));
    CHECK(open(1));
    shop.harness->type("e");
    CHECK(open(0));
    CHECK_FALSE(open(1));
}

TEST_CASE("From the time line one goes back to any point, and forward again, by hand and by key") {
    Shop shop;
    ask(shop);
    const auto before = shop.state->job->facts;
    const int here = shop.state->job->events.back().sequence;
    carry_out(*shop.state, SetHistory{"just_fitted"});
    const auto after = shop.state->job->facts;
    shop.harness->type("l");
    CHECK(shop.harness->shows("What happened to this job"));
    shop.harness->click("time." + std::to_string(here));
    CHECK(shop.state->job->facts == before);
    CHECK(shop.harness->shows("taken back"));
    const std::string forward = "time." + std::to_string(here + 1);
    CHECK(shop.harness->get(forward).text == "Forward to here");
    for (int i = 0; i < 60 && shop.harness->focused() != forward; ++i) shop.harness->press(Key::tab);
    shop.harness->press(Key::enter);
    CHECK(shop.state->job->facts == after);
    CHECK(shop.state->job->events.size() == static_cast<std::size_t>(here) + 3);
    shop.harness->press(Key::escape);
    CHECK(shop.state->view.showing == Showing::step);
}

TEST_CASE("The pointer resting on a cause shows what speaks for and against it without unfolding it") {
    Shop shop;
    ask(shop);
    const CauseLine& second = shop.state->page.causes[1];
    REQUIRE_FALSE(second.weights_for.empty());
    const std::string told = second.weights_for.front().text;
    const auto times_shown = [&] {
        int times = 0;
        for (const Mark& mark : shop.harness->marks()) times += mark.text == told ? 1 : 0;
        return times;
    };
    const int before = times_shown();
    shop.harness->point_at("cause." + second.id);
    CHECK(times_shown() == before + 1);
}

TEST_CASE(
    "The figures of the rig that decide most stand first, the others are folded with how many are told") {
    Shop shop;
    shop.start_job("Grey Heron", "she wanders");
    std::size_t matter = 0;
    for (const RigLine& line : shop.state->page.rig) matter += line.matters ? 1 : 0;
    CHECK(matter > 0);
    CHECK(matter < shop.state->page.rig.size());
    CHECK(shop.harness->shows("WHAT DECIDES MOST HERE"));
    CHECK(shop.harness->shows("How else it is built and used (0 of "));
    const Mark& fold = shop.harness->get("fold.rig_built");
    CHECK_FALSE(fold.selected);
}

TEST_CASE("What speaks for a cause leads to its entry in the knowledge, by hand and by key, and back") {
    Shop shop;
    ask(shop);
    const CauseLine& first = shop.state->page.causes.front();
    REQUIRE_FALSE(first.weights_for.empty());
    const std::string id = "weight." + first.id + ".for.0";
    const WeightText weight = first.weights_for.front();
    SECTION("by hand") {
        shop.harness->click(id);
    }
    SECTION("by key") {
        for (int i = 0; i < 80 && shop.harness->focused() != id; ++i) shop.harness->press(Key::tab);
        REQUIRE(shop.harness->focused() == id);
        shop.harness->press(Key::enter);
    }
    REQUIRE(shop.state->place == hardover::window::Place::knowledge);
    REQUIRE_FALSE(shop.state->known.page.rows.empty());
    CHECK(shop.state->known.page.key.id == weight.id);
    CHECK(weight.text.rfind(shop.state->known.page.name, 0) == 0);
    shop.harness->press(Key::escape);
    CHECK(shop.state->place == hardover::window::Place::job);
}
