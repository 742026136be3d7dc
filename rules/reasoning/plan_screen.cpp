#include "rules/reasoning/plan_screen.hpp"

#include <algorithm>

namespace hardover {

PlanScreen::PlanScreen(const RepairModel& model, const Standing& start, const std::vector<int>& order,
                       const std::vector<double>& each)
    : model_(model), each_(each), action_at_(order), steps_(order.size()) {
    const std::size_t actions = model.actions.size();
    std::vector<int> place(actions, -1);
    for (std::size_t n = 0; n < order.size(); ++n) place[order[n]] = static_cast<int>(n);
    for (std::size_t a = 0; a < actions; ++a) {
        if (place[a] >= 0) continue;
        place[a] = static_cast<int>(action_at_.size());
        action_at_.push_back(static_cast<int>(a));
    }
    const int steps = static_cast<int>(steps_);
    for (const RepairNeed& need : model.needs) {
        const bool hopeless = need.hopeless || need.actions.empty();
        int turn = hopeless || need.any_one ? steps : 0;
        for (int action : need.actions) {
            if (hopeless) break;
            turn = need.any_one ? std::min(turn, place[action]) : std::max(turn, place[action]);
        }
        turn_.push_back(std::min(turn, steps));
        sole_.push_back(need.actions.size() == 1 && !hopeless ? place[need.actions.front()] : -1);
    }
    minutes_of_steps(start);
    start_step_ = step_;
    start_extra_ = extra_;
    reached_.resize(steps_ + 1);
    in_vain_ = model.call_for_help;
    for (int action : order) in_vain_ += start.step_minutes[action];
}

void PlanScreen::minutes_of_steps(const Standing& here) {
    step_.resize(action_at_.size());
    extra_.resize(action_at_.size());
    for (std::size_t p = 0; p < action_at_.size(); ++p) {
        step_[p] = here.step_minutes[action_at_[p]];
        extra_[p] = here.extra_minutes[action_at_[p]];
    }
}

void PlanScreen::stand_at(const Standing& here) {
    minutes_of_steps(here);
    weight_.assign(model_.needs.size(), 0.0);
    const std::vector<double> nothing(action_at_.size(), 0.0);
    whole_ = {0, 0, std::vector<double>(steps_ + 1, 0.0), nothing, nothing};
    for (std::size_t n = 0; n < here.live.size(); ++n) {
        const int hypothesis = here.live[n];
        const double weight = here.weight[n];
        const double paid_for = weight * each_[hypothesis];
        weight_[hypothesis] = weight;
        whole_.mass += weight;
        whole_.planned += paid_for;
        whole_.put_right[turn_[hypothesis]] += weight;
        if (sole_[hypothesis] < 0) continue;
        whole_.present[sole_[hypothesis]] += weight;
        whole_.paid[sole_[hypothesis]] += paid_for;
    }
    now_.put_right.resize(steps_ + 1);
    now_.present.resize(action_at_.size());
    now_.paid.resize(action_at_.size());
}

void PlanScreen::add(int hypothesis, const Two& weight) {
    const Two paid_for = weight * each_[hypothesis];
    now_.mass += weight;
    now_.planned += paid_for;
    now_.put_right[turn_[hypothesis]] += weight;
    const int sole = sole_[hypothesis];
    if (sole < 0) return;
    now_.present[sole] += weight;
    now_.paid[sole] += paid_for;
}

// Saved by leaving out the steps that are not worth their minutes any more, each judged by itself, or by
// what a step costs less now that its proof is answered.
Two PlanScreen::saved_on_the_way() const {
    Two saved;
    for (std::size_t n = 0; n < steps_; ++n) {
        const Two& present = now_.present[n];
        const double step = start_step_[n];
        const Two cheaper = reached_[n] * (step - step_[n]) + present * (start_extra_[n] - extra_[n]);
        const Two missed = present * (in_vain_ - step) - now_.paid[n];
        const Two left_out = (reached_[n] - present) * step - greater(missed, Two());
        saved += greater(cheaper, left_out);
    }
    return saved;
}

// Saved by taking one remedy first and the plan after it.
Two PlanScreen::saved_by_going_first() const {
    Two saved;
    for (std::size_t n = 0; n < steps_; ++n) {
        const Two spared = now_.paid[n] + reached_[n + 1] * start_step_[n];
        saved = greater(saved, spared - now_.mass * step_[n] - now_.present[n] * extra_[n]);
    }
    for (std::size_t p = steps_; p < action_at_.size(); ++p) {
        saved = greater(saved, now_.paid[p] - now_.mass * step_[p] - now_.present[p] * extra_[p]);
    }
    return saved;
}

Two PlanScreen::estimate() {
    reached_[0] = now_.mass;
    for (std::size_t n = 0; n < steps_; ++n) reached_[n + 1] = reached_[n] - now_.put_right[n];
    const Two saved = greater(saved_on_the_way(), saved_by_going_first());
    return smaller(now_.planned - saved, now_.mass * model_.call_for_help);
}

double PlanScreen::minutes(const Standing& here) {
    static constexpr AfterAnswer nothing_new{1, nullptr};
    stand_at(here);
    return minutes_after(nothing_new, {}, {}).first();
}

Two PlanScreen::minutes_after(const AfterAnswer& first, const AfterAnswer& second,
                              std::span<const int> concerned) {
    const Two rest{first.rest, second.rest};
    now_.mass = rest * whole_.mass;
    now_.planned = rest * whole_.planned;
    for (std::size_t n = 0; n <= steps_; ++n) now_.put_right[n] = rest * whole_.put_right[n];
    for (std::size_t p = 0; p < action_at_.size(); ++p) now_.present[p] = rest * whole_.present[p];
    for (std::size_t p = 0; p < action_at_.size(); ++p) now_.paid[p] = rest * whole_.paid[p];
    const double* chances_of_second = second.chances ? second.chances : first.chances;
    const double second_there = second.chances ? 1 : 0;
    for (int h : concerned) {
        const Two chances{first.chances[h], chances_of_second[h] * second_there};
        add(h, (chances - rest) * weight_[h]);
    }
    return estimate();
}

}  // namespace hardover
