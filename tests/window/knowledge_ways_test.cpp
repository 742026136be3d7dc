// From the job to what is known of a cause or a step, and from there to its place on the boat.
#include <catch2/catch.hpp>

#include <algorithm>

#include "shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

void ask(Shop& shop) {
    shop.start_job("Grey Heron", "tight to starboard");
    carry_out(*shop.state, SwitchComplaint{"hard_one_way"});
    carry_out(*shop.state, Show{Showing::step, ""});
    shop.harness->frames(4);
}

EntryKey shown(const Shop& shop) {
    const KnowledgeState& known = shop.state->known;
    return known.at == 0 ? EntryKey{} : known.history[known.at - 1];
}

}  // namespace

TEST_CASE("A cause on the job screen leads to what is known of it, and Esc leads back to the job") {
    Shop shop(1280, 2400);
    ask(shop);
    const std::string cause = shop.state->page.causes.front().id;
    shop.harness->click("cause." + cause + ".known");
    CHECK(shop.state->place == hardover::window::Place::knowledge);
    CHECK(shown(shop) == EntryKey{"cause", cause});
    shop.harness->press(Key::escape);
    CHECK(shop.state->place == hardover::window::Place::job);
}

TEST_CASE("The step in hand leads to its finding or check") {
    Shop shop(1280, 2400);
    ask(shop);
    const StepCard& card = shop.state->page.card;
    REQUIRE_FALSE(card.id.empty());
    shop.harness->click("card.entries");
    const std::string kind = card.kind == StepCard::Kind::question ? "finding" : "check";
    shop.harness->click("card.known." + kind + "." + card.id);
    CHECK(shown(shop) == EntryKey{kind, card.id});
}

TEST_CASE("An entry of a cause shows where it is, and leads to the boat with that part looked at") {
    Shop shop(1280, 2400);
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"cause", "piston_seal_leaking"}}});
    shop.harness->frames(4);
    REQUIRE(shop.state->known.where.has_value());
    CHECK(shop.harness->shows("Where it is"));
    CHECK(shop.harness->shows(shop.state->known.where->words));
    const std::string part = shop.state->known.where->parts.front();
    shop.harness->click("known.on_boat");
    CHECK(shop.state->place == hardover::window::Place::boat);
    CHECK(shop.state->boat.place().part == part);
    const auto& causes = shop.state->boat.place().causes;
    CHECK(std::any_of(causes.begin(), causes.end(),
                      [](const PlaceEntry& cause) { return cause.id == "piston_seal_leaking"; }));
}

TEST_CASE("What is no place on the boat shows none") {
    Shop shop;
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"caution", shipped().cautions.front().id}}});
    CHECK_FALSE(shop.state->known.where.has_value());
    carry_out(*shop.state, KnowledgeAction{ShowKnowledge{{"cause", "gone"}}});
    CHECK_FALSE(shop.state->known.where.has_value());
}

TEST_CASE("Conditions are read by names and readings, and each name still leads to its entry") {
    Shop shop(1280, 2400);
    carry_out(*shop.state, KnowledgeAction(ShowKnowledge{{"cause", "air_in_oil"}}));
    shop.harness->frames(4);
    const Knowledge& all = shop.state->knowledge;
    const Index cause = find(all.causes, "air_in_oil");
    REQUIRE(cause != none);
    REQUIRE(all.causes[cause].proved_when.text() == "wheel_sponge is large");
    const Finding& sponge = all.findings[find(all.findings, "wheel_sponge")];
    CHECK(shop.harness->shows(sponge.name + " is “" + sponge.readings.front().text + "”"));
    CHECK(shop.harness->shows("Finding: " + sponge.name));
    for (const EntryRow& row : shop.state->known.page.rows) {
        if (row.label != "Proved when") continue;
        REQUIRE(row.items.size() == 1);
        CHECK(row.items.front().pieces.front().to == EntryKey{"finding", "wheel_sponge"});
    }
}
