// The survey of a boat: every gauge of a steering system read off at once, with any set of faults. SI
// throughout. Knows no findings: what a gauge's value is called stands with the finding that names the gauge.
//
// The boat lies tied up with the drive in the water and, where the gauge does not say otherwise, straight
// ahead. Hydraulic gauges come from the steady circuit: what happens between two steady states is not seen.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "app/rig/boat.hpp"
#include "app/rig/faults.hpp"

namespace hardover::rig {

struct Gauge {
    std::string name;  // "rim_sponge"
    std::string unit;  // in which it is usually read
    std::string meaning;
    double spread = 0;  // ± of reading it (about 95 %), in that unit; 0: seen or counted. From memory.
};

// Every gauge there is.
const std::vector<Gauge>& gauges();

// By name of the gauge, SI. A gauge that this boat has not (turns of a cable-valve boat, the second ram's
// mark with one ram) is missing.
using Readings = std::map<std::string, double>;

// Reads all gauges. The same boat and faults give the same bits. Errors: sizes that cannot be; a ram that is
// not within its travel straight ahead; a circuit that does not settle (kind unsupported).
Result<Readings> survey(const Boat& boat, const Faults& faults);

// The same as somebody reads them who is as good as each gauge's spread: normal errors, the same for the same
// seed, independent of each other. What is not below 0 is not read below 0.
Readings measured(const Readings& true_readings, std::uint64_t seed);

}  // namespace hardover::rig
