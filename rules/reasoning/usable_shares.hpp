// The shares of the knowledge kept within the limits of diagnosis_case.hpp, so that no answer leaves nothing
// possible. Knows one finding at a time.
#pragma once

#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover {

// Stray readings of a finding, `setting` where it has none of its own. Every bad reading keeps at least
// `least_stray`, the sound one at least `least_sound`; adds to 1.
std::vector<double> usable_stray(const Finding& finding, double setting);

// How often a cause gives each reading. The sound share is at least `least_sound`; adds to 1.
std::vector<double> usable_link(std::vector<double> how_often);

// The setting, so that the sound share is at least `least_sound`.
double usable_not_listed_shows(double setting);

// "Not on this list" makes a finding bad with the share `shows`, spread over its bad readings like stray.
std::vector<double> unlisted_share(const std::vector<double>& stray, double shows);

}  // namespace hardover
