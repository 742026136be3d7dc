// Where the program finds its knowledge, its records and its assets on this computer.
#pragma once

#include <string>

#include "rules/result/result.hpp"

namespace hardover {

// The shipped knowledge: $HARDOVER_KNOWLEDGE, else where `cmake --install` puts it seen from the program
// (../share/hardover/knowledge), else ../knowledge as in a build folder. Error not_found names the folders
// tried.
Result<std::string> shipped_knowledge_folder();

// The shipped assets (fonts), found in the same way; $HARDOVER_ASSETS names others.
Result<std::string> shipped_assets_folder();

// $XDG_DATA_HOME/hardover, else ~/.local/share/hardover. Error when neither variable is set.
Result<std::string> user_data_folder();

}  // namespace hardover
