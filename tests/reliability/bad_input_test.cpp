// Every command with wrong flags, units, files and places: one message, a code other than 0, never an abort.
#include <algorithm>
#include <filesystem>

#include "app/records/database.hpp"
#include "command_tree.hpp"
#include "support.hpp"
#include "tally.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

// What is typed in a slot, and whether the program must refuse it.
struct Bad {
    std::string typed;
    bool must_refuse = true;
};

std::string joined(const std::vector<std::string>& words) {
    std::string text = "hardover";
    for (const std::string& word : words)
        text += " " + (word.size() > 80 ? word.substr(0, 80) + "..." : word);
    return text;
}

// Commands run on records and files of their own.
class BadInput {
  public:
    BadInput() {
        std::filesystem::create_directory(folder_.file("folder"));
        write_file(folder_.file("plain.txt"), "neither knowledge nor records nor a case: {[\n\xff\n");
        REQUIRE(run({"learner", "add", "A07"}).code == 0);
    }

    // The command must say in words what is wrong, in no more than a few lines, and end by itself.
    void refuse(const std::vector<std::string>& words, bool must) {
        const Ran ran = run(words);
        Tried& line = tried("wrong words on the command line");
        ++line.tried;
        ++(ran.code == 0 ? line.carried_on : line.refused);
        INFO(joined(words));
        INFO("ends with " << ran.code << ", says: " << ran.err.substr(0, 600));
        CHECK_FALSE(ran.hung);
        CHECK(ran.code >= 0);
        CHECK(ran.code <= 2);
        if (must) CHECK(ran.code != 0);
        // A command that lists faults lists them as its work, on the other stream.
        if (ran.code != 0) CHECK_FALSE((ran.err + ran.out).empty());
        CHECK(std::count(ran.err.begin(), ran.err.end(), '\n') <= 8);
        for (const char* inner :
             {"terminate", "what()", "std::", "basic_", "exception", "Assertion", "yaml-cpp"}) {
            CHECK(ran.err.find(inner) == std::string::npos);
        }
    }

    std::string file(const std::string& name) const { return folder_.file(name); }

    // What may be wrong in this slot.
    std::vector<Bad> wrong_for(const Slot& slot) const {
        if (slot.type.find("INT") != std::string::npos || slot.type.find("FLOAT") != std::string::npos) {
            std::vector<Bad> bad = {{"x"},     {""},   {"1e999"}, {"99999999999999999999999999"},
                                    {"3 psi"}, {"1,5"}};
            if (whole_run())
                bad.insert(bad.end(), {{"9223372036854775807", false}, {"-1"}, {"nan"}, {"\xff\xfe"}});
            if (!whole_run()) bad.resize(2);
            return bad;
        }
        if (slot.type.find('{') != std::string::npos) return {{"neither"}, {""}};
        const bool written = slot.about.find("written") != std::string::npos || slot.name == "OUT";
        if (written) return {{"/proc/none/here"}, {""}, {file("plain.txt/below")}, {"/dev/null/here"}};
        if (slot.name.find("FILE") == 0 || slot.name == "CASE" || slot.name.find("FOLDER") == 0) {
            return {{file("missing")}, {""}, {file("folder")}, {file("plain.txt")}, {"/dev/null"}};
        }
        std::vector<Bad> bad = {{"no such thing of this name", false}, {"\xff\xfe\x01", false}, {"", false}};
        if (whole_run()) {
            bad.push_back({std::string(100000, 'x'), false});
            bad.push_back({"-", false});
            bad.push_back({"'; DROP TABLE jobs; --", false});
            bad.push_back({"%s%n%d\n\t", false});
        }
        return bad;
    }

    // The command with this slot wrong and the other required ones filled.
    std::vector<std::string> with(const CommandHelp& command, const Slot& wrong,
                                  const std::string& typed) const {
        std::vector<std::string> words = command.words;
        for (const Slot& slot : command.slots) {
            if (&slot == &wrong) {
                if (slot.is_option) words.push_back(slot.name);
                words.push_back(typed);
            } else if (!slot.is_option && (slot.required || slot.name == "OUT")) {
                words.push_back(filler(slot));
            }
        }
        return words;
    }

  private:
    std::string filler(const Slot& slot) const {
        if (slot.type.find("INT") != std::string::npos) return "1";
        if (slot.name == "OUT" || slot.about.find("written") != std::string::npos) return file("out");
        return "A07";
    }

    Ran run(std::vector<std::string> words) const {
        words.insert(words.begin(), {"--records", file("records.db")});
        Surroundings around;
        around.folder = folder_.path();
        around.environment = {{"DISPLAY", std::nullopt}, {"WAYLAND_DISPLAY", std::nullopt}};
        // The small knowledge of the tests makes every start quick; the shipped one has its turn in a whole
        // run.
        if (!whole_run()) around.environment["HARDOVER_KNOWLEDGE"] = source_path("tests/reading/garden_pump");
        around.most = std::chrono::seconds(60);
        return run_program(words, "", around);
    }

    TemporaryFolder folder_;
};

}  // namespace

TEST_CASE("Every command answers wrong words with one message and a code other than 0, and never aborts") {
    const std::vector<CommandHelp> commands = command_tree();
    CHECK(commands.size() > 30);
    BadInput input;
    for (const CommandHelp& command : commands) {
        CHECK(command.code == 0);
        std::vector<std::string> words = command.words;
        words.emplace_back("--no-such-flag");
        input.refuse(words, true);
        if (command.needs_subcommand) {
            input.refuse(command.words, true);
            words.back() = "no-such-command";
            input.refuse(words, true);
        }
        const bool anything_required = std::any_of(command.slots.begin(), command.slots.end(),
                                                   [](const Slot& slot) { return slot.required; });
        if (anything_required) input.refuse(command.words, true);
        for (const Slot& slot : command.slots) {
            if (slot.is_option) {
                words.back() = slot.name;
                input.refuse(words, true);
            }
            const bool takes_any_file =
                !command.words.empty() && command.words.back() == "attach" && slot.name.starts_with("FILE");
            for (const Bad& bad : input.wrong_for(slot)) {
                input.refuse(input.with(command, slot, bad.typed), bad.must_refuse && !takes_any_file);
            }
        }
    }
}

TEST_CASE("A name that is no text, left by an earlier version, breaks no list") {
    const TemporaryFolder folder;
    const std::string records = folder.file("records.db");
    REQUIRE(run_program({"--records", records, "learner", "add", "A07"}).code == 0);
    {
        using hardover::records_detail::Database;
        const auto file = Database::open(records, SQLITE_OPEN_READWRITE, std::chrono::seconds(5));
        REQUIRE_OK(file);
        const auto insert = [&file](const std::string& table, const std::string& values) {
            const std::string sql =
                "INSERT INTO " + table + " VALUES (" + values + ", checksum_of(" + values + "))";
            REQUIRE_OK(file.value().run(sql.c_str()));
        };
        const std::string at = "'2026-11-26T08:00:00Z'";
        insert("learners", "7, CAST(x'ff41fe' AS TEXT), " + at + ", 0");
        insert("jobs", "7, " + at + ", " + at + ", CAST(x'42ff' AS TEXT), 'in hand', '', 1");
        insert("events", "7, 1, " + at + ", 'opened', CAST(x'7b22626f6174223a22ff227d' AS TEXT)");
    }
    const std::vector<std::vector<std::string>> lists = {
        {"learner", "list"},  {"learner", "list", "--json"},   {"job", "list"},       {"practice", "list"},
        {"job", "show", "7"}, {"job", "sheet", "7", "--json"}, {"job", "events", "7"}};
    for (std::vector<std::string> words : lists) {
        words.insert(words.begin(), {"--records", records});
        const Ran ran = run_program(words);
        INFO(joined(words) << " ends with " << ran.code << ": " << ran.err);
        CHECK(ran.code <= 1);
        CHECK_FALSE((ran.out + ran.err).empty());
    }
}
