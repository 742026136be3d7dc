// Runs the built program as a person or a script would: arguments in, text out. For the end-to-end tests.
#pragma once

#include <chrono>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace hardover_tests {

struct Ran {
    std::string out;
    std::string err;
    int code = -1;      // 128 + signal when a signal ended it
    bool hung = false;  // it was killed because it took longer than it may
};

// What the program finds around it when it starts.
struct Surroundings {
    std::vector<std::string> through;  // words before the program's name, such as {"unshare", "-rn"}
    std::map<std::string, std::optional<std::string>> environment;  // added; no value: not set
    std::string folder;                                             // to run in; "": where the test runs
    std::string program;                                            // "": the built program
    std::string clock;  // stands still at this local time, such as "2026-11-26 08:00:00"; "": it goes
    std::chrono::seconds most = std::chrono::seconds(200);  // it may take
};

// Runs to the end with `input` on standard input.
Ran run_program(const std::vector<std::string>& arguments, const std::string& input = "",
                const Surroundings& around = {});

// A program that is still running, for tests that end it the hard way.
class RunningProgram {
  public:
    explicit RunningProgram(const std::vector<std::string>& arguments, const Surroundings& around = {});
    ~RunningProgram();
    RunningProgram(const RunningProgram&) = delete;
    RunningProgram& operator=(const RunningProgram&) = delete;

    void type(const std::string& line);  // adds the line end

    // Reads until the program waits at its prompt "> " for the n-th time since the start, at most 20 seconds.
    // Gives false when that does not happen.
    bool wait_for_prompt(int n);

    // Collects what it prints for so long, or until it ends. Gives false when it has ended.
    bool read_for(std::chrono::microseconds time);

    // How often it has waited at its prompt so far.
    int prompts() const;

    const std::string& seen() const { return seen_; }  // all it has printed so far

    void kill_hard();  // SIGKILL; what it had printed by then is in seen()

  private:
    bool read_some();  // false: nothing more will come

    int process_ = -1;
    int input_ = -1;
    int output_ = -1;
    std::string seen_;
};

// A folder of its own, removed at the end.
class TemporaryFolder {
  public:
    TemporaryFolder();
    ~TemporaryFolder();
    TemporaryFolder(const TemporaryFolder&) = delete;
    TemporaryFolder& operator=(const TemporaryFolder&) = delete;
    std::string file(const std::string& name) const { return path_ + "/" + name; }
    const std::string& path() const { return path_; }

  private:
    std::string path_;
};

void write_file(const std::string& path, const std::string& text);

}  // namespace hardover_tests
