#include "app/study/scoring.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace hardover::study {

double brier_penalty(double sure, bool right) {
    const double off = sure - (right ? 1 : 0);
    return off * off;
}

double log_penalty(double sure, bool right) {
    return -std::log(right ? sure : 1 - sure);
}

double brier_penalty(const std::vector<double>& shares, std::size_t truth) {
    double sum = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) sum += brier_penalty(shares[i], i == truth);
    return sum;
}

double log_penalty(const std::vector<double>& shares, std::size_t truth) {
    return -std::log(shares[truth]);
}

Calibration calibrate(const std::vector<SureAnswer>& answers) {
    Calibration result;
    result.answers = static_cast<int>(answers.size());
    if (answers.empty()) return result;
    const double n = static_cast<double>(answers.size());
    std::map<double, std::pair<int, int>> groups;  // sureness -> answers, right
    for (const SureAnswer& answer : answers) {
        auto& [count, right] = groups[answer.sure];
        ++count;
        right += answer.right ? 1 : 0;
        result.brier += brier_penalty(answer.sure, answer.right) / n;
        result.mean_sureness += answer.sure / n;
        result.share_right += (answer.right ? 1 : 0) / n;
    }
    result.uncertainty = result.share_right * (1 - result.share_right);
    for (const auto& [sure, group] : groups) {
        const double share = static_cast<double>(group.second) / group.first;
        result.reliability += group.first / n * (sure - share) * (sure - share);
        result.resolution += group.first / n * (share - result.share_right) * (share - result.share_right);
    }
    return result;
}

double kendall_tau(const std::vector<int>& order) {
    const std::size_t n = order.size();
    if (n < 2) return 1;
    int wrong = 0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = i + 1; j < n; ++j) wrong += order[i] > order[j] ? 1 : 0;
    }
    return 1 - 4.0 * wrong / static_cast<double>(n * (n - 1));
}

double order_mark(const std::vector<int>& order, const std::vector<Before>& rules) {
    const std::size_t n = order.size();
    std::vector<std::vector<bool>> before(n, std::vector<bool>(n, false));
    for (const Before& rule : rules) {
        before[static_cast<std::size_t>(rule.first)][static_cast<std::size_t>(rule.second)] = true;
    }
    for (std::size_t k = 0; k < n; ++k) {  // S. Warshall's closure
        for (std::size_t i = 0; i < n; ++i) {
            for (std::size_t j = 0; j < n; ++j) {
                if (before[i][k] && before[k][j]) before[i][j] = true;
            }
        }
    }
    std::vector<std::size_t> place(n);
    for (std::size_t i = 0; i < n; ++i) place[static_cast<std::size_t>(order[i])] = i;
    for (const Before& rule : rules) {
        const bool kept =
            place[static_cast<std::size_t>(rule.first)] < place[static_cast<std::size_t>(rule.second)];
        if (rule.must && !kept) return 0;
    }
    int pairs = 0;
    int broken = 0;
    for (std::size_t i = 0; i < n; ++i) {
        for (std::size_t j = 0; j < n; ++j) {
            if (!before[i][j]) continue;
            ++pairs;
            broken += place[i] > place[j] ? 1 : 0;
        }
    }
    return pairs == 0 ? 1 : std::max(0.0, 1 - 2.0 * broken / pairs);
}

double several_mark(const std::vector<bool>& right, const std::vector<bool>& ticked) {
    double hits = 0;
    double misses = 0;
    const auto rights = static_cast<double>(std::count(right.begin(), right.end(), true));
    const double wrongs = static_cast<double>(right.size()) - rights;
    for (std::size_t i = 0; i < right.size(); ++i) {
        if (ticked[i]) (right[i] ? hits : misses) += 1;
    }
    const double hit_share = rights > 0 ? hits / rights : 0;
    const double miss_share = wrongs > 0 ? misses / wrongs : 0;
    return std::max(0.0, hit_share - miss_share);
}

}  // namespace hardover::study
