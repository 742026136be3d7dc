// Kills the program with SIGKILL at random moments and looks what is on record afterwards.
#pragma once

#include <chrono>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "terminal/program.hpp"

namespace hardover_tests {

// A dialogue through pipes that goes on over many kills.
struct Dialogue {
    std::string fault;    // its line in the table
    std::string records;  // the records file
    // How the program is started, or goes on with what was not finished.
    std::function<std::vector<std::string>()> arguments;
    // The n-th answer, n = 0, 1, 2 ...: what is typed, and what its row on record must have in it.
    std::function<std::string(int n)> line;
    std::function<std::string(int n)> trace;
    std::string on_record;  // SELECT of the rows that the answers made, in order
    Surroundings around;
};

struct KillOutcome {
    long kills = 0;
    long confirmed = 0;
    long lost = 0;
    long went_on = 0;                   // starts after a kill that came to their prompt
    std::vector<std::string> troubles;  // what else was not as it must be
};

// Answers count as confirmed when the prompt after them has come out of the pipe: the program writes first
// and prints then. Counts into the table too, unless the dialogue has no line in it.
KillOutcome kill_dialogue(const Dialogue& dialogue, int kills, std::mt19937& random);

// A command that does one thing and ends.
struct Command {
    std::string fault;
    // Makes the files it works on, in an empty folder; gives its arguments.
    std::function<std::vector<std::string>(const std::string& folder)> prepare;
    // What is wrong in the folder after a kill at any moment; "" when nothing is. `finished`: it has come to
    // its end, so that all of its work must be there.
    std::function<std::string(const std::string& folder, bool finished)> trouble;
    long things = 0;  // how many things on record each round puts at stake
};

// After each kill the command is given again and has to finish its work.
KillOutcome kill_command(const Command& command, int kills, std::mt19937& random);

// Kills the command at each of its calls that change a file, one after the other, by the system's tracer.
// Gives no kills and one trouble, why, where it cannot trace here.
KillOutcome kill_at_every_write(const Command& command);

// Why processes cannot be traced here; "" when they can.
std::string cannot_trace();

}  // namespace hardover_tests
