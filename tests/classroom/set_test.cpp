// Sets: signed, small, with nothing in a graded one that gives its questions away.
#include "app/classroom/set.hpp"

#include <catch2/catch.hpp>

#include "classroom_support.hpp"

using namespace hardover;
using namespace hardover::classroom;
using namespace hardover_tests;

TEST_CASE("A set comes back from its file as it was made, in order") {
    ClassOfOwn own;
    Task quiz = quiz_task(10, 424242, "wander");
    quiz.due = read_day("2026-12-04").value();
    Task boat = boat_task(2, 777777);
    boat.guidance = study::practice::Guidance::nudged;
    const MadeSet made = own.make_set({quiz, boat, quiz_task(5, 8)});
    CHECK(made.file_name == "S1.hardover-set");
    CHECK(made.file.size() < 1500);
    const auto read = read_set_file(made.file, "S1");
    REQUIRE_OK(read);
    const ClassSet& set = read.value();
    CHECK(set.id == "S1");
    CHECK(set.class_name == "Evening");
    CHECK(set.seats == std::vector<std::string>{"A01", "A02", "A03"});
    REQUIRE(set.tasks.size() == 3);
    CHECK(set.tasks[0].topic == "wander");
    CHECK(set.tasks[0].seed == 424242);
    CHECK(day_text(*set.tasks[0].due) == "2026-12-04");
    CHECK(set.tasks[1].kind == Task::Kind::boat);
    CHECK(set.tasks[1].guidance == study::practice::Guidance::nudged);
    CHECK_FALSE(set.tasks[2].due.has_value());
    CHECK(set.open);
    CHECK(own.make_set({quiz}).set.id == "S2");
    CHECK(file_of_set(own.class_store, own.of, "S1").value() == made.file);
    CHECK(find_set(own.class_store, own.of, "S3").error().cure == "did you mean 'S1'?");
}

TEST_CASE("A set with any one byte changed, or cut short, is refused") {
    ClassOfOwn own;
    const std::string file = own.make_set({quiz_task(10, 1)}).file;
    int taken = 0;
    for (std::size_t i = 0; i < file.size(); ++i) {
        for (const int flipped : {0x01, 0x20}) {
            std::string changed = file;
            changed[i] = static_cast<char>(changed[i] ^ flipped);
            taken += read_set_file(changed, "x").ok() ? 1 : 0;
        }
        taken += read_set_file(file.substr(0, i), "x").ok() ? 1 : 0;
    }
    CHECK(taken == 0);
    std::string newer = file;
    newer.replace(newer.find("\"hardover_set\":1"), 16, "\"hardover_set\":3");
    CHECK(read_set_file(newer, "x").error().kind == Error::Kind::unsupported);
}

TEST_CASE("A graded set gives its seeds only to the start code") {
    ClassOfOwn own;
    const MadeSet made = own.make_set({quiz_task(10, 424242), boat_task(1, 424242)}, true);
    REQUIRE(made.set.tasks[0].seed != 424242);  // drawn from the class's own secret
    CHECK(made.set.tasks[0].seed != made.set.tasks[1].seed);
    CHECK(made.file.find("\"seed\"") == std::string::npos);
    CHECK(made.file.find(std::to_string(made.set.tasks[0].seed)) == std::string::npos);
    CHECK(made.file.find(made.start_code) == std::string::npos);

    ClassSet read = read_set_file(made.file, "S1").value();
    CHECK_FALSE(read.open);
    CHECK(read.tasks[0].seed == 0);
    CHECK(open_seeds(read, "acorn acorn acorn acorn").error().what == "this is not the start code of set S1");
    CHECK_FALSE(read.open);
    std::string shouted = "  " + made.start_code + " ";
    for (char& letter : shouted) letter = static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
    REQUIRE_OK(open_seeds(read, shouted));
    CHECK(read.tasks[0].seed == made.set.tasks[0].seed);
    CHECK(read.tasks[1].seed == made.set.tasks[1].seed);

    ClassSet marked = read_set_file(made.file, "S1").value();
    put_seeds(marked, own.keys);
    CHECK(marked.tasks[1].seed == made.set.tasks[1].seed);
    CHECK(start_code_of(marked, own.keys) == made.start_code);
}

TEST_CASE("A set that cannot be is refused with the task named") {
    ClassOfOwn own;
    const auto refusal = [&](SetWish wish) {
        const auto made = make_set(own.class_store, own.of, own.keys, wish, "k", class_day, quick_cost);
        return made.ok() ? "made" : made.error().text();
    };
    CHECK(refusal({"", "", false, {}, {}}) == "S1: a set has 1 to 50 tasks (add or leave out some)");
    CHECK(refusal({"", "", false, {quiz_task(5, 1), quiz_task(0, 1)}, {}}) ==
          "task 2: a quiz cannot have 0 questions (1 to 200)");
    CHECK(refusal({"", "", false, {boat_task(6, 1)}, {}}) ==
          "task 1: there is no level 6 (1 (easiest) to 5)");
    CHECK(refusal({"S 1", "", false, {quiz_task(5, 1)}, {}}).substr(0, 25) == "'S 1' is no id of a set (");
    CHECK(refusal({"", "", false, {quiz_task(5, 1)}, {"A09"}}).substr(0, 25) == "there is no seat 'A09' (d");
    CHECK(refusal({"T1", "", false, {quiz_task(5, 1)}, {"a02"}}) == "made");
    CHECK(refusal({"t1", "", false, {quiz_task(5, 1)}, {}}).find("has a set 't1' already") !=
          std::string::npos);
}

TEST_CASE("Days are days of the calendar") {
    CHECK(read_day("1970-01-01").value() == 0);
    CHECK(read_day("2026-11-26").value() == 20783);  // GNU date: 2026-11-26 is day 20783 of the Unix epoch
    CHECK(day_text(20783) == "2026-11-26");
    CHECK(day_text(read_day("2028-02-29").value()) == "2028-02-29");
    for (const char* odd :
         {"", "2026-02-29", "2026-13-01", "2026-1-01", "26-11-2026", "2026-11-26x", "-026-11-26"}) {
        CHECK_FALSE(read_day(odd).ok());
    }
}

TEST_CASE("A set in metric units asks metric figures at every seat, and is of a form of its own") {
    ClassOfOwn own;
    const Task quiz = quiz_task(3, 5, "figure");
    const auto made =
        make_set(own.class_store, own.of, own.keys, {"", "Test", false, {quiz}, {}, UnitSystem::metric}, "k",
                 class_day, quick_cost);
    REQUIRE_OK(made);
    const auto read = read_set_file(made.value().file, "S1");
    REQUIRE_OK(read);
    CHECK(read.value().units == UnitSystem::metric);
    CHECK(made.value().file.find("\"hardover_set\":2") != std::string::npos);
    // Sets in US units stay as they have always been.
    const MadeSet us = own.make_set({quiz});
    CHECK(us.file.find("\"hardover_set\":1") != std::string::npos);
    CHECK(us.file.find("units") == std::string::npos);
    CHECK(read_set_file(us.file, "S2").value().units == UnitSystem::us);
}
