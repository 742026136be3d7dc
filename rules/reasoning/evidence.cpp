#include "rules/reasoning/evidence.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace hardover {

namespace {

struct Range {
    double low = 0;
    double high = 0;
};

// Where the true value lies when this reading is right. Limits are exclusive: a reading lies beyond its
// limit.
Range range_of(const Finding& finding, std::size_t reading) {
    const double far = std::numeric_limits<double>::infinity();
    const auto limit = [&](std::size_t r, double otherwise) {
        return finding.readings[r].limit ? finding.readings[r].limit->value : otherwise;
    };
    const bool last = reading + 1 == finding.readings.size();
    if (finding.limits_are_lower_ends) {
        return {last ? -far : limit(reading, -far), reading == 0 ? far : limit(reading - 1, far)};
    }
    return {reading == 0 ? -far : limit(reading - 1, -far), last ? far : limit(reading, far)};
}

double normal_below(double x, double mean, double deviation) {
    return 0.5 * std::erfc((mean - x) / (deviation * std::sqrt(2.0)));
}

double chance_within(const Finding& finding, std::size_t reading, const Quantity& measured) {
    const Range range = range_of(finding, reading);
    const double deviation = measured.standard_deviation();
    if (deviation > 0) {
        return std::max(0.0, normal_below(range.high, measured.value, deviation) -
                                 normal_below(range.low, measured.value, deviation));
    }
    const bool inside = finding.limits_are_lower_ends
                            ? measured.value > range.low && measured.value <= range.high
                            : measured.value >= range.low && measured.value < range.high;
    return inside ? 1 : 0;
}

std::vector<double> likelihood_of_measurement(const Finding& finding, const Quantity& measured,
                                              double misreading) {
    const auto count = static_cast<double>(finding.readings.size());
    std::vector<double> likelihood;
    for (std::size_t r = 0; r < finding.readings.size(); ++r) {
        likelihood.push_back((1 - misreading) * chance_within(finding, r, measured) + misreading / count);
    }
    const double greatest = *std::max_element(likelihood.begin(), likelihood.end());
    if (!(greatest > 0)) return {};
    for (double& l : likelihood) l = std::max(l / greatest, 1 / heaviest_measurement);
    return likelihood;
}

}  // namespace

Quantity with_spread(const Quantity& measured, double spread) {
    Quantity with = measured;
    if (!(with.spread > 0)) with.spread = spread;
    return with;
}

std::optional<std::vector<double>> likelihood_of(const Finding& finding, const Answer& answer,
                                                 double misreading) {
    const std::size_t count = finding.readings.size();
    if (const int* reading = std::get_if<int>(&answer.given)) {
        if (*reading < 0 || static_cast<std::size_t>(*reading) >= count) return std::nullopt;
        std::vector<double> likelihood(count, 0.0);
        likelihood[static_cast<std::size_t>(*reading)] = 1;
        return likelihood;
    }
    const Quantity* measured = std::get_if<Quantity>(&answer.given);
    if (!measured || count == 0 || !finding.unit || !(measured->dimension == finding.unit->dimension) ||
        !std::isfinite(measured->value)) {
        return std::nullopt;
    }
    std::vector<double> likelihood =
        likelihood_of_measurement(finding, with_spread(*measured, finding.spread), misreading);
    if (likelihood.empty()) return std::nullopt;
    return likelihood;
}

Choice possible_readings(const Finding& finding, const Quantity& measured) {
    const Quantity value = with_spread(measured, finding.spread);
    std::vector<std::pair<double, std::size_t>> within;
    for (std::size_t r = 0; r < finding.readings.size(); ++r) {
        const Range range = range_of(finding, r);
        const bool reached = value.spread > 0 ? value.value - value.spread < range.high &&
                                                    value.value + value.spread > range.low
                                              : chance_within(finding, r, value) > 0;
        if (reached) within.push_back({-chance_within(finding, r, value), r});
    }
    std::sort(within.begin(), within.end());
    Choice choice;
    for (const auto& [chance, reading] : within) choice.possible.push_back(finding.readings[reading].id);
    return choice;
}

}  // namespace hardover
