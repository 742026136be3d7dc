#include "rules/reasoning/bystanders.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace hardover {

namespace {

constexpr int unlisted = -1;  // among the causes: something not on the list

std::size_t faults_in(const Hypothesis& hypothesis) {
    return hypothesis.causes.size() + (hypothesis.unlisted ? 1 : 0);
}

// The one fault of `larger` that `smaller`, one fault smaller, is without; nothing where it is without others
// too.
std::optional<int> left_out(const Hypothesis& larger, const Hypothesis& smaller) {
    if (larger.unlisted != smaller.unlisted) {
        return larger.causes == smaller.causes ? std::optional(unlisted) : std::nullopt;
    }
    const auto [in_larger, in_smaller] = std::mismatch(larger.causes.begin(), larger.causes.end(),
                                                       smaller.causes.begin(), smaller.causes.end());
    if (!std::equal(in_larger + 1, larger.causes.end(), in_smaller, smaller.causes.end()))
        return std::nullopt;
    return *in_larger;
}

double odds(double prior) {
    return prior / (1 - prior);
}

}  // namespace

std::vector<Hypothesis> without_bystanders(std::vector<Hypothesis> hypotheses,
                                           const std::vector<double>& prior, double prior_not_listed) {
    // The largest first, so that what one hands on can be handed on again; ratios are of what was given.
    std::vector<double> given;
    std::vector<std::size_t> order;
    for (std::size_t h = 0; h < hypotheses.size(); ++h) {
        given.push_back(hypotheses[h].probability);
        order.push_back(h);
    }
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return faults_in(hypotheses[a]) > faults_in(hypotheses[b]);
    });
    const auto usual_odds = [&](int fault) {
        return odds(fault == unlisted ? prior_not_listed : prior[static_cast<std::size_t>(fault)]);
    };
    auto one_less = order.begin();  // the first with so many faults
    for (auto at = order.begin(); at != order.end() && faults_in(hypotheses[*at]) >= 2; ++at) {
        Hypothesis& hypothesis = hypotheses[*at];
        const std::size_t faults = faults_in(hypothesis) - 1;
        while (one_less != order.end() && faults_in(hypotheses[*one_less]) > faults) ++one_less;
        double least = speaks_for_it;
        Hypothesis* heir = nullptr;
        for (auto after = one_less; after != order.end() && faults_in(hypotheses[*after]) == faults;
             ++after) {
            Hypothesis& rest = hypotheses[*after];
            if (!(given[*after] > 0)) continue;
            const std::optional<int> fault = left_out(hypothesis, rest);
            if (!fault || !(usual_odds(*fault) > 0)) continue;
            const double times_usual = given[*at] / given[*after] / usual_odds(*fault);
            if (times_usual >= least) continue;
            least = times_usual;
            heir = &rest;
        }
        if (heir) heir->probability += std::exchange(hypothesis.probability, 0.0);
    }
    std::erase_if(hypotheses, [](const Hypothesis& hypothesis) { return !(hypothesis.probability > 0); });
    std::stable_sort(hypotheses.begin(), hypotheses.end(),
                     [](const Hypothesis& a, const Hypothesis& b) { return a.probability > b.probability; });
    return hypotheses;
}

}  // namespace hardover
