// Real disks and other programs: a small disk that runs full, one that may only be read, a file of another
// user, a file that another program holds, a damaged settings file.
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <random>

#include "app/window/preferences.hpp"
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

long times(const std::string& text, const std::string& part) {
    long n = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++n;
    return n;
}

// What was said, without the line ends that its width puts in.
std::string in_one_line(std::string text) {
    std::replace(text.begin(), text.end(), '\n', ' ');
    return text;
}

// A command that runs another with a disk of its own, `size` large, at `folder`; gone with the command.
// `then` is what a shell does afterwards, while the disk is still there.
std::vector<std::string> on_small_disk(const std::string& folder, const std::string& size,
                                       const std::string& first, const std::string& then) {
    return {"unshare", "-rm", "sh", "-c",
            "mount -t tmpfs -o size=" + size + " none '" + folder + "' || exit 99; " + first +
                " \"$0\" \"$@\"; code=$?; " + then + " exit $code"};
}

bool cannot_mount(const char* fault) {
    const TemporaryFolder folder;
    Surroundings around;
    around.through = on_small_disk(folder.path(), "1m", "", "");
    if (run_program({"--version"}, "", around).code == 0) return false;
    tried(fault).left_out = "no disk can be mounted here";
    WARN("left out: no disk can be mounted here");
    return true;
}

}  // namespace

TEST_CASE("On a small disk that runs full in mid-interview every confirmed note is on record") {
    const char* fault = "a real disk (tmpfs) that runs full";
    if (cannot_mount(fault)) return;
    for (const char* size : {"64k", "128k", "200k", "320k"}) {
        INFO(size);
        const TemporaryFolder folder;
        fs::create_directory(folder.file("disk"));
        Surroundings around;
        around.through = on_small_disk(folder.file("disk"), size, "", "cp disk/* .;");
        around.folder = folder.path();
        std::string input = "wander\n";
        for (int i = 0; i < 80; ++i) input += "note " + std::to_string(i) + std::string(2500, 'x') + "\n";
        const Ran ran = run_program({"--records", "disk/records.db", "interview"}, input + "q\n", around);
        INFO(ran.err << ran.out.substr(0, 300));
        const long refusals = times(in_one_line(ran.out), "the disk is full; this step was not written");
        Tried& line = tried(fault);
        ++line.tried;
        ++line.refused;
        CHECK(ran.code <= 1);
        if (ran.code == 1) {
            CHECK(holds(ran.err, "the disk is full"));
            continue;
        }
        CHECK(refusals > 0);
        const auto seen = see_records(folder.file("records.db"), "SELECT 1 FROM events WHERE kind = 'noted'");
        CHECK(seen.trouble.empty());
        const long confirmed = 80 - refusals;
        line.confirmed += confirmed;
        line.lost += std::max(0L, confirmed - static_cast<long>(seen.rows.size()));
        CHECK(static_cast<long>(seen.rows.size()) >= confirmed);
    }
}

TEST_CASE("A file for which there is no room is refused in words, and none of it is left") {
    const char* fault = "a file written to a real disk that is full";
    if (cannot_mount(fault)) return;
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "interview"}, "wander\nq\n").code == 0);
    fs::create_directory(folder.file("disk"));
    const std::vector<std::vector<std::string>> writing = {{"job", "sheet", "1", "disk/sheet.pdf"},
                                                           {"knowledge", "book", "disk/book"},
                                                           {"learning", "export", "disk/c"}};
    for (std::vector<std::string> words : writing) {
        Surroundings around;
        around.through = on_small_disk(folder.file("disk"), "8k", "head -c 8192 /dev/zero >disk/full;",
                                       "find disk -type f >left;");
        around.folder = folder.path();
        words.insert(words.begin(), {"--records", records});
        const Ran ran = run_program(words, "", around);
        INFO(words[2] << ": " << ran.code << " " << ran.err);
        CHECK(ran.code == 1);
        CHECK((holds(ran.err, "No space left on device") || holds(ran.err, "the space on the disk")));
        CHECK(file_text(folder.file("left")) == "disk/full\n");
        ++tried(fault).tried;
        tried(fault).refused += ran.code == 1 ? 1 : 0;
    }
}

TEST_CASE("Records on a disk that may only be read, or of another user, are refused in words and kept") {
    const char* fault = "records that may only be read, or not at all";
    if (cannot_mount(fault)) return;
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "learner", "add", "A07"}).code == 0);
    fs::create_directory(folder.file("disk"));
    Surroundings read_only;
    read_only.through =
        on_small_disk(folder.file("disk"), "1m", "cp records.db disk; mount -o remount,ro disk;", "");
    read_only.folder = folder.path();
    for (const char* file : {"disk/records.db", "disk/new.db", "disk/below/new.db"}) {
        const Ran ran = run_program({"--records", file, "learner", "add", "B08"}, "", read_only);
        INFO(file << ": " << ran.err);
        CHECK(ran.code == 1);
        CHECK((holds(ran.err, "read-only") || holds(ran.err, "cannot be opened") ||
               holds(ran.err, "is not there")));
        ++tried(fault).tried;
        tried(fault).refused += ran.code == 1 ? 1 : 0;
    }
    if (geteuid() != 0) return;  // becoming another user needs an administrator
    Surroundings other_user;
    other_user.through = {"setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"};
    other_user.environment = {{"HOME", std::nullopt}};
    fs::permissions(folder.path(), fs::perms::owner_all | fs::perms::others_read | fs::perms::others_exec);
    for (const auto rights : {fs::perms::owner_all, fs::perms::owner_all | fs::perms::others_read}) {
        fs::permissions(records, rights);
        const std::string before = file_text(records);
        const Ran ran = run_program({"--records", records, "learner", "list"}, "", other_user);
        INFO(ran.err);
        if (ran.code == 126 || ran.code == 127) return;  // the program itself lies where others may not go
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "hardover: " + records));
        CHECK(file_text(records) == before);
        ++tried(fault).tried;
        tried(fault).refused += ran.code == 1 ? 1 : 0;
    }
}

TEST_CASE(
    "While another program holds the records an answer is refused in words, and taken when it lets go") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    RunningProgram interview({"--records", records, "interview"});
    REQUIRE(interview.wait_for_prompt(1));
    interview.type("wander");
    REQUIRE(interview.wait_for_prompt(2));
    sqlite3* holder = nullptr;
    REQUIRE(sqlite3_open(records.c_str(), &holder) == SQLITE_OK);
    REQUIRE(sqlite3_exec(holder, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr) == SQLITE_OK);
    interview.type("note while it is held");
    REQUIRE(interview.wait_for_prompt(3));
    CHECK(holds(in_one_line(interview.seen()), "another program is holding the records file"));
    const Ran other = run_program({"--records", records, "learner", "add", "A07"});
    CHECK(other.code == 1);
    CHECK(holds(other.err, "another program is holding the records file"));
    sqlite3_exec(holder, "COMMIT", nullptr, nullptr, nullptr);
    sqlite3_close(holder);
    interview.type("note when it was let go");
    REQUIRE(interview.wait_for_prompt(4));
    interview.kill_hard();
    const auto notes = see_records(records, "SELECT body FROM events WHERE kind = 'noted'").rows;
    REQUIRE(notes.size() == 1);
    CHECK(holds(notes.front(), "let go"));
    Tried& line = tried("records held by another program");
    line = {line.fault, 2, 2, 1, 2, 0, ""};
}

TEST_CASE("Two programs that write to one records file at the same time lose nothing") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "learner", "add", "A07"}).code == 0);
    std::string notes;
    constexpr int each = 25;
    for (int i = 0; i < each; ++i) notes += "note " + std::to_string(i) + "\n";
    std::vector<std::unique_ptr<RunningProgram>> programs;
    for (const char* boat : {"Tern", "Grey Heron", "Little Auk"}) {
        programs.push_back(std::make_unique<RunningProgram>(
            std::vector<std::string>{"--records", records, "interview", "--boat", boat}));
        programs.back()->type(notes + "q");
    }
    Tried& line = tried("programs writing to one file at the same time");
    long refused = 0;
    for (auto& program : programs) {
        const bool all_taken = program->wait_for_prompt(each + 1);
        CHECK(all_taken);
        ++line.tried;
        line.carried_on += all_taken ? 1 : 0;
        // On a busy machine a program may wait in vain and say so; what it refuses it has not confirmed.
        const long told = times(in_one_line(program->seen()), "another program is holding the records file");
        refused += told;
        line.confirmed += std::max(0, program->prompts() - 1) - told;
    }
    programs.clear();
    const auto seen = see_records(records, "SELECT 1 FROM events WHERE kind = 'noted'");
    CHECK(seen.trouble.empty());
    CHECK(static_cast<long>(seen.rows.size()) + refused == 3 * each);
    line.lost += std::max(0L, line.confirmed - static_cast<long>(seen.rows.size()));
}

TEST_CASE("A damaged settings file of the window gives the usual settings and a message, whatever is in it") {
    const TemporaryFolder folder;
    const std::string path = folder.file("window.json");
    const std::string sound = R"({"theme": "dark", "text_percent": 150})";
    std::vector<std::string> damaged = {"",
                                        "null",
                                        "[]",
                                        "{",
                                        std::string(100000, '['),
                                        R"({"theme": 3})",
                                        R"({"theme": "dark", "text_percent": 1e300})",
                                        R"({"text_percent": -99999})",
                                        R"({"text_percent": 99999999999})",
                                        "\xff\xfe\x00"};
    std::mt19937 random(20261126);
    for (int i = 0; i < 500; ++i) {
        std::string text = sound;
        const std::size_t at = std::uniform_int_distribution<std::size_t>(0, text.size() - 1)(random);
        if (i % 2 == 0) {
            text.resize(at);
        } else {
            text[at] = static_cast<char>(std::uniform_int_distribution<int>(0, 255)(random));
        }
        damaged.push_back(text);
    }
    Tried& line = tried("settings file of the window damaged");
    for (const std::string& text : damaged) {
        write_file(path, text);
        const auto read = hardover::window::read_preferences(path);
        INFO(text.substr(0, 80));
        ++line.tried;
        ++(read.ok() ? line.carried_on : line.refused);
        if (read.ok()) {
            CHECK(read.value().text_percent >= hardover::window::least_text);
            CHECK(read.value().text_percent <= hardover::window::most_text);
            continue;
        }
        CHECK(read.error().where.starts_with(path + ":"));  // and line and column
        REQUIRE_OK(hardover::window::write_preferences(path, {}));
        CHECK(file_text(path + ".unreadable") == text);  // it may be somebody's work
    }
}
