// The manual page and the completions tell of every command there is: held against what --help says, command
// by command, which the library writes and not we.
#include <catch2/catch.hpp>
#include <cstdio>
#include <sstream>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

struct HelpOf {
    std::string way;                    // "hardover job list"
    std::vector<std::string> options;   // "--json"
    std::vector<std::string> commands;  // below it
};

std::vector<std::string> words_of(const std::string& line) {
    std::istringstream words(line);
    std::vector<std::string> found;
    for (std::string word; words >> word;) found.push_back(word);
    return found;
}

// "  -h,--help   Print ..." and "  interview   Ask ..." under their headings.
HelpOf help_of(const std::string& way) {
    std::vector<std::string> arguments = words_of(way);
    arguments.erase(arguments.begin());
    arguments.push_back("--help");
    HelpOf help{way, {}, {}};
    std::istringstream lines(run_program(arguments).out);
    std::string heading;
    for (std::string line; std::getline(lines, line);) {
        if (!line.empty() && line.front() != ' ') heading = line;
        if (line.size() < 3 || line[0] != ' ' || line[2] == ' ') continue;
        const std::string first = words_of(line).front();
        if (heading == "Options:" || heading.rfind("Before or after", 0) == 0)
            help.options.push_back(first.substr(first.find("--")));
        if (heading == "Subcommands:") help.commands.push_back(first);
    }
    return help;
}

std::vector<HelpOf> all_help() {
    std::vector<HelpOf> all = {help_of("hardover")};
    for (std::size_t i = 0; i < all.size(); ++i) {
        for (const std::string& command : std::vector<std::string>(all[i].commands)) {
            all.push_back(help_of(all[i].way + " " + command));
        }
    }
    return all;
}

std::string in_roff(std::string text) {
    for (std::size_t at = 0; (at = text.find('-', at)) != std::string::npos; at += 2)
        text.replace(at, 1, "\\-");
    return text;
}

std::string printed_by_bash(const std::string& script) {
    std::FILE* out = popen(("bash '" + script + "'").c_str(), "r");
    REQUIRE(out != nullptr);
    std::string printed;
    for (int c = std::fgetc(out); c != EOF; c = std::fgetc(out)) printed += static_cast<char>(c);
    CHECK(pclose(out) == 0);
    return printed;
}

bool holds(const std::string& text, const std::string& piece) {
    return text.find(piece) != std::string::npos;
}

}  // namespace

TEST_CASE("The manual and the completions of all shells name every command and every option of it") {
    const std::string manual = run_program({"manual"}).out;
    const std::string bash = run_program({"completion", "bash"}).out;
    const std::string zsh = run_program({"completion", "zsh"}).out;
    const std::string fish = run_program({"completion", "fish"}).out;
    const std::vector<HelpOf> all = all_help();
    REQUIRE(all.size() > 30);
    for (const HelpOf& help : all) {
        INFO(help.way);
        const std::string shown = in_roff(help.way);
        CHECK((holds(manual, "\\fB" + shown + "\\fR") || holds(manual, ".SS " + shown + "\n")));
        CHECK(holds(bash, "'" + help.way + "') "));
        CHECK(holds(zsh, "'" + help.way + "') "));
        for (const std::string& command : help.commands) {
            CHECK(holds(fish, "'__hardover_at \"" + help.way + "\"' -f -a " + command + " "));
        }
        const std::size_t start = bash.find("\n        '" + help.way + "') ");
        REQUIRE(start != std::string::npos);
        const std::string branch = bash.substr(start, bash.find(";;", start) - start);
        for (const std::string& option : help.options) {
            INFO(option);
            CHECK(holds(branch, option));
            CHECK(holds(manual, "\\fB" + in_roff(option) + "\\fR"));
        }
    }
}

TEST_CASE("Every example of the manual is a command line the program takes") {
    const TemporaryFolder folder;
    std::istringstream lines(run_program({"manual"}).out);
    int examples = 0;
    bool in_examples = false;
    for (std::string line; std::getline(lines, line);) {
        in_examples = in_examples || line == ".SH EXAMPLES";
        if (!in_examples || line.rfind("\\fBhardover ", 0) != 0) continue;
        ++examples;
        std::string typed = line.substr(12, line.size() - 15);
        for (std::size_t at = 0; (at = typed.find("\\-", at)) != std::string::npos;) typed.erase(at, 1);
        INFO(typed);
        std::vector<std::string> arguments = {"--records", folder.file("records.db")};
        bool quoted = false;
        arguments.emplace_back();
        for (const char c : typed) {
            if (c == '\'') {
                quoted = !quoted;
            } else if (c == ' ' && !quoted) {
                arguments.emplace_back();
            } else {
                arguments.back() += c;
            }
        }
        CHECK(run_program(arguments).code < 2);
    }
    CHECK(examples >= 6);
}

TEST_CASE("The completion of bash offers commands, options, words and paths where they belong") {
    const TemporaryFolder folder;
    write_file(folder.file("complete"), run_program({"completion", "bash"}).out);
    write_file(folder.file("count file.json"), "");
    const auto offered = [&](const std::string& typed) {
        // The last word is the one being typed. compopt works only while a line is being edited.
        write_file(folder.file("script"), "source '" + folder.file("complete") + "'\ncd '" + folder.path() +
                                              "'\ncompopt() { :; }\nCOMP_WORDS=(" + typed +
                                              ")\nCOMP_CWORD=$((${#COMP_WORDS[@]} - 1))\n_hardover\n"
                                              "printf '%s\\n' \"${COMPREPLY[@]}\"\n");
        return printed_by_bash(folder.file("script"));
    };
    CHECK(offered("hardover kn") == "knowledge\n");
    CHECK(offered("hardover knowledge compare-with-rig --b") == "--boats\n");
    CHECK(offered("hardover job sheet 3 --paper ''") == "letter\na4\n");
    CHECK(offered("hardover learning merge cou") == "count file.json\n");
    CHECK(offered("hardover --records cou") == "count file.json\n");
    CHECK(offered("hardover job list --rec") == "--records\n");
    CHECK(offered("hardover job list --records cou") == "count file.json\n");
    CHECK(offered("hardover class set make --pass") == "--passphrase-file\n");
    CHECK(offered("hardover --knowledge cou") == "\n");
    CHECK(offered("hardover completion ''").find("bash") != std::string::npos);
}
