#include "app/study/item_analysis.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::study {

namespace {

constexpr double z_95 = 1.959963984540054;

std::vector<double> right_by_learner(const AnswerTable& answers) {
    std::vector<double> sums;
    for (const auto& row : answers) {
        double sum = 0;
        for (const int answer : row) sum += answer;
        sums.push_back(sum);
    }
    return sums;
}

double mean(const std::vector<double>& values) {
    double sum = 0;
    for (const double value : values) sum += value;
    return sum / static_cast<double>(values.size());
}

double covariance(const std::vector<double>& a, const std::vector<double>& b) {
    const double mean_a = mean(a);
    const double mean_b = mean(b);
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += (a[i] - mean_a) * (b[i] - mean_b);
    return sum / static_cast<double>(a.size());
}

std::optional<double> correlation(const std::vector<double>& a, const std::vector<double>& b) {
    if (a.empty()) return std::nullopt;
    const double spread = covariance(a, a) * covariance(b, b);
    if (spread < 1e-18) return std::nullopt;  // neither shares nor totals come so close without being equal
    return covariance(a, b) / std::sqrt(spread);
}

// Share right per item, over its answers.
std::vector<double> shares_right(const AnswerTable& answers) {
    std::vector<double> right(answers.front().size());
    std::vector<double> given(right.size());
    for (const auto& row : answers) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            right[i] += row[i] == 1 ? 1 : 0;
            given[i] += row[i] >= 0 ? 1 : 0;
        }
    }
    for (std::size_t i = 0; i < right.size(); ++i) right[i] = given[i] > 0 ? right[i] / given[i] : 0;
    return right;
}

// Answers less shares right, added up per learner.
struct Over {
    std::vector<double> sum;
    std::vector<int> answers;
};

Over over_shares(const AnswerTable& answers, const std::vector<double>& shares) {
    Over over{std::vector<double>(answers.size()), std::vector<int>(answers.size())};
    for (std::size_t n = 0; n < answers.size(); ++n) {
        for (std::size_t i = 0; i < shares.size(); ++i) {
            if (answers[n][i] < 0) continue;
            over.sum[n] += answers[n][i] - shares[i];
            ++over.answers[n];
        }
    }
    return over;
}

// Equal standings stay equal whatever the order in which they were added up.
double tied_evenly(double value) {
    return std::round(value * 1e9) / 1e9;
}

// Weights of the `size` learners among `who` with the greatest keys; those tied at the edge share the rest.
std::vector<double> top_weights(const std::vector<double>& keys, const std::vector<std::size_t>& who,
                                double size) {
    std::vector<double> weights(keys.size());
    std::vector<double> sorted;
    for (const std::size_t n : who) sorted.push_back(keys[n]);
    std::sort(sorted.rbegin(), sorted.rend());
    const double edge = sorted[static_cast<std::size_t>(std::ceil(size)) - 1];
    const auto above = static_cast<double>(
        std::count_if(sorted.begin(), sorted.end(), [&](double key) { return key > edge; }));
    const auto tied = static_cast<double>(std::count(sorted.begin(), sorted.end(), edge));
    for (const std::size_t n : who) {
        if (keys[n] > edge) weights[n] = 1 / size;
        if (keys[n] == edge) weights[n] = (size - above) / tied / size;
    }
    return weights;
}

double weighted(const std::vector<double>& weights, const AnswerTable& answers, std::size_t item) {
    double sum = 0;
    for (std::size_t n = 0; n < weights.size(); ++n) {
        if (weights[n] > 0) sum += weights[n] * answers[n][item];
    }
    return sum;
}

std::optional<double> with_rest(const AnswerTable& answers, const Over& over, double share,
                                std::size_t item) {
    std::vector<double> own;
    std::vector<double> rest;
    for (std::size_t n = 0; n < answers.size(); ++n) {
        if (answers[n][item] < 0 || over.answers[n] < 2) continue;
        own.push_back(answers[n][item]);
        rest.push_back((over.sum[n] - (answers[n][item] - share)) / (over.answers[n] - 1));
    }
    return correlation(own, rest);
}

}  // namespace

std::vector<double> standing(const AnswerTable& answers) {
    if (answers.empty()) return {};
    const Over over = over_shares(answers, shares_right(answers));
    std::vector<double> standing;
    for (std::size_t n = 0; n < answers.size(); ++n) {
        standing.push_back(tied_evenly(over.sum[n] / std::max(1, over.answers[n])));
    }
    return standing;
}

EdgeGroups edge_groups(const AnswerTable& answers, const std::vector<double>& standing, std::size_t item) {
    std::vector<std::size_t> who;
    std::vector<double> reversed = standing;
    for (double& key : reversed) key = -key;
    for (std::size_t n = 0; n < answers.size(); ++n) {
        if (answers[n][item] >= 0) who.push_back(n);
    }
    if (who.empty()) return {std::vector<double>(answers.size()), std::vector<double>(answers.size())};
    const double size = std::max(1.0, std::round(edge_share * static_cast<double>(who.size())));
    return {top_weights(standing, who, size), top_weights(reversed, who, size)};
}

std::vector<ItemFigures> item_figures(const AnswerTable& answers) {
    std::vector<ItemFigures> figures;
    if (answers.empty()) return figures;
    const std::vector<double> shares = shares_right(answers);
    const Over over = over_shares(answers, shares);
    const std::vector<double> stands = standing(answers);
    for (std::size_t item = 0; item < shares.size(); ++item) {
        const EdgeGroups groups = edge_groups(answers, stands, item);
        ItemFigures of;
        of.answers = static_cast<int>(
            std::count_if(answers.begin(), answers.end(), [&](const auto& row) { return row[item] >= 0; }));
        of.share_right = shares[item];
        of.with_rest = with_rest(answers, over, shares[item], item);
        of.discrimination = weighted(groups.strong, answers, item) - weighted(groups.weak, answers, item);
        figures.push_back(of);
    }
    return figures;
}

namespace {

// Of `items` items with `within` for the sum of share right times share wrong, over these totals.
std::optional<double> formula_20(double items, double within, const std::vector<double>& total) {
    if (items < 2) return std::nullopt;
    const double variance = covariance(total, total);
    if (variance < 1e-12) return std::nullopt;
    return items / (items - 1) * (1 - within / variance);
}

}  // namespace

std::optional<double> kuder_richardson_20(const AnswerTable& answers) {
    if (answers.empty()) return std::nullopt;
    double within = 0;
    for (const double share : shares_right(answers)) within += share * (1 - share);
    return formula_20(static_cast<double>(answers.front().size()), within, right_by_learner(answers));
}

std::vector<std::optional<double>> kuder_richardson_20_without(const AnswerTable& answers) {
    std::vector<std::optional<double>> without;
    if (answers.empty()) return without;
    const std::vector<double> shares = shares_right(answers);
    const std::vector<double> total = right_by_learner(answers);
    double within = 0;
    for (const double share : shares) within += share * (1 - share);
    for (std::size_t item = 0; item < shares.size(); ++item) {
        std::vector<double> rest = total;
        for (std::size_t n = 0; n < rest.size(); ++n) rest[n] -= answers[n][item];
        without.push_back(formula_20(static_cast<double>(shares.size()) - 1,
                                     within - shares[item] * (1 - shares[item]), rest));
    }
    return without;
}

Totals totals(const AnswerTable& answers) {
    const std::vector<double> total = right_by_learner(answers);
    const auto learners = static_cast<double>(total.size());
    return {mean(total), std::sqrt(covariance(total, total) * learners / (learners - 1))};
}

std::optional<Reliability> reliability(const AnswerTable& answers) {
    const std::optional<double> value = kuder_richardson_20(answers);
    if (!value || answers.size() < 3) return std::nullopt;
    const auto learners = static_cast<double>(answers.size());
    const auto items = static_cast<double>(answers.front().size());
    const double of_log = std::sqrt(2 * items / ((items - 1) * (learners - 2)));
    Reliability figures;
    figures.value = *value;
    figures.error = (1 - *value) * of_log;
    figures.within_95 = {1 - (1 - *value) * std::exp(z_95 * of_log),
                         1 - (1 - *value) * std::exp(-z_95 * of_log)};
    figures.measurement_error = totals(answers).deviation * std::sqrt(1 - *value);
    figures.apart = z_95 * std::sqrt(2.0) * figures.measurement_error;
    return figures;
}

Interval wilson_95(int right, int of) {
    const double n = of;
    const double share = right / n;
    const double middle = (share + z_95 * z_95 / (2 * n)) / (1 + z_95 * z_95 / n);
    const double half =
        z_95 / (1 + z_95 * z_95 / n) * std::sqrt(share * (1 - share) / n + z_95 * z_95 / (4 * n * n));
    return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

Interval correlation_95(double correlation, int of) {
    if (of <= 3) return {-1, 1};
    const double z = std::atanh(std::clamp(correlation, -1.0, 1.0));
    const double half = z_95 / std::sqrt(of - 3.0);
    return {std::tanh(z - half), std::tanh(z + half)};
}

}  // namespace hardover::study
