#include "command_tree.hpp"

#include <sstream>

#include "terminal/program.hpp"

namespace hardover_tests {

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// A type is written in capitals, as TEXT or UINT:INT in [1 - 5].
bool is_type(const std::string& word) {
    for (const char* start : {"TEXT", "INT", "UINT", "FLOAT", "NUMBER"}) {
        if (word.rfind(start, 0) == 0) return true;
    }
    return false;
}

// The text from column 30 on, where --help says what a slot is for.
std::string about_of(const std::string& line) {
    constexpr std::size_t column = 30;
    return line.size() > column ? line.substr(column) : "";
}

// Reads "  --seed UINT      Draw ..." and "  OUT TEXT REQUIRED   PDF file ...".
bool read_slot(const std::string& line, bool is_option, Slot& slot) {
    std::istringstream words(line);
    std::string name, type;
    if (!(words >> name >> type) || !is_type(type)) return false;
    slot = {name.substr(name.rfind(',') + 1), type, about_of(line), is_option, holds(line, " REQUIRED")};
    return true;
}

void read_tree(const std::vector<std::string>& words, std::vector<CommandHelp>& all) {
    std::vector<std::string> asked = words;
    asked.emplace_back("--help");
    const Ran help = run_program(asked);
    CommandHelp command{words, false, {}, help.code};
    std::vector<std::string> below;
    std::string part;
    std::istringstream lines(help.out);
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind("Usage:", 0) == 0) command.needs_subcommand = holds(line, " SUBCOMMAND");
        if (!line.empty() && line[0] != ' ') part = line;
        const bool entry = line.size() > 3 && line.compare(0, 2, "  ") == 0 && line[2] != ' ';
        if (!entry) {
            // A long name pushes what it is for to the next line.
            const bool goes_on = line.size() > 30 && !command.slots.empty() && part != "Subcommands:";
            if (goes_on && command.slots.back().about.empty()) command.slots.back().about = about_of(line);
            continue;
        }
        // What a command takes for the one above it is tried there.
        if (part.starts_with("Before or after the command") && !words.empty()) continue;
        Slot slot;
        if (part == "Subcommands:") {
            std::istringstream first(line);
            first >> below.emplace_back();
        } else if (read_slot(line, part != "Positionals:", slot)) {
            command.slots.push_back(slot);
        }
    }
    all.push_back(command);
    for (const std::string& word : below) {
        std::vector<std::string> next = words;
        next.push_back(word);
        read_tree(next, all);
    }
}

}  // namespace

std::vector<CommandHelp> command_tree() {
    std::vector<CommandHelp> all;
    read_tree({}, all);
    return all;
}

}  // namespace hardover_tests
