#include "rules/result/nearest.hpp"

#include <algorithm>

namespace hardover {

int spelling_distance(std::string_view a, std::string_view b) {
    const int rows = static_cast<int>(a.size()) + 1;
    const int columns = static_cast<int>(b.size()) + 1;
    std::vector<std::vector<int>> cost(rows, std::vector<int>(columns));
    for (int i = 0; i < rows; ++i) cost[i][0] = i;
    for (int j = 0; j < columns; ++j) cost[0][j] = j;
    for (int i = 1; i < rows; ++i) {
        for (int j = 1; j < columns; ++j) {
            const int change = a[i - 1] == b[j - 1] ? 0 : 1;
            cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + change});
            const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
            if (swapped) cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
        }
    }
    return cost[rows - 1][columns - 1];
}

std::string nearest_spelling(std::string_view word, const std::vector<std::string>& candidates) {
    const int most = std::max(2, static_cast<int>(word.size()) / 3);
    int best_distance = most + 1;
    std::string best;
    for (const std::string& candidate : candidates) {
        // Letters too many or too few are each a step: the full count, dear for a long word, is not needed.
        const auto longer = std::max(word.size(), candidate.size());
        const auto shorter = std::min(word.size(), candidate.size());
        if (longer - shorter >= static_cast<std::size_t>(best_distance)) continue;
        const int distance = spelling_distance(word, candidate);
        if (distance < best_distance) {
            best_distance = distance;
            best = candidate;
        }
    }
    return best;
}

std::string did_you_mean(std::string_view word, const std::vector<std::string>& candidates) {
    const std::string near = nearest_spelling(word, candidates);
    return near.empty() ? "" : "did you mean '" + near + "'?";
}

}  // namespace hardover
