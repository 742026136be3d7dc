// An answer -> what it says about the readings of its finding. Knows one finding at a time, no causes.
#pragma once

#include <optional>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover {

// No answer outweighs another by more than this ratio (20 decibans), however sharp the measurement.
inline constexpr double heaviest_measurement = 100;

// Likelihood per reading, greatest = 1. A reading gives a unit vector; a measurement gives
// (1 - misreading) * P(true value lies in the reading's range) + misreading / readings, the true value being
// normal about what was measured. Empty when the answer says nothing: "can't tell", a plain measurement
// without readings, a reading that does not exist, or a quantity of another kind.
std::optional<std::vector<double>> likelihood_of(const Finding& finding, const Answer& answer,
                                                 double misreading);

// The readings a measurement may still be, within its spread, the most probable first.
Choice possible_readings(const Finding& finding, const Quantity& measured);

// The measurement with the finding's own spread where it has none.
Quantity with_spread(const Quantity& measured, double spread);

}  // namespace hardover
