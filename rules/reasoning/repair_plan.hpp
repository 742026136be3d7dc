// In which order to apply remedies, and what that costs, when nothing more is asked: the tail of every look
// ahead. Pure numbers: remedies and hypotheses by index.
//
// The order is that of chance of success over cost, taken anew after every step (Kadane & Simon 1977;
// Heckerman, Breese & Rommelse 1995); with several independent faults this is the order of odds over cost.
// Remedies that are proved first cost their proof, and themselves only where the fault is present; they are
// ordered by chance over the cost of the proof. The order is cut where calling for help is cheaper.
#pragma once

#include <cstdint>
#include <utility>
#include <vector>

#include "rules/reasoning/greatest.hpp"
#include "rules/reasoning/rows.hpp"

namespace hardover {

struct RepairAction {
    double minutes = 0;               // applying the remedy and trying the boat
    double proof_minutes = -1;        // what proving it first costs; below 0: it is applied without
    std::vector<int> proof_findings;  // what the proof answers
    // The check that proves it; of an action without proof, what has to be opened for it. -1: none.
    int proof_check = -1;
    double proof_setting_up = 0;  // its share in the first minutes, saved when that is set up already
    bool proved_first() const { return proof_minutes >= 0; }
};

// What is wrong in one hypothesis and which actions put it right.
struct RepairNeed {
    std::vector<int> actions;  // ascending
    bool hopeless = false;     // no actions put it right
    bool any_one = false;      // any one of the actions puts it right; else all of them are needed
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

// How far a job has come in a look ahead: what may still be wrong, and what has been paid for.
struct Standing {
    std::vector<int> live;              // hypotheses not put right yet and not excluded
    std::vector<double> weight;         // per live hypothesis; need not add to 1
    std::vector<char> done;             // per action: applied
    std::vector<double> step_minutes;   // per action: the next step of it, proof or remedy
    std::vector<double> extra_minutes;  // per action: the remedy after its proof, where the fault is present
    std::vector<char> set_up;           // per check: not to be paid again
    double mass = 0;                    // sum of the weights
};

class RepairPlanner {
  public:
    // Must outlive the planner.
    explicit RepairPlanner(const RepairModel& model);

    // Nothing done, no proof answered, no check set up.
    Standing start(const std::vector<double>& weights) const;

    // Expected minutes of the plan from here, times the mass. `first` and `order` tell its steps.
    double minutes(const Standing& standing);
    // The plan last made: the first action of it (-1: call for help), and all its actions.
    int first() const { return kept_ == 0 ? -1 : order_.front(); }
    std::vector<int> order() const { return {order_.begin(), order_.begin() + kept_}; }

    // Chance (times the mass) that what this action puts right is present, alone or with others.
    double present(const Standing& standing, int action) const;

    // Some action's proof belongs to the check.
    bool proves_something(int check) const {
        return check >= 0 && static_cast<std::size_t>(check) < proved_by_.size() &&
               !proved_by_[static_cast<std::size_t>(check)].empty();
    }

    // The check is set up: its proofs are cheaper from now on.
    void set_up_check(int check, Standing& standing) const;

    // After this action has been applied and the boat is still not right.
    void apply(int action, const Standing& before, Standing& after) const;

    // `weights` per hypothesis, not necessarily adding to 1: `minutes` is scaled with their sum.
    // `proof_known[a]`: the proof of action a has been answered, so it is applied without.
    RepairPlan plan(const std::vector<double>& weights, const std::vector<char>& proof_known);

    // Expected minutes of a given order, help being called after it, under other weights.
    double minutes_of(const std::vector<int>& order, const std::vector<double>& weights,
                      const std::vector<char>& proof_known) const;

    // The same for every hypothesis alone: its minutes when it is the one.
    std::vector<double> minutes_each(const std::vector<int>& order, const Standing& standing) const;

    // No policy takes fewer minutes while this hypothesis is not put right: the last of its remedies, or
    // calling for help.
    double least_minutes(int hypothesis) const {
        return least_minutes_[static_cast<std::size_t>(hypothesis)];
    }

  private:
    // A hypothesis that several actions have to do with, while a plan is made.
    struct Shared {
        int hypothesis = 0;
        double weight = 0;
        int left = 0;  // actions still needed
    };

    // One bit an action; beyond 64 actions several share one, and `needs` decides.
    static std::uint64_t bit_of(int action) { return std::uint64_t{1} << (action % 64); }

    // What the proofs of a check are worth together; worked out again only after something of them changed.
    struct Together {
        int check = -1;
        bool weighed = false;
        double rate = 0;
        int first = -1;
    };

    // What the action does next takes its check, set up.
    bool needs_check(const Standing& standing, int action) const {
        const RepairAction& a = model_.actions[static_cast<std::size_t>(action)];
        if (a.proof_check < 0) return false;
        return !a.proved_first() || standing.extra_minutes[static_cast<std::size_t>(action)] > 0;
    }

    void gather(const Standing& standing);
    double rate(int action) const;
    void rate_again(int action);
    std::pair<double, int> best_action();
    void bound_together(std::size_t shared);
    void weigh_together(Together& together);
    void set_up_in_plan(int shared);
    void take(int action);
    bool take_block();
    void tell_others(int action);
    bool needs(int hypothesis, int action) const;

    const RepairModel& model_;
    std::vector<int> sole_;            // per hypothesis: its only action; -1: several, or hopeless
    std::vector<std::uint64_t> bits_;  // per hypothesis: its actions
    Rows<int> hypotheses_of_;          // per action: those that several actions have to do with
    std::vector<double> least_minutes_;
    bool any_proof_ = false;
    Rows<int> proved_by_;  // per check: actions that need it set up

    // Of the plan being made.
    Standing now_;                    // minutes and checks as the plan goes on; no weights
    std::vector<double> cures_;       // per action: mass it puts right now
    Greatest rates_;                  // per action: that over its minutes; 0: taken, or it puts nothing right
    std::vector<Together> together_;  // per check that several need
    std::vector<double> most_together_;  // of each: the rate that they cannot exceed; not_bounded: not known
    double least_ = 0;                   // mass that counts as nothing
    std::vector<double> present_;        // per action: mass with its fault
    std::vector<char> taken_;
    std::vector<Shared> shared_;
    std::vector<int> shared_at_;                   // per hypothesis: where in `shared_`, or -1
    std::vector<std::pair<double, int>> members_;  // of a check: minus chance over cost, action
    std::vector<int> shared_check_;  // per action: where in together_ the check that proves it and others; -1
    std::vector<int> order_;
    int kept_ = 0;
    double not_right_ = 0;
    double so_far_ = 0;
    double best_ = 0;
};

}  // namespace hardover
