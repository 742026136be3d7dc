// The Rasch model for reports: how hard each item and how able each learner is, with its error, in logits.
// Finite also where every answer was right or wrong. Pure numbers; knows no items and no names.
#pragma once

#include <vector>

namespace hardover::study {

// One learner's answers, by item: 1 right, 0 wrong, -1 not answered. All rows equally long.
using AnswerRow = std::vector<int>;

struct Estimate {
    double value = 0;
    double error = 0;  // standard error
};

struct RaschFit {
    std::vector<Estimate> difficulty;  // per item
    std::vector<Estimate> ability;     // per learner: mean and standard deviation given the answers
};

// Most probable difficulties: marginal likelihood with ability normal (0, 1), summed over even steps, and
// difficulties normal (0, 2) beforehand (R. J. Mislevy, "Bayes modal estimation in item response models",
// Psychometrika 51, 1986). Abilities are the means a posteriori under those difficulties. 200 learners and
// 500 items take about a second.
RaschFit fit_rasch(const std::vector<AnswerRow>& answers);

}  // namespace hardover::study
