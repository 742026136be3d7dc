// Processes, pipes and the marks file.
#include "real_window.hpp"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <thread>

namespace hardover_tests {

using namespace hardover::window;
using Clock = std::chrono::steady_clock;

namespace {

constexpr auto start_wait = std::chrono::seconds(60);
constexpr auto settle_wait = std::chrono::seconds(20);
constexpr auto nothing_more = std::chrono::milliseconds(200);
constexpr auto look_again = std::chrono::milliseconds(5);

// Runs words[0] with stdout and stderr in `said`, and `kept_open` handed on to it; gives the process.
pid_t spawn(const std::vector<std::string>& words, const std::vector<std::string>& environment,
            const std::string& said, int kept_open = -1) {
    const pid_t child = fork();
    if (child != 0) return child;
    const int out = open(said.c_str(), O_WRONLY | O_CREAT | O_APPEND, 0644);
    dup2(out, STDOUT_FILENO);
    dup2(out, STDERR_FILENO);
    if (kept_open >= 0) fcntl(kept_open, F_SETFD, 0);
    for (const std::string& one : environment) putenv(strdup(one.c_str()));
    std::vector<char*> arguments;
    for (const std::string& word : words) arguments.push_back(strdup(word.c_str()));
    arguments.push_back(nullptr);
    execvp(arguments.front(), arguments.data());
    _exit(127);
}

Box box_of(const nlohmann::json& at) {
    return {at.at(0).get<float>(), at.at(1).get<float>(), at.at(2).get<float>(), at.at(3).get<float>()};
}

}  // namespace

const Mark* SeenScreen::control(const std::string& id) const {
    for (const Mark& mark : marks) {
        if (mark.control && mark.id == id) return &mark;
    }
    return nullptr;
}

const Mark* SeenScreen::first(const std::string& start_of_id) const {
    for (const Mark& mark : marks) {
        if (mark.control && mark.enabled && mark.id.starts_with(start_of_id)) return &mark;
    }
    return nullptr;
}

bool SeenScreen::shows(const std::string& text) const {
    return std::any_of(marks.begin(), marks.end(),
                       [&](const Mark& mark) { return mark.text.find(text) != std::string::npos; });
}

std::string missing_tool() {
    for (const char* tool : {"Xvfb", "xdotool", "import"}) {
        const std::string command = "command -v " + std::string(tool) + " >/dev/null";
        if (std::system(command.c_str()) != 0) return tool;
    }
    return "";
}

Display::Display(int width, int height) {
    std::array<int, 2> ends{};
    if (pipe2(ends.data(), O_CLOEXEC) != 0) return;
    const std::string size = std::to_string(width) + "x" + std::to_string(height) + "x24";
    server_ = spawn(
        {"Xvfb", "-displayfd", std::to_string(ends[1]), "-screen", "0", size, "-nolisten", "tcp", "-noreset"},
        {}, "/dev/null", ends[1]);
    close(ends[1]);
    char letter = 0;
    while (read(ends[0], &letter, 1) == 1 && letter != '\n') name_ += letter;
    close(ends[0]);
    if (!name_.empty()) name_ = ":" + name_;
}

Display::~Display() {
    if (server_ <= 0) return;
    kill(server_, SIGTERM);
    waitpid(server_, nullptr, 0);
}

RealWindow::RealWindow(const Display& display, RealProgram program)
    : display_(display), program_(std::move(program)) {
    const std::string marks = program_.folder + "/marks.json";
    std::filesystem::remove(marks);
    const auto start = Clock::now();
    process_ = spawn(
        {program_.program, "--records", program_.folder + "/records.db", "--knowledge", program_.knowledge},
        {"DISPLAY=" + display_.name(), "HARDOVER_MARKS=" + marks, "HARDOVER_ASSETS=" + program_.assets,
         "LIBGL_ALWAYS_SOFTWARE=1", "XDG_DATA_HOME=" + program_.folder},
        program_.folder + "/said");
    while (!std::filesystem::exists(marks)) {
        if (Clock::now() - start > start_wait || waitpid(process_, nullptr, WNOHANG) == process_) {
            trouble_ = "no window appeared; see " + program_.folder + "/said";
            return;
        }
        std::this_thread::sleep_for(std::chrono::milliseconds(1));
    }
    first_frame_ms_ = std::chrono::duration<double, std::milli>(Clock::now() - start).count();
    find_window();
    settle_after(0);
}

RealWindow::~RealWindow() {
    if (process_ > 0) kill_hard();
}

void RealWindow::find_window() {
    window_ = tool("search --sync --onlyvisible --name '^Hardover$'");
    while (!window_.empty() && window_.back() == '\n') window_.pop_back();
    window_ = window_.substr(0, window_.find('\n'));
    tool("windowfocus --sync " + window_);
    tool("mousemove 3 3");  // where nothing tells more when it is pointed at
}

std::string RealWindow::tool(const std::string& words) const {
    const std::string command = "DISPLAY=" + display_.name() + " xdotool " + words + " 2>/dev/null";
    std::string said;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return said;
    std::array<char, 256> piece{};
    while (fgets(piece.data(), piece.size(), pipe) != nullptr) said += piece.data();
    pclose(pipe);
    return said;
}

bool RealWindow::read_screen() {
    std::ifstream file(program_.folder + "/marks.json");
    const nlohmann::json all = nlohmann::json::parse(file, nullptr, false);
    if (!all.is_object()) return false;
    SeenScreen seen{all.at("frame").get<std::uint64_t>(),
                    all.at("settled").get<bool>(),
                    all.at("scale").get<float>(),
                    {}};
    for (const nlohmann::json& one : all.at("marks")) {
        Mark mark;
        mark.id = one.at("id").get<std::string>();
        mark.text = one.at("text").get<std::string>();
        mark.box = box_of(one.at("box"));
        mark.visible = box_of(one.at("visible"));
        mark.control = one.at("control").get<bool>();
        mark.enabled = one.at("enabled").get<bool>();
        mark.focused = one.at("focused").get<bool>();
        mark.selected = one.at("selected").get<bool>();
        mark.cut = one.at("cut").get<bool>();
        seen.marks.push_back(std::move(mark));
    }
    screen_ = std::move(seen);
    return true;
}

void RealWindow::settle_after(std::uint64_t frame) {
    // Several events of one press may come with a rest between: it counts as settled when no more comes.
    const auto start = Clock::now();
    auto since = start;
    std::uint64_t last = frame;
    while (Clock::now() - start < settle_wait) {
        const bool rests = read_screen() && screen_.settled;
        if (!rests || screen_.frame != last) since = Clock::now();
        last = screen_.frame;
        if (rests && screen_.frame > frame && Clock::now() - since > nothing_more) return;
        std::this_thread::sleep_for(look_again);
    }
    trouble_ = "the window did not settle";
}

bool RealWindow::until(const std::function<bool(const SeenScreen&)>& so) {
    const auto start = Clock::now();
    while (Clock::now() - start < settle_wait) {
        if (read_screen() && screen_.settled && so(screen_)) return true;
        std::this_thread::sleep_for(look_again);
    }
    return false;
}

void RealWindow::key(const std::string& name) {
    const std::uint64_t before = screen_.frame;
    tool("key " + name);
    settle_after(before);
}

void RealWindow::type(const std::string& text) {
    const std::uint64_t before = screen_.frame;
    tool("type --delay 1 '" + text + "'");
    settle_after(before);
}

// Turns the wheel with the pointer over the middle of the control's column.
void RealWindow::bring_into_sight(const std::string& id) {
    constexpr int most_turns = 60;
    for (int turn = 0; turn < most_turns; ++turn) {
        const Mark* mark = screen_.control(id);
        if (mark == nullptr) return;
        if (mark->visible.h >= std::min(mark->box.h, 40.0F)) return;
        const bool down = mark->box.y > 400;
        const std::uint64_t before = screen_.frame;
        tool("mousemove " + std::to_string(static_cast<int>(mark->box.middle_x())) + " 330 click " +
             (down ? "5" : "4"));
        settle_after(before);
    }
}

void RealWindow::click(const std::string& id) {
    bring_into_sight(id);
    const Mark* mark = screen_.control(id);
    if (mark == nullptr || mark->visible.empty()) {
        trouble_ = "there is no '" + id + "' to be pressed";
        return;
    }
    const std::uint64_t before = screen_.frame;
    tool("mousemove " + std::to_string(static_cast<int>(mark->visible.middle_x())) + " " +
         std::to_string(static_cast<int>(mark->visible.middle_y())) + " sleep 0.05 click 1");
    settle_after(before);
}

void RealWindow::resize(int width, int height) {
    const std::string now = tool("getwindowgeometry --shell " + window_);
    const bool there = now.find("WIDTH=" + std::to_string(width) + "\n") != std::string::npos &&
                       now.find("HEIGHT=" + std::to_string(height) + "\n") != std::string::npos;
    if (there) return;  // nothing would happen
    const std::uint64_t before = screen_.frame;
    tool("windowsize --sync " + window_ + " " + std::to_string(width) + " " + std::to_string(height));
    settle_after(before);
}

void RealWindow::take_picture(const std::string& path) const {
    const std::string command =
        "DISPLAY=" + display_.name() + " import -window " + window_ + " '" + path + "'";
    if (std::system(command.c_str()) != 0) std::fprintf(stderr, "no picture %s\n", path.c_str());
}

void RealWindow::kill_hard() {
    kill(process_, SIGKILL);
    waitpid(process_, nullptr, 0);
    process_ = 0;
}

int RealWindow::close() {
    tool("key ctrl+q");
    const auto start = Clock::now();
    int status = 0;
    while (Clock::now() - start < settle_wait) {
        if (waitpid(process_, &status, WNOHANG) == process_) {
            process_ = 0;
            return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
        }
        std::this_thread::sleep_for(look_again);
    }
    return -1;
}

long RealWindow::processor_ticks() const {
    std::ifstream file("/proc/" + std::to_string(process_) + "/stat");
    std::string line;
    std::getline(file, line);
    std::istringstream fields(line.substr(line.rfind(')') + 2));
    std::string skipped;
    for (int i = 3; i < 14; ++i) fields >> skipped;
    long user = 0, system = 0;
    fields >> user >> system;
    return user + system;
}

}  // namespace hardover_tests
