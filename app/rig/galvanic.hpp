// Which metal eats which in sea water. Potentials in V with their spread, from charts of two kinds that must
// not be mixed: against a calomel electrode in flowing water, and against silver chloride.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "rules/result/result.hpp"

namespace hardover::rig {

enum class Electrode { calomel, silver_chloride };

struct Metal {
    std::string name;  // "316 stainless, passive"
    Electrode electrode = Electrode::calomel;
    double potential = 0;  // V; the lower one is eaten
    double spread = 0;     // V, half width
};

// Stainless steel stands twice: in crevices, under paint and under hose clamps it is active.
// Sources: chart of steady-state potentials in flowing sea water against calomel; galvanic series chart
// against silver chloride at 77 F; both secondary charts of the series of ASTM G82.
const std::vector<Metal>& metals(Electrode electrode);
// Error: unknown metal, with the nearest known one.
Result<Metal> find_metal(Electrode electrode, std::string_view name);

struct Couple {
    double voltage = 0;  // driving voltage, never negative
    double spread = 0;
    std::string eaten;        // the anode
    std::string spared;       // the cathode
    bool of_concern = false;  // above 0.2 V, the limit of the silver chloride chart
};
inline constexpr double concern_voltage = 0.2;

// Two metals of one chart touching in sea water. The current sets the rate: a small anode on a large cathode
// is the bad ratio. Error as find_metal.
Result<Couple> couple(Electrode electrode, std::string_view one, std::string_view other);

}  // namespace hardover::rig
