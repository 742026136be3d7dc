// Whether everything on a screen can be read and pressed, at many window and text sizes.
#pragma once

#include <string>

#include "harness.hpp"

namespace hardover_tests {

// check_marks on a screen at many window and text sizes.
void sweep(const std::string& name, const Harness::Draw& draw);

}  // namespace hardover_tests
