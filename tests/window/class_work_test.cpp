// Long work of the place Class beside the window: hand-ins taken in, figures worked out, sheets written. It
// says how far it has come, and a stop leaves nothing half done.
#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>

#include "app/classroom/demo.hpp"
#include "app/records/whole_file.hpp"
#include "app/window/class_desk.hpp"
#include "busy_shop.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

const study::Portraits& portraits() {
    static const study::Portraits made(shipped());
    return made;
}

// The invented class on the instructor's PC, its hand-ins as files in a folder and not taken in yet; long
// work is done beside the window.
struct ClassShop : BusyShop {
    ClassShop() {
        ClassStore classes(*store);
        const auto demo = classroom::make_demo(classes, portraits(), 1);
        REQUIRE(demo.ok());
        hand_ins = demo.value().hand_ins.size();
        std::filesystem::create_directories(folder.file("stick"));
        for (const auto& file : demo.value().hand_ins)
            REQUIRE(write_whole_file(folder.file("stick/" + file.name), file.text).ok());
        carry_out(*state, GoTo{hardover::window::Place::classroom});
        ask(OpenKeys{classroom::demo_passphrase});
        finish();
        REQUIRE(page().keys_open);
    }
    const ClassPage& page() const { return state->classes->page(); }
    void ask(const ClassAction& action) {
        carry_out(*state, action);
        harness->frames(6);
    }
    void collect() {
        ask(ShowClassTab{ClassTab::collect});
        ask(CollectHandIns{folder.file("stick")});
    }
    std::size_t collected() {
        ClassStore classes(*store);
        return classes.hand_ins(classes.classes().value().front().number).value().size();
    }
    std::size_t files_written() const {
        const std::string path = folder.file("class");
        if (!std::filesystem::exists(path)) return 0;
        return static_cast<std::size_t>(
            std::distance(std::filesystem::directory_iterator(path), std::filesystem::directory_iterator()));
    }
    std::size_t hand_ins = 0;
};

}  // namespace

TEST_CASE("Hand-ins are taken in beside the window, and the page says what came in") {
    ClassShop shop;
    shop.hold();
    shop.collect();
    REQUIRE(shop.page().working.has_value());
    CHECK(shop.harness->shows("Taking in hand-ins"));
    // One thing after the other: its button is off, and asking again does nothing.
    CHECK_FALSE(shop.harness->get("hand_in.collect").enabled);
    shop.ask(CollectHandIns{"/nowhere"});
    // Elsewhere in the place it is told as well.
    shop.ask(ShowClassTab{ClassTab::roster});
    CHECK(shop.harness->shows("Taking in hand-ins"));
    shop.ask(ShowClassTab{ClassTab::collect});
    shop.let_go();
    shop.finish();
    CHECK(shop.collected() == shop.hand_ins);
    CHECK(shop.harness->shows(std::to_string(shop.hand_ins) + " of " + std::to_string(shop.hand_ins) +
                              " files are taken in"));
    CHECK(shop.state->classes->wrote_beside());
}

TEST_CASE("Taking in that is stopped leaves whole hand-ins only, and says how many") {
    ClassShop shop;
    shop.hold();
    shop.collect();
    shop.harness->press(Key::escape);
    shop.let_go();
    shop.finish();
    const std::size_t in = shop.collected();
    CHECK(in == 0);
    CHECK(shop.page().told.text.rfind("Stopped. " + std::to_string(in) + " of ", 0) == 0);
    ClassStore classes(*shop.store);
    CHECK(classroom::check_collected(classes, classes.classes().value().front()).value().empty());
    shop.collect();
    shop.finish();
    CHECK(shop.collected() == shop.hand_ins);
}

TEST_CASE("Figures are worked out beside the window, with how far that has come, a stop shows none") {
    ClassShop shop;
    shop.collect();
    shop.finish();
    shop.ask(ShowClassTab{ClassTab::figures});
    shop.hold();
    shop.harness->click("figures.work_out");
    REQUIRE(shop.page().working.has_value());
    shop.harness->click("working.stop");
    CHECK(shop.harness->shows("Stopping"));
    shop.let_go();
    shop.finish();
    CHECK_FALSE(shop.page().figures.has_value());
    CHECK(shop.page().told.text.rfind("Stopped.", 0) == 0);
    shop.harness->type("w");
    REQUIRE(shop.page().working.has_value());
    shop.background.wait();
    shop.state->classes->note_progress();
    CHECK(shop.page().working->progress.find(" of ") != std::string::npos);
    CHECK(shop.page().working->share > 0.5);
    shop.finish();
    REQUIRE(shop.page().figures.has_value());
    CHECK_FALSE(shop.page().invented);
    CHECK(shop.page().figures->learners.rows.size() == classroom::demo_seats);
}

TEST_CASE(
    "A class sheet and tables are written where the page says, without names unless they are asked for") {
    ClassShop shop;
    shop.collect();
    shop.finish();
    shop.ask(ShowClassTab{ClassTab::figures});
    shop.hold();
    shop.harness->click("export.sheet");
    shop.harness->press(Key::escape);
    shop.let_go();
    shop.finish();
    CHECK(shop.files_written() == 0);
    CHECK(shop.page().told.text == "Stopped. Nothing was written.");
    shop.harness->click("export.sheet");
    shop.finish();
    REQUIRE_FALSE(shop.page().told.file.empty());
    CHECK(file_text(shop.page().told.file).rfind("%PDF", 0) == 0);
    CHECK(shop.harness->shows(shop.page().told.file));
    CHECK(shop.harness->has("told.file"));
    shop.harness->click("export.tables");
    shop.finish();
    CHECK(file_text(shop.folder.file("class/learners_v1.csv")).find("Invented learner") == std::string::npos);
    shop.harness->click("export.names");
    shop.harness->click("export.tables");
    shop.finish();
    CHECK(file_text(shop.folder.file("class/learners_v1.csv")).find("Invented learner") != std::string::npos);
}

TEST_CASE("A quiz paper with its key and questions for other programs are written, about what was chosen") {
    ClassShop shop;
    shop.ask(ShowClassTab{ClassTab::sets});
    shop.harness->click("out.topics");
    shop.harness->click("out.topic.figure");
    shop.harness->click("out.paper");
    CHECK(shop.harness->shows("Making the questions"));
    shop.finish();
    INFO(shop.page().told.text);
    REQUIRE_FALSE(shop.page().told.trouble());
    CHECK(file_text(shop.page().told.file).rfind("%PDF", 0) == 0);
    shop.harness->click("out.questions");
    shop.finish();
    CHECK(shop.page().told.text.rfind("10 questions with their key", 0) == 0);
    CHECK(shop.files_written() == 2);
}

TEST_CASE("What cannot be written is refused where it was asked for") {
    ClassShop shop;
    std::ofstream(shop.folder.file("class")) << "a file where the folder should be";
    shop.ask(ShowClassTab{ClassTab::sets});
    shop.harness->click("out.paper");
    shop.finish();
    CHECK(shop.page().told.at == "quiz_out");
    CHECK(shop.page().told.trouble());
    CHECK(shop.harness->shows("the folder cannot be made"));
}

TEST_CASE("An invented class shows what figures look like, and leaves nothing in the records") {
    Shop shop(1280, 3000);
    carry_out(*shop.state, GoTo{hardover::window::Place::classroom});
    carry_out(*shop.state, ClassAction(ShowClassTab{ClassTab::figures}));
    shop.harness->frames(6);
    shop.harness->click("figures.invent");
    shop.harness->frames(6);
    REQUIRE(shop.state->classes->page().figures.has_value());
    CHECK(shop.state->classes->page().invented);
    CHECK(shop.harness->shows("An invented class"));
    CHECK(ClassStore(*shop.store).classes().value().empty());
}
