#include "app/study/item_analysis.hpp"

#include <algorithm>
#include <cmath>

namespace hardover::study {

namespace {

constexpr double group_share = 0.27;  // T. L. Kelley 1939

std::vector<double> column(const AnswerTable& answers, std::size_t item) {
    std::vector<double> values;
    for (const auto& row : answers) values.push_back(row[item]);
    return values;
}

std::vector<double> totals(const AnswerTable& answers) {
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
    const double spread = covariance(a, a) * covariance(b, b);
    if (spread <= 0) return std::nullopt;
    return covariance(a, b) / std::sqrt(spread);
}

// Mean of `values` over the `size` learners with the greatest keys; those tied at the edge share what is
// left.
double mean_of_top(const std::vector<double>& keys, const std::vector<double>& values, double size) {
    std::vector<double> sorted = keys;
    std::sort(sorted.rbegin(), sorted.rend());
    const double edge = sorted[static_cast<std::size_t>(std::ceil(size)) - 1];
    double above = 0;
    double tied = 0;
    double sum_above = 0;
    double sum_tied = 0;
    for (std::size_t i = 0; i < keys.size(); ++i) {
        if (keys[i] > edge) {
            above += 1;
            sum_above += values[i];
        } else if (keys[i] == edge) {
            tied += 1;
            sum_tied += values[i];
        }
    }
    return (sum_above + (size - above) * sum_tied / tied) / size;
}

}  // namespace

std::vector<ItemFigures> item_figures(const AnswerTable& answers) {
    std::vector<ItemFigures> figures;
    if (answers.empty()) return figures;
    const std::vector<double> total = totals(answers);
    std::vector<double> reversed = total;
    for (double& key : reversed) key = -key;
    const double size = std::max(1.0, std::round(group_share * static_cast<double>(answers.size())));
    for (std::size_t item = 0; item < answers.front().size(); ++item) {
        const std::vector<double> right = column(answers, item);
        std::vector<double> rest = total;
        for (std::size_t i = 0; i < rest.size(); ++i) rest[i] -= right[i];
        figures.push_back({mean(right), correlation(right, rest),
                           mean_of_top(total, right, size) - mean_of_top(reversed, right, size)});
    }
    return figures;
}

std::optional<double> kuder_richardson_20(const AnswerTable& answers) {
    if (answers.empty() || answers.front().size() < 2) return std::nullopt;
    const std::vector<double> total = totals(answers);
    const double variance = covariance(total, total);
    if (variance <= 0) return std::nullopt;
    const double items = static_cast<double>(answers.front().size());
    double within = 0;
    for (std::size_t item = 0; item < answers.front().size(); ++item) {
        const double share = mean(column(answers, item));
        within += share * (1 - share);
    }
    return items / (items - 1) * (1 - within / variance);
}

Interval wilson_95(int right, int of) {
    constexpr double z = 1.959963984540054;
    const double n = of;
    const double share = right / n;
    const double middle = (share + z * z / (2 * n)) / (1 + z * z / n);
    const double half = z / (1 + z * z / n) * std::sqrt(share * (1 - share) / n + z * z / (4 * n * n));
    return {std::max(0.0, middle - half), std::min(1.0, middle + half)};
}

}  // namespace hardover::study
