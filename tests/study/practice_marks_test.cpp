// The marks of a practice boat: the split of the minutes is exact, the expert's way is marked as such, and
// the bad ways are told from it.
#include <algorithm>
#include <cmath>

#include "app/study/chance.hpp"
#include "app/study/practice_debrief.hpp"
#include "reading/reading_support.hpp"
#include "study/learning_checks.hpp"
#include "study/practice_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover::study::practice;
using namespace hardover_tests;

namespace {

// Some questions and remedies in no order, by a learner who heeds half of the cautions.
Session random_session(const PreparedKnowledge& knowledge, const std::shared_ptr<const PracticeBoat>& boat,
                       std::uint64_t seed, int steps) {
    Chance chance(seed);
    Begun begun;
    begun.seed = boat->seed;
    begun.level = boat->level;
    Session session(knowledge, boat, begun);
    const Knowledge& k = knowledge.knowledge();
    for (int step = 0; step < steps && session.phase() == Session::Phase::working; ++step) {
        PracticeEvent event = Asked{k.findings[chance.below(k.findings.size())].id};
        const double kind = chance.share();
        if (kind < 0.25) event = Remedied{k.remedies[chance.below(k.remedies.size())].id};
        if (kind > 0.9) event = Proved{k.causes[chance.below(k.causes.size())].id};
        if (kind > 0.98) event = GaveUp{};
        (void)session.take(event);  // some make no sense on this rig and are refused
    }
    return session;
}

void check_split(const Marks& marks) {
    CHECK(marks.minutes + marks.expected_left - marks.expected ==
          Approx(marks.avoidable + marks.luck).margin(1e-7));
    double avoidable = 0;
    for (const WorkMark& work : marks.work) {
        CHECK(work.avoidable >= 0);
        avoidable += work.avoidable;
    }
    CHECK(avoidable == Approx(marks.avoidable));
}

}  // namespace

TEST_CASE("Minutes over the best are avoidable minutes and luck, exactly, in thousands of random sessions") {
    const Knowledge pump = pump_knowledge();
    const PreparedKnowledge pump_prepared(pump);
    int sessions = 0;
    double avoidable = 0;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const auto boat = make_practice_boat(pump_prepared, seed, 2);
        REQUIRE_OK(boat);
        for (std::uint64_t player = 0; player < 200; ++player) {
            const Marks marks =
                marks_alone(random_session(pump_prepared, boat.value(), seed * 1000 + player, 2));
            check_split(marks);
            avoidable += marks.avoidable;
            ++sessions;
        }
    }
    CHECK(sessions == 2000);
    CHECK(avoidable > 0);
}

TEST_CASE("The split of a published job's trace gives its avoidable minutes and its luck") {
    // learning_checks.yaml, practice_job: exact dynamic programming over five causes.
    const YAML::Node job = learning_checks("practice_job");
    const YAML::Node trace = job["trace"];
    double avoidable = 0, luck = 0, minutes = 0;
    for (std::size_t i = 0; i < trace.size(); ++i) {
        const bool last = i + 1 == trace.size();
        const auto v = trace[i]["V"].as<double>();
        const double next = last ? 0 : trace[i + 1]["V"].as<double>();
        const Split split =
            split_minutes(trace[i]["minutes"].as<double>(), v, next, trace[i]["Q"].as<double>() - v);
        CHECK(split.avoidable == Approx(trace[i]["regret"].as<double>()).margin(1e-6));
        avoidable += split.avoidable;
        luck += split.luck;
        minutes += trace[i]["minutes"].as<double>();
    }
    CHECK(minutes == Approx(job["trace_minutes"].as<double>()));
    CHECK(avoidable == Approx(job["trace_regret_minutes"].as<double>()).epsilon(1e-7));
    CHECK(luck == Approx(job["trace_luck_minutes"].as<double>()).epsilon(1e-7));
}

TEST_CASE("The expert loses no minutes by choice, who looks at nothing loses many, and the split holds") {
    double expert = 0, first = 0;
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        const auto boat = practice_boat(seed, 2);
        const Session best = expert_on(prepared(), boat);
        const Marks marks = mark(best);
        check_split(marks);
        CHECK(marks.avoidable == 0);
        CHECK(marks.minutes == marks.expert);
        CHECK(marks.cautions_skipped == 0);
        const Session bold = first_choice_on(prepared(), boat);
        const Marks bold_marks = marks_alone(bold);
        check_split(bold_marks);
        expert += marks.minutes;
        first += bold_marks.minutes;
        if (!bold.work().empty() && bold.work().front().outcome == Outcome::not_cured) {
            CHECK(bold_marks.unproved + bold_marks.wrong_remedies > 0);
        }
    }
    CHECK(first > expert);
}

TEST_CASE("Asking again, and asking what no cause has to do with, is told apart from a good question") {
    const auto boat = practice_boat(3, 2);
    Session session = session_on(boat);
    const Assessment start = assess(prepared(), session.facts(), Detail{false, false});
    const PracticeEvent best = event_of_step(shipped(), start.next);
    REQUIRE_OK(session.take(best));
    REQUIRE_OK(session.take(best));
    const Marks marks = marks_alone(session);
    CHECK(marks.work[0].is_best);
    CHECK_FALSE(marks.work[0].told_nothing);
    CHECK(marks.work[1].told_nothing);
    CHECK(marks.told_nothing == 1);
}

TEST_CASE("A debrief tells every step with its ranking, and three things to practise") {
    const auto boat = practice_boat(6, 1);
    Session session = expert_on(prepared(), boat);
    const Debrief told = debrief(session, mark(session));
    REQUIRE(told.steps.size() == session.work().size());
    CHECK(told.practise.size() == 3);
    CHECK(told.skipped_cautions.empty());
    for (const DebriefStep& step : told.steps) CHECK(step.good);
    CHECK(told.ended.cured == session.boat_is_right());
    CHECK(told.truth.find(shipped().causes[boat->faults.front()].name) != std::string::npos);
}

// Invented sessions: help is called before anything was looked at.
TEST_CASE("Help called while something is worth doing is never told as good, nor as quick as it looks") {
    int looked_quicker = 0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const int level = seed % 2 == 0 ? 5 : 3;
        INFO("seed " << seed << ", level " << level);
        Session session = session_on(practice_boat(seed, level));
        REQUIRE_OK(session.take(GaveUp{}));
        const Marks marks = mark(session);
        if (marks.work.front().is_best) continue;
        const Debrief told = debrief(session, marks);
        const DebriefStep& call = told.steps.front();
        CHECK_FALSE(call.good);
        CHECK(call.verdict.rfind("Too early: something was still worth doing.", 0) == 0);
        CHECK_FALSE(call.best.empty());
        CHECK(told.headline.rfind("Help was called after 0 min. The boat is not right yet", 0) == 0);
        const auto habit = std::find_if(told.habits.begin(), told.habits.end(), [](const Habit& each) {
            return each.name == "Help called when it was due";
        });
        REQUIRE(habit != told.habits.end());
        CHECK_FALSE(habit->kept);
        const bool practised =
            std::any_of(told.practise.begin(), told.practise.end(), [](const std::string& thing) {
                return thing.find("call for help") != std::string::npos ||
                       thing.find("calling for help") != std::string::npos;
            });
        CHECK(practised);
        if (marks.expert <= marks.minutes + as_good_minutes) continue;
        ++looked_quicker;
        CHECK(told.minutes.back().find("A call looks quicker here only because") != std::string::npos);
    }
    CHECK(looked_quicker > 0);
}

TEST_CASE("A step is called better only where it saves minutes or tells something") {
    const Knowledge pump = pump_knowledge();
    const PreparedKnowledge pump_prepared(pump);
    int better = 0, other = 0;
    const auto check_labels = [&](const Session& session) {
        const Marks marks = marks_alone(session);
        const Debrief told = debrief(session, marks);
        for (std::size_t i = 0; i < told.steps.size(); ++i) {
            const DebriefStep& step = told.steps[i];
            INFO(step.did << ", best: " << step.best);
            if (step.best.empty()) continue;
            const bool is_better = step.best_label == "Better";
            ++(is_better ? better : other);
            if (!is_better) continue;
            CHECK_FALSE(marks.work[i].best_is_idle);
            CHECK_FALSE(step.good);
            CHECK(marks.work[i].best.kind != NextStep::Kind::stop_asking);
        }
    };
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const auto boat = make_practice_boat(pump_prepared, seed, 2);
        REQUIRE_OK(boat);
        check_labels(random_session(pump_prepared, boat.value(), seed, 6));
    }
    for (std::uint64_t seed = 1; seed <= 4; ++seed)
        check_labels(learner_on(prepared(), practice_boat(seed, 2), 0.5, seed));
    CHECK(better > 0);
    CHECK(other > 0);
}

// A rule of the knowledge puts its questions first, whatever else is asked meanwhile.
TEST_CASE("Nobody is told that a question changed nothing where the expert's own would not have either") {
    for (std::uint64_t seed = 1; seed <= 6; ++seed) {
        const Marks marks = marks_alone(learner_on(prepared(), practice_boat(seed, 3), 0.3, seed));
        for (const WorkMark& work : marks.work) {
            if (work.told_nothing && work.best_is_idle) CHECK(work.bits < tells_nothing_bits);
        }
    }
}

TEST_CASE("Marking tells how far it has come, and told to stop it gives nothing") {
    const auto session = expert_on(prepared(), practice_boat(7, 2));
    const std::size_t pieces = session.work().size();
    std::vector<std::size_t> told;
    const auto whole = marked_debrief(session, UnitSystem::us, [&](std::size_t done, std::size_t of) {
        CHECK(of == 2 * pieces + 1);
        told.push_back(done);
        return true;
    });
    REQUIRE(whole);
    CHECK(whole->minutes == debrief(session, mark(session)).minutes);
    REQUIRE(told.size() == 2 * pieces + 1);
    for (std::size_t i = 0; i < told.size(); ++i) CHECK(told[i] == i);
    for (const std::size_t last : {std::size_t{0}, pieces, 2 * pieces}) {
        std::size_t asked = 0;
        const auto stopped = marked_debrief(session, UnitSystem::us, [&](std::size_t done, std::size_t) {
            ++asked;
            return done < last;
        });
        CHECK_FALSE(stopped);
        CHECK(asked == last + 1);
    }
}

TEST_CASE("The debrief of a boat that is not done says nothing that rests on what is wrong with it") {
    const auto boat = practice_boat(7, 1);
    Session session = session_on(boat);
    const std::string& fault = shipped().causes[static_cast<std::size_t>(boat->faults.front())].name;
    const std::string& id = shipped().causes[static_cast<std::size_t>(boat->faults.front())].id;
    const Index part = shipped().causes[static_cast<std::size_t>(boat->faults.front())].part;
    REQUIRE(part != none);
    const auto all_of = [](const Debrief& told) {
        std::string all = told.truth + told.sureness;
        for (const std::string& line : told.minutes) all += line;
        for (const std::string& line : told.practise) all += line;
        return all;
    };
    const Debrief untouched = debrief(session, mark(session));
    CHECK(untouched.practise.size() == 3);
    CHECK(all_of(untouched).find(fault) == std::string::npos);
    CHECK(all_of(untouched).find(shipped().parts[static_cast<std::size_t>(part)].name) == std::string::npos);
    CHECK(all_of(untouched).find("The expert took") == std::string::npos);
    REQUIRE_OK(session.take(Suspected{id, 0.8}));
    const Debrief open = debrief(session, mark(session));
    CHECK(open.sureness.find("scored") == std::string::npos);
    CHECK(all_of(open).find("You knew more") == std::string::npos);
    CHECK(all_of(open).find("surer than") == std::string::npos);
    const std::string json = debrief_json(session, open);
    CHECK(json.find("\"expert\": null") != std::string::npos);
    CHECK(json.find("\"brier\": null") != std::string::npos);

    REQUIRE_OK(session.take(GaveUp{}));
    const Debrief over = debrief(session, mark(session));
    CHECK(all_of(over).find(fault) != std::string::npos);
    CHECK(over.sureness.find("scored") != std::string::npos);
    CHECK(debrief_json(session, over).find("\"expert\": null") == std::string::npos);
}

TEST_CASE("Proving the cause one has said is never idle, the same question without it may be") {
    int changed_nothing = 0;
    for (std::uint64_t seed = 1; seed <= 14; ++seed) {
        const auto boat = practice_boat(seed, 1);
        const std::string& id = shipped().causes[static_cast<std::size_t>(boat->faults.front())].id;
        Session silent = session_on(boat);
        if (!silent.take(Proved{id})) continue;  // some have no proof but their remedy
        const Marks idle = marks_alone(silent);
        if (idle.told_nothing == 0) continue;
        INFO("seed " << seed << ", " << id);
        const std::vector<DebriefStep> told = debrief(silent, idle).steps;
        for (std::size_t i = 0; i < told.size(); ++i) {
            if (!idle.work[i].told_nothing || idle.work[i].bits < tells_nothing_bits) continue;
            // It moved the ranking, so it told something.
            CHECK(told[i].verdict.find("Could not have changed what you did next") == 0);
            ++changed_nothing;
        }
        Session said = session_on(boat);
        REQUIRE_OK(said.take(Named{id, 0.6}));
        REQUIRE_OK(said.take(Proved{id}));
        const Marks marks = marks_alone(said);
        check_split(marks);
        CHECK(marks.told_nothing == 0);
        CHECK(marks.avoidable == idle.avoidable);
        for (const DebriefStep& step : debrief(said, marks).steps) {
            CHECK(step.verdict.find("ould not have") == std::string::npos);
        }
    }
    CHECK(changed_nothing > 0);
}

TEST_CASE("What steps cost is said to be on average, so that a quick boat does not contradict the expert") {
    const auto boat = practice_boat(7, 1);
    const Cause& fault = shipped().causes[static_cast<std::size_t>(boat->faults.front())];
    Session quick = session_on(boat);
    REQUIRE_OK(quick.take(Named{fault.id, 1}));
    REQUIRE_OK(quick.take(Proved{fault.id}));
    REQUIRE_OK(quick.take(Remedied{shipped().remedies[static_cast<std::size_t>(fault.remedy)].id}));
    REQUIRE_OK(quick.take(HandedOver{true}));
    const Marks marks = mark(quick);
    REQUIRE(marks.avoidable > 0);
    REQUIRE(marks.expert > marks.minutes + as_good_minutes);
    const Debrief told = debrief(quick, marks);
    CHECK(told.headline.find("On average over boats like it, better steps save") != std::string::npos);
    CHECK(told.minutes[0].find("with the same complaint, history and rig, take ") != std::string::npos);
    CHECK(told.minutes[1].find(" on average over such boats") != std::string::npos);
    CHECK(told.minutes[2].find("Luck is this boat against such boats") != std::string::npos);
    CHECK(told.minutes.back().find("best on average is not the shortest on every boat") != std::string::npos);
}

TEST_CASE("A debrief speaks only of habits that there was an occasion for") {
    const auto names_of = [](const Session& session) {
        std::vector<std::string> names;
        for (const Habit& habit : debrief(session, marks_alone(session)).habits) names.push_back(habit.name);
        return names;
    };
    const auto boat = practice_boat(7, 1);
    Session session = session_on(boat);
    CHECK(names_of(session).empty());
    Session helped = session;
    REQUIRE_OK(helped.take(GaveUp{}));
    CHECK(names_of(helped) == std::vector<std::string>{"Help called when it was due"});
    const Cause& fault = shipped().causes[static_cast<std::size_t>(boat->faults.front())];
    REQUIRE_OK(session.take(Remedied{shipped().remedies[static_cast<std::size_t>(fault.remedy)].id}));
    const auto before = names_of(session);
    CHECK(std::find(before.begin(), before.end(), "Nothing good replaced") != before.end());
    CHECK(std::find(before.begin(), before.end(), "Repair proved") == before.end());
    CHECK(std::find(before.begin(), before.end(), "Every question mattered") == before.end());
    REQUIRE_OK(session.take(HandedOver{false}));
    const auto after = debrief(session, marks_alone(session)).habits;
    CHECK(after.back().name == "Repair proved");
    CHECK_FALSE(after.back().kept);
}
