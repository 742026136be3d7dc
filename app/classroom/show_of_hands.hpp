// A practice boat worked by the class together: what is put to the class, the hands that were counted, the
// way taken, and what came of it. The same events on the same boat give the same state. Knows no screen, no
// records and nobody's name.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/study/practice_session.hpp"

namespace hardover::classroom {

namespace practice = study::practice;

// What the class is asked.
enum class Asks {
    step,  // what to do next
    cause  // what is wrong
};

// The question with its choices. A choice of a step is the event that does it; a choice of a cause is
// Suspected with that cause, or with "" for something that is not among the choices.
struct Ballot {
    Asks asks = Asks::step;
    std::vector<practice::PracticeEvent> choices;
};

// A ballot that was settled. `hands` is as long as the choices, or empty where no hands were counted.
struct Voted {
    Ballot ballot;
    std::vector<int> hands;
    std::size_t taken = 0;  // the choice that became the class's way
};
// What is wrong was shown to everybody.
struct FaultShown {};
// Of the practice events, those the session takes: cautions read out, and the step that was agreed on.
using ClassEvent = std::variant<Voted, FaultShown, practice::PracticeEvent>;

// More hands than a hall holds are a slip of the finger.
inline constexpr int most_hands = 999;
// So many choices can be read across a room; the class may add some of its own.
inline constexpr std::size_t usual_choices = 5;
inline constexpr std::size_t most_choices = 8;

// A ballot that was settled, and how much work had been done before it.
struct Vote {
    Voted voted;
    std::size_t after = 0;
};

class ShowOfHands {
  public:
    explicit ShowOfHands(practice::Session session) : session_(std::move(session)) {}

    // Applies one event. Error bad_input or not_found: it cannot be now, in words; nothing has changed then.
    Result<void> take(const ClassEvent& event);

    const practice::Session& session() const { return session_; }
    const std::vector<Vote>& votes() const { return votes_; }
    // The step that was agreed on and is not done yet.
    const std::optional<practice::PracticeEvent>& agreed() const { return agreed_; }
    bool fault_shown() const { return fault_shown_; }
    bool ended() const { return session_.phase() == practice::Session::Phase::ended; }

  private:
    Result<void> settle(const Voted& voted);

    practice::Session session_;
    std::vector<Vote> votes_;
    std::optional<practice::PracticeEvent> agreed_;
    bool fault_shown_ = false;
};

// The steps worth putting to the class: the program's own, its next best, the remedy of what leads, and what
// such a complaint makes one look at. In the knowledge's order, so that the order gives nothing away.
// `added`: what the class thought of itself, at the end.
Ballot step_ballot(const ShowOfHands& boat, const std::vector<practice::PracticeEvent>& added = {});
// The causes that lead, in the knowledge's order, what was added, and something else.
Ballot cause_ballot(const ShowOfHands& boat, const std::vector<practice::PracticeEvent>& added = {});

// The choice with the most hands. Nothing where no hand was raised, or where two stand level.
std::optional<std::size_t> majority(const std::vector<int>& hands);
int all_hands(const std::vector<int>& hands);

// Hands of a ballot on the cause that were for a fault the boat had at that moment; those for something else
// where none of its faults was among the choices.
int hands_for_the_fault(const ShowOfHands& boat, const Vote& vote);

}  // namespace hardover::classroom
