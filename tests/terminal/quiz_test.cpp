// `hardover quiz ...` and `hardover learner ...` with the built program and the shipped knowledge.
#include <filesystem>
#include <nlohmann/json.hpp>
#include <regex>

#include "app/jobs/shop.hpp"
#include "support.hpp"
#include "terminal/records_of_own.hpp"

using namespace hardover_tests;
using nlohmann::json;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

std::string lines(int count, const std::string& line) {
    std::string text;
    for (int i = 0; i < count; ++i) text += line + "\n";
    return text;
}

}  // namespace

TEST_CASE("A quiz through a pipe with a seed is the same each time and keeps nothing") {
    const RecordsOfOwn shop;
    const std::string typed = lines(20, "? @ 20");
    const Ran first = shop.run({"quiz", "--count", "20", "--seed", "3"}, typed);
    const Ran second = shop.run({"quiz", "--count", "20", "--seed", "3"}, typed);
    INFO(first.err);
    REQUIRE(first.code == 0);
    CHECK(first.out == second.out);
    CHECK(holds(first.out, "20 of 20 · "));
    CHECK(holds(first.out, "Answered 20 of 20, marks 0.00 of 20."));
    CHECK(holds(first.out, "Next review: tomorrow."));
    CHECK(holds(first.out, "Source: "));
    CHECK(holds(first.out, "on average 20 in 100, right 0 in 100, Brier 0.040"));
    CHECK(holds(first.out, "Nothing is kept without a learner"));
}

TEST_CASE("What cannot be read is asked again, and leaving early ends the quiz in good order") {
    const RecordsOfOwn shop;
    const Ran ran = shop.run({"quiz", "--topic", "proof", "--seed", "1"}, "z\na b\na @ often\n?\nq\n");
    CHECK(ran.code == 0);
    CHECK(holds(ran.out, "'z' is none of the choices"));
    CHECK(holds(ran.out, "only one is right here"));
    CHECK(holds(ran.out, "'often' is not a chance"));
    CHECK(holds(ran.out, "Answered 1 of 10"));
}

TEST_CASE("Every answer of a learner is on file at once, even when the program is ended the hard way") {
    const RecordsOfOwn shop;
    REQUIRE(shop.run({"learner", "add", "A07"}).code == 0);
    {
        RunningProgram quiz(shop.arguments({"quiz", "--learner", "A07", "--seed", "5"}));
        REQUIRE(quiz.wait_for_prompt(1));
        quiz.type("?");
        REQUIRE(quiz.wait_for_prompt(2));
        quiz.kill_hard();
    }
    const json list = json::parse(shop.run({"learner", "list", "--json"}).out);
    REQUIRE(list.size() == 1);
    CHECK(list[0]["name"] == "A07");
    CHECK(list[0]["answers"] == 1);

    const Ran more = shop.run({"quiz", "--learner", "A07", "--seed", "5", "--count", "3"}, lines(3, "?"));
    CHECK(holds(more.out, "Kept for A07."));
    const json page = json::parse(shop.run({"learner", "show", "A07", "--json"}).out);
    CHECK(page["all"]["answers"] == 4);
    CHECK(page["all"]["met"] == 4);
    CHECK(page["all"]["right"] == 0);
    CHECK(page["by_part"].size() >= 10);
    const Ran text = shop.run({"learner", "show", "A07"});
    CHECK(text.code == 0);
    CHECK(holds(text.out, "A07: 4 answers, 0 of them right; 4 of "));
    CHECK(holds(text.out, "By complaint"));
}

TEST_CASE("Learners and topics that are not there are refused with what would be right") {
    const RecordsOfOwn shop;
    CHECK(holds(shop.run({"quiz", "--learner", "Robin"}).err, "add one with: hardover learner add NAME"));
    REQUIRE(shop.run({"learner", "add", "Robin"}).code == 0);
    CHECK(holds(shop.run({"learner", "show", "Robyn"}).err, "Robin"));
    CHECK(shop.run({"learner", "add", "robin"}).code == 1);
    CHECK(shop.run({"learner", "add", " "}).code == 2);
    const Ran topic = shop.run({"quiz", "--topic", "prof"});
    CHECK(topic.code == 1);
    CHECK(holds(topic.err, "there is no topic 'prof'"));
    CHECK(shop.run({"quiz", "--count", "0"}).code == 2);
    CHECK(holds(shop.run({"quiz", "topics"}).out, "proof"));
}

TEST_CASE("One command prints the figures on the items") {
    const RecordsOfOwn shop;
    const json figures = json::parse(shop.run({"quiz", "figures", "--json"}).out);
    CHECK(figures["items"].get<int>() >= 600);
    CHECK(figures["by_form"].size() == 15);
    CHECK(figures["by_complaint"].size() >= 4);
    // All of them can be mastered: no more and no less is counted there.
    REQUIRE(shop.run({"learner", "add", "A07"}).code == 0);
    const json learner = json::parse(shop.run({"learner", "show", "A07", "--json"}).out);
    CHECK(learner["all"]["statements"] == figures["statements"]);
    const Ran pump = shop.run({"--knowledge", source_path("tests/reading/garden_pump"), "quiz", "figures"});
    INFO(pump.err);
    CHECK(holds(pump.out, "By form"));
    CHECK(holds(pump.out, "Cause from signs"));
}

TEST_CASE("In a metric shop the quiz, practice boats, worksheets and entries are metric") {
    const RecordsOfOwn shop;
    {
        auto store = hardover::Store::open(shop.file());
        REQUIRE(store.ok());
        hardover::ShopSettings settings;
        settings.ways.units = hardover::UnitSystem::metric;
        REQUIRE(hardover::keep_shop(store.value(), settings).ok());
    }
    CHECK(holds(shop.run({"knowledge", "show", "ram_centring"}).out, " mm"));
    CHECK(holds(shop.run({"worksheet", "ram_centring", "stroke=9 in"}).out, "Half travel = 114 mm"));
    const Ran quiz = shop.run({"quiz", "--topic", "figure", "--count", "6", "--seed", "3"}, lines(6, "?"));
    CHECK(holds(quiz.out, " mm"));
    const Ran boat = shop.run({"practice", "--seed", "7", "--level", "2"}, "");
    // Wherever the lines break.
    const std::string told = std::regex_replace(boat.out, std::regex("\\s+"), " ");
    CHECK(holds(told, "Length of one hose: "));
    CHECK(holds(told, " bar"));
    CHECK_FALSE(holds(told, " psi"));
    const RecordsOfOwn plain;
    CHECK(holds(plain.run({"worksheet", "ram_centring", "stroke=9 in"}).out, "Half travel = 4 1/2 in"));
}

TEST_CASE("Fitting review times says how many answers it takes, and goes back on wish") {
    const RecordsOfOwn shop;
    REQUIRE(shop.run({"learner", "add", "Ann"}).code == 0);
    const Ran few = shop.run({"learner", "fit", "Ann"});
    CHECK(few.code == 0);
    CHECK(holds(few.out, "takes 200"));
    CHECK(holds(shop.run({"learner", "show", "Ann"}).out, "usual weights"));
    const Ran back = shop.run({"learner", "fit", "--usual", "Ann"});
    CHECK(back.code == 0);
    CHECK(holds(back.out, "usual weights again"));
    CHECK(shop.run({"learner", "fit", "Nobody"}).code == 1);
}

TEST_CASE("A fault in a quiz item is found by the check of the knowledge, and the others are still asked") {
    const TemporaryFolder folder;
    for (const auto& file : std::filesystem::directory_iterator(source_path("knowledge")))
        std::filesystem::copy(file.path(), folder.path());
    write_file(folder.file("quiz_broken.yaml"), "- item: alone\n  form: method\n  asks: What?\n");
    const Ran ran = run_program({"knowledge", "check", folder.path()});
    CHECK(ran.code == 1);
    CHECK(holds(ran.out, "quiz_broken.yaml:3:3: "));
    CHECK(holds(ran.out, "did you mean 'ask'?"));
    const Ran quiz = run_program(
        {"--knowledge", folder.path(), "quiz", "--topic", "deciding", "--count", "3"}, lines(3, "?"));
    CHECK(holds(quiz.out, "3 of 3"));
}
