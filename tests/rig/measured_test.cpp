// Reading the gauges as a hand and a tape do: errors as large as each gauge's spread, the same for a seed.
#include <cmath>

#include "app/rig/survey.hpp"
#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {

Readings true_readings() {
    const auto readings = survey(sample_boat(3), {});
    REQUIRE_OK(readings);
    return readings.value();
}

}  // namespace

TEST_CASE("The same seed reads a boat the same, another seed otherwise") {
    const Readings readings = true_readings();
    CHECK(measured(readings, 5) == measured(readings, 5));
    CHECK(measured(readings, 5) != measured(readings, 6));
}

TEST_CASE("Readings scatter about the truth by half the gauge's spread, each gauge by itself") {
    const Readings readings = true_readings();
    const double truth = readings.at("ram_mark_port");
    double sum = 0, squares = 0, together = 0;
    constexpr int count = 4000;
    for (int seed = 0; seed < count; ++seed) {
        const Readings read = measured(readings, seed);
        const double error = (read.at("ram_mark_port") - truth) / (0.0254 / 32);
        sum += error;
        squares += error * error;
        together += error * (read.at("lock_angle_port") - readings.at("lock_angle_port"));
    }
    // Five standard errors of mean, variance and covariance.
    CHECK(std::abs(sum / count) < 5 / std::sqrt(count));
    CHECK(std::abs(squares / count - 1) < 5 * std::sqrt(2.0 / count));
    const double half_a_degree = 0.5 * 3.14159265 / 180;
    CHECK(std::abs(together / count) < 5 * half_a_degree / std::sqrt(count));
}

TEST_CASE("A gauge is misread alike whether or not the boat has the others, and never below nothing") {
    const Readings readings = true_readings();
    const Readings one{{"lock_angle_port", readings.at("lock_angle_port")}};
    for (int seed = 0; seed < 200; ++seed) {
        const Readings read = measured(readings, seed);
        CHECK(measured(one, seed).at("lock_angle_port") == read.at("lock_angle_port"));
        CHECK(read.at("joint_play") >= 0);
        CHECK(read.at("hoses_crossed") == readings.at("hoses_crossed"));  // seen, not measured
    }
}
