// The program: hands the command line to the terminal, and opens the window when no command is given.
#include <fcntl.h>
#include <unistd.h>

#include <cstdlib>
#include <exception>
#include <iostream>
#include <string>
#include <vector>

#include "app/terminal/places.hpp"
#include "app/terminal/terminal.hpp"
#include "app/window/window.hpp"

namespace {

int open_window(const hardover::AwaitKnowledge& knowledge, hardover::Store& store,
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

// Whoever starts the program may have closed a standard stream. The next file opened would take its place,
// and be written over by what is printed; so the place is taken here. It cannot be written to: what is lost
// is noticed.
void take_closed_streams() {
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        if (fcntl(stream, F_GETFD) < 0) open("/dev/null", O_RDONLY);  // gives the lowest free number
    }
}

// What was printed may still be on its way: a full disk shows only now.
int all_printed(int code) {
    if (std::cout.flush()) return code;
    std::cerr
        << "hardover: what was printed could not all be written (is the disk full, or the output closed?)\n";
    return code == 0 ? 1 : code;
}

}  // namespace

int main(int count, char** words) try {
    take_closed_streams();
    const std::vector<std::string> arguments(words + 1, words + count);
    const bool colour = isatty(STDOUT_FILENO) != 0 && std::getenv("NO_COLOR") == nullptr;
    return all_printed(hardover::run_terminal(arguments, {std::cin, std::cout, std::cerr, colour},
                                              HARDOVER_VERSION, open_window));
} catch (const std::exception& fault) {
    // The last net, for what should have been told further in; every answer confirmed so far is on disk.
    std::cerr << "hardover: it had to stop: " << fault.what() << "\n";
    return 3;
}
