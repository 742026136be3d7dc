// What an apprentice does on a practice boat: minutes, cautions, remedies, handing over, and replay.
#include <algorithm>

#include "app/study/practice_debrief.hpp"
#include "app/study/practice_marks.hpp"
#include "app/study/practice_page.hpp"
#include "study/practice_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

std::string remedy_of(Index cause) {
    return shipped().remedies[shipped().causes[cause].remedy].id;
}

// A finding of this rig whose check takes minutes to set up and has cautions.
Index finding_with_caution(const PracticeBoat& boat) {
    for (std::size_t f = 0; f < shipped().findings.size(); ++f) {
        const Finding& finding = shipped().findings[f];
        if (!boat.makes_sense[f] || finding.from || finding.readings.empty() || finding.check == none)
            continue;
        const Check& check = shipped().checks[finding.check];
        if (!check.cautions.empty() && check.minutes > 0) return static_cast<Index>(f);
    }
    return none;
}

}  // namespace

TEST_CASE("A check is set up once, and the same question has the same answer") {
    const auto boat = practice_boat(3, 2);
    Session session = session_on(boat);
    const Index finding = finding_with_caution(*boat);
    REQUIRE(finding != none);
    const Asked event{shipped().findings[finding].id};
    const double first = session.minutes_of(event);
    REQUIRE_OK(session.take(event));
    const double again = session.minutes_of(event);
    REQUIRE_OK(session.take(event));
    CHECK(first - again == Approx(shipped().checks[shipped().findings[finding].check].minutes));
    CHECK(session.work()[1].again);
    CHECK(session.work()[0].answers.front().answer == session.work()[1].answers.front().answer);
    CHECK(session.minutes() == Approx(first + again));
}

TEST_CASE("Cautions that were named are not missed, those left out are, and silence skips them all") {
    const auto boat = practice_boat(3, 2);
    const Index finding = finding_with_caution(*boat);
    const Asked event{shipped().findings[finding].id};
    Session careful = session_on(boat);
    const auto questions = caution_questions(careful, event);
    REQUIRE_FALSE(questions.empty());
    Precautions said{questions.front().work, {}, false};
    for (const CautionText& caution : questions.front().cautions) said.named.push_back(caution.id);
    CHECK(caution_feedback(questions.front(), said).empty());
    REQUIRE_OK(careful.take(said));
    CHECK(careful.cautions_before(event).empty());
    REQUIRE_OK(careful.take(event));
    CHECK(careful.work().front().missed.empty());

    Session silent = session_on(boat);
    REQUIRE_OK(silent.take(event));
    CHECK(silent.work().front().missed == silent.work().front().cautions);
    CHECK(silent.work().front().skipped);
    const Debrief told = debrief(silent, marks_alone(silent));
    REQUIRE(told.skipped_cautions.size() == 1);  // by work
    CHECK(told.skipped_cautions.front().work.find("Step 1, ") == 0);
    CHECK(told.skipped_cautions.front().cautions.size() == silent.work().front().missed.size());
    CHECK(told.practise.front().find("Say the cautions") == 0);
}

TEST_CASE("A wrong remedy costs its minutes and the boat comes back, the right one cures it") {
    const auto boat = practice_boat(4, 1);
    Session session = session_on(boat);
    const Index fault = boat->faults.front();
    const Index wrong = shipped().causes[fault].remedy == 0 ? 1 : 0;
    REQUIRE_OK(session.take(Remedied{shipped().remedies[wrong].id}));
    CHECK(session.work().back().outcome == Outcome::not_cured);
    CHECK(session.minutes() >= shipped().remedies[wrong].minutes);
    CHECK_FALSE(session.take(HandedOver{true}).ok());
    REQUIRE_OK(session.take(Remedied{remedy_of(fault)}));
    CHECK(session.work().back().outcome == Outcome::cured);
    REQUIRE_OK(session.take(HandedOver{true}));
    CHECK(session.phase() == Session::Phase::ended);
    CHECK_FALSE(session.take(Asked{shipped().findings[0].id}).ok());
}

TEST_CASE("The same events make the same session, also when read back from the record") {
    const auto boat = practice_boat(9, 3);
    const Session played = expert_on(prepared(), boat);
    std::vector<PracticeEvent> events;
    for (const PracticeEvent& event : played.events()) {
        const auto read = read_did(body_of(7, event));
        REQUIRE_OK(read);
        CHECK(read.value().practice == 7);
        events.push_back(read.value().what);
    }
    const auto again = practice::replay(prepared(), practice_boat(9, 3), played.begun(), events);
    REQUIRE_OK(again);
    CHECK(again.value().facts() == played.facts());
    CHECK(again.value().minutes() == played.minutes());
    CHECK(debrief_json(again.value(), debrief(again.value(), mark(again.value()))) ==
          debrief_json(played, debrief(played, mark(played))));
}

TEST_CASE("Every kind of event survives the record, and what is no event is refused") {
    const std::vector<PracticeEvent> events{Asked{"a"},
                                            WorkedOut{"b"},
                                            Suspected{"c", 0.25},
                                            Named{"d", 1},
                                            Hinted{2},
                                            Precautions{"e", {"f"}, false},
                                            Proved{"g"},
                                            Remedied{"h"},
                                            HandedOver{true},
                                            GaveUp{},
                                            Reflected{"say \"h\""}};
    for (const PracticeEvent& event : events) {
        const auto read = read_did(body_of(1, event));
        REQUIRE_OK(read);
        CHECK(body_of(1, read.value().what) == body_of(1, event));
        CHECK(read.value().what.index() == event.index());
    }
    CHECK_FALSE(read_did("{\"did\":\"danced\",\"practice\":1}").ok());
    CHECK_FALSE(read_did("[]").ok());
    Begun begun{42, 3, Guidance::half, "finger", 20000};
    const auto read = read_begun(body_of(begun));
    REQUIRE_OK(read);
    CHECK(body_of(read.value()) == body_of(begun));
    Ended ended;
    ended.minutes = 84.5;
    ended.hints[1] = 2;
    ended.guidance = Guidance::nudged;
    const auto end = read_ended(body_of(5, ended));
    REQUIRE_OK(end);
    CHECK(body_of(5, end.value().what) == body_of(5, ended));
}

TEST_CASE("A suspicion is right when the fault is there, and is scored by Brier's rule") {
    const auto boat = practice_boat(4, 1);
    Session session = session_on(boat);
    const Index fault = boat->faults.front();
    const Index other = fault == 0 ? 1 : 0;
    REQUIRE_OK(session.take(Suspected{shipped().causes[fault].id, 0.9}));
    REQUIRE_OK(session.take(Named{shipped().causes[other].id, 0.9}));
    CHECK(session.statements()[0].right);
    CHECK_FALSE(session.statements()[1].right);
    CHECK(marks_alone(session).brier == Approx((0.01 + 0.81) / 2));  // learning.md section 4
    CHECK_FALSE(session.take(Suspected{shipped().causes[fault].id, 1.5}).ok());
}

TEST_CASE("The page of a boat of a class set does not show its seed, that of any other boat does") {
    const auto boat = practice_boat(940923, 1);
    Begun begun;
    begun.seed = boat->seed;
    begun.knowledge = shipped().fingerprint;
    CHECK(make_page(Session(prepared(), boat, begun)).title.find("Practice boat 940923 · level 1") == 0);
    begun.of_a_set = true;
    CHECK(make_page(Session(prepared(), boat, begun)).title.find("Practice boat · level 1") == 0);
}

TEST_CASE("The yard's sheet says nothing of a rig that only another rig could have") {
    int single = 0, cable = 0, twin = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const auto boat = practice_boat(seed, 2);
        const Page page = make_page(session_on(boat));
        const auto tells = [&](const std::string& field) {
            const std::string& name =
                shipped().rig_fields[static_cast<std::size_t>(find(shipped().rig_fields, field))].name;
            return std::any_of(page.rig.begin(), page.rig.end(),
                               [&](const SheetLine& line) { return line.name == name; });
        };
        INFO("seed " << seed);
        const bool manual = boat->rig.helm == rig::Boat::Helm::manual_pump;
        CHECK(tells("assist") == manual);
        CHECK(tells("tie_bar") == (boat->rig.drives == 2));
        CHECK(tells("drive_spacing") == (boat->rig.drives == 2));
        CHECK(tells("drives"));
        single += boat->rig.drives == 1 ? 1 : 0;
        twin += boat->rig.drives == 2 ? 1 : 0;
        cable += manual ? 0 : 1;
    }
    CHECK(single > 0);
    CHECK(twin > 0);
    CHECK(cable > 0);
}

TEST_CASE("Where the expert stops it says how far the first cause leads, and to put right what is proved") {
    int stopped = 0;
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        Session session = session_on(practice_boat(seed, 3), Guidance::half);
        Page page = make_page(session);
        for (int step = 0; step < 12 && page.led; ++step) {
            REQUIRE_OK(session.take(page.led->event));
            page = make_page(session);
        }
        if (page.help.empty()) continue;
        const Assessment now = assess(prepared(), session.facts(), Detail{false, false});
        const RankedCause& first = now.ranking.front();
        INFO("seed " << seed << ": " << page.help.front() << " " << first.probability);
        const bool stands_out = page.help.front().find("stands out") != std::string::npos;
        CHECK(stands_out == (first.probability >= 0.5 && !first.proved));
        ++stopped;
    }
    CHECK(stopped > 0);

    // A fault that is proved and still not likely is looked into further: then the expert goes on.
    int put_right = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const auto boat = practice_boat(seed, 1);
        Session proved = session_on(boat, Guidance::half);
        REQUIRE_OK(proved.take(Proved{shipped().causes[static_cast<std::size_t>(boat->faults.front())].id}));
        const Page page = make_page(proved);
        if (proved.proof_of(boat->faults.front()) != Truth::yes || page.led) continue;
        INFO("seed " << seed);
        REQUIRE(page.help.size() == 1);
        CHECK(page.help.front().find("is proved. Put it right.") != std::string::npos);
        ++put_right;
    }
    CHECK(put_right > 0);
}
