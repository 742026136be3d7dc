// The place Class: a class made and its passphrase asked for, the roster, sets, hand-ins and figures, and a
// set taken on a student's PC; by key and by hand.
#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>

#include "album.hpp"
#include "app/window/class_desk.hpp"
#include "app/window/screens/class/class.hpp"
#include "app/window/screens/rail.hpp"
#include "fit.hpp"
#include "shop.hpp"
#include "whole_page.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

constexpr const char* passphrase = "seven quiet herons";
constexpr classroom::Cost quick{1, 64 * 1024};

const ClassPage& page_of(const Shop& shop) {
    return shop.state->classes->page();
}

void act(Shop& shop, const ClassAction& action) {
    carry_out(*shop.state, action);
    shop.harness->frames(6);
}

void go_to_class(Shop& shop) {
    carry_out(*shop.state, GoTo{hardover::window::Place::classroom});
    shop.state->classes->use_cost(quick);
    shop.harness->frames(6);
}

void make_class(Shop& shop) {
    go_to_class(shop);
    act(shop, MakeClass{"Evening", passphrase, passphrase});
    REQUIRE(page_of(shop).keys_open);
    for (const char* code : {"A01", "A02", "A03", "A04", "A05", "A06"})
        act(shop, AddSeat{code, "", "Tuesday"});
}

void make_set(Shop& shop, bool graded = false) {
    act(shop, AddQuizTask{"proof", 2});
    act(shop, AddBoatTask{1});
    act(shop, MakeSet{"Week 1", "2026-12-04", graded});
    INFO(page_of(shop).told.text);
    REQUIRE(page_of(shop).sets.size() == 1);
}

// Sets begun in the same second have no order.
std::string attempt_of(const Shop& shop, const std::string& seat) {
    for (const classroom::TakenSet& set : page_of(shop).taken) {
        if (set.seat == seat) return set.attempt;
    }
    FAIL("seat " << seat << " has taken no set");
    return "";
}

// What a student does at the place Study: answers the quiz, calls for help on the boat.
void work_on_set(Shop& shop) {
    StudyDesk& study = shop.state->study;
    for (int i = 0; i < 2; ++i) {
        REQUIRE(study.page().quiz.has_value());
        study.carry_out(AnswerItem{"a", std::nullopt});
        study.carry_out(NextItem{});
    }
    study.carry_out(TakeTask{});
    REQUIRE(study.page().boat.has_value());
    study.carry_out(TakeUpWork{practice::GaveUp{}});
    INFO(study.page().trouble);
    REQUIRE(study.page().set.has_value());
    CHECK(study.page().set->at_end);
}

}  // namespace

TEST_CASE("A class is made by keys alone, and what is typed of its passphrase does not show") {
    Shop shop;
    go_to_class(shop);
    shop.harness->type("r");
    REQUIRE(shop.state->classes->view.tab == ClassTab::roster);
    shop.harness->click("class.name");
    shop.harness->type("Evening");
    shop.harness->press(Key::tab);
    shop.harness->type(passphrase);
    CHECK_FALSE(shop.harness->shows("herons"));
    shop.harness->press(Key::tab);
    shop.harness->type("seven quiet");
    shop.harness->press(Key::enter);
    CHECK(shop.harness->shows("the two passphrases are not the same"));
    shop.state->classes->view.again.clear();
    shop.harness->click("class.again");
    shop.harness->type(passphrase);
    shop.harness->press(Key::enter);
    INFO(page_of(shop).told.text);
    CHECK(page_of(shop).name == "Evening");
    CHECK(page_of(shop).keys_open);
    CHECK(shop.state->classes->view.passphrase.empty());
}

TEST_CASE("The keys are shut after a restart, and the wrong passphrase is refused beside its field") {
    Shop shop;
    make_class(shop);
    shop.start_again();
    go_to_class(shop);
    shop.harness->type("s");
    CHECK(shop.harness->shows("Give the passphrase of the class"));
    CHECK_FALSE(shop.harness->has("set.make"));
    shop.harness->click("keys.passphrase");
    shop.harness->type("wrong words here");
    shop.harness->press(Key::enter);
    CHECK(page_of(shop).told.at == "keys");
    CHECK(page_of(shop).told.trouble());
    shop.harness->click("keys.passphrase");
    shop.harness->type(passphrase);
    shop.harness->click("keys.open");
    CHECK(page_of(shop).keys_open);
    CHECK(shop.harness->has("set.make"));
}

TEST_CASE("Seats are added, changed, taken off and taken over from a table, a fault of it is located") {
    Shop shop(1280, 3000);
    make_class(shop);
    act(shop, ShowClassTab{ClassTab::roster});
    shop.harness->click("seat.code");
    shop.harness->type("B01");
    shop.harness->press(Key::tab);
    shop.harness->type("Ann");
    shop.harness->press(Key::enter);
    CHECK(page_of(shop).seats.size() == 7);
    CHECK(shop.harness->shows("Ann"));
    shop.harness->click("roster.seat.B01");
    shop.harness->click("seat.remove");
    CHECK(page_of(shop).seats.size() == 6);
    act(shop, AddSeat{"A01", "", ""});
    CHECK(page_of(shop).told.trouble());
    const std::string file = shop.folder.file("roster.csv");
    std::ofstream(file) << "seat,name\nC01,Bert\nC02,\n";
    shop.harness->click("roster.path");
    shop.harness->type(file);
    shop.harness->press(Key::enter);
    CHECK(shop.harness->shows("2 seats are taken over"));
    CHECK(page_of(shop).seats.size() == 8);
    std::ofstream(file) << "seat,name\nC 03,Bert\n";
    act(shop, ImportRoster{file});
    CHECK(page_of(shop).told.text.find("roster.csv:2:") != std::string::npos);
    CHECK(page_of(shop).seats.size() == 8);
}

TEST_CASE("A set is made from a quiz and a boat, written, taken at a seat, handed in and collected",
          "[pictures]") {
    Shop shop;
    make_class(shop);
    make_set(shop);
    const std::string file = page_of(shop).sets.front().file;
    CHECK(std::filesystem::exists(file));
    REQUIRE(page_of(shop).sets.front().tasks.size() == 2);
    // The topic by its name, and the day once.
    const std::string& quiz = page_of(shop).sets.front().tasks.front();
    CHECK(quiz.find(std::string("Quiz: ") + study::form_name(study::Form::proof) + ", 2 questions") == 0);
    CHECK(quiz.find("due") == quiz.rfind("due"));
    for (const char* seat : {"A01", "A02", "A03", "A04", "A05"}) {
        act(shop, BeginSet{file, seat, ""});
        INFO(page_of(shop).told.text);
        REQUIRE(shop.state->place == hardover::window::Place::study);
        work_on_set(shop);
        carry_out(*shop.state, StudyAction(PutSetAway{}));
        go_to_class(shop);
        act(shop, HandInSet{attempt_of(shop, seat)});
        CHECK_FALSE(page_of(shop).told.trouble());
    }
    act(shop, ShowClassTab{ClassTab::collect});
    shop.harness->click("hand_in.path");
    shop.harness->type(shop.folder.file("class"));
    shop.harness->press(Key::enter);
    CHECK(shop.harness->shows("5 of 5 files are taken in"));
    REQUIRE(page_of(shop).missing.size() == 1);
    CHECK(page_of(shop).missing.front().find("A06") != std::string::npos);
    act(shop, CollectHandIns{shop.folder.file("class")});
    CHECK(shop.harness->shows("0 new records"));
    act(shop, CheckCollected{});
    CHECK(page_of(shop).checked.empty());
    act(shop, ShowClassTab{ClassTab::figures});
    shop.harness->click("figures.work_out");
    INFO(page_of(shop).told.text);
    REQUIRE(page_of(shop).figures.has_value());
    CHECK(page_of(shop).figures->learners.rows.size() >= 5);
    act(shop, ExportClass{ClassExport::tables, false});
    CHECK(std::filesystem::exists(shop.folder.file("class/answers_v1.csv")));

    for (const ClassTab tab : {ClassTab::roster, ClassTab::sets, ClassTab::collect, ClassTab::figures,
                               ClassTab::take, ClassTab::together}) {
        act(shop, ShowClassTab{tab});
        shop.state->classes->view.open = {"add.quiz", "add.boat",  "protection", "out.topics", "learners",
                                          "items",    "topics",    "confusions", "causes",     "term",
                                          "item_map", "abilities", "over_best"};
        sweep("class, tab " + std::to_string(static_cast<int>(tab)),
              [&](Kit& kit) { draw_class(kit, *shop.state); });
        const auto draw = [&](Kit& kit) {
            draw_rail(kit, {hardover::window::Place::classroom, true});
            draw_class(kit, *shop.state);
        };
        const std::string name = "class-" + std::to_string(static_cast<int>(tab));
        Album().take(name, draw);
        take_whole(Album(), name + "-whole", draw, tab == ClassTab::figures ? 3200 : 2000);
    }
}

TEST_CASE("A hand-in that was altered is refused by name, with why, and the others are taken in") {
    Shop shop;
    make_class(shop);
    make_set(shop);
    const std::string file = page_of(shop).sets.front().file;
    act(shop, BeginSet{file, "A01", ""});
    work_on_set(shop);
    carry_out(*shop.state, StudyAction(PutSetAway{}));
    go_to_class(shop);
    act(shop, HandInSet{page_of(shop).taken.front().attempt});
    const std::string handed = shop.folder.file("class/S1_A01.hardover-hand-in");
    std::string text = file_text(handed);
    REQUIRE(text.find("\"a\"") != std::string::npos);
    text.replace(text.find("\"a\""), 3, "\"b\"");
    std::ofstream(handed, std::ios::binary) << text;
    act(shop, CollectHandIns{handed});
    REQUIRE(page_of(shop).collected.size() == 1);
    CHECK(page_of(shop).collected.front().refused);
    CHECK(page_of(shop).collected.front().text.find("S1_A01") != std::string::npos);
}

TEST_CASE("What is no file among the hand-ins is named with its place, and nothing is taken in") {
    Shop shop;
    make_class(shop);
    make_set(shop);
    const std::string odd = shop.folder.file("stick/S1_A01.hardover-hand-in");
    std::filesystem::create_directories(odd);
    act(shop, CollectHandIns{shop.folder.file("stick")});
    CHECK(page_of(shop).told.trouble());
    INFO(page_of(shop).told.text);
    CHECK(page_of(shop).told.text.find(odd) != std::string::npos);
    CHECK(page_of(shop).collected.empty());
}

TEST_CASE("A graded set needs its start code, and says nothing about an answer") {
    Shop shop;
    make_class(shop);
    make_set(shop, true);
    const std::string file = page_of(shop).sets.front().file;
    const std::string code = page_of(shop).sets.front().start_code;
    REQUIRE_FALSE(code.empty());
    act(shop, BeginSet{file, "A01", "not the code"});
    CHECK(page_of(shop).told.trouble());
    CHECK(shop.state->place == hardover::window::Place::classroom);
    act(shop, BeginSet{file, "A01", code});
    INFO(page_of(shop).told.text);
    REQUIRE(shop.state->place == hardover::window::Place::study);
    StudyDesk& study = shop.state->study;
    study.carry_out(AnswerItem{"a", std::nullopt});
    CHECK(study.page().quiz->progress == "2 of 2");
    CHECK_FALSE(study.page().quiz->feedback.has_value());
    study.carry_out(AnswerItem{"a", std::nullopt});
    CHECK(study.page().set->next.find("oat") != std::string::npos);
    study.carry_out(TakeTask{});
    study.carry_out(TakeUpWork{practice::GaveUp{}});
    CHECK_FALSE(study.page().debrief.has_value());
    CHECK(study.page().set->at_end);
}

TEST_CASE("A set goes on where it was left when the program was ended in the middle") {
    Shop shop;
    make_class(shop);
    make_set(shop);
    act(shop, BeginSet{page_of(shop).sets.front().file, "A01", ""});
    shop.state->study.carry_out(AnswerItem{"a", std::nullopt});
    shop.start_again();
    go_to_class(shop);
    act(shop, ShowClassTab{ClassTab::take});
    shop.harness->click("taken.go_on." + page_of(shop).taken.front().attempt);
    REQUIRE(shop.state->place == hardover::window::Place::study);
    CHECK(shop.state->study.page().quiz->progress == "2 of 2");
}
