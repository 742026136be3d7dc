// The shares of the knowledge kept within the limits of diagnosis_case.hpp, so that no answer leaves nothing
// possible. Knows one finding at a time.
#pragma once

#include <set>
#include <vector>

#include "rules/model/knowledge.hpp"

namespace hardover {

// Stray readings of a finding, `setting` where it has none of its own. Every bad reading keeps at least
// `least_stray`, the sound one at least `least_sound`; adds to 1.
std::vector<double> usable_stray(const Finding& finding, double setting);

// How often a cause gives each reading. The sound share is at least `least_sound`; adds to 1.
std::vector<double> usable_link(std::vector<double> how_often);

// Per finding and reading: how often the listed causes give it on average, weighed by their odds over all
// histories. A finding that no cause shows has an empty list. A reading that alone proves a cause is left out
// for that cause: it is the cause's own sign, and a fault that is not on the list has it no more often than
// the other causes. With complaints: on average over those causes that make the customer complain so, by the
// chain rule over what the complaints say, so that a boat's complaint is as probable as on average and the
// signs that usually go with it are too.
std::vector<std::vector<double>> typical_shares(const Knowledge& knowledge,
                                                const std::set<Index>& complaints);

// The setting, so that the sound share is at least `least_sound`.
double usable_not_listed_shows(double setting);

// What a cause that is not on the list gives: nobody knows, so it is taken to look like the listed ones do on
// average (`typical`), but every finding may be among its signs: it makes each bad with at least the share
// `least`, spread like stray where the listed ones say less. Adds to 1.
std::vector<double> unlisted_share(const std::vector<double>& stray, const std::vector<double>& typical,
                                   double least);

}  // namespace hardover
