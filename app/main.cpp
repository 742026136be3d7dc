// The program: hands the command line to the terminal, and opens the window when no command is given.
#include <unistd.h>

#include <cstdlib>
#include <iostream>
#include <string>
#include <vector>

#include "app/terminal/places.hpp"
#include "app/terminal/terminal.hpp"
#include "app/window/window.hpp"

namespace {

int open_window(hardover::KnowledgeInUse& knowledge, hardover::Store& store,
                const hardover::WindowRequest& request) {
    const hardover::Result<std::string> assets = hardover::shipped_assets_folder();
    if (!assets) {
        std::cerr << "hardover: " << assets.error().text() << "\n";
        return 1;
    }
    hardover::WindowSettings settings;
    settings.assets_folder = assets.value();
    settings.preferences_file = request.data_folder + "/window.json";
    settings.job = request.job;
    return hardover::run_window(knowledge, store, settings);
}

}  // namespace

int main(int count, char** words) {
    const std::vector<std::string> arguments(words + 1, words + count);
    const bool colour = isatty(STDOUT_FILENO) != 0 && std::getenv("NO_COLOR") == nullptr;
    return hardover::run_terminal(arguments, {std::cin, std::cout, std::cerr, colour}, HARDOVER_VERSION,
                                  open_window);
}
