// A weighed question or action as the step a person takes: its check, what that gets, its proof, its minutes.
// Chooses nothing.
#pragma once

#include <set>

#include "rules/reasoning/effort.hpp"
#include "rules/reasoning/outlook.hpp"
#include "rules/reasoning/repairs.hpp"
#include "rules/reasoning/roll_out.hpp"
#include "rules/reasoning/second_look.hpp"

namespace hardover {

class StepMaker {
  public:
    // All must outlive the object. `blocked_by`: the needs that calling for help names.
    StepMaker(const Knowledge& knowledge, const Effort& effort, const Repairs& repairs,
              const Outlook& outlook, RollOut& roll_out, const std::set<Index>& blocked_by);

    // The finding a weighed question is about.
    Index finding_of(const Weighed& question) const;

    // A question becomes the check it is got by, if it has one, and the proof of what `best_action` would put
    // right where the check proves that. An action becomes its proof where that is worth it.
    NextStep step_of(const Weighed& weighed, const Weighed& best_action) const;

    // Applies the remedy of an action without proof.
    NextStep put_right(std::size_t action, Index cause) const;

    // A look at a sign seen before a remedy. `minutes_after`: until the boat is right, from then on.
    NextStep look_again(const SecondLook& look, double minutes_after) const;

  private:
    NextStep act(const Weighed& weighed) const;
    void list_finding(NextStep& step, Index finding) const;

    const Knowledge& knowledge_;
    const Effort& effort_;
    const Repairs& repairs_;
    const Outlook& outlook_;
    RollOut& roll_out_;
    const std::set<Index>& blocked_by_;
};

}  // namespace hardover
