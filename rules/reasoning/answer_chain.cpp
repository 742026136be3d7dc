#include "rules/reasoning/answer_chain.hpp"

#include <algorithm>

namespace hardover {

namespace {

using Levels = std::vector<double>;
using Term = std::vector<Levels>;  // per group

bool all_zero(const Levels& levels) {
    return std::all_of(levels.begin(), levels.end(), [](double l) { return l == 0; });
}

// Terms of the first `groups` groups, given the level that the next answer showed (no group is worse than the
// best level, so that stands for "there is no next answer").
std::vector<Term> terms_of(const std::vector<Levels>& likelihood, std::size_t groups, std::size_t next) {
    const Levels& here = likelihood[groups - 1];
    std::vector<Term> terms;
    if (groups == 1) {
        Levels levels(here.size());
        for (std::size_t t = 0; t < levels.size(); ++t) levels[t] = here[std::min(t, next)];
        if (!all_zero(levels)) terms.push_back({levels});
        return terms;
    }
    for (std::size_t shown = 0; shown <= next; ++shown) {
        Levels levels(here.size(), 0.0);
        for (std::size_t t = 0; t < levels.size(); ++t) {
            if (std::min(t, next) == shown) levels[t] = here[shown];
        }
        if (all_zero(levels)) continue;
        for (Term& before : terms_of(likelihood, groups - 1, shown)) {
            // Terms that differ in this group only are one.
            const auto same = std::find_if(terms.begin(), terms.end(), [&](const Term& term) {
                return std::equal(before.begin(), before.end(), term.begin());
            });
            if (same == terms.end()) {
                before.push_back(levels);
                terms.push_back(std::move(before));
            } else {
                for (std::size_t t = 0; t < levels.size(); ++t) same->back()[t] += levels[t];
            }
        }
    }
    return terms;
}

}  // namespace

std::vector<std::vector<std::vector<double>>> chain_terms(
    const std::vector<std::vector<double>>& likelihood) {
    return terms_of(likelihood, likelihood.size(), likelihood.back().size() - 1);
}

bool both_may_be_right(const std::vector<double>& earlier, const std::vector<double>& later, bool touched,
                       double misreading) {
    double best = 0;
    for (std::size_t now = 0; now < later.size(); ++now) {
        for (std::size_t before = touched ? 0 : now; before <= now; ++before) {
            best = std::max(best, earlier[before] * later[now]);
        }
    }
    return best > misreading;
}

}  // namespace hardover
