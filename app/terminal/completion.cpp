// The scripts find out which command stands on the line so far, then offer what it takes. bash and zsh get
// one table in their own words; fish takes a line for each thing.
#include "app/terminal/completion.hpp"

#include <algorithm>

namespace hardover {

namespace {

const char* const heading =
    "# Completion of Hardover's commands, made by the program itself from its commands.\n";

std::string joined(const std::vector<std::string>& words, const std::string& between = " ") {
    std::string line;
    for (const std::string& word : words) line += (line.empty() ? "" : between) + word;
    return line;
}

// "'hardover job'|'hardover job list'": all ways but the program's own, as patterns of a case.
std::string patterns_of_commands(const std::vector<CommandWay>& ways) {
    std::vector<std::string> patterns;
    for (std::size_t i = 1; i < ways.size(); ++i) patterns.push_back("'" + ways[i].way + "'");
    return joined(patterns, "|");
}

// Commands, words for arguments and options that may come next.
std::vector<std::string> words_after(const CommandTree& command) {
    std::vector<std::string> words;
    for (const CommandTree& below : command.commands) words.push_back(below.name);
    for (const CommandOption& argument : command.arguments) {
        words.insert(words.end(), argument.choices.begin(), argument.choices.end());
    }
    for (const CommandOption& option : command.options) {
        words.insert(words.end(), option.names.begin(), option.names.end());
    }
    return words;
}

// What the arguments of a command are, when they are paths.
Takes path_taken(const CommandTree& command) {
    for (const CommandOption& argument : command.arguments) {
        if (argument.takes == Takes::file || argument.takes == Takes::folder) return argument.takes;
    }
    return Takes::nothing;
}

// The words a shell uses for "offer these words", "offer files" and "offer folders".
struct ShellWords {
    std::string (*words)(const std::string& list);
    std::string files;
    std::string folders;
};

std::string of_option(const CommandOption& option, const ShellWords& shell) {
    if (option.takes == Takes::file) return shell.files;
    if (option.takes == Takes::folder) return shell.folders;
    return option.choices.empty() ? ":" : shell.words(joined(option.choices));
}

// The branches of "case $way $before": what the value of an option may be.
std::string value_branches(const std::vector<CommandWay>& ways, const ShellWords& shell) {
    std::string branches;
    for (const auto& [way, command] : ways) {
        for (const CommandOption& option : command->options) {
            if (option.takes == Takes::nothing) continue;
            std::vector<std::string> patterns;
            for (const std::string& name : option.names) patterns.push_back("'" + way + " " + name + "'");
            branches +=
                "        " + joined(patterns, "|") + ") " + of_option(option, shell) + "; return ;;\n";
        }
    }
    return branches;
}

// The branches of "case $way": commands, options and paths.
std::string word_branches(const std::vector<CommandWay>& ways, const ShellWords& shell) {
    std::string branches;
    for (const auto& [way, command] : ways) {
        branches += "        '" + way + "') " + shell.words(joined(words_after(*command)));
        const Takes path = path_taken(*command);
        if (path == Takes::file) branches += "; " + shell.files;
        if (path == Takes::folder) branches += "; " + shell.folders;
        branches += " ;;\n";
    }
    return branches;
}

std::string in_fish_quotes(const std::string& text) {
    std::string quoted = "'";
    for (const char c : text) {
        if (c == '\'' || c == '\\') quoted += '\\';
        quoted += c == '\n' ? ' ' : c;
    }
    return quoted + "'";
}

std::string fish_option(const std::string& line, const CommandOption& option) {
    std::string made = line;
    for (const std::string& name : option.names) {
        const bool is_long = name.rfind("--", 0) == 0;
        made += is_long ? " -l " + name.substr(2) : " -s " + name.substr(1);
    }
    if (option.takes == Takes::file) made += " -r -F";
    if (option.takes == Takes::folder) made += " -x -a '(__fish_complete_directories)'";
    if (option.takes == Takes::text || option.takes == Takes::number) made += " -x";
    if (!option.choices.empty()) made += " -a " + in_fish_quotes(joined(option.choices));
    return made + " -d " + in_fish_quotes(option.about) + "\n";
}

}  // namespace

std::string bash_completion(const CommandTree& tree) {
    static const ShellWords bash = {
        [](const std::string& list) { return "_hardover_offer -W '" + list + "'"; },
        "compopt -o filenames; _hardover_offer -f", "compopt -o filenames; _hardover_offer -d"};
    const std::vector<CommandWay> ways = all_commands(tree);
    return heading +
           std::string(
               "_hardover_offer() {\n"
               "    local found\n"
               "    mapfile -t found < <(compgen \"$@\" -- \"${COMP_WORDS[COMP_CWORD]}\")\n"
               "    COMPREPLY+=(\"${found[@]}\")\n"
               "}\n"
               "_hardover() {\n"
               "    local way=hardover at\n"
               "    COMPREPLY=()\n"
               "    for ((at = 1; at < COMP_CWORD; ++at)); do\n"
               "        case \"$way ${COMP_WORDS[at]}\" in\n"
               "        ") +
           patterns_of_commands(ways) + ") way=\"$way ${COMP_WORDS[at]}\" ;;\n" +
           "        esac\n"
           "    done\n"
           "    case \"$way ${COMP_WORDS[COMP_CWORD - 1]}\" in\n" +
           value_branches(ways, bash) +
           "    esac\n"
           "    case \"$way\" in\n" +
           word_branches(ways, bash) +
           "    esac\n"
           "}\n"
           "complete -F _hardover hardover\n";
}

std::string zsh_completion(const CommandTree& tree) {
    static const ShellWords zsh = {[](const std::string& list) { return "compadd -- " + list; }, "_files",
                                   "_files -/"};
    const std::vector<CommandWay> ways = all_commands(tree);
    return "#compdef hardover\n" + std::string(heading) +
           "_hardover() {\n"
           "    local way=hardover at\n"
           "    for ((at = 2; at < CURRENT; ++at)); do\n"
           "        case \"$way ${words[at]}\" in\n"
           "        " +
           patterns_of_commands(ways) + ") way=\"$way ${words[at]}\" ;;\n" +
           "        esac\n"
           "    done\n"
           "    case \"$way ${words[CURRENT - 1]}\" in\n" +
           value_branches(ways, zsh) +
           "    esac\n"
           "    case \"$way\" in\n" +
           word_branches(ways, zsh) +
           "    esac\n"
           "}\n"
           "_hardover \"$@\"\n";
}

std::string fish_completion(const CommandTree& tree) {
    const std::vector<CommandWay> ways = all_commands(tree);
    std::string script = heading + std::string(
                                       "function __hardover_at\n"
                                       "    set -l way hardover\n"
                                       "    for word in (commandline -opc)[2..-1]\n"
                                       "        if contains -- \"$way $word\"");
    for (std::size_t i = 1; i < ways.size(); ++i) script += " '" + ways[i].way + "'";
    script +=
        "\n"
        "            set way \"$way $word\"\n"
        "        end\n"
        "    end\n"
        "    test \"$way\" = \"$argv[1]\"\n"
        "end\n";
    for (const auto& [way, command] : ways) {
        const std::string line = "complete -c hardover -n '__hardover_at \"" + way + "\"'";
        for (const CommandTree& below : command->commands) {
            script += line + " -f -a " + below.name + " -d " + in_fish_quotes(below.about) + "\n";
        }
        for (const CommandOption& option : command->options) script += fish_option(line, option);
        for (const CommandOption& argument : command->arguments) {
            if (!argument.choices.empty()) {
                script += line + " -f -a " + in_fish_quotes(joined(argument.choices)) + "\n";
            }
        }
        const Takes path = path_taken(*command);
        if (path == Takes::nothing && command->commands.empty()) script += line + " -f\n";
    }
    return script;
}

}  // namespace hardover
