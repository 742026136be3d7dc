// How a learner is doing, in words; and from when on a new day counts.
#include "app/study/progress_page.hpp"

#include <cstdlib>
#include <ctime>

#include "app/study/known_learner.hpp"
#include "study/study_support.hpp"

using namespace hardover;
using namespace hardover::study;
using namespace hardover_tests;

namespace {

Review review(const std::string& statement, int day, double mark, double sure) {
    Review review;
    review.item = statement + "/x";
    review.statement = statement;
    review.form = "signs";
    review.day = day;
    review.mark = mark;
    review.sure = sure;
    review.grade = grade_of(mark, sure);
    return review;
}

}  // namespace

TEST_CASE("What comes back when is counted once, the overdue under today") {
    LearnerState learner;
    learner.take(review("signs/a", 100, 0, 0.8));  // wrong: again tomorrow
    learner.take(review("signs/b", 100, 1, 0.8));  // right: in two days
    const auto total = [](const ProgressPage& page) {
        int sum = 0;
        for (const DueLine& line : page.due) sum += line.statements;
        return sum;
    };
    const ProgressPage then = make_progress_page({}, learner, {}, 100);
    CHECK(total(then) == 2);
    CHECK(then.due.front().when == "Tomorrow");
    const ProgressPage later = make_progress_page({}, learner, {}, 150);
    REQUIRE(later.due.size() == 1);
    CHECK(later.due.front().when == "Today");
    CHECK(later.due.front().statements == 2);
}

TEST_CASE("Answers of about the same sureness stand together with how many of them were right") {
    LearnerState learner;
    learner.take(review("signs/a", 100, 1, 0.8));
    learner.take(review("signs/b", 100, 0, 0.78));
    learner.take(review("signs/c", 100, 0, 0.2));
    const ProgressPage page = make_progress_page({}, learner, {}, 100);
    REQUIRE(page.bands.size() == 2);
    CHECK(page.bands[0].words == "1 answer, 0 in 100 right");
    CHECK(page.bands[1].words == "2 answers, 50 in 100 right");
    CHECK(page.bands[1].name == "Sure: 79 in 100");
}

TEST_CASE("A boat that was not finished is told so, a finished one with what better steps save") {
    practice::RecordedBoat open, done;
    open.at = done.at = "2026-11-25T15:03:13Z";
    done.begun.seed = 7;
    done.ended = practice::Ended{};
    done.ended->cured = true;
    done.ended->minutes = 12;
    const ProgressPage page = make_progress_page({}, {}, {open, done}, 100);
    REQUIRE(page.boats.size() == 2);
    CHECK(page.boats[0] ==
          "Practice boat 7, level 1, begun 2026-11-25: right after 12 min; no better steps on average");
    CHECK(page.boats[1].find("not finished") != std::string::npos);
}

TEST_CASE("Work until four in the morning counts for the day before") {
    setenv("TZ", "UTC", 1);
    tzset();
    CHECK(study_day("1970-01-02T03:59:59Z") == 0);
    CHECK(study_day("1970-01-02T04:00:00Z") == 1);
    CHECK(study_day("2026-11-25T15:03:13Z") == 20782);
    for (const char* no_moment : {"never", "20262026-12-04T09:00:00Z", "2026-11-25T15:03:13", "2026-11-25"}) {
        INFO(no_moment);
        CHECK(study_day(no_moment) == 0);
    }
}
