// When something learned is about to be forgotten: the FSRS-6 model of memory (Open Spaced Repetition).
// Pure numbers; knows no items, no learners and no calendar.
#pragma once

#include <array>

namespace hardover::study {

// How an answer is graded. The program grades answers itself, so `easy` is never given by it.
enum class Grade { again = 1, hard = 2, good = 3, easy = 4 };

// The model's 21 weights. Default weights: FSRS-6 as published by Open Spaced Repetition.
struct MemoryModel {
    std::array<double, 21> w = {0.212,  1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194,
                                0.001,  1.8722, 0.1666, 0.796,  1.4835, 0.0614, 0.2629,
                                1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542};
    bool same_day_rule = true;  // reviews on the day of the one before go by a rule of their own
};

struct Memory {
    double stability = 0;   // days until the chance of remembering has fallen to 0.9; 0.001 to 36500
    double difficulty = 0;  // 1 to 10
};

// Chance of remembering, `days` (whole days, 0 or more) after the last review.
double chance_of_remembering(const MemoryModel& model, double stability, int days);

Memory first_review(const MemoryModel& model, Grade grade);
Memory next_review(const MemoryModel& model, const Memory& before, int days, Grade grade);

// Days until the chance has fallen to `target` (above 0, below 1).
double days_until(const MemoryModel& model, double stability, double target);

// The same in whole days, rounded half up, from 1 to `most`.
int whole_days_until(const MemoryModel& model, double stability, double target, int most);

}  // namespace hardover::study
