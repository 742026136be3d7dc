// After work that helped: the job screen asks again what the work may have taken away, and marks no answer as
// given yet.
#include <catch2/catch.hpp>

#include <algorithm>

#include "album.hpp"
#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

// A ring that slips on its shaft was put right; the swivel bearing had play before.
void put_the_ring_right(Shop& shop) {
    carry_out(*shop.state, SwitchComplaint{"loose_or_clunking"});
    carry_out(*shop.state, SetHistory{"in_service"});
    carry_out(*shop.state, GiveAnswer{"gimbal_play", "loose"});
    carry_out(*shop.state, GiveAnswer{"ring_slips", "slips"});
    carry_out(*shop.state, Try{"reclamp_ring", "better"});
}

}  // namespace

TEST_CASE("After work that helped the complaint is asked again, with the answer of before beside it",
          "[pictures]") {
    Shop shop;
    shop.start_job("Grey Heron", "clunks when I reverse the wheel");
    put_the_ring_right(shop);
    const StepCard& card = shop.state->page.card;
    CHECK(card.kind == StepCard::Kind::question);
    CHECK(card.id == "knock");
    CHECK(card.why.find("Looked at again: the work has helped") != std::string::npos);

    carry_out(*shop.state, GiveAnswer{"knock", "knocks"});
    const StepCard& proof = shop.state->page.card;
    CHECK(proof.kind == StepCard::Kind::prove);
    REQUIRE_FALSE(proof.questions.empty());
    const QuestionText& play = proof.questions.front();
    CHECK(play.finding == "gimbal_play");
    CHECK(play.ask.find("Before the work: “Clunks, play can be seen”.") != std::string::npos);
    CHECK(play.answer.empty());
    CHECK(std::none_of(play.choices.begin(), play.choices.end(),
                       [](const auto& choice) { return choice.chosen; }));
    shop.harness.reset();  // the drawing library knows one context at a time
    Album().take("job-again", [&](Kit& kit) { draw_app(kit, *shop.state); });

    carry_out(*shop.state, GiveAnswer{"gimbal_play", "loose"});
    CHECK(shop.state->page.card.kind == StepCard::Kind::remedy);
    CHECK(shop.state->page.card.cause == "gimbal_worn");
}
