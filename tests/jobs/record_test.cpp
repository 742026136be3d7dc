// Recording: what is refused, the full form in which answers are kept, undo and redo, two windows on one job.
#include <nlohmann/json.hpp>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string kept(const Bench& bench, const char* field) {
    return nlohmann::json::parse(bench.last_body())[field].get<std::string>();
}

}  // namespace

TEST_CASE("A job starts with the boat, the customer's words and the knowledge it was made with") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    CHECK(bench.job().number == 1);
    CHECK(bench.job().boat == "Marsh Hen");
    CHECK(bench.job().words == "it is all wrong");
    CHECK(bench.job().knowledge == pump.fingerprint);
    CHECK_FALSE(start_job(bench.store(), pump, {"  ", "", ""}, noon).ok());
    const auto jobs = bench.store().jobs();
    REQUIRE_OK(jobs);
    REQUIRE(jobs.value().size() == 1);
    CHECK(jobs.value()[0].summary.boat == "Marsh Hen");
    CHECK(jobs.value()[0].summary.state == "in hand");
}

TEST_CASE("The list of jobs follows what is told") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water", "no_water", "weak_water"}});
    CHECK(bench.store().jobs().value()[0].summary.complaint == "no_water, weak_water");
    bench.tell(HandedBack{"foot_valve_leaking", true, ""});
    CHECK(bench.store().jobs().value()[0].summary.state == "handed back");
    bench.tell(Reopened{});
    CHECK(bench.store().jobs().value()[0].summary.state == "in hand");
}

TEST_CASE("An answer is kept in its full form") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.answer("prime", "It sinks within the hour");
    CHECK(kept(bench, "answer") == "sinks");
    bench.answer("prime", "?");
    CHECK(kept(bench, "answer") == "cannot_tell");
    bench.answer("bucket_time", "25 1/2 s");
    CHECK(kept(bench, "answer") == "25.5 s ± 1 s");
    bench.answer("bucket_time", "25 s ± 3 s");
    CHECK(kept(bench, "answer") == "25 s ± 3 s");
    bench.answer("seal_drip", "slow");
    CHECK(kept(bench, "answer") == "slow");
    bench.tell(RigSet{"drive", "A hand lever"});
    CHECK(kept(bench, "value") == "hand");
    bench.tell(RigSet{"lift", "9 1/4 ft"});
    CHECK(kept(bench, "value") == "9.25 ft");
}

TEST_CASE("A measured number comes back to the last digits in every unit") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    for (const Finding& finding : steering.findings) {
        if (!finding.unit) continue;
        INFO(finding.id << " in " << finding.unit->name);
        for (const std::string number : {"0", "0.33333333333333331", "7.123456789012345", "0.0000001"}) {
            const Quantity measured = quantity_in(std::stod(number), *finding.unit);
            bench.answer(finding.id, number + " " + finding.unit->name);
            const Answer first = bench.job().facts.answers.at(find(steering.findings, finding.id));
            bench.answer(finding.id, kept(bench, "answer"));
            const Answer again = bench.job().facts.answers.at(find(steering.findings, finding.id));
            const auto& a = std::get<Quantity>(first.given);
            const auto& b = std::get<Quantity>(again.given);
            CHECK(b.value == Approx(a.value).epsilon(1e-14).margin(1e-18));
            CHECK(b.spread == Approx(a.spread).epsilon(1e-14));
            CHECK(a.value == Approx(measured.value).epsilon(1e-14).margin(1e-18));
        }
    }
}

TEST_CASE("What does not fit the knowledge is refused with the way out, and nothing is written") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    CHECK(bench.refused(Answered{"primee", "sinks"}).text() ==
          "there is no finding 'primee' (did you mean 'prime'?)");
    CHECK(bench.refused(Answered{"prime", "sings"}).cure == "did you mean 'sinks'?");
    CHECK(bench.refused(Answered{"bucket_time", "25 gal"}).kind == Error::Kind::bad_input);
    CHECK(bench.refused(Answered{"prime", ""}).kind == Error::Kind::bad_input);
    CHECK(bench.refused(RigSet{"lift", "400 ft"}).cure == "at most 30 ft");
    CHECK(bench.refused(RigSet{"lifft", "4 ft"}).cure == "did you mean 'lift'?");
    CHECK(bench.refused(HistorySet{"used"}).kind == Error::Kind::not_found);
    CHECK(bench.refused(ComplaintsSet{{"no_water", "noise"}}).what == "there is no complaint 'noise'");
    CHECK(bench.refused(TakenBack{"prime"}).what == "'prime' has no answer to take back");
    CHECK(bench.refused(NeedMarked{"sunshine", true}).kind == Error::Kind::not_found);
    CHECK(bench.refused(Tried{"renew_fuse", "perhaps"}).cure == "say cured, better or not_cured");
    CHECK(bench.refused(Tried{"renew_fuses", "cured"}).cure == "did you mean 'renew_fuse'?");
    CHECK(bench.refused(Noted{" \n"}).what == "the note is empty");
    CHECK(bench.refused(HandedBack{"gremlins", true, ""}).cure ==
          "not_listed stands for something that is not on the list");
    CHECK(bench.refused(Reopened{}).what == "this job is not handed back");
    CHECK(bench.refused(Undone{1}).what == "the opening cannot be taken back");
    CHECK(bench.refused(Undone{2}).what == "this job has no event 2");
    CHECK(bench.refused(Opened{"Tern", "", ""}).what == "this job is opened already");
}

TEST_CASE("A job handed back takes notes only, until it is reopened") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(HandedBack{"not_listed", false, "found by the owner"});
    CHECK(bench.refused(Answered{"prime", "sinks"}).text() == "this job is handed back (reopen it first)");
    CHECK(bench.refused(HandedBack{"not_listed", false, ""}).cure == "reopen it first");
    bench.tell(Noted{"he rang again"});
    CHECK(bench.job().handed_back.has_value());
    bench.tell(Reopened{});
    CHECK_FALSE(bench.job().handed_back.has_value());
    bench.answer("prime", "sinks");
}

TEST_CASE("Undo goes back step by step to the opening, and each undo can itself be taken back") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    CHECK(bench.try_undo().error().what == "there is nothing to take back");
    bench.answer("prime", "sinks").answer("prime", "runs_back").tell(HistorySet{"in_use"});
    const Index prime = find(pump.findings, "prime");
    bench.undo();
    CHECK(bench.job().facts.history == none);
    bench.undo();
    CHECK(bench.job().facts.answers.at(prime) == Answer{1});
    bench.undo();
    CHECK(bench.job().facts == Facts{});
    CHECK_FALSE(bench.try_undo().ok());
    CHECK(bench.job().events.size() == 7);

    bench.tell(Undone{bench.job().events.back().sequence});
    CHECK(bench.job().facts.answers.at(prime) == Answer{1});
    CHECK(bench.refused(Undone{7}).what == "event 7 is taken back already");
    bench.undo();
    CHECK(bench.job().facts == Facts{});
}

TEST_CASE("A handing back can be taken back like any other step") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(HandedBack{"fuse_blown", true, ""}).undo();
    CHECK_FALSE(bench.job().handed_back.has_value());
    CHECK(bench.store().jobs().value()[0].summary.state == "in hand");
}

TEST_CASE("The second of two windows on one job must load it again, and loses nothing") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    Job other = bench.reloaded();
    bench.answer("prime", "sinks");
    const auto clash = record(bench.store(), pump, other, Answered{"flow", "weak"}, noon);
    REQUIRE_FALSE(clash.ok());
    CHECK(clash.error().cure == "load it again");
    CHECK(other.facts.answers.empty());
    auto loaded = load_job(bench.store(), pump, other.number);
    REQUIRE_OK(loaded);
    REQUIRE_OK(record(bench.store(), pump, loaded.value(), Answered{"flow", "weak"}, noon));
    CHECK(loaded.value().facts.answers.size() == 2);
}

TEST_CASE("A job that is not in the records cannot be loaded") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const auto job = load_job(bench.store(), pump, 12);
    REQUIRE_FALSE(job.ok());
    CHECK(job.error().kind == Error::Kind::not_found);
}

TEST_CASE("The clock writes UTC in one form") {
    const std::string now = utc_now();
    REQUIRE(now.size() == 20);
    CHECK(now[4] == '-');
    CHECK(now[10] == 'T');
    CHECK(now[19] == 'Z');
    CHECK(now > "2024-01-01T00:00:00Z");
}
