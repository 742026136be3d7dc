// `hardover records ...` and the commands that find jobs, with the built program: what a person types and
// reads.
#include <sys/stat.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <thread>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;
using nlohmann::json;
namespace fs = std::filesystem;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// A yard (invented) with a folder of its own.
class Yard {
  public:
    Ran run(std::vector<std::string> arguments, const std::string& input = "") const {
        arguments.insert(arguments.begin(), {"--records", file("records.db")});
        return run_program(arguments, input);
    }
    std::string must(const std::vector<std::string>& arguments, const std::string& input = "") const {
        const Ran ran = run(arguments, input);
        INFO(ran.out << ran.err);
        REQUIRE(ran.code == 0);
        return ran.out;
    }
    // Invented boat: two rams on a hand helm, a hose crossed at one of them; cured and handed back.
    void close_job(const std::string& boat) const {
        must({"interview", "--boat", boat},
             "hard_one_way\nrig helm manual_pump\nrig rams 2\nhistory just_fitted\n"
             "answer effort_both_ways heavy\nanswer rams_fight frees\nanswer hose_ports crossed\n"
             "cured\nhoses_crossed seen\n");
    }
    std::string file(const std::string& name) const { return folder_.file(name); }
    std::size_t backups() const {
        std::error_code failed;
        std::size_t count = 0;
        for (const auto& entry : fs::directory_iterator(file("backups"), failed)) {
            count += entry.path().extension() == ".db" ? 1 : 0;
        }
        return count;
    }

  private:
    TemporaryFolder folder_;
};

// Alters a word wherever it stands in a file, as a disk that goes bad might.
void damage(const std::string& path, const std::string& word) {
    std::string bytes = file_text(path);
    std::size_t at = bytes.find(word);
    REQUIRE(at != std::string::npos);
    for (; at != std::string::npos; at = bytes.find(word, at + 1)) bytes[at] = '#';
    write_file(path, bytes);
}

const std::vector<std::vector<std::string>> reading_commands = {{"job", "list"},
                                                                {"job", "show", "7"},
                                                                {"job", "events", "7"},
                                                                {"job", "photos", "7"},
                                                                {"job", "reopen", "7"},
                                                                {"job", "boat", "Tern"},
                                                                {"job", "sheet", "7", "--json"},
                                                                {"learner", "list"},
                                                                {"learner", "show", "A07"},
                                                                {"practice", "list"},
                                                                {"class", "list"},
                                                                {"class", "taken"},
                                                                {"class", "roster", "list"},
                                                                {"records", "check"},
                                                                {"records", "mend"},
                                                                {"records", "backup"},
                                                                {"records", "list-backups"},
                                                                {"interview", "--job", "7"},
                                                                {"--job", "7"}};

}  // namespace

TEST_CASE("A records file in a folder that is not there is refused by every command, and no folder is made") {
    const TemporaryFolder folder;
    std::vector<std::vector<std::string>> commands = reading_commands;
    commands.insert(commands.end(), {{}, {"interview"}, {"learner", "add", "A07"}, {"worksheet", "list"}});
    for (std::vector<std::string> words : commands) {
        words.insert(words.begin(), {"--records", folder.file("stik/deep/y.db")});
        const Ran ran = run_program(words);
        INFO(words.back() << ": " << ran.out << ran.err);
        CHECK(ran.code == 1);
        CHECK(ran.err == "hardover: " + folder.file("stik/deep") +
                             ": the folder of the records file is not there (make it, or look whether the "
                             "name is right and the stick is plugged in)\n");
        CHECK_FALSE(fs::exists(folder.file("stik")));
    }
    const Ran slash = run_program({"--records", folder.file("yard/"), "learner", "add", "A07"});
    CHECK(slash.code == 1);
    CHECK_FALSE(fs::exists(folder.file("yard")));
}

TEST_CASE(
    "A command that only reads, or goes on with a job, begins no records and says that there are none") {
    const Yard yard;
    for (const std::vector<std::string>& words : reading_commands) {
        const Ran ran = yard.run(words);
        INFO(words.front() << " " << words.back() << ": " << ran.out << ran.err);
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "there are no records there yet"));
        CHECK_FALSE(fs::exists(yard.file("records.db")));
    }
    yard.must({"worksheet", "list"});
    yard.must({"class", "paper", yard.file("quiz.pdf"), "--count", "2"});
    CHECK_FALSE(fs::exists(yard.file("records.db")));
}

TEST_CASE(
    "Records that are gone or emptied while backups stand beside them are told as lost, not begun anew") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    yard.must({"records", "backup"});
    for (const bool emptied : {false, true}) {
        INFO(emptied);
        fs::remove(yard.file("records.db"));
        if (emptied) write_file(yard.file("records.db"), "");
        std::vector<std::vector<std::string>> commands = reading_commands;
        commands.insert(commands.end(), {{},
                                         {"interview"},
                                         {"learner", "add", "A07"},
                                         {"quiz", "--learner", "A07"},
                                         {"learning", "show"}});
        for (const std::vector<std::string>& words : commands) {
            if (words.size() > 1 && words[1] == "list-backups") continue;  // the way back begins with it
            const Ran ran = yard.run(words);
            INFO((words.empty() ? "the window" : words.back()) << ": " << ran.out << ran.err);
            CHECK(ran.code == 1);
            CHECK(holds(ran.err, emptied
                                     ? "the records file is empty, but backups of it stand beside it"
                                     : "the records file is not there, but backups of it stand beside it"));
            CHECK(holds(ran.err, "hardover records restore 2;"));
        }
        CHECK(fs::exists(yard.file("records.db")) == emptied);
        CHECK(holds(yard.must({"records", "list-backups"}), "records-00002-"));
        yard.must({"records", "restore", "2"});
        CHECK(holds(yard.must({"job", "list"}), "Grey Heron"));
    }
}

TEST_CASE("A records file cut short is told with the backup to bring back") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    fs::resize_file(yard.file("records.db"), fs::file_size(yard.file("records.db")) / 2 / 4096 * 4096);
    for (const std::vector<std::string>& words : {std::vector<std::string>{"job", "list"},
                                                  {"records", "check"},
                                                  {"records", "mend"},
                                                  {"interview"},
                                                  {}}) {
        const Ran ran = yard.run(words);
        INFO(ran.err);
        CHECK(ran.code == 1);
        CHECK(holds(ran.err, "the records file is damaged"));
        CHECK(holds(ran.err,
                    "keep it as it is and bring the newest backup back with: hardover records restore 1)"));
    }
    yard.must({"records", "restore", "1"});
    CHECK(holds(yard.must({"job", "list"}), "Grey Heron"));
}

TEST_CASE("Of a job with a damaged event the check says what could be read, and a backup names the records") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"},
              "wander\nnote one\nnote the bracket is loose\nnote two\nq\n");
    damage(yard.file("records.db"), "bracket");
    const Ran check = yard.run({"records", "check"});
    INFO(check.out << check.err);
    CHECK(check.code == 1);
    CHECK(holds(check.out, "1 job, 4 events, 0 photos looked at."));
    CHECK(holds(check.out,
                "Job 1: 4 of its 5 events could be read; the job was not replayed, and its photos were not "
                "looked at."));
    const Ran backup = yard.run({"records", "backup"});
    INFO(backup.err);
    CHECK(backup.code == 1);
    CHECK(holds(backup.err,
                "hardover: " + yard.file("records.db") + ": the records file is damaged: job 1, event 4"));
    CHECK_FALSE(holds(backup.err, "unfinished"));
}

TEST_CASE("Records and knowledge may be named before the command or after it") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    const std::string file = yard.file("records.db");
    CHECK(holds(run_program({"job", "list", "--records", file}).out, "Grey Heron"));
    CHECK(holds(run_program({"job", "--records=" + file, "list", "heron"}).out, "Grey Heron"));
    CHECK(holds(run_program({"records", "check", "--records", file}).out, "The records are in order."));
    const Ran other =
        run_program({"knowledge", "list", "causes", "--knowledge", source_path("tests/reading/garden_pump")});
    CHECK(holds(other.out, "hose_kinked"));
    CHECK_FALSE(holds(other.out, "air_in_oil"));
    CHECK(run_program({"--records", file, "job", "list", "--records", file}).code == 2);
    // What is of the command above alone is still refused after it, and would be passed over before it.
    CHECK(run_program({"job", "list", "--job", "1"}).code == 2);
    CHECK(run_program({"--job", "1", "job", "list"}).code == 2);
    CHECK(run_program({"quiz", "topics", "--count", "3"}).code == 2);
    for (const std::vector<std::string>& words :
         {std::vector<std::string>{"job", "list", "--help"}, {"class", "new", "--help"}}) {
        const std::string help = run_program(words).out;
        INFO(help);
        CHECK(holds(help, "--records"));
        CHECK(holds(help, "--knowledge"));
        CHECK_FALSE(holds(help, "--job"));
        CHECK(holds(help, "--passphrase-file") == (words.front() == "class"));
    }
}

TEST_CASE("Jobs are listed, looked for and filtered in the terminal") {
    const Yard yard;
    yard.must({"learner", "add", "A07"});
    CHECK(holds(yard.must({"job", "list"}), "No jobs yet."));
    yard.close_job("Second Wind");
    yard.must({"interview", "--boat", "Grey Heron"}, "wander\nnote the bracket is loose\nq\n");
    const std::string all = yard.must({"job", "list"});
    CHECK(holds(all, "2 of 2 jobs."));
    CHECK(holds(all, "Handed back. "));
    const std::string bracket = yard.must({"job", "list", "bracket"});
    CHECK(holds(bracket, "Grey Heron"));
    CHECK(holds(bracket, "Note: “the bracket is loose”"));
    CHECK_FALSE(holds(bracket, "Second Wind"));
    CHECK(holds(yard.must({"job", "list", "--cause", "hoses_crossed"}), "1 of 2 jobs."));
    CHECK(holds(yard.must({"job", "list", "--state", "in hand"}), "Grey Heron"));
    CHECK(yard.run({"job", "list", "--from", "tomorrow"}).code == 1);
}

TEST_CASE("Letters beyond A to Z are found in capitals and in small ones") {
    const Yard yard;
    yard.must({"interview", "--boat", "Möwe"}, "wander\nnote Ölstand geprüft\nq\n");
    for (const char* words : {"ölstand", "GEPRÜFT", "möwe", "MÖWE ÖLSTAND"}) {
        INFO(words);
        CHECK(holds(yard.must({"job", "list", words}), "1 of 1 job."));
    }
    CHECK(holds(yard.must({"job", "list", "--boat", "MÖWE"}), "1 of 1 job."));
    CHECK(holds(yard.must({"job", "list", "olstand"}), "0 of 1 job."));
    CHECK(holds(yard.must({"job", "boat", "MÖWE"}), "Möwe"));
}

TEST_CASE("A list shows the clock of the place, and filters by its days") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    yard.must({"records", "export", yard.file("jobs.json")});
    const std::string now = json::parse(file_text(yard.file("jobs.json")))["jobs"][0]["events"][0]["at"];
    // No zone is farther from the other than these two: their days differ at every moment.
    for (const char* zone : {"Pacific/Kiritimati", "Pacific/Niue"}) {
        Surroundings around;
        around.environment["TZ"] = zone;
        const auto list = [&](std::vector<std::string> more) {
            more.insert(more.begin(), {"--records", yard.file("records.db"), "job", "list"});
            return run_program(more, "", around).out;
        };
        const std::string shown = list({});
        INFO(zone << ", " << now << ": " << shown);
        const std::string day = shown.substr(shown.find("  ") + 2, 10);
        CHECK(holds(list({"--from", day, "--to", day}), "1 of 1 job."));
        CHECK_FALSE(holds(shown, now));
    }
}

TEST_CASE("A folder for data that is no whole path is passed over for the one in the home") {
    const TemporaryFolder home;
    Surroundings around;
    around.folder = home.path();
    around.environment["HOME"] = home.path();
    around.environment["XDG_DATA_HOME"] = "data";
    REQUIRE(run_program({"interview", "--boat", "Grey Heron"}, "q\n", around).code == 0);
    CHECK(fs::exists(home.file(".local/share/hardover/records.db")));
    CHECK_FALSE(fs::exists(home.file("data")));
    around.environment["XDG_DATA_HOME"] = home.file("data");
    REQUIRE(run_program({"interview", "--boat", "Grey Heron"}, "q\n", around).code == 0);
    CHECK(fs::exists(home.file("data/hardover/records.db")));
}

TEST_CASE("A job's number may be greater than 32 bits hold") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "wander\nq\n");
    yard.must({"records", "export", yard.file("jobs.json")});
    json jobs = json::parse(file_text(yard.file("jobs.json")));
    jobs["jobs"][0]["number"] = 2147483653;  // 2^31 + 5
    write_file(yard.file("jobs.json"), jobs.dump());
    const Yard other;
    other.must({"records", "import", yard.file("jobs.json")});
    CHECK(holds(other.must({"job", "list"}), "2147483653  "));
    CHECK(holds(other.must({"interview", "--job", "2147483653"}, "note kept\nq\n"), "is kept."));
    CHECK(holds(other.must({"job", "events", "2147483653"}), "note: kept"));
    CHECK(holds(other.must({"job", "show", "2147483653"}), "Grey Heron"));
    other.must({"interview", "--boat", "Little Auk"}, "q\n");
    CHECK(holds(other.must({"job", "list", "little"}), "2147483654  "));
    CHECK(holds(other.must({"records", "check"}), "The records are in order."));
}

TEST_CASE("A job that was handed back is opened again and goes on") {
    const Yard yard;
    yard.close_job("Second Wind");
    CHECK(holds(yard.must({"job", "reopen", "1", "--why", "hard again"}), "in hand again"));
    CHECK(holds(yard.must({"job", "show", "1"}), "Reopened: “hard again”"));
    CHECK(holds(yard.must({"interview", "--job", "1"}, "q\n"), "is kept."));
    CHECK(yard.run({"job", "reopen", "1"}).err ==
          "hardover: this job is not handed back (go on with: hardover interview --job 1)\n");
}

TEST_CASE("The jobs of a boat are told beside each other") {
    const Yard yard;
    yard.close_job("Second Wind");
    yard.close_job("Second Wind");
    CHECK(holds(yard.must({"job", "boat", "second wind"}), "The same cause came again: "));
}

TEST_CASE("Photos come with the job, its page and its sheet, and a missing one is told") {
    const Yard yard;
    yard.close_job("Second Wind");
    write_file(yard.file("bracket.pdf"), "%PDF- a picture");
    yard.must({"job", "attach", "1", yard.file("bracket.pdf"), "--caption", "crack at the aft bolt"});
    CHECK(holds(yard.must({"job", "show", "1"}), "- bracket.pdf: crack at the aft bolt"));
    CHECK(json::parse(yard.must({"job", "sheet", "1", "--json"}))["photos"][0] ==
          "bracket.pdf: crack at the aft bolt");
    CHECK(holds(yard.must({"records", "check"}), "The records are in order."));
    fs::remove_all(yard.file("photos"));
    CHECK(yard.run({"job", "photos", "1"}).code == 1);
    const Ran check = yard.run({"records", "check"});
    CHECK(check.code == 1);
    CHECK(holds(check.out, "job 1, photo bracket.pdf: the file is missing"));
    // The backup that was made when it was attached has it.
    yard.must({"records", "restore", "2"});
    CHECK(yard.run({"records", "check"}).code == 0);
}

TEST_CASE("No command waits for a pipe or reads a device to its end that never comes") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    REQUIRE(mkfifo(yard.file("pipe").c_str(), 0600) == 0);
    REQUIRE(mkfifo(yard.file("knowledge.yaml").c_str(), 0600) == 0);
    const std::vector<std::vector<std::string>> commands = {
        {"job", "attach", "1"}, {"records", "import"},
        {"records", "merge"},   {"class", "take", "--seat", "A01"},
        {"learning", "merge"},  {"assess"}};
    for (const std::string& path : {yard.file("pipe"), std::string("/dev/zero")}) {
        for (std::vector<std::string> command : commands) {
            INFO(command.front() << " " << command.back() << " " << path);
            command.push_back(path);
            command.insert(command.begin(), {"--records", yard.file("records.db")});
            Surroundings around;
            around.most = std::chrono::seconds(20);
            const Ran ran = run_program(command, "", around);
            INFO(ran.out << ran.err);
            CHECK_FALSE(ran.hung);
            CHECK(ran.code == 1);
            CHECK(holds(ran.err, "not a"));
        }
    }
    CHECK(yard.run({"--knowledge", yard.file("."), "knowledge", "check"}).code == 1);
}

TEST_CASE("An interview that wrote something leaves a backup, one that only looked does not") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    CHECK(yard.backups() == 1);
    yard.must({"interview", "--job", "1"}, "q\n");
    CHECK(yard.backups() == 1);
    yard.must({"records", "backup", "--keep", "2"});
    yard.must({"interview", "--job", "1"}, "note one\nq\n");
    yard.must({"interview", "--job", "1"}, "note two\nq\n");
    CHECK(yard.backups() == 2);
    CHECK(holds(yard.must({"records", "list-backups"}), "records-00004-"));
}

TEST_CASE("A restore brings back what was, and what it put aside can be brought back too") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "q\n");
    yard.must({"interview", "--boat", "Little Auk"}, "q\n");
    const std::string told = yard.must({"records", "restore", "1"});
    CHECK(holds(told, "1 job brought back from "));
    CHECK(holds(told, "What was here before (2 jobs) is kept: "));
    CHECK_FALSE(holds(yard.must({"job", "list"}), "Little Auk"));
    CHECK(holds(yard.must({"records", "list-backups"}), "(as it was before a restore)"));
    yard.must({"records", "restore", "3"});
    CHECK(holds(yard.must({"job", "list"}), "Little Auk"));
    CHECK(yard.run({"records", "restore", "99"}).code == 1);
}

TEST_CASE("Jobs go to another computer by a file or by the records file itself, once") {
    const Yard yard, other;
    yard.close_job("Second Wind");
    other.must({"interview", "--boat", "Marsh Hen"}, "q\n");
    yard.must({"records", "export", yard.file("jobs.json")});
    CHECK(holds(other.must({"records", "import", yard.file("jobs.json")}), "1 job: 1 new or longer"));
    CHECK(holds(other.must({"records", "merge", yard.file("records.db")}), "1 job: 0 new or longer"));
    CHECK(holds(other.must({"job", "list"}), "2 of 2 jobs."));
    CHECK(holds(other.must({"records", "check"}), "The records are in order."));
    yard.must({"records", "export", yard.file("jobs.csv"), "--csv"});
    CHECK(holds(file_text(yard.file("jobs.csv")), ",Second Wind,handed back,"));
    CHECK(yard.run({"records", "import", yard.file("jobs.csv")}).code == 1);
    CHECK(yard.run({"records", "export", yard.file("gone/jobs.json")}).code == 1);
}

TEST_CASE("A job file whose answer was altered is refused, one without a checksum is taken") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "wander\nanswer wheel_feel springy\nq\n");
    yard.must({"records", "export", yard.file("jobs.json")});
    std::string text = file_text(yard.file("jobs.json"));
    REQUIRE(holds(text, "springy"));
    text.replace(text.find("springy"), 7, "steady_");
    write_file(yard.file("jobs.json"), text);
    const Yard other;
    const Ran refused = other.run({"records", "import", yard.file("jobs.json")});
    CHECK(refused.code == 1);
    CHECK(holds(refused.err, "job 1: its events are not those that were written"));
    json jobs = json::parse(text);
    jobs["jobs"][0].erase("checksum");
    write_file(yard.file("jobs.json"), jobs.dump());
    CHECK(holds(other.must({"records", "import", yard.file("jobs.json")}), "1 job: 1 new"));
}

TEST_CASE("A photo that is attached twice is told once, also where its file is missing") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "wander\nq\n");
    write_file(yard.file("bracket.pdf"), "%PDF- a picture");
    yard.must({"job", "attach", "1", yard.file("bracket.pdf")});
    CHECK(holds(yard.must({"job", "attach", "1", yard.file("bracket.pdf")}), "is with the job already."));
    yard.must({"job", "attach", "1", yard.file("bracket.pdf"), "--caption", "crack"});
    const std::string photos = yard.must({"job", "photos", "1"});
    CHECK(photos.find("bracket.pdf\n") == photos.rfind("bracket.pdf\n"));
    CHECK(holds(photos, "bracket.pdf: crack"));
    fs::remove_all(yard.file("photos"));
    const std::string check = yard.run({"records", "check"}).out;
    CHECK(holds(check, "photo bracket.pdf"));
    CHECK(check.find("the file is missing") == check.rfind("the file is missing"));
    yard.must({"job", "attach", "1", yard.file("bracket.pdf")});
    yard.must({"records", "check"});
}

TEST_CASE("Backups that are turned off are told of, with the way back") {
    const Yard yard;
    CHECK(holds(yard.must({"records", "backup", "--keep", "0"}), "records backup --keep 10"));
}

TEST_CASE("Two interviews on one records file at once lose nothing, and the later one on a job is told") {
    const Yard yard;
    yard.must({"interview", "--boat", "Grey Heron"}, "wander\nq\n");
    RunningProgram first({"--records", yard.file("records.db"), "interview", "--job", "1"});
    RunningProgram second({"--records", yard.file("records.db"), "interview", "--job", "1"});
    REQUIRE(first.wait_for_prompt(1));
    REQUIRE(second.wait_for_prompt(1));
    first.type("note from the first");
    REQUIRE(first.wait_for_prompt(2));
    second.type("note from the second");
    REQUIRE(second.wait_for_prompt(2));
    CHECK(holds(second.seen(), "changed by another"));
    std::thread other([&yard] { yard.run({"interview", "--boat", "Little Auk"}, "note a\nnote b\nq\n"); });
    first.type("note again from the first");
    REQUIRE(first.wait_for_prompt(3));
    other.join();
    const std::string events = yard.must({"job", "events", "1"});
    CHECK(holds(events, "note: from the first"));
    CHECK(holds(events, "note: again from the first"));
    CHECK_FALSE(holds(events, "from the second"));
    CHECK(holds(yard.must({"job", "events", "2"}), "note: b"));
    CHECK(holds(yard.must({"records", "check"}), "The records are in order."));
}
