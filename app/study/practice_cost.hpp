// What it takes to find something out on a boat as things stand: the measurements, the checks to be set up,
// the minutes. Knows no session and no marks.
#pragma once

#include <set>
#include <vector>

#include "rules/model/facts.hpp"
#include "rules/model/knowledge.hpp"

namespace hardover::study::practice {

// How things stand: what is known, which findings make sense on this rig, which checks are set up. All must
// outlive it.
struct Ground {
    const Knowledge& knowledge;
    const std::vector<bool>& makes_sense;
    const Facts& facts;
    const std::set<Index>& set_up;
};

// The finding itself, or the measurements its worksheet still takes; all of them when it has them all.
std::vector<Index> to_measure(const Ground& ground, Index finding);

// The checks that this takes and that are not set up yet.
std::vector<Index> checks_to_set_up(const Ground& ground, Index finding);

// Each finding takes its own minutes, a check its setting up once.
double minutes_of_finding(const Ground& ground, Index finding);

}  // namespace hardover::study::practice
