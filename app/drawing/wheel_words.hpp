// How far the wheel is turned, in words. Knows no boat.
#pragma once

#include <string>

namespace hardover::drawing {

// "1.2 turns to starboard"; `turned` in radians, above 0 to starboard. "": straight, within a twentieth of a
// turn.
std::string turns_words(double turned);

}  // namespace hardover::drawing
