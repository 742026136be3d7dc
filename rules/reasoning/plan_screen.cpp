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

void PlanScreen::Shares::add(const PlanScreen& screen, int hypothesis, double weight) {
    const double paid_for = weight * screen.each_[hypothesis];
    mass += weight;
    planned += paid_for;
    put_right[screen.turn_[hypothesis]] += weight;
    const int sole = screen.sole_[hypothesis];
    if (sole < 0) return;
    present[sole] += weight;
    paid[sole] += paid_for;
}

void PlanScreen::Shares::scale_of(const Shares& whole, double share) {
    mass = share * whole.mass;
    planned = share * whole.planned;
    for (std::size_t n = 0; n < put_right.size(); ++n) put_right[n] = share * whole.put_right[n];
    for (std::size_t p = 0; p < present.size(); ++p) present[p] = share * whole.present[p];
    for (std::size_t p = 0; p < paid.size(); ++p) paid[p] = share * whole.paid[p];
}

void PlanScreen::stand_at(const Standing& here) {
    minutes_of_steps(here);
    weight_.assign(model_.needs.size(), 0.0);
    const std::vector<double> nothing(action_at_.size(), 0.0);
    whole_ = {0, 0, std::vector<double>(steps_ + 1, 0.0), nothing, nothing};
    for (std::size_t n = 0; n < here.live.size(); ++n) {
        weight_[here.live[n]] = here.weight[n];
        whole_.add(*this, here.live[n], here.weight[n]);
    }
    now_ = whole_;
}

// Saved by leaving out the steps that are not worth their minutes any more, each judged by itself, or by
// what a step costs less now that its proof is answered.
double PlanScreen::saved_on_the_way() {
    double saved = 0;
    for (std::size_t n = 0; n < steps_; ++n) {
        const double present = now_.present[n];
        const double step = start_step_[n];
        const double cheaper = (step - step_[n]) * reached_[n] + (start_extra_[n] - extra_[n]) * present;
        const double missed = present * (in_vain_ - step) - now_.paid[n];
        const double left_out = step * (reached_[n] - present) - std::max(0.0, missed);
        saved += std::max(cheaper, left_out);
    }
    return saved;
}

// Saved by taking one remedy first and the plan after it.
double PlanScreen::saved_by_going_first() {
    double saved = 0;
    for (std::size_t n = 0; n < steps_; ++n) {
        const double spared = now_.paid[n] + start_step_[n] * reached_[n + 1];
        saved = std::max(saved, spared - step_[n] * now_.mass - extra_[n] * now_.present[n]);
    }
    for (std::size_t p = steps_; p < action_at_.size(); ++p) {
        if (now_.present[p] <= 0) continue;
        saved = std::max(saved, now_.paid[p] - step_[p] * now_.mass - extra_[p] * now_.present[p]);
    }
    return saved;
}

double PlanScreen::estimate() {
    reached_[0] = now_.mass;
    for (std::size_t n = 0; n < steps_; ++n) reached_[n + 1] = reached_[n] - now_.put_right[n];
    const double saved = std::max(saved_on_the_way(), saved_by_going_first());
    return std::min(now_.planned - saved, now_.mass * model_.call_for_help);
}

double PlanScreen::minutes(const Standing& here) {
    stand_at(here);
    return estimate();
}

double PlanScreen::minutes_after(double rest, std::span<const int> concerned, const double* chances) {
    now_.scale_of(whole_, rest);
    for (int h : concerned) {
        const double more = (chances[h] - rest) * weight_[h];
        if (more != 0) now_.add(*this, h, more);
    }
    return estimate();
}

}  // namespace hardover
