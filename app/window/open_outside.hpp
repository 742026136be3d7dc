// Opens a file or a folder with the program the system has for it. Knows no screen.
#pragma once

#include <string>

#include "rules/result/result.hpp"

namespace hardover::window {

// Returns at once. Error not_found: it is not there; unsupported: the system has no way to open it
// (xdg-open).
Result<void> open_outside(const std::string& path);

}  // namespace hardover::window
