// The manual page of the program: what is written about it as a whole, and its commands from their tree.
#pragma once

#include <string>

#include "app/terminal/command_tree.hpp"

namespace hardover {

// The page in the form of man(7). It tells no day, so that equal programs give equal pages.
std::string manual_page(const CommandTree& tree, const std::string& version);

// The command lines the page gives as examples, each with what it does.
struct ManualExample {
    std::string line;  // "hardover interview"
    std::string about;
};
const std::vector<ManualExample>& manual_examples();

}  // namespace hardover
