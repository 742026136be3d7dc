// Completion of the program's commands in shells, as scripts made from the tree of commands.
#pragma once

#include <string>

#include "app/terminal/command_tree.hpp"

namespace hardover {

// Each gives the whole script. Completed are commands, options, the words an option takes, files and folders.
std::string bash_completion(const CommandTree& tree);
std::string zsh_completion(const CommandTree& tree);
std::string fish_completion(const CommandTree& tree);

}  // namespace hardover
