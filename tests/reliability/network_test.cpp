// No network: the program works where no interface is, and the system's tracer sees it open no socket but the
// one of its display.
#include <filesystem>

#include "cut_off.hpp"
#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

TEST_CASE("The terminal's commands work without a network interface and open no socket") {
    if (const std::string why = cannot_cut_off(); !why.empty()) return leave_out_network(why);
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    struct Work {
        std::vector<std::string> words;
        std::string input;
    };
    std::vector<Work> all = {
        {{"interview", "--boat", "Tern"}, "wander\nanswer wheel_feel springy\nq\n"},
        {{"job", "sheet", "1", folder.file("sheet.pdf")}, ""},
        {{"learner", "add", "A07"}, ""},
        {{"quiz", "--learner", "A07", "--count", "3"}, "a\na\nq\n"},
        {{"practice", "--learner", "A07", "--seed", "5", "--level", "2"}, "ask wheel_feel\nq\n"},
        {{"knowledge", "book", folder.file("book")}, ""},
        {{"learning", "export", folder.file("counts.json")}, ""},
    };
    if (!whole_run()) all.resize(2);
    for (Work& work : all) {
        const std::string trace = folder.file("trace");
        Surroundings around;
        around.through = cut_off(trace);
        work.words.insert(work.words.begin(), {"--records", records});
        const Ran ran = run_program(work.words, work.input, around);
        INFO(work.words[2] << ": " << ran.err);
        CHECK(ran.code == 0);
        INFO(reached_out(trace, false));
        CHECK(reached_out(trace, false).empty());
        ++tried(no_network).tried;
        ++tried(no_network).carried_on;
    }
}

TEST_CASE("The window comes up without a network interface and opens no socket but its display's") {
    if (!whole_run()) return;
    if (const std::string why = cannot_cut_off(); !why.empty()) return leave_out_network(why);
    const TemporaryFolder folder;
    const std::string trace = folder.file("trace");
    Surroundings around;
    around.through = {"xvfb-run", "-a", "-s", "-nolisten tcp -screen 0 1280x800x24", "timeout", "25"};
    const auto cut = cut_off(trace);
    around.through.insert(around.through.end(), cut.begin(), cut.end());
    around.environment = {{"HARDOVER_MARKS", folder.file("marks.json")},
                          {"LIBGL_ALWAYS_SOFTWARE", "1"},
                          {"WAYLAND_DISPLAY", std::nullopt},
                          {"XDG_DATA_HOME", folder.path()}};
    const Ran ran = run_program({}, "", around);
    INFO(ran.err);
    CHECK(std::filesystem::exists(folder.file("marks.json")));  // it has drawn its first frames
    CHECK(file_text(trace).find("/tmp/.X11-unix/X") != std::string::npos);
    INFO(reached_out(trace, true));
    CHECK(reached_out(trace, true).empty());
    ++tried(no_network).tried;
    ++tried(no_network).carried_on;
}

TEST_CASE("A program that reaches for the network is seen doing so") {
    if (const std::string why = cannot_cut_off(); !why.empty()) return leave_out_network(why);
    const TemporaryFolder folder;
    const std::string trace = folder.file("trace");
    Surroundings around;
    around.through = cut_off(trace);
    around.program = "bash";
    run_program({"-c", "exec 3<>/dev/tcp/127.0.0.1/9"}, "", around);
    CHECK(reached_out(trace, true).find("AF_INET") != std::string::npos);
}
