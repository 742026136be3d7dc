// While long work has the records to itself: what waits for it is refused at once and told at every place,
// nothing that was typed goes, and a backup and the way back to one hold up no frame.
#include <catch2/catch.hpp>

#include "album.hpp"
#include "app/study/practice_page.hpp"
#include "app/window/app_frame.hpp"
#include "app/window/records_held.hpp"
#include "busy_shop.hpp"
#include "fit.hpp"

using namespace hardover;
using namespace hardover::window;
using namespace hardover_tests;

namespace {

void act(BusyShop& shop, const hardover::window::Action& action) {
    carry_out(*shop.state, action);
    shop.harness->frames(6);
}

const RecordsPage& page_of(const BusyShop& shop) {
    return shop.state->records->page;
}

// A job in hand, and a file of jobs that is about to be taken in.
void take_in_while_a_job_is_in_hand(BusyShop& shop) {
    shop.start_job("Grey Heron", "tight to port");
    act(shop, RecordsAction(ExportJobs{0}));
    shop.finish();
    shop.hold();
    act(shop, RecordsAction(ImportJobs{shop.folder.file("exports/jobs.json")}));
    REQUIRE(work_that_holds(*shop.state) != nullptr);
}

}  // namespace

TEST_CASE("A note given while jobs are taken in is refused at once, stays typed, and is taken afterwards") {
    BusyShop shop;
    take_in_while_a_job_is_in_hand(shop);
    CHECK(shop.harness->shows("Taking in the jobs"));
    shop.harness->click("note");
    shop.harness->type("bracket cracked");
    shop.harness->press(Key::enter);
    shop.harness->frames(4);
    CHECK(shop.state->job->notes.empty());
    CHECK(shop.harness->shows("That was not done"));
    CHECK(shop.state->view.drafts.of("note", "").text == "bracket cracked");
    shop.let_go();
    shop.finish();
    CHECK_FALSE(shop.harness->shows("That was not done"));
    CHECK_FALSE(shop.harness->shows("Taking in the jobs"));
    shop.harness->click("note");
    shop.harness->press(Key::enter);
    shop.harness->frames(4);
    CHECK(shop.state->job->notes == std::vector<std::string>{"bracket cracked"});
}

TEST_CASE("The name of a learner that waits for the records stays typed, and is taken afterwards") {
    BusyShop shop;
    take_in_while_a_job_is_in_hand(shop);
    act(shop, GoTo{hardover::window::Place::study});
    shop.harness->click("learner.name");
    shop.harness->type("Ann");
    shop.harness->click("learner.add");
    CHECK(shop.harness->shows("That was not done"));
    CHECK(shop.state->study_view.name == "Ann");
    shop.let_go();
    shop.finish();
    shop.harness->click("learner.add");
    CHECK(shop.state->study.page().learner == "Ann");
    CHECK(shop.state->study_view.name.empty());
}

TEST_CASE("Taking in can be stopped from the job, and answers are taken again") {
    BusyShop shop;
    take_in_while_a_job_is_in_hand(shop);
    act(shop, JobAction(SetHistory{"just_fitted"}));
    CHECK(shop.harness->shows("That was not done"));
    shop.harness->click("held.stop");
    shop.let_go();
    shop.finish();
    CHECK(page_of(shop).told.lines.front() == "Stopped. Nothing came in.");
    CHECK(shop.state->held_up.empty());
    const std::size_t before = shop.state->job->events.size();
    act(shop, JobAction(SetHistory{"just_fitted"}));
    CHECK(shop.state->job->events.size() == before + 1);
}

TEST_CASE("What is said while the records are held is drawn over the job in every theme", "[pictures]") {
    BusyShop shop;
    take_in_while_a_job_is_in_hand(shop);
    const Album album;
    const auto draw = [&](Kit& kit) { draw_app(kit, *shop.state); };
    album.take("held", draw);
    act(shop, JobAction(SetHistory{"just_fitted"}));
    album.take("held-refused", draw);
    shop.let_go();
    shop.finish();
}

TEST_CASE("What writes waits for work that holds the records, looking, going and stopping do not") {
    const auto waits = [](const hardover::window::Action& action) { return has_to_wait(action); };
    CHECK(waits(StartJob{}));
    CHECK(waits(JobAction(GiveAnswer{})));
    CHECK(waits(JobAction(HandBack{})));
    CHECK(waits(SheetAction(UseInJob{})));
    CHECK(waits(StudyAction(AnswerItem{})));
    CHECK(waits(ClassAction(AddSeat{})));
    CHECK(waits(ProjectAction(SettleVote{})));
    CHECK(waits(SettingsAction(SetShop{})));
    CHECK(waits(RecordsAction(AttachPhoto{})));
    CHECK(waits(ReloadKnowledge{}));
    CHECK_FALSE(waits(GoTo{}));
    CHECK_FALSE(waits(OpenJob{}));
    CHECK_FALSE(waits(JobAction(Show{})));
    CHECK_FALSE(waits(SheetAction(EnterInput{})));
    CHECK_FALSE(waits(StudyAction(ShowStudy{})));
    CHECK_FALSE(waits(SettingsAction(ChooseLook{})));
    CHECK_FALSE(waits(RecordsAction(FindJobs{})));
    CHECK_FALSE(waits(RecordsAction(StopRecordsWork{})));
}

TEST_CASE("A backup is made beside the window, a stop makes none") {
    BusyShop shop;
    shop.start_job("Grey Heron", "tight to port");
    act(shop, GoTo{hardover::window::Place::settings});
    shop.hold();
    shop.harness->click("settings.backup");
    CHECK(shop.harness->shows("Making a backup"));
    CHECK_FALSE(shop.harness->get("settings.backup").enabled);
    CHECK(work_that_holds(*shop.state) == nullptr);  // a backup lets answers be written
    shop.harness->press(Key::escape);
    shop.let_go();
    shop.finish();
    CHECK(shop.harness->shows("Stopped. No backup was made."));
    CHECK(page_of(shop).backups.empty());
    shop.harness->click("settings.backup");
    shop.finish();
    CHECK(page_of(shop).backups.size() == 1);
    CHECK(shop.harness->shows("A copy is made, read back and found whole"));
    CHECK_FALSE(shop.harness->shows("Stopped."));
}

TEST_CASE("Going back to a backup is done beside the window, and no answer falls between old and new") {
    BusyShop shop;
    shop.start_job("Grey Heron", "tight to port");
    act(shop, RecordsAction(BackUpRecords{}));
    shop.finish();
    const std::string backup = page_of(shop).backups.front().path;
    act(shop, JobAction(AddNote{"after the backup"}));
    act(shop, GoTo{hardover::window::Place::settings});
    shop.hold();
    act(shop, RecordsAction(RestoreBackup{backup, true}));
    CHECK(shop.harness->shows("Going back to a backup"));
    act(shop, JobAction(AddNote{"while it goes back"}));
    CHECK(shop.state->job->notes.size() == 1);
    SECTION("to its end") {
        shop.let_go();
        shop.finish();
        CHECK_FALSE(shop.state->job.has_value());
        CHECK(shop.store->events(1).value().size() == 1);  // the store at hand sees what came back
        CHECK(page_of(shop).backups.size() == 2);
    }
    SECTION("stopped") {
        shop.harness->press(Key::escape);
        shop.let_go();
        shop.finish();
        CHECK(shop.harness->shows("Stopped. The records are as they were."));
        CHECK(shop.store->events(1).value().size() == 2);
    }
}

TEST_CASE("Nothing is cut or covered while the records are held, at any size") {
    BusyShop shop;
    take_in_while_a_job_is_in_hand(shop);
    act(shop, JobAction(AddNote{"x"}));
    shop.harness.reset();  // the drawing library knows one context at a time
    short_sweep("held records", [&](Kit& kit) { draw_app(kit, *shop.state); });
    shop.let_go();
}

TEST_CASE(
    "The key that goes on with a practice boat is shown where there is one, and minutes are told alike") {
    BusyShop shop;
    act(shop, GoTo{hardover::window::Place::study});
    CHECK_FALSE(shop.harness->shows("go on with it"));
    CHECK_FALSE(shop.harness->shows("how I am doing"));
    act(shop, StudyAction(BeginBoat{1, "3"}));
    act(shop, StudyAction(ShowStudy{StudyShowing::start}));
    CHECK(shop.harness->shows("go on with it"));
    CHECK(study::practice::spent_text(156.4) == "2 h 36 min");
    act(shop, StudyAction(TakeUpWork{study::practice::GaveUp{}}));
    while (shop.state->study.page().working) {
        shop.background.wait();
        take_in_background(*shop.state);
    }
    const auto& debrief = shop.state->study.page().debrief;
    REQUIRE(debrief.has_value());
    CHECK(debrief->headline.find(study::practice::spent_text(debrief->ended.minutes)) != std::string::npos);
}
