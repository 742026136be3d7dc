// Handing back a boat with several faults: what is suggested, how sure it is, what is refused, and where both
// causes stand afterwards. The boats and jobs are invented.
#include <algorithm>
#include <cmath>
#include <map>

#include "app/jobs/boat_history.hpp"
#include "app/jobs/find_jobs.hpp"
#include "app/jobs/job_calibration.hpp"
#include "app/jobs/job_file.hpp"
#include "app/jobs/learning.hpp"
#include "app/jobs/proved.hpp"
#include "app/records/whole_file.hpp"
#include "jobs/jobs_support.hpp"
#include "jobs/yard_records.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

using Causes = std::vector<RecordedCause>;

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

// A kinked hose that was straightened, and a foot valve that leaked as well.
void two_faults(Bench& bench) {
    bench.tell(HistorySet{"in_use"}).tell(ComplaintsSet{{"weak_water"}});
    bench.answer("hose_lie", "kinked").answer("prime", "runs_back");
    bench.tell(Tried{"straighten_hose", "better"}).tell(Tried{"renew_foot_valve", "cured"});
}

// Both of them confirmed unless told otherwise.
HandedBack with_two(bool second = true) {
    return {"foot_valve_leaking", true, "dirt in it", {}, {{"hose_kinked", second}}};
}

JobNumber yard_job(YardRecords& yard, const HandedBack& back, const std::string& day = "2026-03-01") {
    return yard.job("Grey Heron", day,
                    {ComplaintsSet{{"weak_water"}}, HistorySet{"in_use"}, Answered{"prime", "runs_back"},
                     Answered{"hose_lie", "kinked"}, Tried{"straighten_hose", "better"},
                     Tried{"renew_foot_valve", "cured"}, back});
}

}  // namespace

TEST_CASE("What was proved and put right is suggested for the hand-back, whether it cured or only helped") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    two_faults(bench);
    Causes suggested = suggested_causes(pump, bench.job());
    std::sort(suggested.begin(), suggested.end(),
              [](const auto& a, const auto& b) { return a.cause < b.cause; });
    CHECK(suggested == Causes{{"foot_valve_leaking", true}, {"hose_kinked", true}});
    const JobPage page = bench.page();
    REQUIRE(page.put_right.size() == 2);
    for (const CauseLine& line : page.put_right) CHECK(line.proved);
}

TEST_CASE("What was not proved, or what no remedy helped with, is not suggested") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}}).answer("hose_lie", "kinked").answer("fuse", "blown");
    bench.tell(Tried{"straighten_hose", "not_cured"}).tell(Tried{"tighten_clamps", "cured"});
    CHECK(suggested_causes(pump, bench.job()).empty());
    CHECK(bench.page().put_right.empty());
}

TEST_CASE("A check that finds nothing after the work does not take back what it proved before") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}}).answer("prime", "runs_back");
    bench.tell(Tried{"renew_foot_valve", "cured"}).answer("prime", "holds");
    CHECK_FALSE(is_proved(bench.job(), find(pump.causes, "foot_valve_leaking")));
    CHECK(suggested_causes(pump, bench.job()) == Causes{{"foot_valve_leaking", true}});
    CHECK(hand_back_with(pump, bench.job(), {{"foot_valve_leaking", false}}, "").confirmed);
}

TEST_CASE("An answer put right before anything was tried proves nothing") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}}).answer("prime", "runs_back").answer("prime", "holds");
    bench.tell(Tried{"renew_foot_valve", "cured"});
    CHECK(suggested_causes(pump, bench.job()).empty());
    CHECK_FALSE(hand_back_with(pump, bench.job(), {{"foot_valve_leaking", false}}, "").confirmed);
}

TEST_CASE("A cause counts as confirmed when its check proved it or somebody says that it was seen") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    two_faults(bench);
    const HandedBack back = hand_back_with(
        pump, bench.job(),
        {{"hose_kinked", false}, {"impeller_worn", true}, {"fuse_blown", false}, {"not_listed", false}},
        "so");
    CHECK(
        causes_of(back) ==
        Causes{{"hose_kinked", true}, {"impeller_worn", true}, {"fuse_blown", false}, {"not_listed", false}});
    CHECK(back.note == "so");
}

TEST_CASE("A hand-back with a cause that is none, or one cause twice, is refused and nothing is written") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const Error unknown = bench.refused(HandedBack{"hose_kinked", true, "", {}, {{"hose_kinkd", true}}});
    CHECK(unknown.what == "there is no cause 'hose_kinkd'");
    CHECK(holds(unknown.cure, "hose_kinked"));
    const Error twice = bench.refused(HandedBack{"hose_kinked", true, "", {}, {{"hose_kinked", false}}});
    CHECK(twice.text() == "the cause 'hose_kinked' is named twice (name it once)");
    bench.tell(HandedBack{"hose_kinked", true, "", {}, {{"not_listed", false}}});
    CHECK(bench.job().handed_back->further == Causes{{"not_listed", false}});
}

TEST_CASE("Both causes stand on the job's page and in its list of events") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    two_faults(bench);
    bench.tell(with_two(false));
    const JobPage page = bench.page();
    CHECK(
        page.card.why ==
        "Causes recorded: Foot valve leaks, seen and proved; hose kinked, assumed, not proved. dirt in it.");
    CHECK(
        page.events.back().text ==
        "Handed back. Causes: foot valve leaks, seen and proved; hose kinked, assumed, not proved. “dirt in "
        "it”");
    CHECK(bench.reloaded().handed_back->further == Causes{{"hose_kinked", false}});
}

TEST_CASE("What was told before a remedy is marked so, and what was looked at again is not") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.answer("prime", "runs_back").answer("hose_lie", "kinked");
    const auto mark = [&bench](const std::string& finding) {
        for (const AnswerLine& line : bench.page().answers) {
            if (line.finding == finding) return line.before_work;
        }
        return std::string("not there");
    };
    CHECK(mark("prime") == "");
    bench.tell(Tried{"straighten_hose", "better"}).answer("hose_lie", "free");
    CHECK(mark("prime") == "before the work");
    CHECK(mark("hose_lie") == "");
    bench.tell(Tried{"renew_foot_valve", "cured"});
    CHECK(mark("prime") == "before the work");
    CHECK(mark("hose_lie") == "after the first remedy");
}

TEST_CASE("A job is found by each of its causes, and its line names both") {
    YardRecords yard;
    yard_job(yard, with_two());
    for (const char* cause : {"foot_valve_leaking", "hose_kinked"}) {
        const auto jobs = find_jobs(yard.store(), yard.knowledge(), {.cause = cause});
        REQUIRE_OK(jobs);
        REQUIRE(jobs.value().jobs.size() == 1);
        CHECK(holds(jobs.value().jobs[0].under,
                    "Causes: foot valve leaks, seen and proved; hose kinked, seen and proved"));
    }
    CHECK(find_jobs(yard.store(), yard.knowledge(), {.cause = "suction_air"}).value().jobs.empty());
    CHECK(find_jobs(yard.store(), yard.knowledge(), {.words = "kinked"}).value().jobs.size() == 1);
}

TEST_CASE("A cause that came again as the further one is named in the boat's history") {
    YardRecords yard;
    yard_job(yard, with_two());
    yard.job("Grey Heron", "2026-03-11",
             {ComplaintsSet{{"weak_water"}}, HandedBack{"hose_kinked", true, ""}});
    const auto history = boat_history(yard.store(), yard.prepared(), "Grey Heron");
    REQUIRE_OK(history);
    CHECK(history.value().jobs[0].cause == "Foot valve leaks, seen and proved; hose kinked, seen and proved");
    CHECK(history.value().compared ==
          std::vector<std::string>{"The same cause came again: hose kinked, in job 1 and job 2 (the last 10 "
                                   "days later). What brings it about may still be there."});
}

TEST_CASE("The table of jobs holds both causes, and a job file brings both back") {
    YardRecords yard;
    yard_job(yard, with_two(false));
    REQUIRE_OK(write_job_table(yard.store(), yard.knowledge(), yard.file("jobs.csv"), {}));
    const auto table = read_whole_file(yard.file("jobs.csv"));
    REQUIRE_OK(table);
    INFO(table.value());
    CHECK(holds(table.value(), ",foot_valve_leaking; hose_kinked,yes; no,dirt in it,"));
    REQUIRE_OK(write_job_file(yard.store(), yard.file("jobs.json"), {}, false));
    const auto read = read_job_file(yard.knowledge(), yard.file("jobs.json"));
    REQUIRE_OK(read);
    const auto arriving = read.value().arriving.job(read.value().arriving.heads.front());
    REQUIRE_OK(arriving);
    CHECK(arriving.value().events.back().body == yard.load(1).events.back().body);
}

TEST_CASE("Each confirmed cause counts once, and one that was only assumed does not") {
    YardRecords yard;
    yard_job(yard, with_two());
    const auto counted = [&yard] {
        const auto jobs = count_jobs(yard.knowledge(), yard.store(), {}, true);
        REQUIRE_OK(jobs);
        return jobs.value();
    };
    CHECK(counted().own.with_cause("in_use", "foot_valve_leaking") == 1);
    CHECK(counted().own.with_cause("in_use", "hose_kinked") == 1);
    CHECK(counted().own_jobs == 1);
    CHECK(counted().own.readings.at("hose_kinked").at("hose_lie").at("kinked") == 1);
    CHECK(counted().own.readings.at("foot_valve_leaking").at("hose_lie").at("kinked") == 1);
    yard_job(yard, with_two(false));
    CHECK(counted().own.with_cause("in_use", "foot_valve_leaking") == 2);
    CHECK(counted().own.with_cause("in_use", "hose_kinked") == 1);
    yard_job(yard, {"suction_air", false, "", {}, {{"hose_kinked", true}}});
    CHECK(counted().own.with_cause("in_use", "suction_air") == 0);
    CHECK(counted().own.with_cause("in_use", "hose_kinked") == 2);
    CHECK(counted().own_jobs == 3);
    CHECK(counted().not_confirmed == 0);
}

TEST_CASE("A reading after the remedy for one of two causes does not teach how that cause shows itself") {
    YardRecords yard;
    yard.job("Grey Heron", "2026-03-01",
             {HistorySet{"in_use"}, Answered{"hose_lie", "kinked"}, Tried{"straighten_hose", "better"},
              Answered{"hose_lie", "free"}, Answered{"prime", "runs_back"},
              Tried{"renew_foot_valve", "cured"}, with_two()});
    const auto jobs = count_jobs(yard.knowledge(), yard.store(), {}, true);
    REQUIRE_OK(jobs);
    const auto& readings = jobs.value().own.readings;
    using Counts = std::map<std::string, std::map<std::string, std::int64_t>>;
    CHECK(readings.at("hose_kinked") == Counts{{"hose_lie", {{"kinked", 1}}}});
    CHECK(readings.at("foot_valve_leaking") ==
          Counts{{"hose_lie", {{"free", 1}}}, {"prime", {{"runs_back", 1}}}});
}

TEST_CASE("Calibration takes each confirmed cause as present, and leaves one that was assumed out") {
    const auto scored = [](const HandedBack& back, bool with_work) {
        YardRecords yard;
        if (with_work) {
            yard_job(yard, back);
        } else {
            yard.job("Grey Heron", "2026-03-01",
                     {ComplaintsSet{{"weak_water"}}, HistorySet{"in_use"}, Answered{"prime", "runs_back"},
                      Answered{"hose_lie", "kinked"}, back});
        }
        const auto calibration = calibrate(yard.knowledge(), yard.store());
        REQUIRE_OK(calibration);
        return calibration.value().shipped;
    };
    const auto came = [](const CalibratedOdds& odds) {
        std::size_t sum = 0;
        for (const ReliabilityRow& row : odds.table) sum += row.came;
        return sum;
    };
    const CalibratedOdds both = scored(with_two(), false);
    const CalibratedOdds one = scored({"foot_valve_leaking", true, ""}, false);
    const CalibratedOdds assumed = scored(with_two(false), false);
    CHECK(both.jobs.jobs == 1);
    CHECK(came(both) == 2);
    CHECK(came(one) == 1);
    CHECK(both.forecasts == one.forecasts);
    // What was said of the hose: scored as absent, its square; as present, the square of what lacks to 1.
    const double said = std::sqrt(one.jobs.brier - assumed.jobs.brier);
    CHECK(said > 0.1);
    CHECK(said + std::sqrt(both.jobs.brier - assumed.jobs.brier) == Approx(1));
    CHECK(both.jobs.first == 1);
    CHECK(assumed.forecasts + 1 == one.forecasts);
    CHECK(came(assumed) == 1);
    // The first remedy put one of them right: the job is looked at as it stood before that.
    CHECK(scored(with_two(), true).jobs.brier == Approx(both.jobs.brier));
}
