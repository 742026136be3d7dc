// Whether everything on a screen can be read and pressed, at many window and text sizes.
#pragma once

#include <string>

#include "harness.hpp"

namespace hardover_tests {

// No text cut or on another, no control under 44 dp or on another, none named twice.
void check_marks(const hardover::window::Marks& marks, float scale);

// The same on a screen at many window and text sizes.
void sweep(const std::string& name, const Harness::Draw& draw);

}  // namespace hardover_tests
