#include "app/drawing/wheel_words.hpp"

#include <cmath>
#include <cstdio>
#include <numbers>

namespace hardover::drawing {

std::string turns_words(double turned) {
    const double turns = turned / (2 * std::numbers::pi);
    if (std::abs(turns) < 0.05) return "";
    char text[40];
    std::snprintf(text, sizeof text, "%.1f turns to %s", std::abs(turns), turns > 0 ? "starboard" : "port");
    return text;
}

}  // namespace hardover::drawing
