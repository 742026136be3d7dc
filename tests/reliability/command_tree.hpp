// The commands of the program as its own --help tells them, so that a new command is tried without being
// named here.
#pragma once

#include <string>
#include <vector>

namespace hardover_tests {

// What a command takes at one place, or after an option.
struct Slot {
    std::string name;   // "OUT", or "--seed"
    std::string type;   // "TEXT", "INT:POSITIVE", "TEXT:{letter,a4}"
    std::string about;  // what --help says of it
    bool is_option = false;
    bool required = false;
};

struct CommandHelp {
    std::vector<std::string> words;  // {"job", "show"}; none: the program itself
    bool needs_subcommand = false;
    std::vector<Slot> slots;  // all that take a value
    int code = -1;            // of --help
};

// The program itself and every command below it.
std::vector<CommandHelp> command_tree();

}  // namespace hardover_tests
