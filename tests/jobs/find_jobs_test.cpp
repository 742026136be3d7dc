// Finding jobs among many, opening one again, and the jobs of one boat beside each other.
#include "app/jobs/find_jobs.hpp"
#include "app/jobs/boat_history.hpp"
#include "app/jobs/closed_job.hpp"
#include "app/jobs/learning.hpp"
#include "jobs/yard_records.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::vector<JobNumber> found(const YardRecords& yard, const JobFilter& filter) {
    const auto jobs = find_jobs(yard.store(), yard.knowledge(), filter);
    REQUIRE_OK(jobs);
    std::vector<JobNumber> numbers;
    for (const FoundJob& job : jobs.value().jobs) numbers.push_back(job.row.number);
    return numbers;
}

using Numbers = std::vector<JobNumber>;

// 1 Grey Heron, handed back; 2 Little Auk, in hand; 3 grey heron, handed back with another cause.
void fill(YardRecords& yard) {
    yard.foot_valve("Grey Heron", "2026-03-01");
    yard.job("Little Auk", "2026-04-01", {ComplaintsSet{{"no_water"}}}, "nothing comes out");
    yard.job("grey heron", "2026-05-01",
             {ComplaintsSet{{"weak_water"}}, Noted{"Ask the owner about the strainer"},
              HandedBack{"strainer_blocked", false, ""}});
}

}  // namespace

TEST_CASE("Jobs are found by boat, complaint, cause, state and days, and each narrows the others") {
    YardRecords yard;
    fill(yard);
    CHECK(found(yard, {}) == Numbers{3, 2, 1});
    CHECK(found(yard, {.boat = "heron"}) == Numbers{3, 1});
    CHECK(found(yard, {.complaint = "weak_water"}) == Numbers{3, 1});
    CHECK(found(yard, {.complaint = "weak"}) == Numbers{3, 1});
    CHECK(found(yard, {.cause = "foot_valve_leaking"}) == Numbers{1});
    CHECK(found(yard, {.cause = "foot valve leaks"}) == Numbers{1});
    CHECK(found(yard, {.cause = "not_listed"}).empty());
    CHECK(found(yard, {.state = "in hand"}) == Numbers{2});
    CHECK(found(yard, {.from = "2026-03-02", .to = "2026-04-20"}) == Numbers{2});
    CHECK(found(yard, {.from = "2026-04-20"}) == Numbers{3});
    CHECK(found(yard, {.boat = "heron", .cause = "strainer_blocked", .state = "handed back"}) == Numbers{3});
    CHECK(found(yard, {.most = 2}) == Numbers{3, 2});
}

TEST_CASE("Words are looked for in what people wrote and in names, not in the names of fields") {
    YardRecords yard;
    fill(yard);
    CHECK(found(yard, {.words = "BRACKET"}) == Numbers{1});
    CHECK(found(yard, {.words = "pressure heron"}) == Numbers{1});
    CHECK(found(yard, {.words = "strainer owner"}) == Numbers{3});
    CHECK(found(yard, {.words = "foot valve"}) == Numbers{1});
    CHECK(found(yard, {.words = "handed back dirt"}) == Numbers{1});
    CHECK(found(yard, {.words = "confirmed"}).empty());
    CHECK(found(yard, {.words = "zebra"}).empty());
    const auto jobs = find_jobs(yard.store(), yard.knowledge(), {.words = "bracket"});
    REQUIRE_OK(jobs);
    CHECK(jobs.value().jobs[0].match == "Note: “The bracket is loose”");
    CHECK(jobs.value().jobs[0].under == "Handed back. Weak water. Cause: foot valve leaks, seen and proved");
    CHECK(jobs.value().told == "1 of 3 jobs.");
}

TEST_CASE("A day, state, complaint or cause that is none is refused with what would be right") {
    YardRecords yard;
    fill(yard);
    const auto refused = [&yard](const JobFilter& filter) {
        const auto jobs = find_jobs(yard.store(), yard.knowledge(), filter);
        REQUIRE_FALSE(jobs.ok());
        return jobs.error().text();
    };
    CHECK(refused({.from = "1.3.2026"}) == "'1.3.2026' is no day (write it as 2026-11-25)");
    CHECK(refused({.to = "2026-13-01"}) == "'2026-13-01' is no day (write it as 2026-11-25)");
    CHECK(refused({.state = "lost"}) == "'lost' is no state of a job (in hand, or handed back)");
    CHECK(refused({.cause = "xylophone"}).find("hardover knowledge list causes") != std::string::npos);
}

TEST_CASE(
    "A job that is opened again teaches nothing until it is handed back, and then only its last cause") {
    YardRecords yard;
    const JobNumber job = yard.foot_valve("Grey Heron", "2026-03-01");
    const auto counted = [&yard] {
        const auto jobs = count_jobs(yard.knowledge(), yard.store(), {}, false);
        REQUIRE_OK(jobs);
        return jobs.value().own.causes;
    };
    CHECK(counted().at("in_use").at("foot_valve_leaking") == 1);
    yard.tell(job, Reopened{"weak again after a week"});
    CHECK(counted().empty());
    CHECK(found(yard, {.cause = "foot_valve_leaking"}).empty());
    CHECK(found(yard, {.words = "week"}) == Numbers{job});
    yard.tell(job, HandedBack{"suction_air", true, ""});
    CHECK(counted().at("in_use").size() == 1);
    CHECK(counted().at("in_use").at("suction_air") == 1);
    CHECK(found(yard, {.cause = "suction_air"}) == Numbers{job});
}

TEST_CASE("The jobs of a boat stand beside each other, and a cause that came again is named") {
    YardRecords yard;
    fill(yard);
    yard.foot_valve("Grey Heron", "2026-06-10");
    const auto history = boat_history(yard.store(), yard.prepared(), "GREY HERON");
    REQUIRE_OK(history);
    const std::string text = boat_history_text(history.value());
    INFO(text);
    const auto holds = [&text](const std::string& part) { return text.find(part) != std::string::npos; };
    CHECK(holds("Grey Heron: 3 jobs\n"));
    CHECK(
        holds("Job 1, opened 2026-03-01, handed back 2026-03-01\n  The customer: “no pressure at the hose”\n"
              "  Complaint: Weak water\n"));
    CHECK(holds("  Done: Renew the foot valve: cured\n  Cause: Foot valve leaks, seen and proved\n"));
    CHECK(holds(
        "The same cause came again: foot valve leaks, in job 1 and job 4 (the last 101 days later). What "
        "brings it about may still be there.\n"));
    CHECK(holds("The same complaint as in job 1, another cause, in job 3 (61 days later).\n"));
    CHECK_FALSE(holds("Little Auk"));
}

TEST_CASE("A job in hand is compared with what the boat had before") {
    YardRecords yard;
    yard.foot_valve("Grey Heron", "2026-03-01");
    yard.job("Grey Heron", "2026-04-01", {ComplaintsSet{{"weak_water"}}, Answered{"prime", "runs_back"}});
    const auto history = boat_history(yard.store(), yard.prepared(), "Grey Heron");
    REQUIRE_OK(history);
    REQUIRE(history.value().compared.size() == 1);
    CHECK(history.value().compared[0].starts_with(
        "Job 2 is in hand: foot valve leaks, the cause of job 1, is at "));
    CHECK(boat_history(yard.store(), yard.prepared(), "Nobody").error().kind == Error::Kind::not_found);
}
