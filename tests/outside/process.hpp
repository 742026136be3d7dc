// Runs another program as a whole process and says what it printed and how long it took.
#pragma once

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <optional>
#include <string>
#include <vector>

namespace hardover_tests {

struct Finished {
    std::string out;
    int code = -1;          // -1: it could not be run, or a signal ended it
    double cpu_ms = 0;      // of the process, user and system
    double elapsed_ms = 0;  // from starting it to its end
};

// `words[0]` is looked up in PATH. What it writes as errors is dropped.
inline Finished run_process(const std::vector<std::string>& words) {
    Finished finished;
    int pipe_ends[2];
    if (pipe2(pipe_ends, O_CLOEXEC) != 0) return finished;
    // All that takes memory comes before vfork(): the child shares it, and gives nothing back.
    const int nowhere = open("/dev/null", O_WRONLY | O_CLOEXEC);
    std::vector<char*> arguments;
    for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    const auto start = std::chrono::steady_clock::now();
    const pid_t process = vfork();
    if (process == 0) {
        dup2(pipe_ends[1], STDOUT_FILENO);
        dup2(nowhere, STDERR_FILENO);
        execvp(arguments[0], arguments.data());
        _exit(127);
    }
    close(pipe_ends[1]);
    close(nowhere);
    char block[4096];
    for (ssize_t got; process > 0 && (got = read(pipe_ends[0], block, sizeof block)) > 0;) {
        finished.out.append(block, static_cast<std::size_t>(got));
    }
    close(pipe_ends[0]);
    int status = 0;
    rusage used{};
    if (process < 0 || wait4(process, &status, 0, &used) < 0) return finished;
    const std::chrono::duration<double, std::milli> elapsed = std::chrono::steady_clock::now() - start;
    const auto milliseconds = [](const timeval& time) {
        return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) * 1e-3;
    };
    finished.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    finished.cpu_ms = milliseconds(used.ru_utime) + milliseconds(used.ru_stime);
    finished.elapsed_ms = elapsed.count();
    return finished;
}

// A file with this text in the system's folder for temporary files; removed at the end.
class ScratchFile {
  public:
    ScratchFile(const std::string& name, const std::string& text)
        : path_(
              (std::filesystem::temp_directory_path() / ("hardover-" + std::to_string(getpid()) + "-" + name))
                  .string()) {
        std::ofstream(path_) << text;
    }
    ~ScratchFile() {
        std::error_code ignored;
        std::filesystem::remove(path_, ignored);
    }
    ScratchFile(const ScratchFile&) = delete;
    ScratchFile& operator=(const ScratchFile&) = delete;
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

// "-1.825 <= Log(Z) <= -1.825": natural logarithm of the sum, as toulbar2 prints it (three decimals).
inline std::optional<double> toulbar2_log_z(const std::string& out) {
    const std::size_t at = out.find(" <= Log(Z) <= ");
    if (at == std::string::npos) return std::nullopt;
    return std::strtod(out.c_str() + at + std::string(" <= Log(Z) <= ").size(), nullptr);
}

}  // namespace hardover_tests
