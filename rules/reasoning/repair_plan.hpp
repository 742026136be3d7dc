// In which order to apply remedies, and what that costs, when nothing more is asked: the tail of every look
// ahead. Pure numbers: remedies and hypotheses by index.
//
// The order is that of chance of success over cost, taken anew after every step (Kadane & Simon 1977;
// Heckerman, Breese & Rommelse 1995); with several independent faults this is the order of odds over cost.
// Remedies that are proved first cost their proof, and themselves only where the fault is present; they are
// ordered by chance over the cost of the proof. The order is cut where calling for help is cheaper.
#pragma once

#include <vector>

namespace hardover {

struct RepairAction {
    double minutes = 0;               // applying the remedy and trying the boat
    double proof_minutes = -1;        // what proving it first costs; below 0: it is applied without
    std::vector<int> proof_findings;  // what the proof answers
    bool proved_first() const { return proof_minutes >= 0; }
};

// What is wrong in one hypothesis: the actions that together put it right.
struct RepairNeed {
    std::vector<int> actions;  // ascending
    bool hopeless = false;     // no actions put it right
};

struct RepairModel {
    std::vector<RepairAction> actions;
    std::vector<RepairNeed> needs;  // per hypothesis
    double call_for_help = 0;       // minutes, when nothing of the plan put it right
};

struct RepairPlan {
    std::vector<int> order;  // actions worth trying before calling for help
    double minutes = 0;      // expected, times the mass of the weights
};

class RepairPlanner {
  public:
    // Must outlive the planner.
    explicit RepairPlanner(const RepairModel& model);

    // `weights` per hypothesis, not necessarily adding to 1: `minutes` is scaled with their sum.
    // `proof_known[a]`: the proof of action a has been answered, so it is applied without.
    RepairPlan plan(const std::vector<double>& weights, const std::vector<char>& proof_known);

    // Expected minutes of a given order, help being called after it, under other weights.
    double minutes_of(const std::vector<int>& order, const std::vector<double>& weights,
                      const std::vector<char>& proof_known);

  private:
    double step_minutes(int action, const std::vector<char>& proof_known) const;
    bool proved_first(int action, const std::vector<char>& proof_known) const;
    template <typename Visit>
    void walk(const std::vector<int>& order, const std::vector<double>& weights,
              const std::vector<char>& proof_known, Visit visit);
    std::vector<int> greedy_order(const std::vector<double>& weights, const std::vector<char>& proof_known);
    std::vector<int> heaviest_block(const std::vector<double>& weights, const std::vector<char>& proof_known,
                                    const std::vector<char>& done) const;

    const RepairModel& model_;
    std::vector<std::vector<int>> hypotheses_of_;  // per action
    std::vector<int> left_;                        // per hypothesis: actions still needed
    std::vector<double> per_minute_;               // per action: mass it alone would put right now, a minute
};

}  // namespace hardover
