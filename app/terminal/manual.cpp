// Writes the page for man: every text is made safe for roff, which takes points and quotes at the start of a
// line for orders and a minus sign for a hyphen.
#include "app/terminal/manual.hpp"

#include <algorithm>

namespace hardover {

namespace {

std::string roff(const std::string& text) {
    std::string safe;
    for (const char c : text) {
        if (c == '\\') {
            safe += "\\e";
        } else if (c == '-') {
            safe += "\\-";
        } else {
            safe += c == '\n' ? ' ' : c;
        }
    }
    const bool order = !safe.empty() && (safe.front() == '.' || safe.front() == '\'');
    return order ? "\\&" + safe : safe;
}

std::string bold(const std::string& text) {
    return "\\fB" + roff(text) + "\\fR";
}

std::string section(const std::string& name) {
    return ".SH " + name + "\n";
}

std::string paragraph(const std::string& text) {
    return ".PP\n" + roff(text) + "\n";
}

std::string item(const std::string& shown, const std::string& about) {
    return ".TP\n" + shown + "\n" + roff(about) + "\n";
}

std::string joined_choices(const CommandOption& option) {
    std::string line;
    for (const std::string& choice : option.choices) line += (line.empty() ? "" : "|") + choice;
    return line;
}

std::string value_of(const CommandOption& option) {
    if (!option.choices.empty()) return joined_choices(option);
    switch (option.takes) {
        case Takes::number:
            return "N";
        case Takes::file:
            return "FILE";
        case Takes::folder:
            return "FOLDER";
        default:
            return "TEXT";
    }
}

std::string shown(const CommandOption& option) {
    std::string names;
    for (const std::string& name : option.names) names += (names.empty() ? "" : ", ") + bold(name);
    if (option.takes == Takes::nothing) return names;
    return names + " \\fI" + roff(value_of(option)) + "\\fR";
}

// "hardover job sheet N [OUT] [OPTIONS]".
std::string usage(const std::string& way, const CommandTree& command) {
    std::string line = bold(way);
    for (const CommandOption& argument : command.arguments) {
        const std::string name =
            "\\fI" + roff(argument.names.front()) + "\\fR" + (argument.several ? " ..." : "");
        line += " " + (argument.required ? name : "[" + name + "]");
    }
    return line;
}

// The description of a command as a sentence.
std::string sentence(const std::string& about) {
    return about.empty() || about.back() == '.' ? about : about + ".";
}

bool is_help(const CommandOption& option) {
    return option.names.back() == "--help";
}

std::string command_text(const std::string& way, const CommandTree& command) {
    std::string text = item(usage(way, command), sentence(command.about));
    std::string inner;
    for (const CommandOption& argument : command.arguments) {
        inner += item("\\fI" + roff(argument.names.front()) + "\\fR", argument.about);
    }
    for (const CommandOption& option : command.options) {
        if (!is_help(option) && !option.from_above) inner += item(shown(option), option.about);
    }
    return inner.empty() ? text : text + ".RS\n" + inner + ".RE\n";
}

std::string commands(const CommandTree& tree) {
    std::string text = section("COMMANDS");
    for (const auto& [way, command] : all_commands(tree)) {
        const auto own = std::count_if(command->options.begin(), command->options.end(),
                                       [](const CommandOption& option) { return !option.from_above; });
        const bool only_leads_on = !command->commands.empty() && command->arguments.empty() && own <= 1;
        if (command != &tree && !only_leads_on) text += command_text(way, *command);
        if (command != &tree && only_leads_on)
            text += ".SS " + roff(way) + "\n" + roff(sentence(command->about)) + "\n";
    }
    return text;
}

std::string options(const CommandTree& tree) {
    std::string text = section("OPTIONS");
    for (const CommandOption& option : tree.options) text += item(shown(option), option.about);
    return text + paragraph("--knowledge and --records may stand before the command or after it.");
}

std::string surroundings() {
    return section("ENVIRONMENT") +
           item(bold("HARDOVER_KNOWLEDGE"), "Folder of knowledge files instead of the shipped one.") +
           item(bold("HARDOVER_ASSETS"), "Folder of fonts instead of the shipped one.") +
           item(bold("XDG_DATA_HOME") + ", " + bold("HOME"),
                "Where the records are kept: hardover/records.db in the first, or in .local/share of the "
                "second.") +
           item(bold("NO_COLOR"), "When set, nothing is printed in bold.") + section("FILES") +
           item("\\fI~/.local/share/hardover/\\fR",
                "The records of this person: jobs, learners, settings. They stay when the program is "
                "removed.") +
           section("EXIT STATUS") + item("0", "Done.") +
           item("1", "Refused: one message says what is wrong, where, and what would be right.") +
           item("2", "The command line is wrong.");
}

std::string examples() {
    std::string text = section("EXAMPLES");
    for (const ManualExample& example : manual_examples()) text += item(bold(example.line), example.about);
    return text;
}

}  // namespace

const std::vector<ManualExample>& manual_examples() {
    static const std::vector<ManualExample> examples = {
        {"hardover", "Opens the window."},
        {"hardover interview --boat 'Grey Gull'", "Asks in the terminal about a boat that has come back."},
        {"hardover knowledge check", "Lists every fault of the knowledge with its line and column."},
        {"hardover knowledge show air_in_oil", "Shows one entry in full."},
        {"hardover worksheet list", "Lists the worksheets, each with an example."},
        {"hardover job sheet 3 sheet.pdf --paper a4", "Writes the sheet of job 3 as PDF."},
        {"hardover practice --level 1", "A practice boat with a hidden fault."},
    };
    return examples;
}

std::string manual_page(const CommandTree& tree, const std::string& version) {
    return ".\\\" Written by the program itself: hardover manual\n"
           ".TH HARDOVER 1 \"\" \"Hardover " +
           roff(version) + "\" \"Hardover\"\n" + section("NAME") +
           "hardover \\- find, prove and cure faults of hydraulic steering on small craft\n" +
           section("SYNOPSIS") + bold("hardover") + " [\\fIOPTIONS\\fR] [\\fICOMMAND\\fR ...]\n" +
           section("DESCRIPTION") +
           "Hardover takes the technician from the customer's complaint to the cause, proved by a look or a\n"
           "measurement before anything is taken apart, to the remedy and the checks after it. It has "
           "worksheets\n"
           "for fitting, quizzes and practice boats for those who learn the trade, and works without a "
           "network.\n" +
           paragraph("Without a command it opens the window.") +
           paragraph(
               "Steering gear can hurt. Hardover shows the usual cautions before the step they belong to. It "
               "does "
               "not replace the maker's instructions, the local code or licensed practice.") +
           commands(tree) + options(tree) + surroundings() + examples();
}

}  // namespace hardover
