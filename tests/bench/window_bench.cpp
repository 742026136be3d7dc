// What the window costs: processor time for a frame of the job screen and of the place Class, also while long
// work goes on beside them, an answer until its page is there, the start of the program to the first frame on
// the screen, and the processor while nothing happens.
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <thread>

#include "app/window/app_frame.hpp"
#include "app/window/class_desk.hpp"
#include "bench/common.hpp"
#include "window/real_window.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_bench;

namespace {

constexpr const char* fonts = HARDOVER_SOURCE_DIR "/assets/fonts";
constexpr const char* now = "2026-11-25T15:03:13Z";

[[noreturn]] void give_up(const std::string& why) {
    std::cerr << "window_bench: " << why << "\n";
    std::exit(1);
}

template <typename T>
T take(Result<T> result) {
    if (!result) give_up(result.error().text());
    return std::move(result.value());
}

// A folder of its own, removed at the end.
struct Folder {
    std::string path;
    Folder() {
        std::string name = (std::filesystem::temp_directory_path() / "hardover_window_XXXXXX").string();
        if (mkdtemp(name.data()) == nullptr) give_up("no temporary folder can be made");
        path = name;
    }
    ~Folder() {
        std::error_code failed;
        std::filesystem::remove_all(path, failed);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
};

// The window's frames without a display, with a job at its first question.
class Frames {
  public:
    Frames(const Knowledge& knowledge, Store& store, float width, float height, float scale)
        : state(knowledge, store, [] { return now; }), width_(width), height_(height) {
        ImGui::CreateContext();
        ImGui::GetIO().IniFilename = nullptr;
        ImGui::GetIO().DisplaySize = {width, height};
        ImGui::GetIO().DeltaTime = 1.0F / 60;
        InputQueue::name_keys();
        const Result<void> built = theme_.build(Look::light, scale, fonts);
        if (!built) give_up(built.error().text());
        carry_out(state, StartJob{"Grey Heron", "she wanders all the way home"});
        carry_out(state, SwitchComplaint{state.page.complaints.front().id});
        carry_out(state, Show{Showing::step, ""});
    }
    ~Frames() { ImGui::DestroyContext(); }
    Frames(const Frames&) = delete;
    Frames& operator=(const Frames&) = delete;

    void frame() {
        Kit kit(theme_, memory_);
        kit.begin_frame(width_, height_);
        draw_app(kit, state);
        kit.end_frame();
    }

    AppState state;

  private:
    Theme theme_;
    KitMemory memory_;
    float width_;
    float height_;
};

std::vector<std::string> frame_row(const Knowledge& knowledge, float w, float h, float scale) {
    constexpr int frames = 2000;
    const Folder folder;
    Store store = take(Store::open(folder.path + "/records.db"));
    Frames screen(knowledge, store, w, h, scale);
    for (int i = 0; i < 20; ++i) screen.frame();
    std::vector<double> times;
    for (int i = 0; i < frames; ++i) {
        // The pointer goes over everything, as a hand does.
        ImGui::GetIO().MousePos = {w * static_cast<float>(i % 97) / 97, h * static_cast<float>(i % 89) / 89};
        const double before = thread_milliseconds();
        screen.frame();
        times.push_back(thread_milliseconds() - before);
    }
    const std::string name = "frame of the job screen, " + std::to_string(static_cast<int>(w)) + " x " +
                             std::to_string(static_cast<int>(h)) + ", text " +
                             std::to_string(static_cast<int>(100 * scale)) + " %";
    return {name, fixed(percentile(times, 0.5), 2) + " ms CPU", fixed(percentile(times, 0.99), 2) + " ms CPU",
            "under 2 ms CPU"};
}

// A frame of what is shown, while the class's figures are worked out on another thread or afterwards.
std::vector<std::string> class_row(Frames& screen, const std::string& name, bool at_work) {
    constexpr int most = 2000;
    std::vector<double> times;
    for (int i = 0; i < most && (!at_work || screen.state.classes->page().working); ++i) {
        const double before = thread_milliseconds();
        take_in_background(screen.state);
        screen.frame();
        times.push_back(thread_milliseconds() - before);
        if (at_work) std::this_thread::sleep_for(std::chrono::milliseconds(2));
    }
    if (times.size() < 20) give_up("the work of the class was over before its frames could be measured");
    return {name + ", " + std::to_string(times.size()) + " frames",
            fixed(percentile(times, 0.5), 2) + " ms CPU", fixed(percentile(times, 0.99), 2) + " ms CPU",
            "under 2 ms CPU"};
}

void add_class_rows(const Knowledge& knowledge, std::vector<std::vector<std::string>>& rows) {
    const Folder folder;
    Store store = take(Store::open(folder.path + "/records.db"));
    Frames screen(knowledge, store, 1280, 800, 1);
    Background background;
    use_background(screen.state, background);
    const auto invent = [&] {
        carry_out(screen.state, GoTo{hardover::window::Place::classroom});
        carry_out(screen.state, ClassAction(ShowClassTab{ClassTab::figures}));
        carry_out(screen.state, ClassAction(InventClass{}));
    };
    invent();
    rows.push_back(class_row(screen, "frame of the place Class while a class is marked", true));
    rows.push_back(class_row(screen, "frame of the place Class with its figures", false));
    invent();
    carry_out(screen.state, GoTo{hardover::window::Place::job});
    rows.push_back(class_row(screen, "frame of the job screen while a class is marked", true));
}

std::vector<std::string> timed_row(const std::string& name, const std::string& aim,
                                   std::vector<double> times) {
    return {name, fixed(percentile(times, 0.5), 0) + " ms", fixed(percentile(times, 0.99), 0) + " ms", aim};
}

// Answers given one after the other, each taken back again.
void add_job_rows(const Knowledge& knowledge, std::vector<std::vector<std::string>>& rows) {
    const Folder folder;
    Store store = take(Store::open(folder.path + "/records.db"));
    Frames screen(knowledge, store, 1280, 800, 1);
    std::vector<double> answers, turnings;
    for (int i = 0; i < 20; ++i) {
        const auto& questions = screen.state.page.card.questions;
        if (questions.empty() || questions.front().choices.empty()) break;
        const GiveAnswer answer{questions.front().finding, questions.front().choices.back().id};
        const double before = thread_milliseconds();
        carry_out(screen.state, answer);
        answers.push_back(thread_milliseconds() - before);
        const double asked = thread_milliseconds();
        carry_out(screen.state, WorkOutTurning{});
        turnings.push_back(thread_milliseconds() - asked);
    }
    rows.push_back(timed_row("an answer until its page is made (CPU)", "", answers));
    rows.push_back(timed_row("what would turn it, when asked for (CPU)", "", turnings));
}

void add_real_rows(int runs, std::vector<std::vector<std::string>>& rows) {
    const std::string missing = hardover_tests::missing_tool();
    if (!missing.empty()) {
        std::cout << missing << " is missing: the real window was not measured.\n";
        return;
    }
    const hardover_tests::Display display(1280, 800);
    std::vector<double> starts;
    long ticks = 0;
    for (int i = 0; i < runs; ++i) {
        const Folder folder;
        hardover_tests::RealWindow window(display, {HARDOVER_PROGRAM, HARDOVER_SOURCE_DIR "/assets",
                                                    HARDOVER_SOURCE_DIR "/knowledge", folder.path});
        if (!window.trouble().empty()) give_up(window.trouble());
        starts.push_back(window.first_frame_ms());
        if (i > 0) continue;
        constexpr int seconds = 10;
        std::this_thread::sleep_for(std::chrono::seconds(1));
        const long before = window.processor_ticks();
        std::this_thread::sleep_for(std::chrono::seconds(seconds));
        ticks = window.processor_ticks() - before;
    }
    rows.push_back(timed_row("start to the first frame with the shipped base (Xvfb, software GL, wall)",
                             "under 300 ms", starts));
    rows.push_back(
        {"processor while nothing happens, 10 s", std::to_string(ticks) + " ticks", "", "0 ticks"});
}

}  // namespace

// window_bench [STARTS]
int main(int argc, char** argv) {
    const int runs = std::max(1, argument(argc, argv, 1, 9));
    const Knowledge knowledge = shipped_knowledge();
    std::vector<std::vector<std::string>> rows{{"what", "median", "99 of 100", "aim"}};
    rows.push_back(frame_row(knowledge, 1280, 800, 1));
    rows.push_back(frame_row(knowledge, 1280, 800, 2));
    rows.push_back(frame_row(knowledge, 3840, 2160, 1.5F));
    add_class_rows(knowledge, rows);
    add_job_rows(knowledge, rows);
    add_real_rows(runs, rows);
    print_table(rows);
}
