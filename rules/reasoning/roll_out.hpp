// The best next step by roll-out: every step that comes into question is taken in thought, and from there on
// the myopic policy is followed to the end, its expected minutes worked out exactly. Pure numbers.
//
// The myopic policy asks the question with the fewest expected minutes if the plan of remedies followed it at
// once, when that beats the plan without it (Heckerman, Breese & Rommelse 1995); else it takes the plan's
// first step. Rolling a policy out is never worse than the policy (D. Bertsekas, policy improvement; for test
// sequencing: Tu & Pattipati 2003). The best few first steps are looked at one step deeper still.
//
// Effort is counted in hypotheses weighed, not in time: equal arguments give an equal result on any machine.
#pragma once

#include <deque>
#include <vector>

#include "rules/reasoning/keyed.hpp"
#include "rules/reasoning/outlook.hpp"

namespace hardover {

struct LookLimits {
    // Hypotheses and actions weighed in roll-outs, in all; half of it where there are more than
    // `few_actions`.
    long work = 60'000;
    // Questions after whose answers a plan is made, and questions rolled out and asked within a roll-out.
    // Against 24 and 8, on 1,411 simulated jobs: 211 minutes for 213, the true cause as often first
    // and among the first three, in three quarters of the instructions.
    std::size_t planned_after = 12;
    std::size_t questions = 5;
    std::size_t actions = 3;        // of the plan, rolled out as first steps
    std::size_t looked_deeper = 3;  // first steps looked at one step deeper
    // More work for the deeper look, where the two best first steps are as close as this (as a share of the
    // minutes) and there are so few actions that a plan is cheap and the look gets far.
    long more_work = 90'000;
    double close = 0.02;
    std::size_t few_actions = 16;
    double rare = 1e-4;  // share of the boats below which the plan is followed without more asking
};

// A first step and what it leads to.
struct Weighed {
    enum class Kind { ask, act, call_for_help };
    Kind kind = Kind::ask;
    int index = -1;       // question or action
    double minutes = 0;   // of the step
    double after = 0;     // expected after it
    double alone = 0;     // ask: expected after it when nothing more is asked
    bool rolled = false;  // `after` comes from a roll-out
    double total() const { return minutes + after; }
};

class RollOut {
  public:
    // Must outlive the object.
    RollOut(Outlook& outlook, const LookLimits& limits = {});

    // All questions not asked yet and the actions that come into question or calling for help, the fewest
    // expected minutes first. Minutes are of boats at this position, as if its mass were 1.
    std::vector<Weighed> weigh(const Position& position);

    // Expected minutes when an action is applied at once, without proof.
    double minutes_applying(const Position& position, int action);

    // Whether the answer to a question can change what is done: the first step of the plan differs after two
    // of its readings, perhaps only together with the answer to one of the questions looked at closely.
    bool may_change(const Position& position, int question);

  private:
    // What the plan comes to from a position, and what no policy can do without.
    struct Planned {
        double minutes = 0;
        double least = 0;
        int first = -1;
    };

    Planned plan(const Position& position);
    double after_question(const Position& position, int question, std::size_t depth, double least,
                          double too_much);
    double roll_question(std::size_t depth, int question, bool deeper);
    double roll_action(std::size_t depth, int action, bool deeper);
    double follow(std::size_t depth);
    double follow_on(std::size_t depth, const Planned& planned);
    double best_after(std::size_t depth);
    void choose_questions(const std::vector<Weighed>& questions);
    void weigh_questions(const Position& position, std::vector<Weighed>& steps);
    void roll_out(std::vector<Weighed>& steps, bool deeper);
    bool worth_more_work(const Position& position, const std::vector<Weighed>& steps) const;
    bool changes_first(std::size_t depth, int question);
    Position& at(std::size_t depth);
    void forget();

    Outlook& outlook_;
    LookLimits limits_;
    std::deque<Position> positions_;  // by depth of the look ahead
    std::vector<int> closer_;         // questions looked at closely
    Keyed<Planned> planned_;
    Keyed<double> followed_;
    Keyed<double> best_after_;
    double root_mass_ = 1;
    long spent_ = 0;
    long may_spend_ = 0;
    long work_ = 0;  // to be spent in all
};

}  // namespace hardover
