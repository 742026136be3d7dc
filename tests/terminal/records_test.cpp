// `hardover records ...` and the commands that find jobs, with the built program: what a person types and
// reads.
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

}  // namespace

TEST_CASE("Jobs are listed, looked for and filtered in the terminal") {
    const Yard yard;
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

TEST_CASE("A job that was handed back is opened again and goes on") {
    const Yard yard;
    yard.close_job("Second Wind");
    CHECK(holds(yard.must({"job", "reopen", "1", "--why", "hard again"}), "in hand again"));
    CHECK(holds(yard.must({"job", "show", "1"}), "Reopened: “hard again”"));
    CHECK(holds(yard.must({"interview", "--job", "1"}, "q\n"), "is kept."));
    CHECK(yard.run({"job", "reopen", "1"}).err == "hardover: this job is not handed back\n");
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
