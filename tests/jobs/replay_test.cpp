// Events replayed to facts: what counts, what was taken back, and what an other knowledge leaves out.
#include <algorithm>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::vector<StoredEvent> numbered(const std::vector<Event>& events) {
    std::vector<StoredEvent> stored;
    for (const Event& event : events) {
        stored.push_back(to_stored(event));
        stored.back().sequence = static_cast<int>(stored.size());
        stored.back().at = noon;
    }
    return stored;
}

Facts facts_of(const Knowledge& knowledge, const std::vector<Event>& events) {
    return replay(knowledge, 1, numbered(events)).facts;
}

const Opened opened{"Marsh Hen", "no water", ""};

}  // namespace

TEST_CASE("Events add up to what is known now") {
    const Knowledge pump = pump_knowledge();
    const Job job = replay(pump, 3,
                           numbered({opened, HistorySet{"in_use"}, ComplaintsSet{{"no_water", "weak_water"}},
                                     RigSet{"drive", "electric"}, RigSet{"lift", "12 ft"},
                                     Answered{"prime", "sinks"}, Answered{"seal_drip", "12 drop/min"},
                                     Answered{"flow", "cannot_tell"}, NeedMarked{"well_open", false},
                                     Tried{"tighten_clamps", "better"}, Noted{"gate is locked"}}));
    CHECK(job.number == 3);
    CHECK(job.boat == "Marsh Hen");
    CHECK(job.left_out.empty());
    CHECK(job.facts.history == find(pump.histories, "in_use"));
    CHECK(job.facts.complaints.size() == 2);
    CHECK(job.facts.rig.at(find(pump.rig_fields, "drive")) == RigValue(std::string("electric")));
    CHECK(std::get<Quantity>(job.facts.rig.at(find(pump.rig_fields, "lift"))).value == Approx(3.6576));
    CHECK(job.facts.answers.at(find(pump.findings, "prime")) == Answer{1});
    CHECK(job.facts.answers.at(find(pump.findings, "flow")) == Answer{CannotTell{}});
    CHECK(std::holds_alternative<Quantity>(job.facts.answers.at(find(pump.findings, "seal_drip")).given));
    CHECK(job.facts.unavailable == std::set<Index>{find(pump.needs, "well_open")});
    CHECK(job.facts.tried.at(find(pump.remedies, "tighten_clamps")) == Outcome::better);
    CHECK(job.notes == std::vector<std::string>{"gate is locked"});
    CHECK(job.assessment.ranking.size() == pump.causes.size());
}

TEST_CASE(
    "A boat that comes back after a cure is asked about again: the work helped, and something is wrong") {
    const Knowledge pump = pump_knowledge();
    const std::vector<Event> cured = {opened, ComplaintsSet{{"no_water"}}, Answered{"prime", "sinks"},
                                      Tried{"tighten_clamps", "cured"},
                                      HandedBack{"foot_valve_leaking", false, ""}};
    std::vector<Event> back = cured;
    back.push_back(Reopened{"no water again"});
    const Index clamps = find(pump.remedies, "tighten_clamps");
    CHECK(facts_of(pump, cured).tried.at(clamps) == Outcome::cured);
    CHECK(facts_of(pump, back).tried.at(clamps) == Outcome::better);
    const Job job = replay(pump, 1, numbered(back));
    CHECK_FALSE(job.handed_back.has_value());
    CHECK(job.assessment.next.kind != NextStep::Kind::done);
    CHECK(make_job_page(pump, job).card.kind != StepCard::Kind::after);
    // A cure found since counts as one.
    back.push_back(Tried{"tighten_clamps", "cured"});
    CHECK(facts_of(pump, back).tried.at(clamps) == Outcome::cured);
}

TEST_CASE("Setting something to unknown again is as if it had never been said") {
    const Knowledge pump = pump_knowledge();
    CHECK(facts_of(pump, {opened, RigSet{"drive", "hand"}, RigSet{"drive", ""}, HistorySet{"in_use"},
                          HistorySet{""}, ComplaintsSet{{"no_water"}}, ComplaintsSet{{}},
                          Answered{"prime", "sinks"}, TakenBack{"prime"}, NeedMarked{"well_open", false},
                          NeedMarked{"well_open", true}}) == Facts{});
}

TEST_CASE("An event taken back does not count, and counts again when the taking back is taken back") {
    const Knowledge pump = pump_knowledge();
    const Index prime = find(pump.findings, "prime");
    const Event sinks = Answered{"prime", "sinks"};
    CHECK(facts_of(pump, {opened, sinks, Undone{2}}).answers.empty());
    CHECK(facts_of(pump, {opened, sinks, Undone{2}, Undone{3}}).answers.at(prime) == Answer{1});
    CHECK(facts_of(pump, {opened, sinks, Undone{2}, Undone{3}, Undone{4}}).answers.empty());
    const Event runs_back = Answered{"prime", "runs_back"};
    CHECK(facts_of(pump, {opened, sinks, runs_back, Undone{3}}).answers.at(prime) == Answer{1});
    CHECK(facts_of(pump, {opened, sinks, runs_back, Undone{2}}).answers.at(prime) == Answer{0});
    CHECK(facts_of(pump, {opened, sinks, TakenBack{"prime"}, Undone{3}}).answers.at(prime) == Answer{1});
}

TEST_CASE("An answer given again after a remedy leaves the earlier one as it was") {
    const Knowledge pump = pump_knowledge();
    const Index prime = find(pump.findings, "prime");
    const Index clamps = find(pump.remedies, "tighten_clamps");
    const Event sinks = Answered{"prime", "sinks"};
    const Event runs_back = Answered{"prime", "runs_back"};
    const Event tried = Tried{"tighten_clamps", "not_cured"};
    const Facts again = facts_of(pump, {opened, runs_back, tried, sinks});
    CHECK(again.answers.at(prime) == Answer{1});
    CHECK(again.answered_at.at(prime) == 1);
    CHECK(again.tried_as.at(clamps) == 1);
    CHECK(again.earlier == std::vector<EarlierAnswer>{{prime, 0, {0}}});

    SECTION("Put right before the next remedy, it replaces what it puts right") {
        CHECK(facts_of(pump, {opened, runs_back, sinks, tried}).earlier.empty());
        CHECK(facts_of(pump, {opened, runs_back, tried, runs_back, sinks}) == again);
    }
    SECTION("Taken back, the one before it holds again") {
        const Facts before = facts_of(pump, {opened, runs_back, tried});
        CHECK(facts_of(pump, {opened, runs_back, tried, sinks, TakenBack{"prime"}}) == before);
        CHECK(facts_of(pump, {opened, runs_back, tried, sinks, Undone{4}}) == before);
        CHECK(facts_of(pump, {opened, runs_back, tried, sinks, TakenBack{"prime"}, TakenBack{"prime"}}) ==
              facts_of(pump, {opened, tried}));
    }
    SECTION("The remedy taken back, it is only an answer put right") {
        CHECK(facts_of(pump, {opened, runs_back, tried, sinks, Undone{3}}) ==
              facts_of(pump, {opened, runs_back, sinks}));
    }
    SECTION("A remedy tried again counts from its last time") {
        const Facts twice = facts_of(pump, {opened, runs_back, tried, sinks, tried});
        CHECK(twice.tried_as.at(clamps) == 2);
        CHECK(twice.answered_at.at(prime) == 1);
    }
}

TEST_CASE("A taking back that points at itself, ahead or nowhere changes nothing") {
    const Knowledge pump = pump_knowledge();
    for (const int target : {3, 4, 99}) {
        CHECK(
            facts_of(pump, {opened, Answered{"prime", "sinks"}, Undone{target}, Noted{"x"}}).answers.size() ==
            1);
    }
}

TEST_CASE("Events an other knowledge made are left out, each in a sentence") {
    const Knowledge pump = pump_knowledge();
    auto events = numbered({opened, Answered{"wheel_feel", "springy"}, Answered{"prime", "overflows_fast"},
                            Answered{"prime", "sinks"}, Tried{"bleed_lock_to_lock", "cured"},
                            RigSet{"lift", "400 ft"}, ComplaintsSet{{"no_water", "hard_one_way"}}});
    events.push_back({8, noon, "photo_taken", "{}"});
    events.push_back({9, noon, "answered", "{}"});
    const Job job = replay(pump, 1, events);
    CHECK(
        job.left_out ==
        std::vector<std::string>{
            "Event 2 is left out (answered wheel feel: springy): there is no finding 'wheel feel'.",
            "Event 3 is left out (answered prime: overflows fast): 'overflows fast' no longer fits this "
            "finding.",
            "Event 5 is left out (tried bleed lock to lock: cured): there is no remedy 'bleed lock to lock'.",
            "Event 6 is left out (rig lift: 400 ft): '400 ft' no longer fits this rig field.",
            "Event 7 is left out (complaints: no water, hard one way): there is no complaint 'hard one way'.",
            "Event 8 is left out (photo taken): unknown kind of event 'photo taken'.",
            "Event 9 is left out (answered): the event 'answered' lacks 'finding'."});
    CHECK(job.facts.answers.size() == 1);
    CHECK(job.facts.complaints == std::set<Index>{find(pump.complaints, "no_water")});
    CHECK(job.facts.tried.empty());
    CHECK(internal_id_in(texts_of(make_job_page(pump, job))) == "");
}

TEST_CASE("A job without a single event that can be read is still a job") {
    const Knowledge pump = pump_knowledge();
    const Job none_at_all = replay(pump, 1, {});
    CHECK(none_at_all.facts == Facts{});
    const Job damaged = replay(pump, 1, {{1, noon, "opened", "\xff"}, {2, noon, "", ""}});
    CHECK(damaged.left_out.size() == 2);
    CHECK(make_job_page(pump, damaged).events.size() == 2);
}
