#include "rules/reasoning/repair_plan.hpp"

#include <algorithm>
#include <numeric>

namespace hardover {

RepairPlanner::RepairPlanner(const RepairModel& model) : model_(model) {
    hypotheses_of_.resize(model.actions.size());
    for (std::size_t h = 0; h < model.needs.size(); ++h) {
        for (int action : model.needs[h].actions) hypotheses_of_[action].push_back(static_cast<int>(h));
    }
}

bool RepairPlanner::proved_first(int action, const std::vector<char>& proof_known) const {
    return model_.actions[action].proved_first() && !proof_known[action];
}

double RepairPlanner::step_minutes(int action, const std::vector<char>& proof_known) const {
    const RepairAction& a = model_.actions[action];
    return proved_first(action, proof_known) ? a.proof_minutes : a.minutes;
}

// When no single action would put anything right: all that the most promising hypothesis needs.
std::vector<int> RepairPlanner::heaviest_block(const std::vector<double>& weights,
                                               const std::vector<char>& proof_known,
                                               const std::vector<char>& done) const {
    std::vector<int> best;
    double best_ratio = 0;
    for (std::size_t h = 0; h < model_.needs.size(); ++h) {
        if (model_.needs[h].hopeless || left_[h] == 0 || weights[h] <= 0) continue;
        std::vector<int> block;
        double minutes = 0;
        for (int action : model_.needs[h].actions) {
            if (done[action]) continue;
            block.push_back(action);
            minutes += step_minutes(action, proof_known);
        }
        if (weights[h] / minutes > best_ratio) {
            best_ratio = weights[h] / minutes;
            best = std::move(block);
        }
    }
    return best;
}

std::vector<int> RepairPlanner::greedy_order(const std::vector<double>& weights,
                                             const std::vector<char>& proof_known) {
    const std::size_t actions = model_.actions.size();
    left_.resize(model_.needs.size());
    per_minute_.assign(actions, 0.0);
    for (std::size_t h = 0; h < model_.needs.size(); ++h) {
        const RepairNeed& need = model_.needs[h];
        left_[h] = static_cast<int>(need.actions.size());
        if (!need.hopeless && left_[h] == 1) per_minute_[need.actions.front()] += weights[h];
    }
    for (std::size_t a = 0; a < actions; ++a) {
        per_minute_[a] /= step_minutes(static_cast<int>(a), proof_known);
    }
    std::vector<char> done(actions, 0);
    std::vector<int> order;
    const auto apply = [&](int action) {
        order.push_back(action);
        done[action] = 1;
        per_minute_[action] = 0;
        for (int h : hypotheses_of_[action]) {
            const RepairNeed& need = model_.needs[h];
            if (--left_[h] != 1 || need.hopeless) continue;
            const auto last =
                std::find_if(need.actions.begin(), need.actions.end(), [&](int a) { return !done[a]; });
            per_minute_[*last] += weights[h] / step_minutes(*last, proof_known);
        }
    };
    for (;;) {
        const auto best = std::max_element(per_minute_.begin(), per_minute_.end());
        if (best != per_minute_.end() && *best > 0) {
            apply(static_cast<int>(best - per_minute_.begin()));
            continue;
        }
        const std::vector<int> block = heaviest_block(weights, proof_known, done);
        if (block.empty()) return order;
        for (int action : block) apply(action);
    }
}

// Walks along an order; `visit(k, minutes)` gets the expected minutes when help is called after k steps.
template <typename Visit>
void RepairPlanner::walk(const std::vector<int>& order, const std::vector<double>& weights,
                         const std::vector<char>& proof_known, Visit visit) {
    double not_right = std::accumulate(weights.begin(), weights.end(), 0.0);
    left_.resize(model_.needs.size());
    for (std::size_t h = 0; h < left_.size(); ++h) {
        left_[h] = static_cast<int>(model_.needs[h].actions.size());
    }
    double so_far = 0;
    visit(std::size_t{0}, not_right * model_.call_for_help);
    for (std::size_t k = 0; k < order.size(); ++k) {
        const int action = order[k];
        so_far += not_right * step_minutes(action, proof_known);
        double present = 0;
        for (int h : hypotheses_of_[action]) {
            present += weights[h];
            if (--left_[h] == 0 && !model_.needs[h].hopeless) not_right -= weights[h];
        }
        not_right = std::max(0.0, not_right);
        if (proved_first(action, proof_known)) so_far += present * model_.actions[action].minutes;
        visit(k + 1, so_far + not_right * model_.call_for_help);
    }
}

RepairPlan RepairPlanner::plan(const std::vector<double>& weights, const std::vector<char>& proof_known) {
    RepairPlan plan;
    plan.order = greedy_order(weights, proof_known);
    std::size_t kept = 0;
    walk(plan.order, weights, proof_known, [&](std::size_t steps, double minutes) {
        if (steps > 0 && minutes >= plan.minutes) return;
        plan.minutes = minutes;
        kept = steps;
    });
    plan.order.resize(kept);
    return plan;
}

double RepairPlanner::minutes_of(const std::vector<int>& order, const std::vector<double>& weights,
                                 const std::vector<char>& proof_known) {
    double minutes = 0;
    walk(order, weights, proof_known, [&](std::size_t, double after) { minutes = after; });
    return minutes;
}

}  // namespace hardover
