#include "rules/reasoning/plan_screen.hpp"

#include <algorithm>

namespace hardover {

PlanScreen::PlanScreen(const RepairModel& model, const Standing& start, const std::vector<int>& order,
                       const std::vector<double>& each)
    : model_(model), start_(start), each_(each), order_(order) {
    const int steps = static_cast<int>(order.size());
    turn_of_.assign(model.actions.size(), steps);
    for (int n = 0; n < steps; ++n) turn_of_[order[n]] = n;
    for (const RepairNeed& need : model.needs) {
        const bool hopeless = need.hopeless || need.actions.empty();
        int turn = hopeless || need.any_one ? steps : 0;
        for (int action : need.actions) {
            if (hopeless) break;
            turn = need.any_one ? std::min(turn, turn_of_[action]) : std::max(turn, turn_of_[action]);
        }
        turn_.push_back(turn);
        sole_.push_back(need.actions.size() == 1 && !hopeless ? need.actions.front() : -1);
    }
    put_right_.resize(order.size() + 1);
    present_.resize(model.actions.size());
    paid_.resize(model.actions.size());
    in_vain_ = model.call_for_help;
    for (int action : order) in_vain_ += start.step_minutes[action];
}

// Who is put right when, and what the plan from the start comes to.
double PlanScreen::gather(const Standing& here) {
    std::fill(put_right_.begin(), put_right_.end(), 0.0);
    std::fill(present_.begin(), present_.end(), 0.0);
    std::fill(paid_.begin(), paid_.end(), 0.0);
    double planned = 0;
    for (std::size_t n = 0; n < here.live.size(); ++n) {
        const int h = here.live[n];
        const double weight = here.weight[n];
        const double paid = weight * each_[h];
        planned += paid;
        put_right_[turn_[h]] += weight;
        if (sole_[h] < 0) continue;
        present_[sole_[h]] += weight;
        paid_[sole_[h]] += paid;
    }
    return planned;
}

// Saved by leaving out the steps that are not worth their minutes any more, each judged by itself, or by
// what a step costs less now that its proof is answered.
double PlanScreen::saved_on_the_way(const Standing& here) const {
    double saved = 0;
    double reached = here.mass;
    for (std::size_t n = 0; n < order_.size(); ++n) {
        const int action = order_[n];
        const double step = start_.step_minutes[action];
        const double cheaper = (step - here.step_minutes[action]) * reached +
                               (start_.extra_minutes[action] - here.extra_minutes[action]) * present_[action];
        const double missed = present_[action] * (in_vain_ - step) - paid_[action];
        const double left_out = step * (reached - present_[action]) - std::max(0.0, missed);
        saved += std::max(cheaper, left_out);
        reached -= put_right_[n];
    }
    return saved;
}

// Saved by taking one remedy first and the plan after it.
double PlanScreen::saved_by_going_first(const Standing& here) const {
    double saved = 0;
    const auto minutes_first = [&](std::size_t action) {
        return here.step_minutes[action] * here.mass + here.extra_minutes[action] * present_[action];
    };
    double after_turn = here.mass;
    for (std::size_t n = 0; n < order_.size(); ++n) {
        const auto action = static_cast<std::size_t>(order_[n]);
        after_turn -= put_right_[n];
        const double spared = paid_[action] + start_.step_minutes[action] * after_turn;
        saved = std::max(saved, spared - minutes_first(action));
    }
    for (std::size_t a = 0; a < turn_of_.size(); ++a) {
        const bool in_plan = turn_of_[a] < static_cast<int>(order_.size());
        if (!in_plan && present_[a] > 0) saved = std::max(saved, paid_[a] - minutes_first(a));
    }
    return saved;
}

double PlanScreen::minutes(const Standing& here) {
    const double planned = gather(here);
    const double saved = std::max(saved_on_the_way(here), saved_by_going_first(here));
    return std::min(planned - saved, here.mass * model_.call_for_help);
}

}  // namespace hardover
