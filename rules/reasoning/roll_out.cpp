#include "rules/reasoning/roll_out.hpp"

#include <algorithm>

namespace hardover {

namespace {

constexpr double worth_a_thing = 1e-9;  // share of the minutes that a step must save to count: rounding

bool fewer(double a, double b) {
    return a < b * (1 - worth_a_thing);
}

}  // namespace

RollOut::RollOut(Outlook& outlook, const LookLimits& limits) : outlook_(outlook), limits_(limits) {}

Position& RollOut::at(std::size_t depth) {
    while (positions_.size() <= depth) positions_.emplace_back();
    return positions_[depth];
}

double RollOut::plan(const Position& position) {
    spent_ += static_cast<long>(position.live.size() + position.done.size());
    return outlook_.planner().minutes(position);
}

// Without the asking, the plan following every answer.
double RollOut::after_question(const Position& position, int question, std::size_t depth) {
    Position& after = at(depth + 1);
    outlook_.ask(position, question, after);
    double minutes = 0;
    for (int reading = 0; reading < outlook_.readings_of(question); ++reading) {
        outlook_.take_answer(position, question, reading, after);
        if (after.mass > 0) minutes += plan(after);
    }
    return minutes;
}

// Expected minutes of the myopic policy from the position at this depth, times its mass.
double RollOut::follow(std::size_t depth) {
    const Position& here = at(depth);
    const auto known = followed_.find(here.key);
    if (known != followed_.end()) return known->second;
    const double planned = plan(here);
    const int first = outlook_.planner().first();
    if (spent_ >= may_spend_ || here.mass < limits_.rare * root_mass_) return planned;
    const double minutes = std::min(planned, follow_on(depth, planned, first));
    followed_.emplace(here.key, minutes);
    return minutes;
}

double RollOut::follow_on(std::size_t depth, double planned, int first) {
    const Position& here = at(depth);
    const double least = outlook_.least_minutes(here);
    double best = planned;
    int best_question = -1;
    bool any_left = false;
    for (int question : closer_) {
        if (here.asked[question]) continue;
        any_left = true;
        const double asking = here.mass * outlook_.asking(here, question);
        if (asking + least >= best) continue;
        const double total = asking + after_question(here, question, depth);
        if (!fewer(total, best)) continue;
        best = total;
        best_question = question;
    }
    if (best_question >= 0) return roll_question(depth, best_question, false);
    if (!any_left || first < 0) return planned;
    return roll_action(depth, first, false);
}

// Minutes of asking and what follows, times the mass.
double RollOut::roll_question(std::size_t depth, int question, bool deeper) {
    double minutes = at(depth).mass * outlook_.asking(at(depth), question);
    outlook_.ask(at(depth), question, at(depth + 1));
    for (int reading = 0; reading < outlook_.readings_of(question); ++reading) {
        outlook_.take_answer(at(depth), question, reading, at(depth + 1));
        if (at(depth + 1).mass > 0) minutes += deeper ? best_after(depth + 1) : follow(depth + 1);
    }
    return minutes;
}

double RollOut::roll_action(std::size_t depth, int action, bool deeper) {
    const double minutes = outlook_.acting(at(depth), action);
    outlook_.act(at(depth), action, at(depth + 1));
    if (at(depth + 1).live.empty()) return minutes;
    return minutes + (deeper ? best_after(depth + 1) : follow(depth + 1));
}

// The best step from here rolled out, times the mass.
double RollOut::best_after(std::size_t depth) {
    const Position& here = at(depth);
    const auto known = best_after_.find(here.key);
    if (known != best_after_.end()) return known->second;
    double best = follow(depth);
    if (spent_ >= may_spend_ || here.mass < limits_.rare * root_mass_) return best;
    const double least = outlook_.least_minutes(here);
    plan(here);
    const std::vector<int> order = outlook_.planner().order();
    std::vector<std::pair<double, int>> questions;
    for (int question : closer_) {
        if (here.asked[question]) continue;
        const double asking = here.mass * outlook_.asking(here, question);
        if (asking + least >= best) continue;
        questions.push_back({asking + after_question(here, question, depth), question});
    }
    std::sort(questions.begin(), questions.end());
    for (std::size_t n = 0; n < std::min(limits_.looked_deeper, questions.size()); ++n) {
        best = std::min(best, roll_question(depth, questions[n].second, false));
    }
    for (std::size_t n = 0; n < std::min(limits_.actions, order.size()); ++n) {
        best = std::min(best, roll_action(depth, order[n], false));
    }
    best_after_.emplace(here.key, best);
    return best;
}

void RollOut::weigh_questions(const Position& position, std::vector<Weighed>& steps) {
    const double planned = plan(position);
    const double least = outlook_.least_minutes(position);
    for (std::size_t q = 0; q < position.asked.size(); ++q) {
        if (position.asked[q]) continue;
        const int question = static_cast<int>(q);
        Weighed step;
        step.index = question;
        step.minutes = outlook_.asking(position, question);
        const bool cannot_pay = step.minutes * position.mass + least >= planned;
        step.alone = cannot_pay ? planned : std::min(planned, after_question(position, question, 0));
        step.alone /= position.mass;
        step.after = step.alone;
        steps.push_back(step);
    }
}

// Half by what they save, half by what they tell for their minutes: two answers together may save what
// neither saves alone.
void RollOut::choose_questions(const std::vector<Weighed>& questions) {
    closer_.clear();
    std::vector<std::pair<double, int>> by_total;
    std::vector<std::pair<double, int>> by_rate;
    for (const Weighed& step : questions) {
        by_total.push_back({step.total(), step.index});
        const double bits = outlook_.information(step.index);
        if (bits > worth_a_thing) by_rate.push_back({-bits / step.minutes, step.index});
    }
    std::sort(by_total.begin(), by_total.end());
    std::sort(by_rate.begin(), by_rate.end());
    for (std::size_t n = 0; n < questions.size() && closer_.size() < limits_.questions; ++n) {
        for (const auto* list : {&by_total, &by_rate}) {
            if (n >= list->size() || closer_.size() == limits_.questions) continue;
            const int question = (*list)[n].second;
            const bool tells = std::any_of(by_rate.begin(), by_rate.end(),
                                           [&](const auto& rated) { return rated.second == question; });
            const bool listed = std::find(closer_.begin(), closer_.end(), question) != closer_.end();
            if (tells && !listed) closer_.push_back(question);
        }
    }
}

// Every step gets an equal share of the work that is left.
void RollOut::roll_out(std::vector<Weighed>& steps, bool deeper) {
    const double mass = at(0).mass;
    const double least = outlook_.least_minutes(at(0)) / mass;
    double best = follow(0) / mass;
    for (std::size_t n = 0; n < steps.size(); ++n) {
        Weighed& step = steps[n];
        // A remedy's minutes are part of the least already.
        if (step.minutes + (step.kind == Weighed::Kind::ask ? least : 0) > best) continue;
        may_spend_ = spent_ + (limits_.work - spent_) / static_cast<long>(steps.size() - n);
        const double total = step.kind == Weighed::Kind::ask ? roll_question(0, step.index, deeper)
                                                             : roll_action(0, step.index, deeper);
        step.after = std::min(step.after, total / mass - step.minutes);
        step.rolled = true;
        best = std::min(best, step.total());
    }
}

std::vector<Weighed> RollOut::weigh(const Position& position) {
    followed_.clear();
    best_after_.clear();
    spent_ = 0;
    may_spend_ = limits_.work;
    at(0) = position;
    root_mass_ = position.mass;
    const auto by_total = [](const Weighed& a, const Weighed& b) {
        if (a.total() != b.total()) return a.total() < b.total();
        if (a.minutes != b.minutes) return a.minutes < b.minutes;
        return a.kind != b.kind ? a.kind < b.kind : a.index < b.index;
    };
    std::vector<Weighed> questions;
    weigh_questions(position, questions);
    choose_questions(questions);
    std::vector<Weighed> close;
    std::vector<Weighed> others;
    for (const Weighed& step : questions) {
        const bool closely = std::find(closer_.begin(), closer_.end(), step.index) != closer_.end();
        (closely ? close : others).push_back(step);
    }
    const double planned = plan(position);
    const std::vector<int> order = outlook_.planner().order();
    for (std::size_t n = 0; n < std::min(limits_.actions, order.size()); ++n) {
        Weighed step;
        step.kind = Weighed::Kind::act;
        step.index = order[n];
        step.minutes = outlook_.acting(position, order[n]) / position.mass;
        step.after = n == 0 ? planned / position.mass - step.minutes : 1e300;
        close.push_back(step);
    }
    std::sort(close.begin(), close.end(), by_total);
    roll_out(close, false);
    std::sort(close.begin(), close.end(), by_total);
    const std::size_t deeper = std::min(limits_.looked_deeper, close.size());
    if (deeper > 1) {
        std::vector<Weighed> first(close.begin(), close.begin() + static_cast<std::ptrdiff_t>(deeper));
        roll_out(first, true);
        std::copy(first.begin(), first.end(), close.begin());
    }
    if (order.empty()) {
        close.push_back({Weighed::Kind::call_for_help, -1, planned / position.mass, 0, 0, true});
    }
    std::erase_if(close, [](const Weighed& step) { return step.after > 1e200; });
    close.insert(close.end(), others.begin(), others.end());
    std::sort(close.begin(), close.end(), by_total);
    return close;
}

double RollOut::minutes_applying(const Position& position, int action) {
    at(0) = position;
    at(0).step_minutes[action] = outlook_.decision().repairs.actions[action].minutes;
    at(0).extra_minutes[action] = 0;
    root_mass_ = position.mass;
    followed_.clear();
    spent_ = 0;
    may_spend_ = limits_.work;
    return roll_action(0, action, false) / position.mass;
}

int RollOut::first_after(const Position& position, int question, int reading) {
    Position after;
    outlook_.ask(position, question, after);
    outlook_.take_answer(position, question, reading, after);
    if (after.mass < limits_.rare * position.mass) return -2;
    plan(after);
    return outlook_.planner().first();
}

bool RollOut::may_change(const Position& position, int question) {
    const auto differs = [&](const Position& from) {
        int seen = -2;
        for (int reading = 0; reading < outlook_.readings_of(question); ++reading) {
            const int first = first_after(from, question, reading);
            if (first == -2) continue;
            if (seen != -2 && first != seen) return true;
            seen = first;
        }
        return false;
    };
    if (differs(position)) return true;
    for (int other : closer_) {
        if (other == question) continue;
        Position after;
        outlook_.ask(position, other, after);
        for (int reading = 0; reading < outlook_.readings_of(other); ++reading) {
            outlook_.take_answer(position, other, reading, after);
            if (after.mass >= limits_.rare * position.mass && differs(after)) return true;
        }
    }
    return false;
}

}  // namespace hardover
