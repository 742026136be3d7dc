// `hardover class project` with the built program and the shipped knowledge.
#include "support.hpp"
#include "terminal/records_of_own.hpp"

using namespace hardover_tests;

namespace {

const std::vector<std::string> project{"class", "project", "--seed", "7", "--level", "2"};

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

}  // namespace

TEST_CASE("A class's boat through a pipe is the same each time, with its votes and its debrief") {
    const RecordsOfOwn shop;
    const std::string hands = "cause\n3 9 1 2 0 4\n7 2 1 0 5\n\n\n1 1 8\n\n\nother call for help\nF\n";
    const Ran first = shop.run(project, hands);
    const Ran second = shop.run(project, hands);
    INFO(first.err << first.out);
    REQUIRE(first.code == 0);
    CHECK(first.out == second.out);
    CHECK(holds(first.out, "Class boat 7 · level 2"));
    CHECK(holds(first.out, "What is wrong?"));
    CHECK(holds(first.out, "Taken: B "));
    CHECK(holds(first.out, "(was "));
    CHECK(holds(first.out, "Help was called after"));
    CHECK(holds(first.out, "The class's votes"));
    CHECK(holds(first.out, "of 19 hands before step 1"));
}

TEST_CASE("A tie and a slip are said in words, and the instructor decides") {
    const RecordsOfOwn shop;
    const Ran ran = shop.run(project, "4 4\nhats\n4 4 = b\n\n\nquit\n");
    INFO(ran.err << ran.out);
    REQUIRE(ran.code == 0);
    CHECK(holds(ran.out, "8 hands. A and B are level: choose one."));
    CHECK(holds(ran.out, "Give the hands for each choice"));
    CHECK(holds(ran.out, "Taken: B "));
    CHECK(holds(ran.out, "Kept. Go on with: hardover class project"));
}

TEST_CASE("A class's boat goes on where it was left, with the fault shown if it was") {
    const RecordsOfOwn shop;
    REQUIRE(shop.run(project, "9\n\n\n\nshow\nquit\n").code == 0);
    const Ran again = shop.run({"class", "project"}, "quit\n");
    INFO(again.err << again.out);
    REQUIRE(again.code == 0);
    CHECK(holds(again.out, "Class boat 7 · level 2"));
    CHECK(holds(again.out, "min so far"));
    CHECK(holds(again.out, "it is this"));
}
