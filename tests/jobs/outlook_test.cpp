// What is drawn of "why this question" and "what would turn it" must be what the reasoning says.
#include "app/jobs/outlook.hpp"

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

TEST_CASE("Each answer's bars stand where the causes stand once it is given") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    bench.tell(ComplaintsSet{{"hard_one_way"}});
    const NextStep& next = bench.job().assessment.next;
    REQUIRE((next.kind == NextStep::Kind::ask || !next.findings.empty()));
    const Index asked = next.kind == NextStep::Kind::ask ? next.index : next.findings.front();
    const Finding& finding = steering.findings[asked];
    const QuestionOutlook outlook = question_outlook(steering, bench.job(), asked);
    REQUIRE(outlook.answers.size() == finding.readings.size());
    double chances = 0;
    for (const AnswerOutlook& answer : outlook.answers) chances += answer.chance;
    CHECK(chances == Approx(1));

    const AnswerOutlook& worst = outlook.answers.front();
    bench.answer(finding.id, finding.readings.front().id);
    CHECK(worst.answer == finding.readings.front().text);
    REQUIRE_FALSE(worst.causes.empty());
    CHECK(worst.causes.size() <= 5);
    for (const CauseMove& move : worst.causes) {
        for (const CauseLine& line : bench.page().causes) {
            if (line.name != move.name) continue;
            CHECK(move.then == Approx(line.probability));
            CHECK(move.then_text == line.percent);
        }
    }
    const bool first_shown = std::any_of(
        worst.causes.begin(), worst.causes.end(),
        [&](const CauseMove& move) { return move.first && move.name == bench.page().causes.front().name; });
    CHECK(first_shown);
}

TEST_CASE("Every answer shows the same causes in the same order, so that the bars can be compared") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    bench.tell(ComplaintsSet{{"wander"}});
    for (std::size_t f = 0; f < steering.findings.size(); ++f) {
        const QuestionOutlook outlook = question_outlook(steering, bench.job(), static_cast<Index>(f));
        for (const AnswerOutlook& answer : outlook.answers) {
            REQUIRE(answer.causes.size() == outlook.answers.front().causes.size());
            for (std::size_t c = 0; c < answer.causes.size(); ++c) {
                CHECK(answer.causes[c].name == outlook.answers.front().causes[c].name);
                CHECK(answer.causes[c].now == outlook.answers.front().causes[c].now);
            }
        }
    }
}

TEST_CASE("A plain measurement, and no question at all, have no outlook") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    CHECK(question_outlook(steering, bench.job(), none).answers.empty());
    const Index plain = find(steering.findings, "turns_counted_port");
    REQUIRE(plain != none);
    CHECK(question_outlook(steering, bench.job(), plain).answers.empty());
}

TEST_CASE("What would turn it is sketched with the words the terminal says") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    bench.tell(ComplaintsSet{{"hard_one_way"}}).tell(HistorySet{"just_fitted"});
    const Turning turning = what_would_turn(steering, bench.job().facts);
    const TurningSketch sketch = turning_sketch(steering, turning);
    REQUIRE_FALSE(sketch.turns.empty());
    CHECK(sketch.first == bench.page().causes.front().name);
    const TurnSketch& turn = sketch.turns.front();
    CHECK_FALSE(turn.of_given);
    CHECK(turn.condition.starts_with("If "));
    CHECK(turn.first != sketch.first);
    CHECK(turn.chance == turning.by_answering.front().chance);
    CHECK(turn.probability == turning.by_answering.front().first_probability);
}
