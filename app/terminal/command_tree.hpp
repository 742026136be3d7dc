// The commands of the program as a plain tree, for the manual page and for completion in shells: both are
// made from it, so that neither can tell of a command that is not there. Knows nothing of what a command
// does.
#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace hardover {

// The heading in --help of options that may stand before the command or after it, told with every command
// below. Of such a heading only the start is looked at.
inline constexpr const char* before_or_after = "Before or after the command";

// Whether an option stands under such a heading.
bool may_stand_after(const CLI::Option& option);

// What stands after an option, or in the place of an argument.
enum class Takes { nothing, text, number, file, folder };

struct CommandOption {
    std::vector<std::string> names;  // {"-h", "--help"}; of an argument its one name: {"CASE"}
    std::string about;
    Takes takes = Takes::nothing;
    std::vector<std::string> choices;  // when only these are taken
    bool required = false;
    bool several = false;     // may be given more than once
    bool from_above = false;  // of a command above; may stand after this one too
};

struct CommandTree {
    std::string name;
    std::string about;
    std::vector<CommandOption> options;
    std::vector<CommandOption> arguments;
    std::vector<CommandTree> commands;
};

CommandTree tree_of(const CLI::App& app);

// A command with the words that lead to it: "hardover knowledge check".
struct CommandWay {
    std::string way;
    const CommandTree* command;
};
// Every command of the tree, itself first, each before those below it.
std::vector<CommandWay> all_commands(const CommandTree& tree);

}  // namespace hardover
