// The program without any network interface, its network calls traced.
#pragma once

#include <string>
#include <vector>

#include "terminal/program.hpp"

namespace hardover_tests {

inline constexpr const char* no_network = "no network at all, and every socket traced";

// Words that run a program without any network interface, its network calls written to `trace`.
std::vector<std::string> cut_off(const std::string& trace);

// Why that cannot be done here; "" when it can.
std::string cannot_cut_off();

// The traced calls that reach for anything but the display's socket in this computer's files. With the
// display's libraries the C library asks this computer's list of users, also through a file; that is let
// pass.
std::string reached_out(const std::string& trace, bool has_display);

// Says so in the table.
void leave_out_network(const std::string& why);

}  // namespace hardover_tests
