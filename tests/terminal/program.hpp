// Runs the built program as a person or a script would: arguments in, text out. For the end-to-end tests.
#pragma once

#include <string>
#include <vector>

namespace hardover_tests {

struct Ran {
    std::string out;
    std::string err;
    int code = -1;  // 128 + signal when a signal ended it
};

// Runs to the end with `input` on standard input.
Ran run_program(const std::vector<std::string>& arguments, const std::string& input = "");

// A program that is still running, for tests that end it the hard way.
class RunningProgram {
  public:
    explicit RunningProgram(const std::vector<std::string>& arguments);
    ~RunningProgram();
    RunningProgram(const RunningProgram&) = delete;
    RunningProgram& operator=(const RunningProgram&) = delete;

    void type(const std::string& line);  // adds the line end

    // Reads until the program waits at its prompt "> " for the n-th time since the start, at most 20 seconds.
    // Gives false when that does not happen.
    bool wait_for_prompt(int n);

    const std::string& seen() const { return seen_; }  // all it has printed so far

    void kill_hard();  // SIGKILL

  private:
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
