// What a computer may have around the program: names in any script, a decimal comma, any time zone, a clock
// set back, no home, nothing that may be written, no typefaces, no display, none that can draw.
#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <functional>

#include "kills.hpp"
#include "records_seen.hpp"
#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;
namespace fs = std::filesystem;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// The same few pieces of work as a shop does them: figures, drawings and files of every kind.
struct WorkDone {
    std::string assessed;   // JSON of a case
    std::string worksheet;  // JSON of a worksheet
    std::string events;     // of the job, without their times
    std::string sheet;      // the PDF's bytes
    std::string book;       // a page of the book
    std::string figures;    // JSON of the quiz items
};

// Does the work in `folder`, whose name may be anything. Times are left out of the comparison.
// `all`: also what takes seconds.
WorkDone work_in(const std::string& folder, const Surroundings& around, bool all = false) {
    WorkDone done;
    const std::string records = folder + "/records.db";
    const auto run = [&](std::vector<std::string> words, const std::string& input = "") {
        words.insert(words.begin(), {"--records", records});
        const Ran ran = run_program(words, input, around);
        INFO(words[2] << " in " << folder << " ends with " << ran.code << ": " << ran.err);
        REQUIRE(ran.code == 0);
        return ran.out;
    };
    run({"interview", "--boat", "Größe 🚤"},
        "wander\nanswer wheel_sponge 2.35 in\nrig rams 2\nnote 3,5 bar – שמן, 油\nq\n");
    // Without the job's own number, which is drawn by chance.
    done.events = see_records(records, "SELECT group_concat(kind || json_remove(body, '$.job')) FROM events")
                      .rows.front();
    done.assessed = run({"assess", source_path("tests/cases/drives_toe_after_fitting.yaml"), "--json"});
    done.worksheet = run({"worksheet", "turns_lock_to_lock", "kind=single_rod", "displacement=1.7 in^3/turn",
                          "rams=1", "bore=1.75 in", "rod=3/4 in", "stroke=9 in", "counted_port=16.6 turns",
                          "counted_starboard=14.3 turns", "--json"});
    run({"job", "sheet", "1", folder + "/sheet.pdf"});
    done.sheet = file_text(folder + "/sheet.pdf");
    run({"knowledge", "book", folder + "/book"});
    done.book = file_text(folder + "/book/index.html");
    if (all) done.figures = run({"quiz", "figures", "--json"});
    return done;
}

void require_same(const WorkDone& done, const WorkDone& usual, bool same_day = true) {
    CHECK(done.assessed == usual.assessed);
    CHECK(done.worksheet == usual.worksheet);
    CHECK(done.events == usual.events);
    CHECK(done.book == usual.book);
    if (!done.figures.empty()) CHECK(done.figures == usual.figures);
    CHECK(done.sheet.substr(0, 5) == "%PDF-");
    if (same_day) CHECK(done.sheet == usual.sheet);
}

// The clock stands still, so that two pieces of work can be the same byte by byte.
Surroundings at_one_moment() {
    Surroundings around;
    around.clock = "2026-11-26 08:00:00";
    around.environment["TZ"] = "UTC";
    return around;
}

const WorkDone& usual_work() {
    static const WorkDone done = [] {
        const TemporaryFolder folder;
        return work_in(folder.path(), at_one_moment(), whole_run());
    }();
    return done;
}

void count_same(const std::string& fault) {
    ++tried(fault).tried;
    ++tried(fault).carried_on;
}

}  // namespace

TEST_CASE(
    "Folders named with spaces, umlauts, right to left and in pictures hold records, knowledge and files") {
    for (const char* name :
         {"Boote und Größen", "סירה ימנית", "⛵ 🚤", "a'b\"c $HOME %41 #1?x=2", "-rf", "trailing "}) {
        const TemporaryFolder folder;
        const std::string odd = folder.file(name);
        INFO(odd);
        fs::create_directory(odd);
        fs::copy(source_path("knowledge"), odd + "/knowledge");
        fs::copy(source_path("assets"), odd + "/assets", fs::copy_options::recursive);
        Surroundings around = at_one_moment();
        around.environment["HARDOVER_KNOWLEDGE"] = odd + "/knowledge";
        around.environment["HARDOVER_ASSETS"] = odd + "/assets";
        require_same(work_in(odd, around), usual_work());
        count_same("names of folders in any script");
        if (!whole_run()) break;
    }
}

TEST_CASE("With a decimal comma all figures and files are the same") {
    const TemporaryFolder folder;
    const std::string made = "localedef -i de_DE -f UTF-8 '" + folder.file("de_DE.UTF-8") + "' 2>/dev/null";
    if (std::system(made.c_str()) > 255 || !fs::exists(folder.file("de_DE.UTF-8"))) {
        tried("a locale with a decimal comma").left_out = "localedef cannot make one here";
        WARN("left out: localedef cannot make a locale here");
        return;
    }
    Surroundings around = at_one_moment();
    for (const char* name : {"LANG", "LC_ALL", "LANGUAGE"}) around.environment[name] = "de_DE.UTF-8";
    around.environment["LOCPATH"] = folder.path();
    fs::create_directory(folder.file("work"));
    require_same(work_in(folder.file("work"), around, whole_run()), usual_work());
    count_same("a locale with a decimal comma");
}

TEST_CASE("In every time zone, around midnight, figures are the same and times are kept in UTC") {
    const std::vector<std::string> zones = {"Pacific/Kiritimati", "Pacific/Niue", "America/New_York",
                                            "Asia/Kathmandu",     "Not/A_Zone",   ""};
    for (const std::string& zone : zones) {
        const TemporaryFolder folder;
        INFO("zone " << zone);
        Surroundings around = at_one_moment();
        around.environment["TZ"] = zone;
        // The clock is read in the zone, as a person there would: a minute to midnight.
        around.clock = "2026-11-25 23:59:30";
        require_same(work_in(folder.path(), around), usual_work(), false);
        for (const std::string& at : see_records(folder.file("records.db"), "SELECT at FROM events").rows) {
            CHECK(at.size() == 20);
            CHECK(at.back() == 'Z');
        }
        count_same("time zones east and west of UTC, at midnight");
        if (!whole_run()) break;
    }
}

TEST_CASE("A clock set back by years neither breaks nor reorders anything") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    const auto run = [&](const char* when, std::vector<std::string> words, const std::string& input) {
        Surroundings around;
        around.clock = when;
        words.insert(words.begin(), {"--records", records});
        const Ran ran = run_program(words, input, around);
        INFO(when << " " << words[2] << ": " << ran.err);
        CHECK(ran.code == 0);
        return ran.out;
    };
    run("2026-11-26 08:00:00", {"learner", "add", "A07"}, "");
    run("2026-11-26 08:00:00", {"interview", "--boat", "Tern"}, "wander\nanswer wheel_feel springy\nq\n");
    run("2026-11-26 08:00:00", {"quiz", "--learner", "A07", "--seed", "3", "--count", "5"},
        "a\na\nb\n?\nq\n");
    run("2026-11-26 08:00:00", {"practice", "--learner", "A07", "--seed", "5", "--level", "2"},
        "ask wheel_feel\nq\n");
    // The battery of the clock was empty.
    const char* back = "2001-01-01 00:00:00";
    run(back, {"interview", "--job", "1"}, "answer wheel_sponge 2.35 in\nu\nnote later\nq\n");
    run(back, {"quiz", "--learner", "A07", "--seed", "4", "--count", "5"}, "a\na\nb\n?\nq\n");
    run(back, {"practice", "--learner", "A07"}, "hint\nq\n");
    CHECK(holds(run(back, {"learner", "show", "A07"}, ""), "A07"));
    run(back, {"learning", "show"}, "");
    const auto kinds = see_records(records, "SELECT kind FROM events ORDER BY job, sequence").rows;
    const std::vector<std::string> expected = {"opened",   "complaints_set", "answered",
                                               "answered", "undone",         "noted"};
    CHECK(kinds == expected);
    const std::string shown = run("2026-11-26 08:00:00", {"job", "events", "1"}, "");
    CHECK(shown.find("wander") < shown.find("springy"));
    CHECK(shown.find("springy") < shown.find("later"));
    const auto studied = see_records(records, "SELECT count(*) FROM study_events").rows;
    CHECK(std::stoi(studied.front()) == 11);
    Tried& line = tried("clock set back by years in mid-job and mid-course");
    line.tried += 1;
    line.carried_on += 1;
    line.confirmed += static_cast<long>(expected.size()) + 11;
}

TEST_CASE("Without a home, or with one that cannot be written, the program says what to name instead") {
    const TemporaryFolder folder;
    const auto begin = [&](std::map<std::string, std::optional<std::string>> environment) {
        Surroundings around;
        around.environment = std::move(environment);
        ++tried("no HOME, none that can be written").tried;
        return run_program({"learner", "add", "A07"}, "", around);
    };
    const std::map<std::string, std::optional<std::string>> homes[] = {
        {{"HOME", std::nullopt}, {"XDG_DATA_HOME", std::nullopt}},
        {{"HOME", "/proc/none"}, {"XDG_DATA_HOME", std::nullopt}},
        {{"HOME", "/dev/null"}, {"XDG_DATA_HOME", ""}},
        {{"XDG_DATA_HOME", "/proc/none"}},
    };
    for (const auto& home : homes) {
        const Ran ran = begin(home);
        INFO(ran.err);
        CHECK(ran.code == 1);
        CHECK((holds(ran.err, "--records FILE") || holds(ran.err, "name a folder that may be written")));
        tried("no HOME, none that can be written").refused += ran.code == 1 ? 1 : 0;
    }
    // A home that is not there yet is made: a new account.
    CHECK(begin({{"HOME", folder.file("new/home")}, {"XDG_DATA_HOME", std::nullopt}}).code == 0);
    CHECK(fs::exists(folder.file("new/home/.local/share/hardover/records.db")));
    // What needs no records needs no home.
    Surroundings none;
    none.environment = {{"HOME", std::nullopt}, {"XDG_DATA_HOME", std::nullopt}};
    CHECK(run_program({"knowledge", "figures"}, "", none).code == 0);
}

TEST_CASE("Without the assets and without any typeface the job sheet is still written, or refused in words") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "interview"}, "wander\nq\n").code == 0);
    write_file(folder.file("fonts.conf"),
               "<?xml version=\"1.0\"?><fontconfig><dir>" + folder.file("none") + "</dir></fontconfig>\n");
    Surroundings without;
    without.environment = {{"HARDOVER_ASSETS", folder.file("missing")},
                           {"FONTCONFIG_FILE", folder.file("fonts.conf")}};
    for (const bool assets : {true, false}) {
        if (assets) without.environment["HARDOVER_ASSETS"] = source_path("assets");
        const std::string sheet = folder.file(assets ? "with.pdf" : "without.pdf");
        const Ran ran = run_program({"--records", records, "job", "sheet", "1", sheet}, "", without);
        INFO("assets " << assets << ": " << ran.code << " " << ran.err);
        CHECK(ran.code <= 1);
        if (ran.code == 0) CHECK(file_text(sheet).substr(0, 5) == "%PDF-");
        if (ran.code == 1) CHECK(holds(ran.err, "hardover: "));
        if (assets) CHECK(ran.code == 0);
        Tried& line = tried("no typefaces");
        ++line.tried;
        ++(ran.code == 0 ? line.carried_on : line.refused);
        without.environment["HARDOVER_ASSETS"] = folder.file("missing");
    }
}

TEST_CASE("Without a display the window says so in one line and names the terminal instead") {
    const TemporaryFolder folder;
    for (const char* display : {"", ":4711", "no.such.host:0", "nonsense"}) {
        Surroundings around;
        around.environment = {{"WAYLAND_DISPLAY", std::nullopt}, {"XDG_DATA_HOME", folder.path()}};
        around.environment["DISPLAY"] = *display == '\0' ? std::nullopt : std::optional<std::string>(display);
        const Ran ran = run_program({}, "", around);
        INFO(display << ": " << ran.err);
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "no window can be opened here"));
        CHECK(holds(ran.err, "hardover interview"));
        CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') == 1);
        Tried& line = tried("no display");
        ++line.tried;
        line.refused += ran.code == 1 ? 1 : 0;
    }
}

TEST_CASE("On a display without OpenGL the window says so in one line and names the terminal instead") {
    const TemporaryFolder folder;
    const std::vector<std::pair<std::string, const char*>> displays = {
        {"-extension GLX", nullptr},        // none at all
        {"", "a folder without drivers"}};  // asked for, with nothing to draw by
    for (const auto& [server, drivers] : displays) {
        Surroundings around;
        around.through = {"xvfb-run", "-a", "-s", server + " -nolisten tcp -screen 0 1280x800x24",
                          "timeout",  "60"};
        around.environment = {{"WAYLAND_DISPLAY", std::nullopt}, {"XDG_DATA_HOME", folder.path()}};
        if (drivers != nullptr) around.environment["LIBGL_DRIVERS_PATH"] = folder.file(drivers);
        const Ran ran = run_program({}, "", around);
        const std::string told = ran.err + ran.out;  // xvfb-run joins the two
        INFO(server << ": " << told);
        CHECK(ran.code == 1);
        CHECK(holds(told, "this display has no OpenGL to draw with"));
        CHECK(holds(told, "hardover interview"));
        CHECK(std::count(told.begin(), told.end(), '\n') == 1);
        Tried& line = tried("a display without OpenGL");
        ++line.tried;
        line.refused += ran.code == 1 ? 1 : 0;
    }
}

TEST_CASE("The folders made for a shop's first records are on the disk before an answer counts") {
    if (const std::string why = cannot_trace(); !why.empty()) {
        tried("new folders and a power cut").left_out = why;
        return;
    }
    const TemporaryFolder folder;
    Surroundings around;
    around.through = {"strace", "-f", "-y", "-qq", "-e", "trace=fsync,fdatasync", "-o", folder.file("trace")};
    around.environment["XDG_DATA_HOME"] = folder.file("new");
    const Ran ran = run_program({"learner", "add", "A07"}, "", around);
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    const std::string trace = file_text(folder.file("trace"));
    for (const std::string& parent : {folder.path(), folder.file("new"), folder.file("new/hardover")}) {
        INFO(trace);
        CHECK(holds(trace, "<" + parent + ">)"));
    }
    Tried& line = tried("new folders and a power cut");
    ++line.tried;
    ++line.carried_on;
}
