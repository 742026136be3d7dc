// The explanations in words and as JSON, on jobs of the garden pump and of the shipped knowledge.
#include "app/jobs/explain.hpp"

#include <algorithm>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += line + "\n";
    return text;
}

Facts hard_one_way() {
    const Knowledge& steering = shipped();
    Facts facts;
    facts.complaints = {find(steering.complaints, "hard_one_way")};
    facts.history = find(steering.histories, "just_fitted");
    return facts;
}

}  // namespace

TEST_CASE("What would turn the first cause is said with names and chances, and no ids") {
    const Knowledge& steering = shipped();
    const Turning turning = what_would_turn(steering, hard_one_way());
    REQUIRE(turning.first != none);
    REQUIRE_FALSE(turning.by_answering.empty());
    const std::vector<std::string> lines = turning_texts(steering, turning);
    INFO(joined(lines));
    CHECK(lines[0].starts_with("First now: " + steering.causes[turning.first].name));
    CHECK(lines[1].find("would come first") != std::string::npos);
    CHECK(lines[1].find("chance") != std::string::npos);
    std::vector<PageText> texts;
    for (const std::string& line : lines) texts.push_back({"turning", line});
    CHECK(internal_id_in(texts) == "");
}

TEST_CASE("The JSON of what would turn it names findings, readings and causes that exist") {
    const Knowledge& steering = shipped();
    const Turning turning = what_would_turn(steering, hard_one_way());
    const auto json = turning_json(steering, turning);
    CHECK(json["first"] == steering.causes[turning.first].id);
    REQUIRE(json["by_answering"].size() == turning.by_answering.size());
    for (const auto& turn : json["by_answering"]) {
        CHECK(turn["chance"].get<double>() > 0);
        CHECK(find(steering.causes, turn["first"].get<std::string>()) != none);
        for (const auto& answer : turn["answers"]) {
            const Index finding = find(steering.findings, answer["finding"].get<std::string>());
            REQUIRE(finding != none);
            CHECK(find_reading(steering.findings[finding], answer["reading"].get<std::string>()) >= 0);
        }
    }
}

TEST_CASE("One cause rather than another is a table whose rows add up to its last line") {
    const Knowledge& steering = shipped();
    const Facts facts = hard_one_way();
    const Assessment now = assess(steering, facts);
    const Index a = now.ranking[0].cause;
    const Index b = now.ranking[1].cause;
    const Contrast table = contrast(steering, facts, a, b);
    REQUIRE(table.possible);
    const auto json = contrast_json(steering, table);
    double sum = 0;
    for (const auto& row : json["rows"]) sum += row["decibans"].get<double>();
    CHECK(sum == Approx(json["decibans"].get<double>()).margin(1e-9));
    const auto lines = contrast_texts(steering, a, b, table);
    INFO(joined(lines));
    CHECK(lines.back().find("together, for") != std::string::npos);
    CHECK(contrast_texts(steering, a, a, Contrast{}).front().find("cannot be") != std::string::npos);
}

TEST_CASE("What each answer matters is said where it moves the first cause") {
    const Knowledge& steering = shipped();
    const Facts facts = hard_one_way();
    const Trace traced = trace(steering, facts);
    REQUIRE_FALSE(traced.answers.empty());
    const auto lines = trace_texts(steering, traced);
    INFO(joined(lines));
    CHECK(lines.front().starts_with("Without the answer about"));
    const auto json = trace_json(steering, traced);
    CHECK(json["rules"].size() == traced.rules.size());
    CHECK(json["answers"][0]["without"]["probability"].get<double>() != traced.probability);
}

TEST_CASE("A job answered again after a remedy shows both answers, and weighs both") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.answer("prime", "runs_back").tell(Tried{"tighten_clamps", "better"}).answer("prime", "sinks");
    const JobPage page = bench.page();
    const auto prime = std::find_if(page.answers.begin(), page.answers.end(),
                                    [](const AnswerLine& line) { return line.finding == "prime"; });
    REQUIRE(prime != page.answers.end());
    INFO(prime->origin);
    CHECK(prime->origin.starts_with("answered; before any remedy: "));
    std::size_t most = 0;
    for (const CauseLine& cause : page.causes) {
        std::size_t about_prime = 0;
        for (const auto* side : {&cause.weights_for, &cause.weights_against}) {
            for (const WeightText& weight : *side) about_prime += weight.id == "prime" ? 1 : 0;
        }
        most = std::max(most, about_prime);
    }
    CHECK(most <= 2);
    CHECK(bench.reloaded().facts == bench.job().facts);
}
