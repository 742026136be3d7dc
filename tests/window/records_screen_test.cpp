// The shop's records in the window: jobs found among many, the jobs of a boat beside each other, photos,
// files going out and coming in, backups and the way back, and a look through everything.
#include <catch2/catch.hpp>

#include <fstream>

#include "album.hpp"
#include "app/records/database.hpp"
#include "app/window/records_desk.hpp"
#include "app/window/screens/records/records.hpp"
#include "busy_shop.hpp"
#include "fit.hpp"
#include "whole_page.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

const RecordsPage& page_of(const Shop& shop) {
    return shop.state->records->page;
}

void act(Shop& shop, const RecordsAction& action) {
    carry_out(*shop.state, action);
    shop.harness->frames(6);
}

void go(Shop& shop, hardover::window::Place place) {
    carry_out(*shop.state, GoTo{place});
    shop.harness->frames(6);
}

std::string photo(const Shop& shop, const std::string& name) {
    const std::string path = shop.folder.file(name);
    std::ofstream(path, std::ios::binary) << "\xFF\xD8\xFF\xE0 crack at the aft bolt of " << name;
    return path;
}

// What no program of ours does: turns letters in a note behind the program's back.
void damage_note(const Shop& shop, const std::string& from, const std::string& to) {
    const auto file = records_detail::Database::open(shop.store->path(), SQLITE_OPEN_READWRITE,
                                                     std::chrono::milliseconds(0));
    REQUIRE(file.ok());
    const std::string sql =
        "DROP TRIGGER events_are_never_changed; UPDATE events SET body = replace(body, '" + from + "', '" +
        to + "') WHERE kind = 'noted'";
    REQUIRE(file.value().run(sql.c_str()).ok());
}

}  // namespace

TEST_CASE("A job is found among many by its boat, its words and its state, and opened from there") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    go(shop, hardover::window::Place::bench);
    shop.start_job("Little Auk", "wanders at speed");
    go(shop, hardover::window::Place::bench);
    shop.harness->click("records.find");
    shop.harness->click("find.words");
    shop.harness->type("wanders");
    shop.harness->press(Key::enter);
    REQUIRE(page_of(shop).found.has_value());
    REQUIRE(page_of(shop).found->jobs.size() == 1);
    CHECK(page_of(shop).found->jobs.front().row.summary.boat == "Little Auk");
    act(shop, FindJobs{"handed back", "", ""});
    CHECK(page_of(shop).found->jobs.empty());
    act(shop, FindJobs{"", "heron", ""});
    shop.harness->click("found.boat.1");
    REQUIRE(page_of(shop).history.has_value());
    CHECK(shop.harness->shows("Grey Heron: 1 job"));
    shop.harness->click("found.open.1");
    CHECK(shop.state->place == hardover::window::Place::job);
    CHECK(shop.state->job->number == 1);
}

TEST_CASE(
    "A photo let fall on the window is kept with the job in hand, and told to nobody's job without one") {
    Shop shop(1280, 3000);
    const std::string path = photo(shop, "bracket.jpg");
    act(shop, DropFiles{{path}});
    CHECK(page_of(shop).told.trouble);
    shop.start_job("Grey Heron", "tight to port");
    act(shop, DropFiles{{path}});
    REQUIRE(page_of(shop).photos.size() == 1);
    CHECK(page_of(shop).photos.front().name == "bracket.jpg");
    go(shop, hardover::window::Place::bench);
    CHECK(shop.harness->shows("bracket.jpg"));
    act(shop, AttachPhoto{shop.folder.file("none.jpg")});
    CHECK(page_of(shop).told.at == "photo");
    CHECK(page_of(shop).told.trouble);
    shop.start_again();
    carry_out(*shop.state, OpenJob{1});
    go(shop, hardover::window::Place::bench);
    CHECK(page_of(shop).photos.size() == 1);
}

TEST_CASE("Jobs go out to a file and come in again without being doubled") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    act(shop, ExportJobs{0});
    INFO((page_of(shop).told.lines.empty() ? "" : page_of(shop).told.lines.front()));
    REQUIRE_FALSE(page_of(shop).told.trouble);
    const std::string file = shop.folder.file("exports/jobs.json");
    REQUIRE(std::filesystem::exists(file));
    CHECK(std::filesystem::exists(shop.folder.file("exports/jobs.csv")));
    act(shop, ImportJobs{file});
    CHECK_FALSE(page_of(shop).told.trouble);
    CHECK(shop.store->jobs().value().size() == 1);
    act(shop, ImportJobs{shop.folder.file("nothing.json")});
    CHECK(page_of(shop).told.trouble);
}

TEST_CASE("A backup is listed, gone back to after a second press, and what was there is kept aside") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    go(shop, hardover::window::Place::settings);
    shop.harness->click("settings.backup");
    REQUIRE(page_of(shop).backups.size() == 1);
    go(shop, hardover::window::Place::bench);
    shop.start_job("Little Auk", "wanders");
    go(shop, hardover::window::Place::settings);
    const std::string number = std::to_string(page_of(shop).backups.front().number);
    shop.harness->click("restore." + number);
    CHECK(shop.store->jobs().value().size() == 2);
    shop.harness->click("restore.sure");
    INFO((page_of(shop).told.lines.empty() ? "" : page_of(shop).told.lines.front()));
    REQUIRE_FALSE(page_of(shop).told.trouble);
    CHECK(shop.store->jobs().value().size() == 1);
    CHECK_FALSE(shop.state->job.has_value());
    CHECK(page_of(shop).backups.size() == 2);
    act(shop, KeepBackups{30});
    CHECK(page_of(shop).backups_kept == 30);
}

TEST_CASE("A look through the records tells what it found") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    go(shop, hardover::window::Place::settings);
    shop.harness->click("records.check");
    REQUIRE(page_of(shop).checked.has_value());
    CHECK(page_of(shop).checked->in_order());
    CHECK(page_of(shop).checked->jobs == 1);
}

TEST_CASE("Jobs are written beside the window, with how far that has come, and a stop writes nothing") {
    BusyShop shop;
    shop.start_job("Grey Heron", "tight to port");
    go(shop, hardover::window::Place::bench);
    shop.state->records->view.exchange_open = true;
    shop.harness->frames(4);
    shop.hold();
    shop.harness->click("export.all");
    REQUIRE(page_of(shop).working.has_value());
    CHECK(shop.harness->shows("Writing the jobs"));
    // One thing after the other: its button is off, and asking again does nothing.
    CHECK_FALSE(shop.harness->get("export.all").enabled);
    SECTION("by hand") {
        shop.harness->click("working.stop");
    }
    SECTION("by key") {
        shop.harness->press(Key::escape);
    }
    shop.state->records->note_progress();
    shop.harness->frames(2);
    CHECK(shop.harness->shows("Stopping"));
    shop.let_go();
    shop.finish();
    CHECK(shop.harness->shows("Stopped. Nothing was written."));
    CHECK_FALSE(std::filesystem::exists(shop.folder.file("exports/jobs.json")));
    CHECK_FALSE(std::filesystem::exists(shop.folder.file("exports/jobs.csv")));
    shop.harness->click("export.all");
    shop.background.wait();
    shop.state->records->note_progress();
    CHECK(page_of(shop).working->progress.find(" %") != std::string::npos);
    shop.finish();
    CHECK(std::filesystem::exists(shop.folder.file("exports/jobs.json")));
    CHECK(shop.harness->shows("1 job is written to"));
}

TEST_CASE("Jobs of a file are taken in beside the window, a stop leaves the records as they were") {
    Shop other(1280, 3000);
    other.start_job("Little Auk", "wanders at speed");
    act(other, ExportJobs{0});
    const std::string file = other.folder.file("exports/jobs.json");
    other.harness.reset();  // the drawing library knows one context at a time
    BusyShop shop;
    go(shop, hardover::window::Place::bench);
    shop.hold();
    act(shop, ImportJobs{file});
    act(shop, StopRecordsWork{});
    shop.let_go();
    shop.finish();
    CHECK(page_of(shop).told.lines.front() == "Stopped. Nothing came in.");
    CHECK(shop.store->jobs().value().empty());
    CHECK_FALSE(shop.state->records->wrote_beside());
    act(shop, ImportJobs{file});
    shop.finish();
    REQUIRE(shop.state->bench.in_hand.size() == 1);
    CHECK(shop.state->bench.in_hand.front().boat == "Little Auk");
    CHECK(shop.state->records->wrote_beside());
}

TEST_CASE("A look through the records that is stopped says so and shows nothing as looked at") {
    BusyShop shop;
    shop.start_job("Grey Heron", "tight to port");
    go(shop, hardover::window::Place::settings);
    shop.hold();
    shop.harness->click("records.check");
    CHECK(shop.harness->shows("Looking through the records"));
    shop.harness->press(Key::escape);
    shop.state->records->note_progress();
    shop.let_go();
    shop.finish();
    CHECK_FALSE(page_of(shop).checked.has_value());
    CHECK(shop.harness->shows("Stopped. Not everything was looked at."));
    shop.harness->click("records.check");
    shop.finish();
    REQUIRE(page_of(shop).checked.has_value());
    CHECK(page_of(shop).checked->jobs == 1);
}

TEST_CASE("Damaged rows are mended by a button, after what that does was said, and the job shows it") {
    BusyShop shop;
    shop.start_job("Grey Heron", "tight to port");
    carry_out(*shop.state, AddNote{"abc"});
    damage_note(shop, "abc", "abb");  // one bit
    go(shop, hardover::window::Place::settings);
    CHECK_FALSE(shop.harness->has("records.mend"));
    shop.harness->click("records.check");
    shop.finish();
    REQUIRE(page_of(shop).checked->damaged.size() == 1);
    // Said as something to press here, not as a command for a terminal.
    CHECK(shop.harness->shows("Mend them"));
    CHECK_FALSE(shop.harness->shows("hardover records"));
    CHECK(shop.harness->shows("put aside in the folder of the backups first"));
    shop.harness->click("records.mend");
    shop.finish();
    CHECK(shop.harness->shows("Mended, one bit had turned"));
    CHECK(shop.store->check().ok());
    CHECK(shop.harness->shows("The records as they were are kept: "));
    CHECK(shop.state->job->notes == std::vector<std::string>{"abc"});
    CHECK_FALSE(shop.harness->has("records.as_it_reads"));
    CHECK_FALSE(shop.harness->has("records.mend"));
}

TEST_CASE("What no backup has counts as it reads only when that is asked for") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    carry_out(*shop.state, AddNote{"the bracket"});
    damage_note(shop, "the bracket", "something else");
    go(shop, hardover::window::Place::settings);
    act(shop, CheckRecords{});
    shop.harness->click("records.mend");
    shop.harness->frames(6);
    CHECK_FALSE(shop.store->check().ok());
    CHECK(shop.harness->shows("read those jobs again"));
    CHECK_FALSE(shop.harness->shows("hardover records"));
    shop.harness->click("records.as_it_reads");
    shop.harness->frames(6);
    CHECK(shop.store->check().ok());
    CHECK_FALSE(shop.harness->has("records.as_it_reads"));
}

TEST_CASE("Nothing is cut, covered or too small among the records, on the bench and in the settings",
          "[pictures]") {
    Shop shop(1280, 3000);
    shop.start_job("Grey Heron", "tight to port");
    act(shop, DropFiles{{photo(shop, "bracket after the second season.jpg")}});
    go(shop, hardover::window::Place::bench);
    act(shop, FindJobs{"", "", ""});
    act(shop, ShowEarlierJobs{"Grey Heron"});
    RecordsDesk::View& view = shop.state->records->view;
    view.find_open = view.photos_open = view.exchange_open = true;
    const auto bench = [&](Kit& kit) { draw_app(kit, *shop.state); };
    sweep("records on the bench", bench);
    take_whole(Album(), "records-bench", bench, 2000);
    go(shop, hardover::window::Place::settings);
    shop.harness->click("settings.backup");
    act(shop, CheckRecords{});
    view.restoring = page_of(shop).backups.empty() ? "" : page_of(shop).backups.front().path;
    sweep("records in the settings", bench);
    take_whole(Album(), "records-settings", bench, 2000);
}
