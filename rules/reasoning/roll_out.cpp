#include "rules/reasoning/roll_out.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <queue>

namespace hardover {

namespace {

constexpr double no_matter = 1e300;

constexpr double worth_a_thing = 1e-9;  // share of the minutes that a step must save to count: rounding

bool fewer(double a, double b) {
    return a < b * (1 - worth_a_thing);
}

// Minutes, or bits a minute, to be put in order: what differs by rounding alone is equal, and then the order
// of the knowledge counts. Many questions save nothing by themselves and are equal but for that.
double but_for_rounding(double x) {
    return std::round(x * 1e10);
}

}  // namespace

RollOut::RollOut(Outlook& outlook, const LookLimits& limits) : outlook_(outlook), limits_(limits) {}

Position& RollOut::at(std::size_t depth) {
    while (positions_.size() <= depth) positions_.emplace_back();
    return positions_[depth];
}

void RollOut::forget() {
    planned_.clear();
    followed_.clear();
    best_after_.clear();
}

RollOut::Planned RollOut::plan(const Position& position) {
    if (const Planned* known = planned_.find(position.key)) return *known;
    // A plan goes over its hypotheses once, and over its actions for every step; one of these is quick.
    const std::size_t actions = position.done.size();
    spent_ += static_cast<long>(position.live.size() + actions * actions / 4);
    Planned planned;
    planned.minutes = outlook_.planner().minutes(position);
    planned.first = outlook_.planner().first();
    planned.least = outlook_.least_minutes(position);
    planned_.put(position.key, planned);
    return planned;
}

// Without the asking, the plan following every answer. `least` is what no policy can do without from here;
// once more than `too_much` is certain the rest is not looked at.
double RollOut::after_question(const Position& position, int question, std::size_t depth, double least,
                               double too_much) {
    Position& after = at(depth + 1);
    bool asked = false;
    double minutes = 0;
    double still_to_come = least;
    for (int reading = 0; reading < outlook_.readings_of(question); ++reading) {
        Planned planned;
        if (const Planned* known = planned_.find(Outlook::key_after(position, question, reading))) {
            planned = *known;
        } else {
            if (!asked) outlook_.ask(position, question, after);
            asked = true;
            outlook_.take_answer(position, question, reading, after);
            if (after.mass <= 0) continue;
            planned = plan(after);
        }
        minutes += planned.minutes;
        still_to_come -= planned.least;
        if (minutes + still_to_come > too_much) return minutes + still_to_come;
    }
    return minutes;
}

// Expected minutes of the myopic policy from the position at this depth, times its mass.
double RollOut::follow(std::size_t depth) {
    const Position& here = at(depth);
    if (const double* known = followed_.find(here.key)) return *known;
    const Planned planned = plan(here);
    if (spent_ >= may_spend_ || here.mass < limits_.rare * root_mass_) return planned.minutes;
    const double minutes = std::min(planned.minutes, follow_on(depth, planned));
    followed_.put(here.key, minutes);
    return minutes;
}

double RollOut::follow_on(std::size_t depth, const Planned& planned) {
    const Position& here = at(depth);
    double best = planned.minutes;
    int best_question = -1;
    bool any_left = false;
    for (int question : closer_) {
        if (here.asked[question]) continue;
        any_left = true;
        const double asking = here.mass * outlook_.asking(here, question);
        if (asking + planned.least >= best) continue;
        const double total = asking + after_question(here, question, depth, planned.least, best - asking);
        if (!fewer(total, best)) continue;
        best = total;
        best_question = question;
    }
    if (best_question >= 0) return roll_question(depth, best_question, false);
    if (!any_left || planned.first < 0) return planned.minutes;
    return roll_action(depth, planned.first, false);
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
    if (const double* known = best_after_.find(here.key)) return *known;
    double best = follow(depth);
    if (spent_ >= may_spend_ || here.mass < limits_.rare * root_mass_) return best;
    const double least = plan(here).least;
    outlook_.planner().minutes(here);
    const std::vector<int> order = outlook_.planner().order();
    std::vector<std::pair<double, int>> questions;
    for (int question : closer_) {
        if (here.asked[question]) continue;
        const double asking = here.mass * outlook_.asking(here, question);
        if (asking + least >= best) continue;
        const double total = asking + after_question(here, question, depth, least, no_matter);
        questions.push_back({total, question});
    }
    std::sort(questions.begin(), questions.end());
    for (std::size_t n = 0; n < std::min(limits_.looked_deeper, questions.size()); ++n) {
        best = std::min(best, roll_question(depth, questions[n].second, false));
    }
    for (std::size_t n = 0; n < std::min(limits_.actions, order.size()); ++n) {
        best = std::min(best, roll_action(depth, order[n], false));
    }
    best_after_.put(here.key, best);
    return best;
}

// A plan is made after every answer of those that look best to the screen; the others save nothing by
// themselves that would make them the best.
void RollOut::weigh_questions(const Position& position, std::vector<Weighed>& steps) {
    const Planned planned = plan(position);
    std::vector<double> worked_out(position.asked.size(), -1);  // by the screen, for those like it
    std::vector<std::pair<double, std::size_t>> looks;          // total by the screen, and the step
    outlook_.screen().stand_at(position);
    for (std::size_t q = 0; q < position.asked.size(); ++q) {
        if (position.asked[q]) continue;
        const int question = static_cast<int>(q);
        Weighed step;
        step.index = question;
        step.minutes = outlook_.asking(position, question);
        step.alone = planned.minutes;
        const double asking = step.minutes * position.mass;
        if (asking + planned.least < planned.minutes) {
            double& after = worked_out[static_cast<std::size_t>(outlook_.same_as(question))];
            if (after < 0) after = outlook_.screened(position, question);
            looks.push_back({but_for_rounding(asking + after), steps.size()});
        }
        steps.push_back(step);
    }
    const std::size_t planned_after = std::min(limits_.planned_after, looks.size());
    const auto end_of_planned = looks.begin() + static_cast<std::ptrdiff_t>(planned_after);
    std::partial_sort(looks.begin(), end_of_planned, looks.end());
    for (std::size_t n = 0; n < planned_after; ++n) {
        Weighed& step = steps[looks[n].second];
        const double after = after_question(position, step.index, 0, planned.least, no_matter);
        step.alone = std::min(planned.minutes, after);
    }
    for (Weighed& step : steps) {
        step.alone /= position.mass;
        step.after = step.alone;
    }
}

// Half by what they save, half by what they tell for their minutes: two answers together may save what
// neither saves alone. What a question tells is worked out once it may be the next by what it tells at most.
void RollOut::choose_questions(const std::vector<Weighed>& questions) {
    struct Told {
        double rate = 0;  // bits a minute, or no less than that
        bool at_most = true;
        std::size_t step = 0;
    };
    const auto later = [](const Told& a, const Told& b) {
        if (a.rate != b.rate) return a.rate < b.rate;
        return a.at_most != b.at_most ? b.at_most : a.step > b.step;
    };
    std::priority_queue<Told, std::vector<Told>, decltype(later)> by_rate(later);
    std::priority_queue<std::pair<double, std::size_t>, std::vector<std::pair<double, std::size_t>>,
                        std::greater<>>
        by_total;
    std::vector<double> at_most(outlook_.decision().questions.size(), -1);  // bits, for those like it
    for (std::size_t n = 0; n < questions.size(); ++n) {
        double& bits = at_most[static_cast<std::size_t>(outlook_.same_as(questions[n].index))];
        if (bits < 0) bits = outlook_.most_information(questions[n].index);
        if (bits <= worth_a_thing) continue;
        by_total.push({questions[n].total(), n});
        by_rate.push({but_for_rounding(bits / questions[n].minutes), true, n});
    }
    closer_.clear();
    const auto look_closer_at = [&](std::size_t step) {
        const int question = questions[step].index;
        const bool listed = std::find(closer_.begin(), closer_.end(), question) != closer_.end();
        if (!listed && closer_.size() < limits_.questions) closer_.push_back(question);
    };
    while (closer_.size() < limits_.questions && !by_total.empty()) {
        look_closer_at(by_total.top().second);
        by_total.pop();
        while (by_rate.top().at_most) {
            const std::size_t step = by_rate.top().step;
            by_rate.pop();
            const double bits = outlook_.information(questions[step].index);
            by_rate.push({but_for_rounding(bits / questions[step].minutes), false, step});
        }
        look_closer_at(by_rate.top().step);
        by_rate.pop();
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
        may_spend_ = spent_ + (work_ - spent_) / static_cast<long>(steps.size() - n);
        const double total = step.kind == Weighed::Kind::ask ? roll_question(0, step.index, deeper)
                                                             : roll_action(0, step.index, deeper);
        step.after = std::min(step.after, total / mass - step.minutes);
        step.rolled = true;
        best = std::min(best, step.total());
    }
}

// `steps` by their total, at least two.
bool RollOut::worth_more_work(const Position& position, const std::vector<Weighed>& steps) const {
    return position.done.size() <= limits_.few_actions &&
           steps[1].total() <= steps[0].total() * (1 + limits_.close);
}

std::vector<Weighed> RollOut::weigh(const Position& position) {
    forget();
    spent_ = 0;
    const bool few = position.done.size() <= limits_.few_actions;
    may_spend_ = work_ = few ? limits_.work : limits_.work / 2;
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
    spent_ = 0;  // every question is looked at, however many there are; the limit is for what follows
    std::vector<Weighed> close;
    std::vector<Weighed> others;
    for (const Weighed& step : questions) {
        const bool closely = std::find(closer_.begin(), closer_.end(), step.index) != closer_.end();
        (closely ? close : others).push_back(step);
    }
    const double planned = outlook_.planner().minutes(position);
    const std::vector<int> order = outlook_.planner().order();
    for (std::size_t n = 0; n < std::min(limits_.actions, order.size()); ++n) {
        Weighed step;
        step.kind = Weighed::Kind::act;
        step.index = order[n];
        step.minutes = outlook_.acting(position, order[n]) / position.mass;
        step.after = n == 0 ? planned / position.mass - step.minutes : no_matter;
        close.push_back(step);
    }
    std::sort(close.begin(), close.end(), by_total);
    roll_out(close, false);
    std::sort(close.begin(), close.end(), by_total);
    const std::size_t deeper = std::min(limits_.looked_deeper, close.size());
    if (deeper > 1) {
        std::vector<Weighed> first(close.begin(), close.begin() + static_cast<std::ptrdiff_t>(deeper));
        if (worth_more_work(position, close)) work_ += limits_.more_work;
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
    forget();  // the minutes of this action are others
    spent_ = 0;
    may_spend_ = limits_.work;
    const double minutes = roll_action(0, action, false) / position.mass;
    forget();
    return minutes;
}

// Whether the plan's first step differs after two answers to the question at this depth.
bool RollOut::changes_first(std::size_t depth, int question) {
    constexpr int none_yet = -2;
    int seen = none_yet;
    outlook_.ask(at(depth), question, at(depth + 1));
    for (int reading = 0; reading < outlook_.readings_of(question); ++reading) {
        outlook_.take_answer(at(depth), question, reading, at(depth + 1));
        if (at(depth + 1).mass < limits_.rare * at(depth).mass) continue;
        const int first = plan(at(depth + 1)).first;
        if (seen != none_yet && first != seen) return true;
        seen = first;
    }
    return false;
}

bool RollOut::may_change(const Position& position, int question) {
    at(0) = position;
    if (changes_first(0, question)) return true;
    for (int other : closer_) {
        if (other == question) continue;
        outlook_.ask(position, other, at(1));
        for (int reading = 0; reading < outlook_.readings_of(other); ++reading) {
            outlook_.take_answer(position, other, reading, at(1));
            if (at(1).mass >= limits_.rare * position.mass && changes_first(1, question)) return true;
        }
    }
    return false;
}

}  // namespace hardover
