// What an instructor can ask for while a boat is projected to the class.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "app/classroom/show_of_hands.hpp"

namespace hardover::window {

struct BeginClassBoat {
    int level = 1;
    std::string seed;  // as typed; "": any
};
struct GoOnClassBoat {};
struct PutToClass {
    classroom::Asks asks = classroom::Asks::step;
};
// Something the class thought of itself, as one more choice.
struct AddToBallot {
    study::practice::PracticeEvent idea;
};
struct SettleVote {
    std::vector<int> hands;            // empty: none were counted
    std::optional<std::size_t> taken;  // none: the majority's
};
struct DoAgreed {};      // its cautions were read out
struct NextQuestion {};  // from what came of it to the next question
struct ShowTheFault {};
struct SteerProjected {
    double steer = 0;  // rad
};
struct LeaveProjector {};  // the boat is kept
using ProjectAction = std::variant<BeginClassBoat, GoOnClassBoat, PutToClass, AddToBallot, SettleVote,
                                   DoAgreed, NextQuestion, ShowTheFault, SteerProjected, LeaveProjector>;

}  // namespace hardover::window
