#include "terminal/program.hpp"

#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <climits>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <stdexcept>

#include "support.hpp"

namespace hardover_tests {

namespace {

struct Child {
    int process = -1;
    int input = -1;
    int output = -1;
    int errors = -1;
};

// The library alone, not the command of the same package: the command fails when an earlier one with the same
// process number was killed and left its semaphore behind.
void stop_clock(const std::string& at) {
    const char* others = getenv("LD_PRELOAD");
    const std::string libraries = others ? std::string(others) + ":" HARDOVER_CLOCK : HARDOVER_CLOCK;
    setenv("LD_PRELOAD", libraries.c_str(), 1);
    setenv("FAKETIME", at.c_str(), 1);
}

// Takes the place of this process, which is a child of the test.
[[noreturn]] void become(const std::vector<std::string>& arguments, const Surroundings& around) {
    setenv("HARDOVER_KNOWLEDGE", source_path("knowledge").c_str(), 1);  // wherever the build folder lies
    setenv("HARDOVER_ASSETS", source_path("assets").c_str(), 1);
    for (const auto& [name, value] : around.environment) {
        if (value) {
            setenv(name.c_str(), value->c_str(), 1);
        } else {
            unsetenv(name.c_str());
        }
    }
    if (!around.clock.empty()) stop_clock(around.clock);
    if (!around.folder.empty() && chdir(around.folder.c_str()) != 0) _exit(127);
    const std::string program = around.program.empty() ? HARDOVER_PROGRAM : around.program;
    std::vector<char*> words;
    for (const std::string& word : around.through) words.push_back(const_cast<char*>(word.c_str()));
    words.push_back(const_cast<char*>(program.c_str()));
    for (const std::string& argument : arguments) words.push_back(const_cast<char*>(argument.c_str()));
    words.push_back(nullptr);
    execvp(words.front(), words.data());
    _exit(127);
}

Child start(const std::vector<std::string>& arguments, const Surroundings& around) {
    int in[2], out[2], err[2];
    if (pipe2(in, O_CLOEXEC) != 0 || pipe2(out, O_CLOEXEC) != 0 || pipe2(err, O_CLOEXEC) != 0) {
        throw std::runtime_error("no pipe");
    }
    const int process = fork();
    if (process == 0) {
        setpgid(0, 0);
        dup2(in[0], STDIN_FILENO);
        dup2(out[1], STDOUT_FILENO);
        dup2(err[1], STDERR_FILENO);
        become(arguments, around);
    }
    close(in[0]);
    close(out[1]);
    close(err[1]);
    return {process, in[1], out[0], err[0]};
}

int exit_code(int process) {
    int status = 0;
    waitpid(process, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

// Feeds the input and collects both outputs at once, so that no full pipe stops the program.
void talk(const Child& child, const std::string& input, std::chrono::seconds most, Ran& ran) {
    const auto give_up = std::chrono::steady_clock::now() + most;
    std::size_t fed = 0;
    int feed = child.input;
    bool out_open = true;
    bool err_open = true;
    while (out_open || err_open) {
        if (feed >= 0 && fed == input.size()) {
            close(feed);
            feed = -1;
        }
        pollfd waits[3] = {{out_open ? child.output : -1, POLLIN, 0},
                           {err_open ? child.errors : -1, POLLIN, 0},
                           {feed, POLLOUT, 0}};
        poll(waits, 3, 1000);
        if (!ran.hung && std::chrono::steady_clock::now() > give_up) {
            ran.hung = true;
            kill(-child.process, SIGKILL);  // with what it has started
        }
        char buffer[4096];
        if (waits[0].revents != 0) {
            const ssize_t got = read(child.output, buffer, sizeof buffer);
            if (got > 0) ran.out.append(buffer, got);
            out_open = got > 0;
        }
        if (waits[1].revents != 0) {
            const ssize_t got = read(child.errors, buffer, sizeof buffer);
            if (got > 0) ran.err.append(buffer, got);
            err_open = got > 0;
        }
        if (feed >= 0 && waits[2].revents != 0) {
            // So much goes into a pipe that takes anything at all; more might wait for the program for ever.
            const std::size_t piece = std::min<std::size_t>(input.size() - fed, PIPE_BUF);
            const ssize_t put = write(feed, input.data() + fed, piece);
            fed = put > 0 ? fed + put : input.size();
        }
    }
    if (feed >= 0) close(feed);
}

}  // namespace

Ran run_program(const std::vector<std::string>& arguments, const std::string& input,
                const Surroundings& around) {
    signal(SIGPIPE, SIG_IGN);
    const Child child = start(arguments, around);
    Ran ran;
    talk(child, input, around.most, ran);
    close(child.output);
    close(child.errors);
    ran.code = exit_code(child.process);
    return ran;
}

RunningProgram::RunningProgram(const std::vector<std::string>& arguments, const Surroundings& around) {
    signal(SIGPIPE, SIG_IGN);
    const Child child = start(arguments, around);
    process_ = child.process;
    input_ = child.input;
    output_ = child.output;
    close(child.errors);
}

RunningProgram::~RunningProgram() {
    kill_hard();
    close(input_);
    close(output_);
}

void RunningProgram::type(const std::string& line) {
    const std::string text = line + "\n";
    if (write(input_, text.data(), text.size()) != static_cast<ssize_t>(text.size())) {
        throw std::runtime_error("the program takes no more input");
    }
}

bool RunningProgram::read_for(std::chrono::microseconds time) {
    const auto until = std::chrono::steady_clock::now() + time;
    while (true) {
        const auto left =
            std::chrono::duration_cast<std::chrono::nanoseconds>(until - std::chrono::steady_clock::now());
        if (left.count() <= 0) return true;
        const timespec wait{left.count() / 1'000'000'000, left.count() % 1'000'000'000};
        pollfd output{output_, POLLIN, 0};
        if (ppoll(&output, 1, &wait, nullptr) <= 0) continue;
        if (!read_some()) return false;
    }
}

bool RunningProgram::read_some() {
    char buffer[4096];
    const ssize_t got = read(output_, buffer, sizeof buffer);
    if (got > 0) seen_.append(buffer, got);
    return got > 0;
}

int RunningProgram::prompts() const {
    int prompts = 0;
    for (std::size_t at = seen_.find("\n> "); at != std::string::npos; at = seen_.find("\n> ", at + 1)) {
        ++prompts;
    }
    return prompts;
}

bool RunningProgram::wait_for_prompt(int n) {
    const auto until = std::chrono::steady_clock::now() + std::chrono::seconds(20);
    while (std::chrono::steady_clock::now() < until) {
        if (prompts() >= n) return true;
        pollfd wait{output_, POLLIN, 0};
        if (poll(&wait, 1, 200) <= 0) continue;
        if (!read_some()) return false;
    }
    return false;
}

void RunningProgram::kill_hard() {
    if (process_ < 0) return;
    kill(process_, SIGKILL);
    waitpid(process_, nullptr, 0);
    process_ = -1;
    while (read_some()) continue;  // what was printed before the end
}

TemporaryFolder::TemporaryFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "hardover-test-XXXXXX").string();
    if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
    path_ = pattern;
}

TemporaryFolder::~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
}

void write_file(const std::string& path, const std::string& text) {
    std::filesystem::create_directories(std::filesystem::path(path).parent_path());
    std::ofstream(path, std::ios::binary) << text;
}

}  // namespace hardover_tests
