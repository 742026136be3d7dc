// `hardover job sheet` with the built program: a PDF or JSON of a job on file, and what it refuses.
#include <filesystem>
#include <nlohmann/json.hpp>

#include "support.hpp"
#include "terminal/program.hpp"

using namespace hardover_tests;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// A records file with one job of an invented boat: a hose crossed, found and put right.
class Yard {
  public:
    Yard() {
        const Ran interview = run({"interview", "--boat", "Second Wind"},
                                  "hard_one_way\n"
                                  "rig helm manual_pump\n"
                                  "rig rams 2\n"
                                  "history just_fitted\n"
                                  "answer rams_fight frees\n"
                                  "answer hose_ports crossed\n"
                                  "cured\n"
                                  "hoses_crossed seen\n");
        INFO(interview.err);
        REQUIRE(interview.code == 0);
    }
    Ran run(std::vector<std::string> arguments, const std::string& input = "") const {
        arguments.insert(arguments.begin(), {"--records", folder_.file("records.db")});
        return run_program(arguments, input);
    }
    std::string file(const std::string& name) const { return folder_.file(name); }

  private:
    TemporaryFolder folder_;
};

}  // namespace

TEST_CASE("A job sheet is written as a PDF, and the shop's name is kept for the next one") {
    const Yard yard;
    const Ran made = yard.run({"job", "sheet", "1", yard.file("one.pdf"), "--shop", "Reed Creek Boat Yard"});
    INFO(made.err);
    REQUIRE(made.code == 0);
    CHECK(holds(made.out, "The job sheet is written to " + yard.file("one.pdf")));
    CHECK(made.err.empty());
    CHECK(file_text(yard.file("one.pdf")).rfind("%PDF-", 0) == 0);
    REQUIRE(yard.run({"job", "sheet", "1", yard.file("two.pdf")}).code == 0);
    CHECK(file_text(yard.file("one.pdf")) == file_text(yard.file("two.pdf")));
    REQUIRE(yard.run({"job", "sheet", "1", yard.file("a4.pdf"), "--paper", "a4"}).code == 0);
    CHECK(file_text(yard.file("one.pdf")) != file_text(yard.file("a4.pdf")));
}

TEST_CASE("What stands on the sheet is printed as JSON") {
    const Yard yard;
    const Ran printed = yard.run({"job", "sheet", "1", "--json"});
    INFO(printed.err);
    REQUIRE(printed.code == 0);
    const auto json = nlohmann::json::parse(printed.out);
    CHECK(json["boat"] == "Second Wind");
    CHECK(json["cause"]["name"] == "Hoses crossed between the two rams");
    CHECK(json["cause"]["certainty"] == "Seen and proved");
    CHECK(json["shop"] == "");
}

TEST_CASE("A sheet that cannot be made is refused with one message and leaves no file") {
    const Yard yard;
    const Ran no_job = yard.run({"job", "sheet", "99", yard.file("none.pdf")});
    CHECK(no_job.code == 1);
    CHECK(holds(no_job.err, "99"));
    CHECK_FALSE(std::filesystem::exists(yard.file("none.pdf")));
    const Ran no_folder = yard.run({"job", "sheet", "1", yard.file("nowhere/sheet.pdf")});
    CHECK(no_folder.code == 1);
    CHECK(holds(no_folder.err, "nowhere/sheet.pdf: the file cannot be written"));
    CHECK(std::count(no_folder.err.begin(), no_folder.err.end(), '\n') == 1);
    std::filesystem::create_directory(yard.file("folder.pdf"));
    CHECK(yard.run({"job", "sheet", "1", yard.file("folder.pdf")}).code == 1);
    CHECK(yard.run({"job", "sheet", "1"}).code == 2);
    CHECK(yard.run({"job", "sheet", "1", yard.file("x.pdf"), "--paper", "a3"}).code == 2);
}
