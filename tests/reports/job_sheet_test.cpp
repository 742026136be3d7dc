// What stands on the job sheet, before it is laid out.
#include "app/reports/job_sheet.hpp"

#include "reports/sheet_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("A job handed back says the cause, how it was proved and what was done") {
    const JobSheet sheet = sheet_of(job_of(air_events()));
    CHECK(sheet.state == "Handed back");
    CHECK(sheet.opened == "2026-11-25");
    CHECK(sheet.cause.name == "Air left in the oil");
    CHECK(sheet.cause.certainty == "Seen and proved");
    INFO(sheet.cause.proof);
    CHECK(holds(sheet.cause.proof, "2 3/4 in ± 1/4 in"));
    CHECK(sheet.cause.note == "Bled twice, the second time warm.");
    CHECK_FALSE(sheet.cause.speaks_for.empty());
    CHECK(sheet.cause.also_possible.empty());
    REQUIRE(sheet.work.size() == 1);
    CHECK(sheet.work.front().remedy == "Bleed lock to lock");
    CHECK(sheet.work.front().outcome == "cured");
    CHECK_FALSE(sheet.after.empty());
    CHECK_FALSE(sheet.cautions.empty());
    CHECK_FALSE(sheet.deferrals.empty());
    CHECK(sheet.stops.empty());  // cured and handed back
}

TEST_CASE("What decides comes first among the findings, with what a sound boat shows") {
    const JobSheet sheet = sheet_of(job_of(air_events()));
    REQUIRE(sheet.findings.size() >= 4);
    CHECK(sheet.findings.front().off);
    bool sound_seen = false;
    for (const SheetFinding& finding : sheet.findings) {
        INFO(finding.name);
        CHECK_FALSE((finding.off && sound_seen));  // everything that is off stands before what is sound
        sound_seen = sound_seen || !finding.off;
        if (finding.name == "Ram bracket under load") {
            CHECK_FALSE(finding.off);
            CHECK(finding.found == finding.sound);
        }
    }
}

TEST_CASE("A job in hand never calls a guess proved") {
    auto events = air_events();
    events.resize(7);
    const JobSheet sheet = sheet_of(job_of(events));
    CHECK(holds(sheet.cause.certainty, "Likely ("));
    CHECK(holds(sheet.cause.certainty, "not proved yet"));
    CHECK(sheet.cause.proof.empty());
    REQUIRE_FALSE(sheet.cause.also_possible.empty());
    CHECK(holds(sheet.cause.also_possible.back(), "Something not on this list"));
    CHECK(sheet.work.empty());
    CHECK(sheet.after.empty());
}

TEST_CASE("A cause that was only assumed, or is not listed, is called so") {
    auto events = air_events();
    events.back() = HandedBack{"reservoir_low", false, ""};
    CHECK(sheet_of(job_of(events)).cause.certainty == "Assumed, not proved");
    events.back() = HandedBack{"not_listed", true, "A rag in the suction line."};
    const JobSheet sheet = sheet_of(job_of(events));
    CHECK(sheet.cause.name == "Something not on the list");
    CHECK(sheet.cause.note == "A rag in the suction line.");
}

TEST_CASE("A job of which nothing is known makes a sheet that says so") {
    const JobSheet sheet = sheet_of(job_of({Opened{"", "", ""}}), "");
    CHECK(sheet.cause.name == "Not known yet");
    CHECK(sheet.findings.empty());
    const PdfFolder folder;
    REQUIRE_OK(write_pdf(sheet, folder.file("empty.pdf"), bundled_font()));
    const std::string text = printed("pdftotext -layout '" + folder.file("empty.pdf") + "' -");
    CHECK(holds(text, "Boat not named"));
    CHECK(holds(text, "None recorded."));
    CHECK(holds(text, "No remedy has been tried yet."));
}

TEST_CASE("What was taken back does not stand on the sheet") {
    auto events = air_events();
    events.pop_back();
    events.push_back(Undone{11});  // the remedy
    CHECK(sheet_of(job_of(events)).work.empty());
}

TEST_CASE("The sketch says which figures nobody has told") {
    const JobSheet sheet = sheet_of(job_of(air_events()));
    REQUIRE(sheet.sketch.has_value());
    INFO(sheet.sketch_note);
    CHECK(holds(sheet.sketch_note, "not measured on this boat"));
    CHECK(holds(sheet.sketch_note, "Ram stroke"));
    CHECK_FALSE(holds(sheet.sketch_note, "Ram bore"));
    auto events = air_events();
    events.insert(events.begin() + 1, RigSet{"rams", "1"});
    events.erase(events.begin() + 3);
    const JobSheet one = sheet_of(job_of(events));
    REQUIRE(one.sketch.has_value());
    for (const drawing::Part& part : one.sketch->above.parts) CHECK(part.id != "ram_starboard");
}

TEST_CASE("Every place on the sketch is a part that the knowledge knows") {
    for (const char* helm : {"manual_pump", "cable_valve"}) {
        auto events = air_events();
        std::get<RigSet>(events[1]).value = helm;
        const JobSheet sheet = sheet_of(job_of(events));
        REQUIRE(sheet.sketch.has_value());
        for (const drawing::Drawing& drawing : {sheet.sketch->behind, sheet.sketch->above}) {
            for (const drawing::Part& part : drawing.parts) {
                INFO(part.id << " at " << part.place);
                CHECK(find(shipped().parts, part.place) != none);
            }
        }
    }
}

TEST_CASE("The JSON holds what the paper holds") {
    const JobSheet sheet = sheet_of(job_of(air_events()));
    const nlohmann::ordered_json json = job_sheet_json(sheet);
    CHECK(json["job"] == 12);
    CHECK(json["boat"] == "Żabka Łódź");
    CHECK(json["cause"]["name"] == "Air left in the oil");
    CHECK(json["work"][0]["outcome"] == "cured");
    CHECK(json["findings"].size() == sheet.findings.size());
    CHECK(json["sketch"]["above"][0] == "From above, drive straight ahead");
}

namespace {

// An invented boat with two faults, each proved by its check: the first remedy helped, the second cured.
std::vector<Event> two_fault_events() {
    return {Opened{"Tern", "It clunks.", shipped().fingerprint},
            ComplaintsSet{{"loose_or_clunking"}},
            Answered{"rod_end_play", "loose"},
            Answered{"bracket_bolts", "loose"},
            Tried{"torque_bracket", "better"},
            Tried{"renew_rod_ends", "cured"},
            HandedBack{
                "rod_ends_worn", true, "Both sides.", {}, {{"bracket_loose", true}, {"hose_chafed", false}}}};
}

}  // namespace

TEST_CASE("A job with several causes names each on the sheet, with its own proof and certainty") {
    const JobSheet sheet = sheet_of(job_of(two_fault_events()));
    CHECK(sheet.cause.note == "Both sides.");
    REQUIRE(sheet.further_causes.size() == 2);
    const SheetCause& bracket = sheet.further_causes.front();
    CHECK(bracket.name == "Ram bracket bolts loose");
    CHECK(bracket.certainty == "Seen and proved");
    CHECK_FALSE(bracket.proof.empty());
    CHECK(sheet.further_causes.back().certainty == "Assumed, not proved");
    const nlohmann::ordered_json json = job_sheet_json(sheet);
    CHECK(json["further_causes"].size() == 2);
    CHECK(json["further_causes"][0]["name"] == "Ram bracket bolts loose");
    const PdfFolder folder;
    REQUIRE_OK(write_pdf(sheet, folder.file("two.pdf"), bundled_font()));
    const std::string text = printed("pdftotext -layout '" + folder.file("two.pdf") + "' -");
    INFO(text);
    CHECK(holds(text, sheet.cause.name));
    CHECK(holds(text, "Ram bracket bolts loose"));
    CHECK(holds(text, "Further"));
}

TEST_CASE("What spoke for a fault that an earlier remedy put right is taken from before that remedy") {
    auto events = two_fault_events();
    events.back() = HandedBack{"bracket_loose", true, ""};
    const JobSheet sheet = sheet_of(job_of(events));
    CHECK_FALSE(sheet.cause.speaks_for.empty());
    CHECK(sheet.further_causes.empty());
}

TEST_CASE("The sheet marks what was told before the work and not looked at again") {
    auto events = air_events();
    events.insert(events.end() - 1, Answered{"wheel_feel", "firm"});
    const JobSheet sheet = sheet_of(job_of(events));
    const auto origin = [&sheet](const std::string& name) {
        for (const SheetFinding& finding : sheet.findings) {
            if (finding.name == name) return finding.origin;
        }
        return std::string("not there");
    };
    CHECK(origin("Ram bracket under load") == "looked at, before the work");
    CHECK_FALSE(holds(origin("Feel of the wheel"), "before the work"));
    auto in_hand = air_events();
    in_hand.resize(10);
    for (const SheetFinding& finding : sheet_of(job_of(in_hand)).findings) {
        CHECK_FALSE(holds(finding.origin, "before the work"));
    }
}
