#include "rules/reasoning/repair_plan.hpp"

#include <algorithm>
#include <numeric>

namespace hardover {

namespace {

// A remedy whose chance times the price of help is below this share of its own cost ends the plan: what comes
// after it is worth less still, but for what it makes possible.
constexpr double hardly_worth_it = 0.3;

constexpr double not_bounded = 1e300;

constexpr double nothing = 1e-13;  // share of the mass below which an action puts nothing right: rounding

}  // namespace

RepairPlanner::RepairPlanner(const RepairModel& model) : model_(model) {
    for (const RepairAction& action : model.actions) any_proof_ = any_proof_ || action.proved_first();
    for (const RepairNeed& need : model.needs) {
        sole_.push_back(need.actions.size() == 1 && !need.hopeless ? need.actions.front() : -1);
        double minutes = model.call_for_help;
        std::uint64_t bits = 0;
        for (int action : need.actions) {
            bits |= bit_of(action);
            if (need.hopeless) continue;
            const RepairAction& a = model.actions[action];
            minutes = std::min(minutes, a.minutes - (a.proved_first() ? 0 : a.proof_setting_up));
        }
        least_minutes_.push_back(minutes);
        bits_.push_back(bits);
    }
    const std::size_t actions = model.actions.size();
    shared_at_.assign(model.needs.size(), -1);
    std::vector<std::pair<int, int>> hypotheses_of;  // action, hypothesis
    for (std::size_t h = 0; h < model.needs.size(); ++h) {
        if (sole_[h] >= 0 || model.needs[h].hopeless) continue;
        for (int action : model.needs[h].actions) hypotheses_of.push_back({action, static_cast<int>(h)});
    }
    hypotheses_of_ = Rows<int>::of_pairs(actions, hypotheses_of);
    cures_.resize(actions);
    present_.resize(actions);
    rates_ = Greatest(actions);
    taken_.resize(actions);
    shared_check_.assign(actions, -1);
    std::vector<std::pair<int, int>> proved_by;  // check, action
    int checks = 0;
    for (std::size_t a = 0; a < actions; ++a) {
        const int check = model.actions[a].proof_check;
        if (check >= 0) proved_by.push_back({check, static_cast<int>(a)});
        checks = std::max(checks, check + 1);
    }
    proved_by_ = Rows<int>::of_pairs(static_cast<std::size_t>(checks), proved_by);
    for (std::size_t c = 0; c < proved_by_.size(); ++c) {
        if (proved_by_[c].size() < 2) continue;
        for (int action : proved_by_[c]) shared_check_[action] = static_cast<int>(together_.size());
        together_.push_back({static_cast<int>(c)});
    }
    most_together_.resize(together_.size());
}

Standing RepairPlanner::start(const std::vector<double>& weights) const {
    Standing standing;
    for (std::size_t h = 0; h < weights.size(); ++h) {
        if (!(weights[h] > 0)) continue;
        standing.live.push_back(static_cast<int>(h));
        standing.weight.push_back(weights[h]);
        standing.mass += weights[h];
    }
    standing.done.assign(model_.actions.size(), 0);
    for (const RepairAction& action : model_.actions) {
        standing.step_minutes.push_back(action.proved_first() ? action.proof_minutes : action.minutes);
        standing.extra_minutes.push_back(action.proved_first() ? action.minutes : 0);
    }
    standing.set_up.assign(proved_by_.size(), 0);
    return standing;
}

void RepairPlanner::set_up_check(int check, Standing& standing) const {
    if (check < 0 || standing.set_up[check]) return;
    standing.set_up[check] = 1;
    if (static_cast<std::size_t>(check) >= proved_by_.size()) return;
    for (int action : proved_by_[check]) {
        if (!needs_check(standing, action)) continue;
        standing.step_minutes[action] -= model_.actions[action].proof_setting_up;
    }
}

bool RepairPlanner::needs(int hypothesis, int action) const {
    if ((bits_[hypothesis] & bit_of(action)) == 0) return false;
    if (model_.actions.size() <= 64) return true;
    const std::vector<int>& actions = model_.needs[hypothesis].actions;
    return std::find(actions.begin(), actions.end(), action) != actions.end();
}

double RepairPlanner::present(const Standing& standing, int action) const {
    double mass = 0;
    for (std::size_t n = 0; n < standing.live.size(); ++n) {
        if (needs(standing.live[n], action)) mass += standing.weight[n];
    }
    return mass;
}

void RepairPlanner::apply(int action, const Standing& before, Standing& after) const {
    after.done = before.done;
    after.done[action] = 1;
    after.step_minutes = before.step_minutes;
    after.extra_minutes = before.extra_minutes;
    after.set_up = before.set_up;
    if (needs_check(before, action)) set_up_check(model_.actions[action].proof_check, after);
    after.live.clear();
    after.weight.clear();
    after.mass = 0;
    for (std::size_t n = 0; n < before.live.size(); ++n) {
        const RepairNeed& need = model_.needs[before.live[n]];
        bool right = sole_[before.live[n]] == action;
        if (sole_[before.live[n]] < 0 && !need.hopeless) {
            const auto is_done = [&](int a) { return after.done[a] != 0; };
            right = need.any_one ? std::any_of(need.actions.begin(), need.actions.end(), is_done)
                                 : std::all_of(need.actions.begin(), need.actions.end(), is_done);
        }
        if (right) continue;
        after.live.push_back(before.live[n]);
        after.weight.push_back(before.weight[n]);
        after.mass += before.weight[n];
    }
}

// Which actions put what right, before the first step.
void RepairPlanner::gather(const Standing& standing) {
    std::fill(cures_.begin(), cures_.end(), 0.0);
    if (any_proof_) std::fill(present_.begin(), present_.end(), 0.0);
    std::copy(standing.done.begin(), standing.done.end(), taken_.begin());
    for (const Shared& shared : shared_) shared_at_[shared.hypothesis] = -1;
    shared_.clear();
    for (std::size_t n = 0; n < standing.live.size(); ++n) {
        const int h = standing.live[n];
        const double weight = standing.weight[n];
        if (sole_[h] >= 0) {
            cures_[sole_[h]] += weight;
            if (any_proof_) present_[sole_[h]] += weight;
            continue;
        }
        const RepairNeed& need = model_.needs[h];
        int left = 0;
        int last = -1;
        for (int action : need.actions) {
            if (any_proof_) present_[action] += weight;
            if (taken_[action]) continue;
            ++left;
            last = action;
            if (need.any_one && !need.hopeless) cures_[action] += weight;
        }
        if (need.hopeless || left == 0) continue;
        if (!need.any_one && left == 1) cures_[last] += weight;
        shared_at_[h] = static_cast<int>(shared_.size());
        shared_.push_back({h, weight, left});
    }
}

// Chance over the minutes of its next step; 0 when it is not to be taken.
double RepairPlanner::rate(int action) const {
    const bool counts = cures_[action] > least_ && !taken_[action];
    return counts ? cures_[action] / now_.step_minutes[action] : 0;
}

// After its chance or its minutes have changed.
void RepairPlanner::rate_again(int action) {
    const int shared = shared_check_[action];
    if (shared >= 0 && !now_.set_up[together_[shared].check]) most_together_[shared] = not_bounded;
    rates_.set(action, rate(action));
}

std::pair<double, int> RepairPlanner::best_action() {
    int best = rates_.first();
    double best_rate = best < 0 ? 0 : rates_.at(best);
    const double* most = most_together_.data();
    for (std::size_t s = 0, count = together_.size(); s < count; ++s) {
        if (most[s] <= best_rate) continue;
        if (most[s] == not_bounded) bound_together(s);
        if (most[s] <= best_rate) continue;
        Together& together = together_[s];
        if (!together.weighed) weigh_together(together);
        if (together.rate <= best_rate) continue;
        best_rate = together.rate;
        best = together.first;
    }
    return {best_rate, best};
}

// All proofs for the setting up and the minutes of the shortest: they cannot do better.
void RepairPlanner::bound_together(std::size_t shared) {
    Together& together = together_[shared];
    together = {together.check, false, 0, -1};
    most_together_[shared] = 0;
    if (now_.set_up[together.check]) return;
    double all = 0;
    double shortest = 1e300;
    double setting_up = 0;
    int members = 0;
    for (int action : proved_by_[together.check]) {
        if (cures_[action] <= least_ || taken_[action] || !needs_check(now_, action)) continue;
        setting_up = model_.actions[action].proof_setting_up;
        all += cures_[action];
        shortest = std::min(shortest, now_.step_minutes[action] - setting_up);
        ++members;
    }
    if (members > 1) most_together_[shared] = all / (setting_up + shortest);
}

// The proofs of one check (or what one opening makes room for) taken together, its setting up paid once: the
// best chance over cost of the first few of them, and the first (Ottosen & Jensen 2010, cost clusters).
void RepairPlanner::weigh_together(Together& together) {
    together.weighed = true;
    members_.clear();
    for (int action : proved_by_[together.check]) {
        if (cures_[action] <= least_ || taken_[action] || !needs_check(now_, action)) continue;
        const double minutes = now_.step_minutes[action] - model_.actions[action].proof_setting_up;
        members_.push_back({-cures_[action] / std::max(minutes, 1e-9), action});
    }
    std::sort(members_.begin(), members_.end());
    double chance = 0;
    double minutes = model_.actions[members_.front().second].proof_setting_up;
    for (const auto& [rate, action] : members_) {
        chance += cures_[action];
        minutes += now_.step_minutes[action] - model_.actions[action].proof_setting_up;
        if (chance / minutes <= together.rate) continue;
        together.rate = chance / minutes;
        together.first = members_.front().second;
    }
}

// A check of several proofs set up on the way: all of them are cheaper.
void RepairPlanner::set_up_in_plan(int shared) {
    const int check = together_[shared].check;
    if (now_.set_up[check]) return;
    set_up_check(check, now_);
    for (int action : proved_by_[check]) {
        if (rates_.at(action) > 0) rates_.set(action, rate(action));
    }
    most_together_[shared] = 0;
}

// One step more in the plan; help may be called after it.
void RepairPlanner::take(int action) {
    so_far_ += not_right_ * now_.step_minutes[action];
    if (now_.extra_minutes[action] > 0) {
        so_far_ += present_[action] * now_.extra_minutes[action];
    }
    not_right_ = std::max(0.0, not_right_ - cures_[action]);
    taken_[action] = 1;
    rate_again(action);
    // A check that nothing else needs makes nothing else cheaper.
    if (shared_check_[action] >= 0 && needs_check(now_, action)) set_up_in_plan(shared_check_[action]);
    order_.push_back(action);
    tell_others(action);
    const double here = so_far_ + not_right_ * model_.call_for_help;
    if (here < best_) {
        best_ = here;
        kept_ = static_cast<int>(order_.size());
    }
}

// What hypotheses with several actions make of it for their other actions.
void RepairPlanner::tell_others(int action) {
    for (int hypothesis : hypotheses_of_[action]) {
        if (shared_at_[hypothesis] < 0) continue;
        Shared& shared = shared_[shared_at_[hypothesis]];
        if (shared.left == 0) continue;
        const RepairNeed& need = model_.needs[shared.hypothesis];
        if (need.any_one) {
            for (int other : need.actions) {
                cures_[other] -= shared.weight;
                rate_again(other);
            }
            shared.left = 0;
        } else if (--shared.left == 1) {
            const auto last =
                std::find_if(need.actions.begin(), need.actions.end(), [&](int a) { return taken_[a] == 0; });
            cures_[*last] += shared.weight;
            rate_again(*last);
        }
    }
}

// When no single action would put anything right: all that the most promising hypothesis needs.
bool RepairPlanner::take_block() {
    int best = -1;
    double best_rate = 0;
    for (const Shared& shared : shared_) {
        if (shared.left < 2) continue;
        double minutes = 0;
        for (int action : model_.needs[shared.hypothesis].actions) {
            if (!taken_[action]) minutes += now_.step_minutes[action];
        }
        if (shared.weight / minutes > best_rate) {
            best_rate = shared.weight / minutes;
            best = shared.hypothesis;
        }
    }
    if (best < 0) return false;
    for (int action : model_.needs[best].actions) {
        if (!taken_[action]) take(action);
    }
    return true;
}

double RepairPlanner::minutes(const Standing& standing) {
    now_.step_minutes = standing.step_minutes;
    now_.extra_minutes = standing.extra_minutes;
    now_.set_up = standing.set_up;
    least_ = nothing * standing.mass;
    gather(standing);
    rates_.set_all(cures_.size(), [&](int action) { return rate(action); });
    std::fill(most_together_.begin(), most_together_.end(), not_bounded);
    order_.clear();
    kept_ = 0;
    so_far_ = 0;
    not_right_ = standing.mass;
    best_ = not_right_ * model_.call_for_help;
    while (so_far_ < best_) {
        const auto [rate, action] = best_action();
        if (action >= 0) {
            if (rate * model_.call_for_help < hardly_worth_it * not_right_) break;
            take(action);
        } else if (!take_block()) {
            break;
        }
    }
    return best_;
}

RepairPlan RepairPlanner::plan(const std::vector<double>& weights, const std::vector<char>& proof_known) {
    Standing standing = start(weights);
    for (std::size_t a = 0; a < proof_known.size(); ++a) {
        if (!proof_known[a]) continue;
        standing.step_minutes[a] = model_.actions[a].minutes;
        standing.extra_minutes[a] = 0;
    }
    RepairPlan plan;
    plan.minutes = minutes(standing);
    plan.order = order();
    return plan;
}

std::vector<double> RepairPlanner::minutes_each(const std::vector<int>& order,
                                                const Standing& standing) const {
    Standing along;
    along.step_minutes = standing.step_minutes;
    along.extra_minutes = standing.extra_minutes;
    along.set_up = standing.set_up;
    std::vector<double> steps;
    for (int action : order) {
        steps.push_back(along.step_minutes[action]);
        if (needs_check(along, action)) set_up_check(model_.actions[action].proof_check, along);
    }
    std::vector<double> each(model_.needs.size(), 0.0);
    for (int h : standing.live) {
        const RepairNeed& need = model_.needs[h];
        int left = 0;
        for (int action : need.actions) left += standing.done[action] ? 0 : 1;
        if (need.any_one) left = std::min(left, 1);
        double& minutes = each[h];
        bool right = false;
        for (std::size_t n = 0; n < order.size() && !right; ++n) {
            const bool acts = needs(h, order[n]);
            minutes += steps[n] + (acts ? standing.extra_minutes[order[n]] : 0);
            right = acts && --left <= 0 && !need.hopeless;
        }
        if (!right) minutes += model_.call_for_help;
    }
    return each;
}

double RepairPlanner::minutes_of(const std::vector<int>& order, const std::vector<double>& weights,
                                 const std::vector<char>& proof_known) const {
    Standing standing = start(weights);
    for (std::size_t a = 0; a < proof_known.size(); ++a) {
        if (!proof_known[a]) continue;
        standing.step_minutes[a] = model_.actions[a].minutes;
        standing.extra_minutes[a] = 0;
    }
    const std::vector<double> each = minutes_each(order, standing);
    return std::inner_product(weights.begin(), weights.end(), each.begin(), 0.0);
}

}  // namespace hardover
