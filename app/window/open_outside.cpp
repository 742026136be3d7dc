// By xdg-open, which every desktop has.
#include "app/window/open_outside.hpp"

#include <spawn.h>
#include <sys/wait.h>

#include <filesystem>

extern char** environ;

namespace hardover::window {

Result<void> open_outside(const std::string& path) {
    std::error_code failed;
    if (!std::filesystem::exists(path, failed)) {
        return Error{Error::Kind::not_found, "this is not there any more", path, ""};
    }
    // A shell that starts it and ends at once, so that it outlives the window and leaves no child behind.
    std::string shell = "sh", option = "-c", name = "sh", target = path;
    std::string script =
        "command -v xdg-open >/dev/null || exit 1; xdg-open \"$1\" >/dev/null 2>&1 </dev/null &";
    char* const words[] = {shell.data(), option.data(), script.data(), name.data(), target.data(), nullptr};
    pid_t child = 0;
    int status = 1;
    const bool ran = posix_spawnp(&child, "sh", nullptr, nullptr, words, environ) == 0 &&
                     waitpid(child, &status, 0) == child;
    if (ran && WIFEXITED(status) && WEXITSTATUS(status) == 0) return {};
    return Error{Error::Kind::unsupported, "this computer has no program to open files with (xdg-open)", path,
                 "open it by hand: its path stands here"};
}

}  // namespace hardover::window
