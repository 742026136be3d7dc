// `hardover practice ...` with the built program and the shipped knowledge.
#include <nlohmann/json.hpp>

#include "support.hpp"
#include "terminal/records_of_own.hpp"

using namespace hardover_tests;
using nlohmann::json;

namespace {

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// Enter, often: does the expert's step, minds its cautions, hands over.
const std::string many_enters(120, '\n');

}  // namespace

TEST_CASE("A practice boat worked through a pipe is the same each time, with the same debrief") {
    const RecordsOfOwn shop;
    const std::vector<std::string> words{"practice", "--seed", "7", "--help-shown", "worked"};
    const Ran first = shop.run(words, many_enters);
    const Ran second = shop.run(words, many_enters);
    INFO(first.err << first.out.substr(0, 2000));
    REQUIRE(first.code == 0);
    CHECK(first.out == second.out);
    CHECK(holds(first.out, "Practice boat 7 · level 1"));
    CHECK(holds(first.out, "What was wrong: "));
    CHECK(holds(first.out, "Step by step"));
    CHECK(holds(first.out, "Three things to practise"));
    CHECK(holds(first.out, "Nothing is kept without a learner"));
}

TEST_CASE("The debrief as JSON splits the minutes exactly, and tells skipped cautions first") {
    const RecordsOfOwn shop;
    const Ran ran = shop.run({"practice", "--seed", "7", "--level", "3", "--json"},
                             "1\nskip\n2\nskip\n1\nskip\nhint\nsuspect hose\n1\n55\ncall\n");
    INFO(ran.err);
    REQUIRE(ran.code == 0);
    const json told = json::parse(ran.out);
    const double over = told["minutes"].get<double>() - told["expected"].get<double>();
    CHECK(over == Approx(told["avoidable"].get<double>() + told["luck"].get<double>()));
    CHECK(told["finished"] == true);
    CHECK(told["cured"] == false);
    CHECK(told["steps"].size() >= 2);
    CHECK(told["practise"].size() == 3);
    CHECK(told["expert"].get<double>() > 0);
    CHECK(holds(ran.err, "The customer says"));
}

TEST_CASE("What ends early is kept for the learner, gone on with, finished, and seen again") {
    const RecordsOfOwn shop;
    REQUIRE(shop.run({"learner", "add", "A07"}).code == 0);
    const std::vector<std::string> go_on{"practice", "--learner", "A07"};
    {
        RunningProgram practice(shop.arguments({"practice", "--learner", "A07", "--seed", "9"}));
        REQUIRE(practice.wait_for_prompt(1));
        practice.type("");
        practice.type("");  // the cautions of the first step are minded
        REQUIRE(practice.wait_for_prompt(2));
        practice.kill_hard();
    }
    CHECK(holds(shop.run({"practice", "list"}).out, "not finished"));
    const Ran early = shop.run(go_on, "notes\n");
    CHECK(early.code == 0);
    CHECK(holds(early.out, "min so far"));
    CHECK(holds(early.out, "Kept. Go on with"));
    const Ran last = shop.run(go_on, many_enters);
    INFO(last.out.substr(last.out.size() > 3000 ? last.out.size() - 3000 : 0));
    REQUIRE(holds(last.out, "hardover practice replay 1-1"));
    const Ran replay = shop.run({"practice", "replay", "1-1"});
    CHECK(replay.code == 0);
    CHECK(holds(last.out, replay.out));
    CHECK(holds(shop.run({"practice", "list"}).out, "cured"));
    // The first boat of a level is worked through; the next has less help.
    CHECK(holds(shop.run(go_on, "q\n").out, "The expert leads until one cause stands out"));
}

TEST_CASE("What is typed wrongly gets a sentence that helps, and nothing is lost") {
    const RecordsOfOwn shop;
    const Ran ran =
        shop.run({"practice", "--seed", "3", "--level", "3"},
                 "99\nfrobnicate\nsuspect frobnicate\nprove\nfix\ndone\nname air\n1\nmaybe\n40\nq\n");
    CHECK(ran.code == 0);
    CHECK(holds(ran.out, "There is no number 99 in the list"));
    CHECK(holds(ran.out, "neither a thing to do"));
    CHECK(holds(ran.out, "List them with: causes"));
    CHECK(holds(ran.out, "Say first what you suspect"));
    CHECK(holds(ran.out, "Say first what is wrong"));
    CHECK(holds(ran.out, "the customer would be back tomorrow"));
    CHECK(holds(ran.out, "A whole number from 0 to 100"));
    CHECK(holds(ran.out, "40 in 100"));
    const Ran odd =
        shop.run({"practice", "--seed", "3"}, "suspect AIR 101\nname AIR -5\nsuspect\nname 60\nq\n");
    CHECK(holds(odd.out, "a whole number from 0 to 100, and 101 is none"));
    CHECK(holds(odd.out, "a whole number from 0 to 100, and -5 is none"));
    CHECK(holds(odd.out, "Say which cause: suspect HOSE 60"));
    CHECK(holds(odd.out, "Say which cause: name HOSE 60"));
    CHECK_FALSE(holds(odd.out, "No cause has these words"));
    CHECK(shop.run({"practice", "--level", "6"}).code == 2);
    CHECK(shop.run({"practice", "replay", "5-5"}).code == 1);
    CHECK(holds(shop.run({"practice", "replay", "five"}).err, "practice list"));
    CHECK(holds(shop.run({"practice", "levels"}).out, "Several faults, complicated rig"));
}

TEST_CASE("One command prints the figures on the three players and on the items") {
    const RecordsOfOwn shop;
    const json figures = json::parse(shop.run({"practice", "figures", "--boats", "3", "--json"}).out);
    REQUIRE(figures["players"].size() == 3);
    CHECK(figures["players"][0]["avoidable"] == 0);
    CHECK(figures["players"][0]["minutes_of_expert"] == 1);
    CHECK(figures["items"]["items"].get<int>() >= 600);
    CHECK(figures["items"]["by_form"].size() == 15);
}

TEST_CASE("What to type next can be pasted, whatever the learner is called") {
    const RecordsOfOwn shop;
    const std::string name = "Zoë O'Hara 🚤";
    const std::string pasted = "'Zoë O'\\''Hara 🚤'";
    CHECK(holds(shop.run({"learner", "add", name}).out, "hardover quiz --learner " + pasted));
    CHECK(holds(shop.run({"practice", "--learner", name, "--seed", "7"}, "q\n").out,
                "Go on with: hardover practice --learner " + pasted + "\n"));
    CHECK(shop.run({"learner", "show", "ZOË O'HARA 🚤"}).code == 0);
    CHECK(holds(shop.run({"quiz", "--learner", name, "--count", "1"}, "?\n").out,
                "hardover learner show " + pasted));
    CHECK(holds(shop.run({"learner", "add", "A07"}).out, "--learner A07"));
}

TEST_CASE("An empty line instead of how sure one is notes nothing, and the boat goes on") {
    const RecordsOfOwn shop;
    const Ran ran =
        shop.run({"practice", "--seed", "3"}, "suspect hose chafed\n\nsuspect hose chafed\n60\nq\n");
    INFO(ran.out);
    CHECK(holds(ran.out, "Nothing is noted."));
    CHECK(holds(ran.out, "Noted: "));
}
