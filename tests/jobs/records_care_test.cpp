// Photos of jobs, looking the records through, backups with their photos, and moving to another computer.
#include "app/jobs/records_care.hpp"

#include <sqlite3.h>

#include <filesystem>

#include "app/jobs/assessed_mark.hpp"
#include "app/jobs/page.hpp"
#include "app/jobs/photos.hpp"
#include "app/jobs/records_check.hpp"
#include "app/jobs/records_mend.hpp"
#include "app/records/checksum.hpp"
#include "app/records/whole_file.hpp"
#include "jobs/yard_records.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace fs = std::filesystem;

namespace {

const std::string now = "2026-11-26T12:00:00Z";

void attach(YardRecords& yard, JobNumber number, const std::string& name, const std::string& caption) {
    REQUIRE_OK(write_whole_file(yard.file(name), "%PDF- a page about " + name));
    Job job = yard.load(number);
    REQUIRE_OK(attach_photo(yard.store(), yard.prepared(), job, yard.file(name), caption, now));
}

RecordsChecked checked(const YardRecords& yard) {
    auto found = check_records(yard.store(), yard.prepared());
    REQUIRE_OK(found);
    return std::move(found.value());
}

std::string findings(const YardRecords& yard) {
    std::string text;
    for (const RecordsFinding& finding : checked(yard).findings) {
        text += finding.where + ": " + finding.what + "\n";
    }
    return text;
}

// What no program of ours does: writes into the file behind its triggers.
// Alters the file as somebody would who makes the checksums anew, unlike a bit that turns.
void tamper(const YardRecords& yard, const std::string& sql, bool sum_anew = true) {
    const auto file = records_detail::Database::open(yard.store().path(), SQLITE_OPEN_READWRITE,
                                                     std::chrono::milliseconds(0));
    REQUIRE_OK(file);
    const std::string all =
        "DROP TRIGGER events_are_never_changed; DROP TRIGGER events_are_never_deleted; " + sql;
    REQUIRE_OK(file.value().run(all.c_str()));
    if (!sum_anew) return;
    REQUIRE_OK(records_detail::sum_anew(file.value(), "events", "job > ?", "0"));
    REQUIRE_OK(records_detail::sum_anew(file.value(), "jobs", "number > ?", "0"));
}

}  // namespace

TEST_CASE("A photo stands on the job's page with its caption, also after it was handed back") {
    YardRecords yard;
    const JobNumber job = yard.foot_valve("Grey Heron", "2026-03-01");
    attach(yard, job, "bracket.pdf", "crack at the aft bolt");
    const JobPage page = make_job_page(yard.prepared(), yard.load(job));
    CHECK(page.photos == std::vector<std::string>{"bracket.pdf: crack at the aft bolt"});
    CHECK(page.events.back().text == "Photo: bracket.pdf: crack at the aft bolt");
    CHECK(photo_lines(yard.store().path(), yard.load(job))[0].text == "bracket.pdf: crack at the aft bolt");
    fs::remove(photo_lines(yard.store().path(), yard.load(job))[0].path);
    CHECK(photo_lines(yard.store().path(), yard.load(job))[0].text ==
          "bracket.pdf: crack at the aft bolt (missing: the file is not in the folder of photos)");
}

TEST_CASE("A photo that cannot be read leaves the job as it was") {
    YardRecords yard;
    Job job = yard.load(yard.job("Grey Heron", "2026-03-01", {}));
    CHECK_FALSE(attach_photo(yard.store(), yard.prepared(), job, yard.file("gone.jpg"), "", now).ok());
    CHECK(yard.store().events(1).value().size() == 1);
    CHECK(
        record(yard.store(), yard.prepared(), job, Attached{"../records.db", "x", "", 1}, now).error().what ==
        "'../records.db' is no file of the records");
}

TEST_CASE("Records in order are told to be so, and how many jobs were compared") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    yard.job("Little Auk", "2026-04-01", {});
    attach(yard, 2, "bracket.pdf", "");
    const RecordsChecked found = checked(yard);
    CHECK(found.in_order());
    CHECK(found.findings.empty());
    CHECK(found.compared == 1);
    CHECK(found.ranking_compared == 1);
    CHECK(found.told[0] == "2 jobs, 9 events, 1 photo looked at.");
}

TEST_CASE("An answer that was altered behind the program's back is found by what the job came to then") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    tamper(yard,
           R"(UPDATE events SET body = '{"answer":"sinks","finding":"prime"}' WHERE kind = 'answered')");
    CHECK(findings(yard) ==
          "job 1, event 7: its events no longer come to what was found at the hand-back, with the same "
          "knowledge\n");
    CHECK_FALSE(checked(yard).in_order());
}

TEST_CASE("Other odds than then are not held against a job") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    Knowledge learned = yard.knowledge();
    learned.causes[0].odds[0] *= 2;
    const auto found = check_records(yard.store(), learned);
    REQUIRE_OK(found);
    CHECK(found.value().in_order());
    CHECK(found.value().compared == 1);
    CHECK(found.value().ranking_compared == 0);
    Knowledge other = yard.knowledge();
    other.fingerprint = "another";
    CHECK(check_records(yard.store(), other).value().not_comparable == 1);
}

TEST_CASE("A hand-back of an older program, without what to compare with, is in order") {
    YardRecords yard;
    const JobNumber job = yard.job("Grey Heron", "2026-03-01", {});
    REQUIRE_OK(yard.store().append(job,
                                   {2, "2026-03-01T12:00:00Z", "handed_back",
                                    R"({"cause":"foot_valve_leaking","confirmed":true,"note":""})"},
                                   {"Grey Heron", "handed back", ""}));
    CHECK(checked(yard).in_order());
    CHECK(checked(yard).not_comparable == 1);
}

TEST_CASE("An unreadable event, a list that says otherwise, a missing and an altered photo are each named") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01", {Noted{"a"}, Noted{"b"}});
    attach(yard, 1, "one.pdf", "");
    attach(yard, 1, "two.pdf", "");
    const auto photos = photo_lines(yard.store().path(), yard.load(1));
    fs::remove(photos[0].path);
    REQUIRE_OK(write_whole_file(photos[1].path, "altered"));
    tamper(yard, "UPDATE events SET body = '{' WHERE sequence = 2; UPDATE jobs SET boat = 'Nobody'");
    const std::string text = findings(yard);
    INFO(text);
    CHECK(text.find("job 1, event 2: the event 'noted' has a body that cannot be read\n") !=
          std::string::npos);
    CHECK(text.find("job 1: the list says 'Nobody, in hand', its events say 'Grey Heron, in hand'\n") !=
          std::string::npos);
    CHECK(text.find("job 1, photo one.pdf: the file is missing: ") != std::string::npos);
    CHECK(text.find("job 1, photo two.pdf: the file was altered: ") != std::string::npos);
}

TEST_CASE("An event of which a bit turned is named, and mended by its checksum") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01", {Noted{"a"}, Noted{"b"}});
    yard.job("Tern", "2026-03-02", {Noted{"c"}});
    tamper(yard,
           "UPDATE events SET body = replace(body, '\"a\"', '\"c\"') WHERE job = 1 AND sequence = 2; "
           "UPDATE jobs SET boat = 'Nobody at all', state = 'handed back' WHERE number = 2",
           false);
    CHECK(findings(yard) ==
          "the line of job 2 in the list: not as it was written\njob 1, event 2: not as it was written\n");
    CHECK_FALSE(checked(yard).in_order());
    const auto mended = mend_records(yard.store(), yard.knowledge(), false, now);
    REQUIRE_OK(mended);
    CHECK(mended.value().all);
    REQUIRE(mended.value().lines.size() == 3);
    CHECK(fs::exists(mended.value().lines[0].substr(mended.value().lines[0].find('/'))));
    CHECK(mended.value().lines[1] == "Mended, one bit had turned: job 1, event 2");
    CHECK(mended.value().lines[2] == "Made anew from its events: the line of job 2 in the list");
    CHECK(checked(yard).in_order());
    CHECK(mend_records(yard.store(), yard.knowledge(), false, now).value().lines ==
          std::vector<std::string>{"Nothing to mend: everything is as it was written."});
}

TEST_CASE("An event that is missing in between is damage") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01", {Noted{"a"}, Noted{"b"}});
    tamper(yard, "DELETE FROM events WHERE sequence = 2");
    CHECK(check_records(yard.store(), yard.prepared()).error().what ==
          "the records file is damaged: events of job 1 are missing in between");
}

TEST_CASE("Closing makes a backup when something was written, and none when not") {
    YardRecords yard;
    const auto closed = [&yard] {
        const auto made = back_up_on_close(yard.store(), now);
        REQUIRE_OK(made);
        return made.value().has_value();
    };
    CHECK_FALSE(closed());
    yard.job("Grey Heron", "2026-03-01", {});
    CHECK(closed());
    {
        auto again = Store::open(yard.store().path());
        REQUIRE_OK(again);
        REQUIRE_OK(again.value().jobs());
        CHECK_FALSE(again.value().has_written());
    }
    REQUIRE_OK(keep_backups(yard.store(), 0));
    CHECK_FALSE(closed());
    REQUIRE_OK(keep_backups(yard.store(), 2));
    for (int i = 0; i < 4; ++i) CHECK(closed());
    CHECK(list_backups(backups_folder(yard.store().path()), yard.store().path()).size() == 2);
    CHECK_FALSE(keep_backups(yard.store(), -1).ok());
}

TEST_CASE("A backup to a stick that is not there makes no folder in its place, photos or not") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    attach(yard, 1, "bracket.pdf", "");
    const auto made = back_up(yard.store(), yard.file("no_stick/backups"), now);
    REQUIRE_FALSE(made.ok());
    CHECK(made.error().kind == Error::Kind::not_found);
    CHECK_FALSE(fs::exists(yard.file("no_stick")));
}

TEST_CASE("A restore brings jobs and photos back and says where the others went") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    attach(yard, 1, "bracket.pdf", "");
    const auto made = back_up(yard.store(), "", now);
    REQUIRE_OK(made);
    CHECK(backup_lines(made.value())[1] == "1 photo copied.");
    yard.job("Little Auk", "2026-04-01", {});
    fs::remove_all(photos_folder(yard.store().path()));
    const auto lines = restore_records(yard.store().path(), "1", now);
    REQUIRE_OK(lines);
    CHECK(lines.value()[0] == "1 job brought back from " + made.value().backup.path);
    CHECK(lines.value()[1] == "1 photo copied.");
    CHECK(lines.value()[2].starts_with("What was here before (2 jobs) is kept: "));
    CHECK(yard.store().number_of_jobs().value() == 1);
    CHECK(checked(yard).in_order());
    CHECK(restore_records(yard.store().path(), "77", now).error().what == "there is no backup 77");
    CHECK(restore_records(yard.store().path(), yard.store().path(), now).error().what ==
          "this is the records file in use");
}

TEST_CASE("The folder of the records copied to another place is the same records, with photos and backups") {
    const ScratchFolder elsewhere;
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    attach(yard, 1, "bracket.pdf", "");
    REQUIRE_OK(back_up(yard.store(), "", now));
    const fs::path from = fs::path(yard.store().path()).parent_path();
    fs::copy(from, elsewhere.file("here"), fs::copy_options::recursive);
    fs::rename(from / "photos", from / "gone");  // nothing may point back
    const auto store = Store::open(elsewhere.file("here/records.db"));
    REQUIRE_OK(store);
    const auto found = check_records(store.value(), yard.prepared());
    REQUIRE_OK(found);
    CHECK(found.value().in_order());
    CHECK(found.value().photos == 1);
    CHECK(list_backups(backups_folder(store.value().path()), store.value().path()).size() == 1);
    fs::rename(from / "gone", from / "photos");
}

TEST_CASE("A backup opened by itself has its photos beside it") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01", {});
    attach(yard, 1, "bracket.pdf", "");
    const auto made = back_up(yard.store(), yard.file("stick"), now);
    REQUIRE_OK(made);
    const auto store = Store::open(made.value().backup.path);
    REQUIRE_OK(store);
    CHECK(check_records(store.value(), yard.prepared()).value().in_order());
}

TEST_CASE("A backup to where nothing can be written says so and leaves nothing") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01", {});
    REQUIRE_OK(write_whole_file(yard.file("a-file"), "x"));
    CHECK_FALSE(back_up(yard.store(), yard.file("a-file/backups"), now).ok());
    const auto made = back_up(yard.store(), yard.file("a-file"), now);
    REQUIRE_FALSE(made.ok());
    CHECK(made.error().cure == "name a folder that may be written");
    CHECK(file_text(yard.file("a-file")) == "x");
}
