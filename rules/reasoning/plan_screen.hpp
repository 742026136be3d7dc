// A quick estimate of what an answer would leave to do: the plan from the start, with one remedy moved to its
// front and some left out, instead of a plan made anew. It chooses which questions are worth a real plan; no
// figure that is shown comes from it. Pure numbers.
#pragma once

#include <span>
#include <vector>

#include "rules/reasoning/repair_plan.hpp"
#include "rules/reasoning/two.hpp"

namespace hardover {

class PlanScreen {
  public:
    // `order`: the plan from `start`; `each`: its minutes per hypothesis (RepairPlanner::minutes_each).
    PlanScreen(const RepairModel& model, const Standing& start, const std::vector<int>& order,
               const std::vector<double>& each);

    // About the plan's minutes from here, times the mass; `here` is the start after answers.
    double minutes(const Standing& here);

    // The same after one answer more, with minutes_of_steps() as they are after it, for two answers to one
    // question at once, which takes hardly longer than for one. Most hypotheses have nothing to do with a
    // finding: an answer has the chance `rest` under all but the `concerned` ones, and `chances` (by
    // hypothesis) under those. Without chances (null): there is no second answer, and 0 is given for it.
    struct AfterAnswer {
        double rest = 0;
        const double* chances = nullptr;
    };
    Two minutes_after(const AfterAnswer& first, const AfterAnswer& second, std::span<const int> concerned);

    // What may still be wrong, and what the steps cost, until told otherwise.
    void stand_at(const Standing& here);
    void minutes_of_steps(const Standing& here);

  private:
    // Masses, by the place of the actions: in the order of the plan, then the others; one, or one of each of
    // two answers.
    template <typename Mass>
    struct Shares {
        Mass mass{};
        Mass planned{};               // minutes of the plan, times the mass
        std::vector<Mass> put_right;  // by a step of the plan
        std::vector<Mass> present;    // that the action alone puts right
        std::vector<Mass> paid;       // minutes of the plan on that, times the mass
    };

    void add(int hypothesis, const Two& weight);
    Two estimate();
    Two saved_on_the_way() const;
    Two saved_by_going_first() const;

    const RepairModel& model_;
    const std::vector<double>& each_;
    std::vector<int> action_at_;  // by place
    std::size_t steps_ = 0;       // of the plan
    std::vector<int> sole_;       // per hypothesis: the place of its only action, or -1
    std::vector<int> turn_;       // per hypothesis: the step that puts it right; the number of steps: none
    double in_vain_ = 0;          // minutes of the plan where nothing of it helps
    // By place: the next step of the action and its remedy after its proof, from the start and now.
    std::vector<double> start_step_;
    std::vector<double> start_extra_;
    std::vector<double> step_;
    std::vector<double> extra_;

    std::vector<double> weight_;  // per hypothesis, where it stands
    Shares<double> whole_;        // where it stands
    Shares<Two> now_;             // after the answers looked at
    std::vector<Two> reached_;    // by step of the plan, and last after all: mass not put right before it
};

}  // namespace hardover
