// Faults that nothing speaks for are left out of what is planned for.
#include <catch2/catch.hpp>
#include <numeric>

#include "rules/reasoning/bystanders.hpp"

using namespace hardover;

namespace {

// Of 100 boats 10 have cause 0, 20 have cause 1 and 5 have something not on the list.
const std::vector<double> prior{0.1, 0.2};
constexpr double prior_not_listed = 0.05;

double probability_of(const std::vector<Hypothesis>& hypotheses, const std::vector<int>& causes,
                      bool unlisted = false) {
    for (const Hypothesis& hypothesis : hypotheses) {
        if (hypothesis.causes == causes && hypothesis.unlisted == unlisted) return hypothesis.probability;
    }
    return 0;
}

double together(const std::vector<Hypothesis>& hypotheses) {
    return std::accumulate(hypotheses.begin(), hypotheses.end(), 0.0,
                           [](double sum, const Hypothesis& h) { return sum + h.probability; });
}

}  // namespace

TEST_CASE("A second fault that is there as often as in any boat hands its chance to the first alone") {
    // 0.15 is 0.6 times the odds of cause 1 (1 to 4): nothing that was told speaks for it.
    const auto left = without_bystanders({{{0}, false, 0.6}, {{0, 1}, false, 0.15}, {{1}, false, 0.01}},
                                         prior, prior_not_listed);
    CHECK(probability_of(left, {0}) == Approx(0.75));
    CHECK(probability_of(left, {0, 1}) == 0);
    CHECK(together(left) == Approx(0.76));
}

TEST_CASE("A second fault that the evidence makes likelier than usual stays") {
    // 0.3 is twice the odds of cause 1 times 0.6; and without cause 1, cause 0 is far likelier than usual
    // too.
    const auto left = without_bystanders({{{0}, false, 0.6}, {{0, 1}, false, 0.3}, {{1}, false, 0.1}}, prior,
                                         prior_not_listed);
    CHECK(probability_of(left, {0, 1}) == Approx(0.3));
    CHECK(probability_of(left, {0}) == Approx(0.6));
}

TEST_CASE("What the evidence asks for is no bystander, since nothing without it is left") {
    // After a remedy that did not cure: what is still wrong needs cause 1.
    const auto left = without_bystanders({{{1}, false, 0.7}, {{0, 1}, false, 0.05}}, prior, prior_not_listed);
    CHECK(probability_of(left, {1}) == Approx(0.75));
    const auto alone = without_bystanders({{{0, 1}, false, 0.05}}, prior, prior_not_listed);
    CHECK(probability_of(alone, {0, 1}) == Approx(0.05));
}

TEST_CASE("Something not on the list can stand by as well, and three faults can come down to one") {
    const auto left = without_bystanders(
        {{{0}, false, 0.8}, {{0}, true, 0.04}, {{0, 1}, false, 0.1}, {{0, 1}, true, 0.005}}, prior,
        prior_not_listed);
    CHECK(left.size() == 1);
    CHECK(probability_of(left, {0}) == Approx(0.945));
}
