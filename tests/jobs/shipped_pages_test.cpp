// The pages of the shipped steering knowledge: cautions before steps, no internal name before a person's
// eyes.
#include <algorithm>
#include <random>

#include "app/jobs/proved.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

bool shows_all(const StepCard& card, const Knowledge& knowledge, const std::vector<Index>& cautions) {
    return std::all_of(cautions.begin(), cautions.end(), [&](Index caution) {
        return std::any_of(card.cautions.begin(), card.cautions.end(), [&](const CautionText& text) {
            return text.id == knowledge.cautions[caution].id && !text.hurts.empty() && !text.avoid.empty();
        });
    });
}

Job job_with_next(const Knowledge& knowledge, const NextStep& next) {
    Job job;
    job.facts.complaints = {0};
    job.assessment = assess(knowledge, job.facts);
    job.assessment.next = next;
    return job;
}

std::string random_answer(const Finding& finding, std::mt19937& random) {
    const auto pick = [&random](std::size_t n) {
        return std::uniform_int_distribution<std::size_t>(0, n - 1)(random);
    };
    if (pick(8) == 0) return "?";
    if (!finding.readings.empty() && pick(3) > 0) return finding.readings[pick(finding.readings.size())].id;
    if (!finding.unit) return finding.readings[pick(finding.readings.size())].id;
    return std::to_string(1 + pick(40)) + " " + finding.unit->name;
}

}  // namespace

TEST_CASE("Every check shows its cautions with its steps, whichever finding it is done for") {
    const Knowledge& steering = shipped();
    Job job;
    job.assessment = assess(steering, job.facts);
    int with_cautions = 0;
    for (std::size_t i = 0; i < steering.findings.size(); ++i) {
        const Finding& finding = steering.findings[i];
        const StepCard card = question_card(steering, job, static_cast<Index>(i));
        INFO(finding.id);
        CHECK(internal_id_in(texts_of(card)) == "");
        REQUIRE_FALSE(card.questions.empty());
        if (finding.check == none) continue;
        const Check& check = steering.checks[finding.check];
        CHECK(card.steps == check.steps);
        CHECK(shows_all(card, steering, check.cautions));
        with_cautions += check.cautions.empty() ? 0 : 1;
    }
    CHECK(with_cautions > 20);
}

TEST_CASE("Every proof and every remedy shows its cautions, and what the rules add to them") {
    const Knowledge& steering = shipped();
    int with_cautions = 0;
    for (std::size_t i = 0; i < steering.causes.size(); ++i) {
        const Cause& cause = steering.causes[i];
        INFO(cause.id);
        REQUIRE(cause.proof != none);
        NextStep prove;
        prove.kind = NextStep::Kind::prove;
        prove.index = cause.proof;
        prove.cause = static_cast<Index>(i);
        const StepCard proof = make_job_page(steering, job_with_next(steering, prove)).card;
        REQUIRE(proof.kind == StepCard::Kind::prove);
        CHECK(shows_all(proof, steering, steering.checks[cause.proof].cautions));
        CHECK(proof.why.find("It is proved when ") != std::string::npos);
        CHECK(internal_id_in(texts_of(proof)) == "");

        NextStep repair;
        repair.kind = NextStep::Kind::remedy;
        repair.index = cause.remedy;
        repair.cause = static_cast<Index>(i);
        Job job = job_with_next(steering, repair);
        job.assessment.cautions = {0};
        const StepCard remedy = make_job_page(steering, job).card;
        REQUIRE(remedy.kind == StepCard::Kind::remedy);
        CHECK(shows_all(remedy, steering, steering.remedies[cause.remedy].cautions));
        CHECK(shows_all(remedy, steering, {0}));
        CHECK(internal_id_in(texts_of(remedy)) == "");
        with_cautions += steering.remedies[cause.remedy].cautions.empty() ? 0 : 1;
    }
    CHECK(with_cautions > 20);
}

TEST_CASE("The checks after a remedy carry its cautions too") {
    const Knowledge& steering = shipped();
    for (std::size_t i = 0; i < steering.remedies.size(); ++i) {
        Job job;
        job.facts.tried[static_cast<Index>(i)] = Outcome::cured;
        job.assessment = assess(steering, job.facts);
        const StepCard card = make_job_page(steering, job).card;
        INFO(steering.remedies[i].id);
        REQUIRE(card.kind == StepCard::Kind::after);
        CHECK(shows_all(card, steering, steering.remedies[i].cautions));
    }
}

TEST_CASE("What was proved and not put right is named before the boat goes back, and on the job") {
    const Knowledge& steering = shipped();
    Bench bench(steering);
    bench.tell(ComplaintsSet{{"loose_or_clunking"}});
    bench.answer("rod_end_play", "loose").answer("bracket_moves", "moves").answer("bracket_bolts", "loose");
    CHECK(proved_and_left(bench.job()).size() == 2);
    bench.tell(Tried{"torque_bracket", "cured"});
    const StepCard after = bench.page().card;
    REQUIRE(after.kind == StepCard::Kind::after);
    const auto names = [](const std::string& text, const std::string& part) {
        return text.find(part) != std::string::npos;
    };
    CHECK(std::any_of(after.steps.begin(), after.steps.end(), [&](const std::string& step) {
        return names(step, "Ram pins or rod ends worn was proved and is not put right. Look again");
    }));
    CHECK(std::none_of(after.steps.begin(), after.steps.end(),
                       [&](const std::string& step) { return names(step, "Ram bracket bolts loose was"); }));
    bench.tell(HandedBack{"bracket_loose", true, ""});
    CHECK(names(bench.page().card.why, "Proved and not put right: ram pins or rod ends worn."));

    Bench nothing_done(steering);
    nothing_done.answer("hose_skin", "worn_through");
    nothing_done.tell(HandedBack{"hose_chafed", true, ""});
    CHECK(names(nothing_done.page().card.why, "Proved and not put right: hose chafed."));
}

TEST_CASE("Jobs answered at random never show an internal name, and open again to the same page") {
    const Knowledge& steering = shipped();
    std::mt19937 random(11);
    for (std::size_t run = 0; run < 6; ++run) {
        Bench bench(steering);
        bench.tell(ComplaintsSet{{steering.complaints[run % steering.complaints.size()].id}});
        bench.tell(HistorySet{steering.histories[run % steering.histories.size()].id});
        bench.tell(RigSet{"helm", run % 2 == 0 ? "manual_pump" : "cable_valve"});
        for (int step = 0; step < 12; ++step) {
            const JobPage page = bench.page();
            const std::string found = internal_id_in(texts_of(page));
            CHECK(found == "");
            if (page.card.questions.empty()) break;
            const QuestionText& question = page.card.questions.front();
            const Finding& finding = steering.findings[find(steering.findings, question.finding)];
            bench.answer(finding.id, random_answer(finding, random));
        }
        CHECK(whole_page(make_job_page(steering, bench.reloaded())) == whole_page(bench.page()));
    }
}

TEST_CASE("What is assumed of a rudder is nothing that only an outboard or a pair of drives has") {
    const Knowledge& steering = shipped();
    const auto set = [&](Facts& facts, const char* field, const RigValue& value) {
        const Index index = find(steering.rig_fields, field);
        REQUIRE(index != none);
        facts.rig[index] = value;
    };
    const auto assumed = [&](const char* mount, bool bracket_looked_at) {
        Job job;
        job.facts.complaints = {find(steering.complaints, "binds_at_one_place")};
        set(job.facts, "helm", std::string("manual_pump"));
        set(job.facts, "mount", std::string(mount));
        // Out of level, so that a rule works out where the bracket goes on the raked transom.
        if (bracket_looked_at) job.facts.answers[find(steering.findings, "ram_level")] = Answer{0};
        job.assessment = assess(steering, job.facts);
        std::string all;
        for (const std::string& line : make_job_page(steering, job).assumptions) all += line + "\n";
        return all;
    };
    const std::string rudder = assumed("inboard_tiller", false);
    INFO(rudder);
    for (const char* other : {"Transom rake", "Transom thickness", "Drives apart"}) {
        INFO(other);
        CHECK(rudder.find(other) == std::string::npos);
    }
    CHECK(rudder.find("Ram stroke taken as 9 in") != std::string::npos);
    CHECK(assumed("sterndrive_external", true).find("Transom rake") != std::string::npos);
}
