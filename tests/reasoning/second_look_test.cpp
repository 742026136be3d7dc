// What is looked at again after a remedy that helped, and what is not.
#include <catch2/catch.hpp>

#include "rules/reasoning/assessment.hpp"
#include "small_knowledge.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// A cart that knocks. A loose clamp gives play at the wheel, and so does a worn bearing, which play proves;
// dry grease is seen by its colour alone. The clamp was put right, and it helped.
struct Cart {
    Knowledge knowledge = empty_knowledge();
    Index knock, play, colour;
    Index rock;
    Index clamp, bearing, grease;
    Facts facts;

    Cart() {
        knock = add_finding(knowledge, "knock", {"loud", "none"});
        play = add_finding(knowledge, "play", {"loose", "firm"}, 0.05);
        colour = add_finding(knowledge, "colour", {"brown", "fresh"}, 0.05);
        clamp = add_cause(knowledge, "clamp_loose", 300, {{knock, {0.8, 0.2}}, {play, {0.9, 0.1}}}, 20);
        bearing = add_cause(knowledge, "bearing_worn", 60, {{knock, {0.9, 0.1}}, {play, {0.98, 0.02}}}, 200);
        grease = add_cause(knowledge, "grease_dry", 60, {{knock, {0.3, 0.7}}, {colour, {0.9, 0.1}}}, 40);
        rock = add_check(knowledge, "rock_the_wheel", 5, {play});
        prove(knowledge, bearing, rock, "play is loose");
        Complaint complaint;
        complaint.id = complaint.name = "knocks";
        complaint.says = {{knock, 0}};
        knowledge.complaints.push_back(complaint);
        facts.history = 0;
        facts.complaints = {0};
        facts.answers[play] = {0};
        facts.answers[colour] = {1};
        tried(Outcome::better);
    }

    void tried(Outcome outcome) {
        const Index remedy = knowledge.causes[static_cast<std::size_t>(clamp)].remedy;
        facts.tried[remedy] = outcome;
        facts.tried_as[remedy] = 1;
    }

    // After the remedy; what was answered before it stays known.
    void answer_again(Index finding, const Answer& answer) {
        if (facts.answers.contains(finding)) facts.earlier.push_back({finding, 0, facts.answers[finding]});
        facts.answers[finding] = answer;
        facts.answered_at[finding] = 1;
    }

    NextStep next() const { return assess(knowledge, facts).next; }
};

}  // namespace

TEST_CASE("After work that helped, the complaint is looked at again, then the proof of what is left") {
    Cart cart;
    const NextStep first = cart.next();
    CHECK(first.again);
    CHECK(first.kind == NextStep::Kind::ask);
    CHECK(first.index == cart.knock);
    CHECK(first.findings == std::vector<Index>{cart.knock});
    CHECK(first.branches.empty());

    cart.answer_again(cart.knock, {0});
    const NextStep second = cart.next();
    CHECK(second.again);
    CHECK(second.kind == NextStep::Kind::prove);
    CHECK(second.index == cart.rock);
    CHECK(second.cause == cart.bearing);
    CHECK(second.findings == std::vector<Index>{cart.play});

    cart.answer_again(cart.play, {0});
    const NextStep third = cart.next();
    CHECK_FALSE(third.again);
    CHECK(third.kind == NextStep::Kind::remedy);
    CHECK(third.cause == cart.bearing);
}

TEST_CASE("Of two proved causes that are left, the one with the greater odds for its minutes comes first") {
    Cart cart;
    prove(cart.knowledge, cart.grease, add_check(cart.knowledge, "wipe_the_axle", 2, {cart.colour}),
          "colour is brown");
    cart.facts.answers[cart.colour] = {0};
    cart.answer_again(cart.knock, {0});
    cart.answer_again(cart.play, {0});
    const Assessment now = assess(cart.knowledge, cart.facts);
    REQUIRE(now.ranking[0].cause == cart.bearing);  // the likelier, but 200 minutes against 40
    REQUIRE(now.ranking[0].proved);
    REQUIRE(now.ranking[1].proved);
    const double odds[] = {now.ranking[0].probability / (1 - now.ranking[0].probability),
                           now.ranking[1].probability / (1 - now.ranking[1].probability)};
    REQUIRE(odds[0] / 200 < odds[1] / 40);
    CHECK(now.next.kind == NextStep::Kind::remedy);
    CHECK(now.next.cause == cart.grease);
}

TEST_CASE("A play that went with the loose clamp clears the bearing") {
    Cart cart;
    cart.answer_again(cart.knock, {0});
    const auto bearing = [&] {
        for (const RankedCause& cause : assess(cart.knowledge, cart.facts).ranking) {
            if (cause.cause == cart.bearing) return cause;
        }
        return RankedCause{};
    };
    const double before = bearing().probability;
    CHECK(bearing().proved);
    cart.answer_again(cart.play, {1});
    CHECK(bearing().probability < before / 2);
    CHECK_FALSE(bearing().proved);
    CHECK_FALSE(cart.next().again);
}

TEST_CASE("What somebody cannot tell is not asked a third time") {
    Cart cart;
    cart.answer_again(cart.knock, {CannotTell{}});
    cart.answer_again(cart.play, {CannotTell{}});
    CHECK_FALSE(cart.next().again);
}

TEST_CASE("Work that changed nothing leaves nothing to look at again") {
    Cart cart;
    cart.tried(Outcome::not_cured);
    CHECK_FALSE(cart.next().again);
}

TEST_CASE("A sign that the remedy cannot have taken away is not looked at again") {
    Cart cart;
    cart.knowledge.causes[static_cast<std::size_t>(cart.clamp)].shows = {{cart.colour, {0.5, 0.5}}};
    CHECK_FALSE(cart.next().again);
}

TEST_CASE("A second look that cannot be had now is left out") {
    Cart cart;
    cart.answer_again(cart.knock, {0});
    Need helper;
    helper.id = helper.name = "helper";
    cart.knowledge.needs.push_back(helper);
    cart.knowledge.checks[static_cast<std::size_t>(cart.rock)].needs = {0};
    CHECK(cart.next().again);
    cart.facts.unavailable = {0};
    CHECK_FALSE(cart.next().again);
}

TEST_CASE("Answers and remedies are counted by the remedies tried before them") {
    Facts facts;
    CHECK(present_stage(facts) == 0);
    CHECK_FALSE(answered_now(facts, 3));
    facts.answers[3] = {0};
    CHECK(answered_now(facts, 3));
    facts.tried[7] = Outcome::better;
    CHECK(tried_as(facts, 7) == 1);
    CHECK(tried_as(facts, 8) == 0);
    CHECK(present_stage(facts) == 1);
    CHECK_FALSE(answered_now(facts, 3));
    facts.answered_at[3] = 1;
    CHECK(answer_stage(facts, 3) == 1);
    CHECK(answered_now(facts, 3));
    facts.tried[8] = Outcome::not_cured;
    facts.tried_as[8] = 2;
    CHECK(present_stage(facts) == 2);
    CHECK_FALSE(answered_now(facts, 3));
}
