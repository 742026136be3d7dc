// What stands on the screen, as a JSON file for tests of the real window. Written only where the environment
// variable HARDOVER_MARKS names a file; knows no screen.
#pragma once

#include <cstdint>
#include <string>

#include "app/window/geometry.hpp"
#include "rules/result/result.hpp"

namespace hardover::window {

struct MarksOfFrame {
    std::uint64_t frame = 0;  // since the start
    bool settled = false;     // nothing is left to be done until something happens
    float scale = 1;
    const Marks& marks;
};

// The file named by the environment, or "".
std::string marks_file_wanted();

// Replaces the file as a whole, so that whoever reads it never sees half.
Result<void> write_marks(const std::string& path, const MarksOfFrame& told);

}  // namespace hardover::window
