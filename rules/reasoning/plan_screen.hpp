// A quick estimate of what an answer would leave to do: the plan from the start, with one remedy moved to its
// front and some left out, instead of a plan made anew. It chooses which questions are worth a real plan; no
// figure that is shown comes from it. Pure numbers.
#pragma once

#include <vector>

#include "rules/reasoning/repair_plan.hpp"

namespace hardover {

class PlanScreen {
  public:
    // `order`: the plan from `start`; `each`: its minutes per hypothesis (RepairPlanner::minutes_each).
    PlanScreen(const RepairModel& model, const Standing& start, const std::vector<int>& order,
               const std::vector<double>& each);

    // About the plan's minutes from here, times the mass; `here` is the start after answers.
    double minutes(const Standing& here);

  private:
    double gather(const Standing& here);
    double saved_on_the_way(const Standing& here) const;
    double saved_by_going_first(const Standing& here) const;

    const RepairModel& model_;
    const Standing& start_;
    const std::vector<double>& each_;
    std::vector<int> order_;
    std::vector<int> sole_;     // per hypothesis: its only action, or -1
    std::vector<int> turn_;     // per hypothesis: the step that puts it right; the number of steps: none
    std::vector<int> turn_of_;  // per action: its step; the number of steps: not in the plan
    double in_vain_ = 0;        // minutes of the plan where nothing of it helps

    // Of the standing looked at.
    std::vector<double> put_right_;  // mass, per step of the plan, and last what none puts right
    std::vector<double> present_;    // per action: mass that it alone puts right
    std::vector<double> paid_;       // per action: minutes of the plan on that, times the mass
};

}  // namespace hardover
