// Going back to any point of a job, and forward again, without overwriting anything.
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

Result<void> go(Bench& bench, const Knowledge& knowledge, Job& job, int sequence) {
    return return_to(bench.store(), knowledge, job, sequence, noon);
}

}  // namespace

TEST_CASE("Back to any point of a job the facts are as they were then, and every event is still there") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    std::vector<Facts> facts{{}, bench.job().facts};  // by sequence: how things stood after it
    const auto tell = [&](const Event& event) {
        bench.tell(event);
        facts.push_back(bench.job().facts);
    };
    tell(ComplaintsSet{{"no_water"}});
    tell(Answered{"prime", "sinks"});
    tell(Answered{"prime", "runs_back"});
    bench.undo();
    facts.push_back(bench.job().facts);
    tell(HistorySet{"in_use"});
    tell(Undone{5});  // the taking back is taken back
    Job job = bench.job();
    const std::size_t told = job.events.size();
    for (const int point : {6, 2, 7, 1, 4, 3, 5, 7, 4}) {
        REQUIRE_OK(go(bench, pump, job, point));
        INFO("after going to " << point);
        CHECK(job.facts == facts[static_cast<std::size_t>(point)]);
        CHECK(job.assessment.ranking.front().probability ==
              assess(pump, job.facts).ranking.front().probability);
        for (std::size_t i = 0; i < told; ++i) CHECK(job.events[i].body == bench.job().events[i].body);
    }
    const Job again = bench.reloaded();
    CHECK(again.facts == job.facts);
    CHECK(again.events.size() == job.events.size());
}

TEST_CASE("Going to where the job stands writes nothing, and a point that is not there is refused") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.answer("prime", "sinks");
    Job job = bench.job();
    REQUIRE_OK(go(bench, pump, job, 2));
    CHECK(job.events.size() == 2);
    CHECK(go(bench, pump, job, 3).error().what == "this job has no event 3");
    CHECK_FALSE(go(bench, pump, job, 0).ok());
    CHECK(job.events.size() == 2);
}

TEST_CASE("The time line tells what was taken back and what was brought back") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.answer("prime", "sinks").undo();
    bench.tell(Undone{3});
    const JobPage page = bench.page();
    REQUIRE(page.events.size() == 4);
    const std::string told = page.events[1].text;
    CHECK(page.events[1].counts);
    CHECK(page.events[2].text == "Taken back: " + told);
    CHECK(page.events[2].kind == EventLine::Kind::took_back);
    CHECK(page.events[3].text == "Brought back: " + told);
    CHECK(page.events[3].kind == EventLine::Kind::brought_back);
}
