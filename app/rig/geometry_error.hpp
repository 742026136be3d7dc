// How the linkage refuses sizes that no steering can have. Inner header: knows words only.
#pragma once

#include <cmath>
#include <string>
#include <utility>

#include "rules/result/result.hpp"

namespace hardover::rig {

inline Error bad_geometry(std::string what, std::string cure) {
    return {Error::Kind::bad_input, std::move(what), "", std::move(cure)};
}

inline std::string millimetres(double length) {
    return std::to_string(std::lround(length * 1000)) + " mm";
}

inline Error dead_centre(const std::string& where) {
    return bad_geometry(where + " is too near dead centre: the ram pulls almost through the steering axis",
                        "move the anchor so that the ram stands squarer to the arm");
}

}  // namespace hardover::rig
