#include "cut_off.hpp"

#include <sstream>

#include "kills.hpp"
#include "support.hpp"
#include "tally.hpp"

namespace hardover_tests {

std::vector<std::string> cut_off(const std::string& trace) {
    return {"unshare", "-rn", "strace", "-f", "-qq", "-e", "trace=network", "-e", "signal=none", "-o", trace};
}

std::string cannot_cut_off() {
    if (const std::string why = cannot_trace(); !why.empty()) return why;
    Surroundings around;
    around.through = {"unshare", "-rn"};
    return run_program({"--version"}, "", around).code == 0 ? "" : "no network namespace can be made here";
}

std::string reached_out(const std::string& trace, bool has_display) {
    std::istringstream lines(file_text(trace));
    std::string found;
    for (std::string line; std::getline(lines, line);) {
        const bool opens = line.find("socket(") != std::string::npos ||
                           line.find("connect(") != std::string::npos ||
                           line.find("sendto(") != std::string::npos;
        bool local = false;
        for (const char* own : {"socket(AF_UNIX", "/tmp/.X11-unix/X", "/var/run/nscd/socket"}) {
            local = local || line.find(own) != std::string::npos;
        }
        if (opens && !(has_display && local)) found += line + "\n";
    }
    return found;
}

void leave_out_network(const std::string& why) {
    tried(no_network).left_out = why;
    WARN("left out: " << why);
}

}  // namespace hardover_tests
