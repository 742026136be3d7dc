// The boat that the class works together, as both front ends show it, already in words: the question with its
// choices, the ranking before and after, what came of the last step, and at the end the way the class took
// with its votes. Pure.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/classroom/show_of_hands.hpp"
#include "app/study/practice_debrief.hpp"
#include "app/study/practice_page.hpp"

namespace hardover::classroom {

struct ChoiceLine {
    std::string letter;   // "A"
    std::string name;     // "Feel of the wheel"
    std::string note;     // "Look or ask, about 1 min"; may be empty
    std::string minutes;  // "1 min", for where the note has no room; "": it takes no time
};

struct BallotPage {
    Asks asks = Asks::step;
    std::string question;  // "What do we do next?"
    std::vector<ChoiceLine> choices;
};
BallotPage ballot_page(const ShowOfHands& boat, const Ballot& ballot);

// How a count stands, in words: "18 hands. Most for B." "A and C are level with 6: choose one."
std::string count_text(const Ballot& ballot, const std::vector<int>& hands);

// One cause in the ranking, as it stands and as it stood before the last piece of work.
struct RankBar {
    std::string name;
    double probability = 0;
    double before = 0;
    std::string percent;      // "62 %"
    std::string moved;        // "was 34 %"; "" where it did not move
    bool true_fault = false;  // known once the boat is done, or the fault was shown
};

// Step that was agreed on and is about to be done.
struct AgreedStep {
    practice::WorkCard card;
    std::vector<practice::CautionQuestion> cautions;  // to be read out before it
};

struct HandsPage {
    std::string title;     // "Class boat 7 · level 2"
    std::string customer;  // “...”
    std::string complaint;
    std::string history;
    std::vector<SheetLine> rig;
    std::string clock;  // "24 min so far"
    std::vector<RankBar> ranking;
    std::vector<std::string> happened;  // what came of the last piece of work; empty before the first
    std::optional<AgreedStep> agreed;
    std::vector<std::string> after;  // checks before handing over; only when the boat is right
    bool right = false;
    bool ended = false;
    bool fault_shown = false;
    std::vector<std::string> faults;  // names; only once they may be told
};
// `units`: in which figures are shown.
HandsPage hands_page(const ShowOfHands& boat, UnitSystem units);

// A vote in the debrief.
struct VoteTold {
    std::size_t step = 1;             // the piece of work it came before; one more than all: after the last
    std::string heading;              // "Before step 3: What is wrong?"
    std::vector<std::string> counts;  // "B Air left in the oil: 11 hands, taken"
    std::string right;                // "7 of 18 hands had it right."; only of votes on the cause with hands
};
std::vector<VoteTold> votes_told(const ShowOfHands& boat);

// How the class came to the cause over its votes: "The cause was named right by 3 of 18 hands before step 2
// and by 15 of 19 before step 5."
std::string cause_votes_text(const ShowOfHands& boat);

}  // namespace hardover::classroom
