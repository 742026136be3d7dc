// FSRS-6, from its published formulas: https://github.com/open-spaced-repetition (algorithm wiki, version 6).
#include "app/study/fsrs.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::study {

namespace {

constexpr double least_stability = 0.001;
constexpr double greatest_stability = 36500;

double decay(const MemoryModel& model) {
    return -model.w[20];
}

double factor(const MemoryModel& model) {
    return std::pow(0.9, 1 / decay(model)) - 1;
}

// Not kept within 1 to 10: the mean reversion below takes the value for `easy` as it comes (-4.77 with
// default weights). Keeping it within the limits there gives other schedules from the second review on.
double first_difficulty_unlimited(const MemoryModel& model, Grade grade) {
    return model.w[4] - std::exp(model.w[5] * (static_cast<int>(grade) - 1)) + 1;
}

double limited_difficulty(double difficulty) {
    return std::clamp(difficulty, 1.0, 10.0);
}

double next_difficulty(const MemoryModel& model, double difficulty, Grade grade) {
    const auto& w = model.w;
    const double moved = difficulty - w[6] * (static_cast<int>(grade) - 3) * (10 - difficulty) / 9;
    return limited_difficulty(w[7] * first_difficulty_unlimited(model, Grade::easy) + (1 - w[7]) * moved);
}

double stability_same_day(const MemoryModel& model, double stability, Grade grade) {
    const auto& w = model.w;
    const double growth =
        std::exp(w[17] * (static_cast<int>(grade) - 3 + w[18])) * std::pow(stability, -w[19]);
    return stability * (grade == Grade::again ? growth : std::max(growth, 1.0));
}

double stability_after_wrong(const MemoryModel& model, const Memory& before, double chance) {
    const auto& w = model.w;
    const double fallen = w[11] * std::pow(before.difficulty, -w[12]) *
                          (std::pow(before.stability + 1, w[13]) - 1) * std::exp(w[14] * (1 - chance));
    const double ceiling =
        model.same_day_rule ? before.stability / std::exp(w[17] * w[18]) : before.stability;
    return std::min(fallen, ceiling);
}

double stability_after_right(const MemoryModel& model, const Memory& before, double chance, Grade grade) {
    const auto& w = model.w;
    double growth = std::exp(w[8]) * (11 - before.difficulty) * std::pow(before.stability, -w[9]) *
                    (std::exp(w[10] * (1 - chance)) - 1);
    if (grade == Grade::hard) growth *= w[15];
    if (grade == Grade::easy) growth *= w[16];
    return before.stability * (1 + growth);
}

}  // namespace

double chance_of_remembering(const MemoryModel& model, double stability, int days) {
    return std::pow(1 + factor(model) * days / stability, decay(model));
}

Memory first_review(const MemoryModel& model, Grade grade) {
    const double stability = model.w[static_cast<std::size_t>(grade) - 1];
    return {std::clamp(stability, least_stability, greatest_stability),
            limited_difficulty(first_difficulty_unlimited(model, grade))};
}

Memory next_review(const MemoryModel& model, const Memory& before, int days, Grade grade) {
    const double chance = chance_of_remembering(model, before.stability, days);
    double stability = 0;
    if (model.same_day_rule && days == 0) {
        stability = stability_same_day(model, before.stability, grade);
    } else if (grade == Grade::again) {
        stability = stability_after_wrong(model, before, chance);
    } else {
        stability = stability_after_right(model, before, chance, grade);
    }
    return {std::clamp(stability, least_stability, greatest_stability),
            next_difficulty(model, before.difficulty, grade)};
}

double days_until(const MemoryModel& model, double stability, double target) {
    return stability / factor(model) * (std::pow(target, 1 / decay(model)) - 1);
}

int whole_days_until(const MemoryModel& model, double stability, double target, int most) {
    const double days = std::floor(days_until(model, stability, target) + 0.5);
    return static_cast<int>(std::clamp(days, 1.0, static_cast<double>(most)));
}

}  // namespace hardover::study
