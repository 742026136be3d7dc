// Hands the physics of the rig to the formulas of the knowledge base.
#pragma once

#include "rules/language/language.hpp"

namespace hardover::rig {

// The functions a worksheet's formula may call: every formula of this folder that takes and gives plain
// numbers, under its own name and with its own order of arguments; of a struct, its members in order. What
// each does and where it holds stands in the header of its topic. A value that cannot be (a rod thicker than
// its bore, a ram that does not reach) gives "unknown" in the formula.
Functions rig_functions();

}  // namespace hardover::rig
