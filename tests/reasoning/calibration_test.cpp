// Scores of probabilities against what came: published values, and sums that must hold for every set of
// forecasts.
#include "rules/reasoning/calibration.hpp"

#include <cmath>

#include "chance.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// Check E5 (Brier 1950, Murphy 1973, Naeini et al. 2015; exact fractions).
const std::vector<Forecast> e5 = {{0.1, false}, {0.1, false}, {0.1, true}, {0.3, false}, {0.3, true},
                                  {0.3, false}, {0.7, true},  {0.7, true}, {0.7, false}, {0.9, true}};

std::vector<Forecast> random_forecasts(Chance& chance, int most) {
    std::vector<Forecast> forecasts;
    for (int i = 1 + chance.upto(most); i > 0; --i) {
        const double p = chance.one_in(3) ? chance.upto(10) / 10.0 : chance.between(0, 1);
        forecasts.push_back({p, chance.between(0, 1) < p});
    }
    return forecasts;
}

}  // namespace

TEST_CASE("The Brier score and its split are those of the worked example") {
    const std::vector<ReliabilityRow> table = reliability_table(e5, 1);
    REQUIRE(table.size() == 4);
    const BrierSplit split = brier_split(e5, table);
    CHECK(split.brier == Approx(0.218).epsilon(1e-9));
    CHECK(split.reliability == Approx(0.018).epsilon(1e-9));
    CHECK(split.resolution == Approx(0.05).epsilon(1e-9));
    CHECK(split.uncertainty == Approx(0.25).epsilon(1e-9));
    CHECK(split.within == Approx(0).margin(1e-12));
    CHECK(log_loss(e5) == Approx(0.6453312024).epsilon(1e-9));
    CHECK(calibration_error(table).mean == Approx(0.1).epsilon(1e-9));
    CHECK(calibration_error(table).greatest == Approx(0.2333333333).epsilon(1e-9));
    CHECK(1 - split.brier / split.uncertainty == Approx(0.128).epsilon(1e-9));  // its Brier skill
}

TEST_CASE("The scores of jobs are those of the worked example") {
    // Check E6 (textbook; computed).
    const std::vector<JobForecast> jobs = {{{0.7, 0.2, 0.1}, 0}, {{0.1, 0.6, 0.3}, 2}, {{0.5, 0.3, 0.2}, 0}};
    const JobScores scores = score_jobs(jobs);
    CHECK(scores.jobs == 3);
    CHECK(scores.brier == Approx(0.46).epsilon(1e-9));
    CHECK(scores.log_loss == Approx(0.7512649763).epsilon(1e-9));
    CHECK(scores.first == Approx(0.6666666667).epsilon(1e-9));
    CHECK(scores.reciprocal_rank == Approx(0.8333333333).epsilon(1e-9));
    CHECK(scores.first_three == 1);
}

TEST_CASE("The parts of the Brier score add up for any forecasts and any rows") {
    for (unsigned seed = 1; seed <= 300; ++seed) {
        INFO("seed " << seed);
        Chance chance(seed);
        const std::vector<Forecast> forecasts = random_forecasts(chance, 120);
        for (const std::size_t fewest : {1, 5, 20, 1000}) {
            const std::vector<ReliabilityRow> table = reliability_table(forecasts, fewest);
            const BrierSplit split = brier_split(forecasts, table);
            CHECK(split.brier ==
                  Approx(split.reliability - split.resolution + split.uncertainty + split.within));
            std::size_t all = 0;
            for (std::size_t r = 0; r < table.size(); ++r) {
                all += table[r].forecasts;
                CHECK((table.size() == 1 || table[r].forecasts >= fewest));
                CHECK(table[r].least <= table[r].said + 1e-12);
                CHECK(table[r].said <= table[r].most + 1e-12);
                if (r > 0) CHECK(table[r - 1].most < table[r].least);
            }
            CHECK(all == forecasts.size());
        }
    }
}

TEST_CASE("The interval of a row is that of its Beta distribution") {
    // Closed forms: none of n came, Beta(1, n + 1) lies below x with 1 - (1 - x)^(n + 1); all came, mirrored.
    const auto row = [](std::size_t came, std::size_t of) {
        std::vector<Forecast> forecasts;
        for (std::size_t i = 0; i < of; ++i) forecasts.push_back({0.5, i < came});
        return reliability_table(forecasts, 1).at(0);
    };
    for (const std::size_t n : {1, 7, 20, 500}) {
        const double power = 1.0 / static_cast<double>(n + 1);
        CHECK(row(0, n).low == Approx(1 - std::pow(0.975, power)).epsilon(1e-6));
        CHECK(row(0, n).high == Approx(1 - std::pow(0.025, power)).epsilon(1e-6));
        CHECK(row(n, n).low == Approx(std::pow(0.025, power)).epsilon(1e-6));
    }
    // Beta(2, 2) lies below x with x^2 (3 - 2x).
    const ReliabilityRow half = row(1, 2);
    CHECK(half.low * half.low * (3 - 2 * half.low) == Approx(0.025).epsilon(1e-6));
    CHECK(half.high * half.high * (3 - 2 * half.high) == Approx(0.975).epsilon(1e-6));
}

TEST_CASE("Forecasts that come as often as said have the share in the interval 95 times in 100") {
    Chance chance(7);
    int rows = 0;
    int inside = 0;
    for (int round = 0; round < 60; ++round) {
        std::vector<Forecast> forecasts;
        for (int i = 0; i < 400; ++i) {
            const double p = chance.upto(9) / 10.0 + 0.05;
            forecasts.push_back({p, chance.between(0, 1) < p});
        }
        for (const ReliabilityRow& row : reliability_table(forecasts, 20)) {
            ++rows;
            if (row.least == row.most && row.low <= row.said && row.said <= row.high) ++inside;
            if (row.least != row.most) --rows;
        }
    }
    REQUIRE(rows > 100);
    CHECK(inside > 0.90 * rows);
    CHECK(inside < 0.99 * rows);
}

TEST_CASE("One miss that was called certain costs a clipped log loss, not an endless one") {
    CHECK(log_loss({{1, false}}) == Approx(-std::log(1e-4)));
    CHECK(log_loss({{0, true}}) == Approx(-std::log(1e-4)));
    CHECK(score_jobs({{{0, 1}, 0}}).log_loss == Approx(-std::log(1e-4)));
}

TEST_CASE("A cause that shares its probability with others does not count as first") {
    CHECK(score_jobs({{{0.4, 0.4, 0.2}, 0}}).first == 0);
    CHECK(score_jobs({{{0.25, 0.25, 0.25, 0.25}, 1}}).first_three == 0);
    CHECK(score_jobs({{{0.25, 0.25, 0.25, 0.2}, 1}}).first_three == 1);
}

TEST_CASE("Nothing said gives scores of nothing") {
    CHECK(reliability_table({}, 20).empty());
    CHECK(brier_split({}, {}).brier == 0);
    CHECK(log_loss({}) == 0);
    CHECK(score_jobs({}).jobs == 0);
}
