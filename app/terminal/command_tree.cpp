// The tree is read out of the command-line library. What a path is, the library does not know: the
// description says it ("Folder ..." or "... file ..."), which people read too.
#include "app/terminal/command_tree.hpp"

#include <CLI/CLI.hpp>

namespace hardover {

namespace {

bool tells_of_file(const std::string& about) {
    for (const char* word : {"File", "Files", " file", " files"}) {
        if (about.find(word) != std::string::npos) return true;
    }
    return false;
}

// "TEXT:{letter,a4}" names what may be given.
std::vector<std::string> choices_in(const std::string& type) {
    std::vector<std::string> choices;
    const std::size_t open = type.find('{');
    const std::size_t close = type.find('}');
    if (open == std::string::npos || close == std::string::npos) return choices;
    std::string word;
    for (const char c : type.substr(open + 1, close - open)) {
        if (c != ',' && c != '}') {
            word += c;
        } else if (!word.empty()) {
            choices.push_back(std::exchange(word, ""));
        }
    }
    return choices;
}

Takes taken_by(const CLI::Option& option) {
    if (option.get_type_size() == 0 || option.get_items_expected_max() == 0) return Takes::nothing;
    const std::string type = option.get_type_name();
    if (type.find("INT") != std::string::npos || type.find("FLOAT") != std::string::npos)
        return Takes::number;
    if (option.get_description().rfind("Folder", 0) == 0) return Takes::folder;
    return tells_of_file(option.get_description()) ? Takes::file : Takes::text;
}

CommandOption option_of(const CLI::Option& option) {
    CommandOption made;
    if (option.get_positional()) {
        made.names.push_back(option.get_name(true));
    } else {
        for (const std::string& name : option.get_snames()) made.names.push_back("-" + name);
        for (const std::string& name : option.get_lnames()) made.names.push_back("--" + name);
    }
    made.about = option.get_description();
    made.takes = taken_by(option);
    made.choices = choices_in(option.get_type_name());
    made.required = option.get_required();
    made.several = made.takes != Takes::nothing && option.get_items_expected_max() > 1;
    return made;
}

void gather(const CommandTree& tree, const std::string& way, std::vector<CommandWay>& all) {
    all.push_back({way, &tree});
    for (const CommandTree& command : tree.commands) gather(command, way + " " + command.name, all);
}

}  // namespace

bool may_stand_after(const CLI::Option& option) {
    return option.get_group().starts_with(before_or_after);
}

CommandTree tree_of(const CLI::App& app) {
    CommandTree tree;
    tree.name = app.get_name();
    tree.about = app.get_description();
    for (const CLI::Option* option : app.get_options()) {
        (option->get_positional() ? tree.arguments : tree.options).push_back(option_of(*option));
    }
    for (const CLI::App* command : app.get_subcommands([](const CLI::App*) { return true; })) {
        tree.commands.push_back(tree_of(*command));
    }
    for (const CLI::App* above = app.get_parent(); above != nullptr; above = above->get_parent()) {
        for (const CLI::Option* option : above->get_options()) {
            if (!may_stand_after(*option)) continue;
            tree.options.push_back(option_of(*option));
            tree.options.back().from_above = true;
        }
    }
    return tree;
}

std::vector<CommandWay> all_commands(const CommandTree& tree) {
    std::vector<CommandWay> all;
    gather(tree, tree.name, all);
    return all;
}

}  // namespace hardover
