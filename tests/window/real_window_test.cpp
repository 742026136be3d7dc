// The main paths in the real window on a display of its own, by real keys and a real pointer. Pictures stay
// in the build's folder tests/real_window.
#include "real_window.hpp"

#include <catch2/catch.hpp>

#include "marks_check.hpp"
#include "shop.hpp"
#include "support.hpp"

using namespace hardover;
using namespace hardover_tests;
using hardover::window::Mark;

namespace {

// One display and one scratch folder for a test; the program may be started in it more than once.
struct Stage {
    Stage() : display(1600, 1000) {}

    std::unique_ptr<RealWindow> start() {
        auto window = std::make_unique<RealWindow>(
            display,
            RealProgram{HARDOVER_PROGRAM, source_path("assets"), source_path("knowledge"), folder.file("")});
        INFO(window->trouble() << " " << file_text(folder.file("said")));
        REQUIRE(window->trouble().empty());
        window->resize(1280, 800);
        return window;
    }

    ScratchFolder folder;
    Display display;
};

bool tools_are_there() {
    const std::string missing = missing_tool();
    if (!missing.empty()) WARN(missing << " is missing, so the real window was not tried");
    return missing.empty();
}

void picture(const RealWindow& window, const std::string& name) {
    const std::string folder = HARDOVER_REAL_WINDOW_PICTURES;
    std::filesystem::create_directories(folder);
    window.take_picture(folder + "/" + name + ".png");
}

void check_screen(const RealWindow& window, const std::string& name) {
    INFO(name);
    CHECK(window.trouble().empty());
    check_marks(window.screen().marks, window.screen().scale);
    picture(window, name);
}

bool finished(const SeenScreen& screen) {
    return screen.has("dock.reopen");
}

constexpr int most_steps = 80;

// The key that leads on from a step: the worst reading, or that a number cannot be told.
std::string key_for(const SeenScreen& screen) {
    if (screen.has("dock.hand_back") || screen.has("dock.begin")) return "Return";
    if (screen.has("remedy.cured")) return "1";
    const Mark* first = screen.control("answer.1");
    return first != nullptr && screen.first("number.") == nullptr ? "1" : "c";
}

void hand_back_by_keys(RealWindow& window) {
    const auto on = [&](const std::string& start) {
        for (int i = 0; i < most_steps; ++i) {
            for (const Mark& mark : window.screen().marks) {
                if (mark.control && mark.focused && mark.id.starts_with(start)) return;
            }
            window.key("Tab");
        }
        FAIL("Tab never came to " << start);
    };
    on("hand_back.not_listed");
    window.key("Return");
    on("hand_back.proved.");
    window.key("Return");
    on("dock.hand_back_now");
    window.key("Return");
}

}  // namespace

TEST_CASE("In the real window a job is done from its start to handing back by keyboard alone") {
    if (!tools_are_there()) return;
    Stage stage;
    const auto window = stage.start();
    check_screen(*window, "keys-1-bench");
    window->key("Tab");
    window->type("Grey Heron");
    window->key("Tab");
    window->type("she wanders all the way home");
    window->key("Tab");
    window->key("Return");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("dock.begin"); }));
    check_screen(*window, "keys-2-intake");
    window->key("1");
    window->key("Return");
    check_screen(*window, "keys-3-question");
    int steps = 0;
    while (!window->screen().has("dock.hand_back") && ++steps < most_steps) {
        if (window->screen().has("remedy.cured")) picture(*window, "keys-4-remedy");
        window->key(key_for(window->screen()));
    }
    REQUIRE(window->screen().has("dock.hand_back"));
    check_screen(*window, "keys-5-after");
    window->key("Return");
    hand_back_by_keys(*window);
    REQUIRE(window->until(finished));
    check_screen(*window, "keys-6-handed-back");
    window->key("Return");  // the job sheet
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("sheet.open"); }));
    CHECK(std::filesystem::exists(stage.folder.file("job sheets/Job 1 Grey Heron.pdf")));
    CHECK(window->close() == 0);
}

TEST_CASE("In the real window a job on the bench is done by mouse alone") {
    if (!tools_are_there()) return;
    Stage stage;
    {
        auto store = Store::open(stage.folder.file("records.db"));
        REQUIRE_OK(store);
        REQUIRE_OK(hardover::start_job(store.value(), shipped(), {"Little Auk", "tight to port", ""},
                                       "2026-11-25T15:03:13Z"));
    }
    const auto window = stage.start();
    window->click("job.1");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.first("complaint.") != nullptr; }));
    window->click(window->screen().first("complaint.")->id);
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.first("answer.") != nullptr; }));
    int steps = 0;
    while (!window->screen().has("dock.hand_back") && ++steps < most_steps && window->trouble().empty()) {
        const SeenScreen& screen = window->screen();
        const bool number = screen.first("number.") != nullptr;
        window->click(screen.has("remedy.cured")          ? "remedy.cured"
                      : screen.has("answer.1") && !number ? "answer.1"
                                                          : "answer.cannot_tell");
    }
    INFO(window->trouble());
    REQUIRE(window->screen().has("dock.hand_back"));
    window->click("dock.hand_back");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("hand_back.not_listed"); }));
    check_screen(*window, "mouse-1-hand-back");
    window->click("hand_back.not_listed");
    window->click("hand_back.assumed.not_listed");
    picture(*window, "mouse-2-said");
    window->click("dock.hand_back_now");
    const bool done = window->until(finished);
    INFO(window->trouble());
    REQUIRE(done);
    check_screen(*window, "mouse-3-handed-back");
}

TEST_CASE(
    "The real window keeps everything in sight when it is resized, its text doubled, its theme changed") {
    if (!tools_are_there()) return;
    Stage stage;
    {
        auto store = Store::open(stage.folder.file("records.db"));
        REQUIRE_OK(store);
        auto job = hardover::start_job(store.value(), shipped(), {"Grey Heron", "she wanders", ""},
                                       "2026-11-25T15:03:13Z");
        REQUIRE_OK(job);
        const Event told = ComplaintsSet{{shipped().complaints.front().id}};
        REQUIRE_OK(record(store.value(), shipped(), job.value(), told, "2026-11-25T15:04:00Z"));
    }
    const auto window = stage.start();
    window->key("1");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("known.look_up"); }));
    check_screen(*window, "size-1280x800");
    for (const auto& [w, h] : {std::pair{1024, 640}, std::pair{800, 980}, std::pair{1600, 1000}}) {
        window->resize(w, h);
        check_screen(*window, "size-" + std::to_string(w) + "x" + std::to_string(h));
    }
    for (int i = 0; i < 4; ++i) window->key("ctrl+plus");
    CHECK(window->until([](const SeenScreen& screen) { return screen.scale == 2; }));
    check_screen(*window, "text-200");
    window->key("ctrl+0");
    for (const char* name : {"theme-dark", "theme-high-contrast"}) {
        window->key("F6");
        check_screen(*window, name);
    }
    CHECK(window->close() == 0);
    CHECK(file_text(stage.folder.file("window.json")).find("high_contrast") != std::string::npos);
}

TEST_CASE("Killed in the middle of a job, the program goes on from the last answer") {
    if (!tools_are_there()) return;
    Stage stage;
    std::string answer;
    {
        const auto window = stage.start();
        window->key("Tab");
        window->type("Grey Heron");
        window->key("Tab");
        window->key("Tab");
        window->key("Return");
        REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("dock.begin"); }));
        window->key("1");
        window->key("Return");
        window->key(key_for(window->screen()));
        REQUIRE(window->until([](const SeenScreen& screen) { return screen.first("known.") != nullptr; }));
        window->kill_hard();
    }
    const auto store = Store::open(stage.folder.file("records.db"));
    REQUIRE_OK(store);
    const auto events = store.value().events(1);
    REQUIRE_OK(events);
    CHECK(events.value().size() >= 3);
    const auto again = stage.start();
    CHECK(again->screen().shows("Grey Heron"));
    again->key("1");
    REQUIRE(again->until([](const SeenScreen& screen) { return screen.has("known.look_up"); }));
    CHECK_FALSE(again->screen().shows("Nothing has been answered yet."));
    check_screen(*again, "killed-and-resumed");
}

TEST_CASE("In the real window a boat is projected in large letters, voted on by keys alone, and kept") {
    if (!tools_are_there()) return;
    Stage stage;
    std::unique_ptr<RealWindow> window = stage.start();
    window->key("ctrl+7");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("together.level.1"); }));
    check_screen(*window, "class-1-begin");
    window->key("1");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("hands.A"); }));
    CHECK(window->until([](const SeenScreen& screen) { return screen.scale == 2; }));
    window->type("12");
    window->key("Tab");
    window->type("5");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.shows("17 hands. Most for A."); }));
    check_screen(*window, "class-2-vote");
    window->key("Return");
    for (int i = 0; i < 3 && !window->screen().shows("min so far"); ++i) window->key("Return");
    REQUIRE(window->screen().shows("min so far"));
    check_screen(*window, "class-3-outcome");
    window->key("Return");
    window->key("w");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.shows("What is wrong?"); }));
    window->kill_hard();
    window = stage.start();
    window->key("ctrl+7");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("together.go_on"); }));
    window->key("g");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.shows("min so far"); }));
    window->key("v");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("fault.show"); }));
    window->key("Return");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.shows("With the fault"); }));
    check_screen(*window, "class-4-fault");
    window->key("Escape");
    window->key("Escape");
    REQUIRE(window->until([](const SeenScreen& screen) { return screen.has("together.level.1"); }));
    CHECK(window->screen().scale == 1);
    CHECK(window->close() == 0);
}
