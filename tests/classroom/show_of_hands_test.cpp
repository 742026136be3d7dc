// A practice boat worked by a class: what is put to it, how hands are counted, what the votes come to.
#include "app/classroom/show_of_hands.hpp"

#include <algorithm>

#include "app/study/practice_marks.hpp"
#include "classroom/hands_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

void do_agreed(ShowOfHands& boat) {
    for (const ClassEvent& event : events_to_do(boat)) REQUIRE_OK(boat.take(event));
}

std::size_t choice_of_fault(const ShowOfHands& boat, const Ballot& ballot) {
    const std::string fault = shipped().causes[boat.session().boat().faults.front()].id;
    for (std::size_t i = 0; i < ballot.choices.size(); ++i) {
        if (std::get<Suspected>(ballot.choices[i]).cause == fault) return i;
    }
    return ballot.choices.size();
}

// Always the program's own next step, until the boat is right.
void work_it(ShowOfHands& boat) {
    for (int steps = 0; steps < 60 && !boat.session().boat_is_right(); ++steps) {
        const Assessment now = assess(boat.session().prepared(), boat.session().facts());
        const PracticeEvent next = event_of_step(shipped(), now.next);
        REQUIRE_OK(boat.take(Voted{{Asks::step, {next}}, {}, 0}));
        do_agreed(boat);
    }
    REQUIRE(boat.session().boat_is_right());
}

}  // namespace

TEST_CASE("The majority is the choice with most hands, none where nobody raised one or two stand level") {
    CHECK(majority({3, 11, 4}) == std::size_t{1});
    CHECK(majority({0, 0, 1}) == std::size_t{2});
    CHECK_FALSE(majority({0, 0, 0}));
    CHECK_FALSE(majority({5, 5, 1}));
    CHECK_FALSE(majority({}));
}

TEST_CASE(
    "The steps put to the class hold the program's own, a remedy to be tempted by, and no order to read") {
    const ShowOfHands boat = class_boat();
    const Ballot ballot = step_ballot(boat);
    CHECK(ballot.choices.size() == usual_choices);
    const Assessment now = assess(boat.session().prepared(), boat.session().facts());
    const BallotPage page = ballot_page(boat, ballot);
    const Index next = now.next.kind == NextStep::Kind::ask ? now.next.index : now.next.findings.front();
    CHECK(std::any_of(page.choices.begin(), page.choices.end(),
                      [&](const ChoiceLine& line) { return line.name == shipped().findings[next].name; }));
    CHECK(std::any_of(ballot.choices.begin(), ballot.choices.end(),
                      [](const PracticeEvent& choice) { return std::holds_alternative<Remedied>(choice); }));
    std::vector<Index> looked_at;
    for (const PracticeEvent& choice : ballot.choices) {
        if (const auto* asked = std::get_if<Asked>(&choice))
            looked_at.push_back(find(shipped().findings, asked->finding));
    }
    CHECK(std::is_sorted(looked_at.begin(), looked_at.end()));
}

TEST_CASE("What the class thinks of itself is added at the end, once, and never beyond what can be read") {
    const ShowOfHands boat = class_boat();
    const Ballot usual = step_ballot(boat);
    CHECK(step_ballot(boat, {usual.choices.front()}).choices.size() == usual.choices.size());
    std::vector<PracticeEvent> ideas;
    for (const NamedItem& remedy : make_page(boat.session()).remedies)
        ideas.emplace_back(Remedied{remedy.id});
    const Ballot full = step_ballot(boat, ideas);
    CHECK(full.choices.size() == most_choices);
    const Ballot one = step_ballot(boat, {GaveUp{}});
    CHECK(std::holds_alternative<GaveUp>(one.choices.back()));
}

TEST_CASE("A ballot on the cause ends with something else") {
    const ShowOfHands boat = class_boat();
    const Ballot ballot = cause_ballot(boat);
    CHECK(ballot.choices.size() == usual_choices + 1);
    CHECK(std::get<Suspected>(ballot.choices.back()).cause.empty());
    CHECK(ballot_page(boat, ballot).choices.back().name == "Something else");
}

TEST_CASE("The step that was agreed on waits until it is done, and the minutes run then") {
    ShowOfHands boat = class_boat();
    const Ballot ballot = step_ballot(boat);
    std::vector<int> hands(ballot.choices.size(), 2);
    hands[0] = 40;  // more than sit in the room: nobody checks
    REQUIRE_OK(boat.take(Voted{ballot, hands, 0}));
    REQUIRE(boat.agreed().has_value());
    CHECK(boat.session().minutes() == 0);
    do_agreed(boat);
    CHECK_FALSE(boat.agreed().has_value());
    CHECK(boat.session().minutes() > 0);
    CHECK(boat.session().work().front().missed.empty());
}

TEST_CASE("The instructor may take what fewer wanted, or leave the vote out") {
    ShowOfHands boat = class_boat();
    const Ballot ballot = step_ballot(boat);
    std::vector<int> hands(ballot.choices.size(), 1);
    hands[0] = 9;
    REQUIRE_OK(boat.take(Voted{ballot, hands, 1}));
    CHECK(boat.agreed()->index() == ballot.choices[1].index());
    REQUIRE_OK(boat.take(Voted{ballot, {}, 0}));
    CHECK(boat.votes().size() == 2);
}

TEST_CASE("A count that cannot be is refused and changes nothing") {
    ShowOfHands boat = class_boat();
    const Ballot ballot = step_ballot(boat);
    CHECK_FALSE(boat.take(Voted{ballot, {1, 2}, 0}));
    CHECK_FALSE(boat.take(Voted{ballot, std::vector<int>(ballot.choices.size(), -1), 0}));
    CHECK_FALSE(boat.take(Voted{ballot, std::vector<int>(ballot.choices.size(), 1000), 0}));
    CHECK_FALSE(boat.take(Voted{ballot, {}, ballot.choices.size()}));
    CHECK_FALSE(boat.take(Voted{{Asks::step, {HandedOver{true}}}, {}, 0}));  // it is not right yet
    CHECK_FALSE(boat.take(Voted{{Asks::step, {Asked{"no_such_finding"}}}, {}, 0}));
    CHECK(boat.votes().empty());
    CHECK_FALSE(boat.agreed().has_value());
}

TEST_CASE("What most hands take for the cause is noted with the share of hands as sureness") {
    ShowOfHands boat = class_boat();
    const Ballot ballot = cause_ballot(boat);
    std::vector<int> hands(ballot.choices.size(), 0);
    hands[0] = 15;
    hands[1] = 5;
    REQUIRE_OK(boat.take(Voted{ballot, hands, 0}));
    REQUIRE(boat.session().statements().size() == 1);
    CHECK(boat.session().statements().front().sure == Approx(0.75));
    REQUIRE_OK(boat.take(Voted{ballot, {}, 1}));                    // nobody raised a hand
    REQUIRE_OK(boat.take(Voted{ballot, hands, hands.size() - 1}));  // something else
    CHECK(boat.session().statements().size() == 1);
    CHECK(boat.session().minutes() == 0);
}

TEST_CASE(
    "Hands for the fault that is there are counted, and those for something else where it is not named") {
    ShowOfHands boat = class_boat();
    const Ballot all =
        cause_ballot(boat, {Suspected{shipped().causes[boat.session().boat().faults.front()].id, 0}});
    const std::size_t right = choice_of_fault(boat, all);
    REQUIRE(right < all.choices.size());
    std::vector<int> hands(all.choices.size(), 1);
    hands[right] = 6;
    REQUIRE_OK(boat.take(Voted{all, hands, right}));
    CHECK(hands_for_the_fault(boat, boat.votes().back()) == 6);
    Ballot without = all;
    without.choices.erase(without.choices.begin() + static_cast<std::ptrdiff_t>(right));
    std::vector<int> others(without.choices.size(), 1);
    others.back() = 4;
    REQUIRE_OK(boat.take(Voted{without, others, 0}));
    CHECK(hands_for_the_fault(boat, boat.votes().back()) == 4);
    REQUIRE_OK(boat.take(Voted{all, {}, right}));
    CHECK(hands_for_the_fault(boat, boat.votes().back()) == 0);
}

TEST_CASE("The ranking tells where each cause stood before the last step") {
    ShowOfHands boat = class_boat();
    for (const RankBar& bar : hands_page(boat, UnitSystem::us).ranking) CHECK(bar.moved.empty());
    const Ballot ballot = step_ballot(boat);
    REQUIRE_OK(boat.take(Voted{ballot, {}, 0}));
    const HandsPage agreed = hands_page(boat, UnitSystem::us);
    REQUIRE(agreed.agreed.has_value());
    do_agreed(boat);
    const HandsPage after = hands_page(boat, UnitSystem::us);
    CHECK(std::any_of(after.ranking.begin(), after.ranking.end(),
                      [](const RankBar& bar) { return bar.moved.rfind("was ", 0) == 0; }));
    CHECK(std::is_sorted(after.ranking.begin(), after.ranking.end(),
                         [](const RankBar& a, const RankBar& b) { return a.probability > b.probability; }));
    CHECK_FALSE(after.happened.empty());
    CHECK_FALSE(after.agreed.has_value());
}

TEST_CASE("The fault stays hidden until it is shown, or until the boat is right") {
    ShowOfHands boat = class_boat();
    CHECK(hands_page(boat, UnitSystem::us).faults.empty());
    REQUIRE_OK(boat.take(FaultRevealed{}));
    CHECK(hands_page(boat, UnitSystem::us).faults.size() == boat.session().boat().faults.size());
    ShowOfHands worked = class_boat();
    work_it(worked);
    const HandsPage page = hands_page(worked, UnitSystem::us);
    CHECK_FALSE(page.fault_shown);
    CHECK(page.faults.size() == worked.session().boat().faults.size());
    CHECK_FALSE(page.after.empty());
}

TEST_CASE("A boat that is right is handed over by a last vote, and the debrief tells who had it right when") {
    ShowOfHands boat = class_boat();
    const std::string fault = shipped().causes[boat.session().boat().faults.front()].id;
    const Ballot causes{Asks::cause, {Suspected{fault, 0}, Suspected{"", 0}}};
    REQUIRE_OK(boat.take(Voted{causes, {3, 15}, 1}));
    work_it(boat);
    REQUIRE(boat.agreed() == std::nullopt);
    const Ballot over = step_ballot(boat);
    REQUIRE(over.choices.size() == 2);
    CHECK(ballot_page(boat, over).question == "The boat is right. What now?");
    REQUIRE_OK(boat.take(Voted{over, {20, 0}, 0}));
    do_agreed(boat);
    CHECK(boat.ended());
    CHECK(boat.session().checked_after());
    CHECK_FALSE(boat.take(Voted{over, {}, 0}));
    CHECK(cause_votes_text(boat) == "The cause was named right by 3 of 18 hands before step 1.");
    const std::vector<VoteTold> votes = votes_told(boat);
    REQUIRE(votes.size() == boat.votes().size());
    CHECK(votes.front().heading == "Before step 1: what is wrong?");
    CHECK(votes.front().right == "3 of 18 hands had it right.");
    CHECK(votes.front().counts.back() == "B Something else: 15 hands, taken");
    CHECK(votes.back().heading == "After the last step: what next?");
}

TEST_CASE("How a count stands is said in words") {
    const Ballot ballot{Asks::step, {GaveUp{}, GaveUp{}, GaveUp{}}};
    CHECK(count_text(ballot, {0, 0, 0}) == "No hands yet. Count them, or choose without.");
    CHECK(count_text(ballot, {1, 0, 0}) == "1 hand. Most for A.");
    CHECK(count_text(ballot, {6, 2, 6}) == "14 hands. A and C are level: choose one.");
}
