// The page of a job on the garden pump, from intake to handing back.
#include <algorithm>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using Kind = StepCard::Kind;

namespace {

bool holds(const std::vector<std::string>& lines, const std::string& line) {
    return std::find(lines.begin(), lines.end(), line) != lines.end();
}

const CauseLine& cause(const JobPage& page, const std::string& id) {
    const auto found = std::find_if(page.causes.begin(), page.causes.end(),
                                    [&id](const CauseLine& line) { return line.id == id; });
    REQUIRE(found != page.causes.end());
    return *found;
}

const AnswerLine& answer_line(const JobPage& page, const std::string& finding) {
    const auto found = std::find_if(page.answers.begin(), page.answers.end(),
                                    [&finding](const AnswerLine& line) { return line.finding == finding; });
    REQUIRE(found != page.answers.end());
    return *found;
}

bool answered(const JobPage& page, const std::string& finding) {
    return std::any_of(page.answers.begin(), page.answers.end(),
                       [&finding](const AnswerLine& line) { return line.finding == finding; });
}

std::vector<std::string> field_ids(const QuestionText& question) {
    std::vector<std::string> ids;
    for (const MeasureField& field : question.fields) ids.push_back(field.id);
    return ids;
}

}  // namespace

TEST_CASE("A new job asks what the customer says") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const JobPage page = bench.page();
    CHECK(page.title == "Job 1 · Marsh Hen");
    CHECK(page.words == "it is all wrong");
    CHECK(page.phase == "Intake");
    CHECK(page.card.kind == Kind::intake);
    CHECK(page.card.heading == "What does the customer say?");
    CHECK(page.card.steps.size() == 3);
    CHECK(page.answers.empty());
    CHECK(page.complaints.size() == 2);
    CHECK_FALSE(page.complaints[0].chosen);
    CHECK(page.needs[0].text == "Mains may be switched on");
    CHECK(page.needs[0].chosen);
    CHECK(page.other_knowledge.empty());
    REQUIRE(page.events.size() == 1);
    CHECK(page.events[0].text == "Opened for Marsh Hen: “it is all wrong”");
}

TEST_CASE("What the customer said stands among the answers as told, and can be overruled") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}});
    CHECK(bench.page().phase != "Intake");
    AnswerLine flow = answer_line(bench.page(), "flow");
    CHECK(flow.answer == "Little");
    CHECK(flow.origin == "told by the customer");
    CHECK(flow.changeable);
    bench.answer("flow", "strong");
    flow = answer_line(bench.page(), "flow");
    CHECK(flow.answer == "As it should");
    CHECK(flow.origin == "answered");
    bench.answer("flow", "?");
    CHECK(answer_line(bench.page(), "flow").answer == "can't tell");
}

TEST_CASE("A question says what it would separate, and what each answer would make first") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}}).tell(RigSet{"drive", "electric"}).tell(HistorySet{"in_use"});
    const JobPage page = bench.page();
    const bool looks = page.card.kind == Kind::question || page.card.kind == Kind::check;
    REQUIRE(looks);
    CHECK(page.card.why.find("Separates ") != std::string::npos);
    REQUIRE_FALSE(page.card.questions.empty());
    REQUIRE(page.card.branches.size() >= page.card.questions[0].choices.size());
    CHECK(page.card.branches[0].find("If “") == 0);
    CHECK(page.card.branches[0].find(" %") != std::string::npos);
    CHECK(page.minutes_left.find("About ") == 0);
    REQUIRE(page.plan.size() >= 2);
    CHECK(page.plan[0].minutes == page.card.minutes);
    CHECK(page.plan.back().text == "If none of this cures it: call for help");
    CHECK(page.plan.back().minutes == 120);
}

TEST_CASE("A proof is shown with its cautions, its steps and what would prove it") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}})
        .tell(RigSet{"drive", "electric"})
        .tell(HistorySet{"just_installed"})
        .answer("motor_sound", "silent");
    const JobPage page = bench.page();
    CHECK(page.causes[0].id == "fuse_blown");
    // The reasoning may go straight to the remedy, which costs about as much as the look.
    const bool acts = page.card.kind == Kind::prove || page.card.kind == Kind::remedy;
    REQUIRE(acts);
    CHECK(page.card.cause == "fuse_blown");
    REQUIRE_FALSE(page.card.cautions.empty());
    CHECK(page.card.cautions[0].name == "Mains voltage");
    CHECK(page.cautions.size() == 1);
    CHECK(holds(
        page.trace,
        "Because the complaint is “No water comes” and sound of the motor is “Nothing at all”: a silent "
        "motor has no current."));
    CHECK(holds(page.deferrals,
                "Mains wiring: Work on the fixed wiring is not ours. Left to: a licensed electrician."));
    const CauseLine& fuse = cause(page, "fuse_blown");
    REQUIRE_FALSE(fuse.weights_for.empty());
    CHECK(fuse.weights_for[0].text == "Sound of the motor: Nothing at all");
    CHECK(fuse.weights_for[0].strength == "strongly for");
}

TEST_CASE("What would prove a cause is said in the words of its findings") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    Job job = bench.job();
    job.facts.complaints = {0};
    const auto proof_of = [&](const std::string& id) {
        NextStep& step = job.assessment.next;
        step.kind = NextStep::Kind::prove;
        step.cause = find(pump.causes, id);
        step.index = pump.causes[step.cause].proof;
        const std::string why = make_job_page(pump, job).card.why;
        return why.substr(why.find("It is proved"));
    };
    CHECK(proof_of("fuse_blown") == "It is proved when fuse is “Blown”.");
    CHECK(
        proof_of("suction_air") ==
        "It is proved when prime after stopping is “It runs back at once” or “It sinks within the hour” and "
        "air in the water is not “It runs smoothly”.");
    CHECK(proof_of("shaft_seal_worn") == "It is proved when drip at the shaft is more than 3 drop/min.");
}

TEST_CASE("A cause that is proved goes on to its remedy, then to the checks after, then back to the owner") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}}).tell(RigSet{"drive", "electric"}).answer("fuse", "blown");
    JobPage page = bench.page();
    CHECK(page.card.id == "motor_sound");
    CHECK(
        page.card.why.find("One more look before the work: is it something other than fuse blown, foot valve "
                           "leaks or suction hose draws air?") == 0);

    bench.answer("motor_sound", "silent");
    page = bench.page();
    CHECK(page.phase == "Putting it right");
    CHECK(page.card.id == "renew_fuse");
    CHECK(page.card.why == "Fuse blown is proved.");
    CHECK(page.card.eyebrow.find("Put it right · about ") == 0);
    CHECK(page.card.parts == std::vector<std::string>{"Fuse (about 1)"});
    CHECK(page.card.after == std::vector<std::string>{"Run the pump for ten minutes."});
    CHECK(page.card.sources == "Source: invented for teaching");
    CHECK(cause(page, "fuse_blown").state == "proved");

    bench.tell(Tried{"renew_fuse", "cured"});
    page = bench.page();
    CHECK(page.phase == "Checks after");
    CHECK(page.card.kind == Kind::after);
    CHECK(page.card.why == "Cured by: Renew the fuse.");
    CHECK(page.card.steps.front() == "Run the pump for ten minutes.");
    CHECK(holds(page.card.steps,
                "Not ours to decide. Mains wiring: Work on the fixed wiring is not ours. Left to: a licensed "
                "electrician."));
    CHECK(
        page.card.steps.back() ==
        "Hand the boat back. Record the true cause, or each of several, and whether it was seen and proved.");
    CHECK(page.card.cautions.at(0).id == "mains");
    CHECK(page.minutes_left.empty());
    CHECK(cause(page, "fuse_blown").state == "proved, put right");

    bench.tell(HandedBack{"fuse_blown", true, "wet plug"});
    page = bench.page();
    CHECK(page.phase == "Handed back");
    CHECK(page.card.why == "Cause recorded: Fuse blown, seen and proved. wet plug.");
    CHECK(page.plan.empty());
    CHECK(page.events.back().text == "Handed back. Cause: fuse blown, seen and proved. “wet plug”");
}

TEST_CASE("A remedy that did not cure is said beside its cause, and the search goes on") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}})
        .answer("hose_lie", "kinked")
        .answer("nozzle_off", "same")
        .answer("prime", "holds")
        .answer("air_in_flow", "smooth");
    CHECK(bench.page().card.id == "straighten_hose");
    bench.tell(Tried{"straighten_hose", "not_cured"});
    const JobPage page = bench.page();
    CHECK(page.card.id != "straighten_hose");
    CHECK(cause(page, "hose_kinked").state == "proved, its remedy did not cure");
    for (const PlanLine& line : page.plan) CHECK(line.text != "Then: Straighten the hose");
    CHECK(page.events.back().text == "Straighten the hose: not cured");
}

TEST_CASE("A finding from a worksheet asks for the measured numbers and the figures still assumed") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"weak_water"}});
    const Index share = find(pump.findings, "flow_share");
    StepCard card = question_card(pump, bench.job(), share);
    CHECK(card.kind == Kind::check);
    CHECK(card.id == "fill_bucket");
    CHECK(card.eyebrow == "Check · about 5 min · bucket, watch");
    REQUIRE(card.questions.size() == 1);  // the plain measurements are its fields
    CHECK(field_ids(card.questions[0]) ==
          std::vector<std::string>{"bucket_volume", "bucket_time", "rated_flow", "lift"});
    const auto& fields = card.questions[0].fields;
    CHECK(fields[0].hint == "for example 2.5 gal");
    CHECK_FALSE(fields[0].of_rig);
    CHECK(fields[2].hint == "taken as 8 gal/min until you say otherwise");
    CHECK(fields[2].of_rig);

    bench.answer("bucket_volume", "2.5 gal").tell(RigSet{"lift", "12 ft"});
    card = question_card(pump, bench.job(), share);
    CHECK(field_ids(card.questions[0]) ==
          std::vector<std::string>{"bucket_volume", "bucket_time", "rated_flow"});
    CHECK(card.questions[0].fields[0].text == "2.5 gal ± 0.1 gal");
    JobPage page = bench.page();
    REQUIRE(page.sheets.size() == 1);
    CHECK(page.sheets[0].results.at(0).value == "still needs: time to fill it");
    CHECK(page.sheets[0].inputs.at(1).value == "not known yet");

    bench.answer("bucket_time", "60 s");
    page = bench.page();
    CHECK(page.sheets[0].results.at(0).name == "Flow");
    CHECK(page.sheets[0].results.at(0).value.find("2.5 gal/min ± ") == 0);
    CHECK(page.sheets[0].advice ==
          std::vector<std::string>{"The pump gives clearly less than its plate says."});
    CHECK(page.sheets[0].inputs.at(2).assumed);
    CHECK_FALSE(page.sheets[0].inputs.at(3).assumed);
    const AnswerLine& line = answer_line(page, "flow_share");
    CHECK(line.origin == "worked out");
    CHECK_FALSE(line.changeable);
    CHECK(answer_line(page, "bucket_time").origin == "measured");
    CHECK(holds(page.assumptions, "Rated flow taken as 8 gal/min (not measured on this boat)"));
}

TEST_CASE("A plain measurement asked for by name is asked with what is worked out from it") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const StepCard card = question_card(pump, bench.job(), find(pump.findings, "bucket_time"));
    REQUIRE(card.questions.size() == 1);
    CHECK(card.questions[0].finding == "flow_share");
    bench.answer("flow_share", "short");
    const StepCard again = question_card(pump, bench.job(), find(pump.findings, "bucket_time"));
    CHECK(again.questions.at(0).finding == "bucket_time");
    CHECK(field_ids(again.questions[0]) == std::vector<std::string>{"bucket_time"});
}

TEST_CASE("The spread of a thermometer is said in degrees, not as a temperature") {
    Job job;
    const Index heat = find(shipped().findings, "oil_heat");
    REQUIRE(shipped().findings[static_cast<std::size_t>(heat)].spread > 0);
    const auto hint = [&](UnitSystem units) {
        job.shop.units = units;
        return question_card(shipped(), job, heat).questions.at(0).fields.at(0).hint;
    };
    CHECK(hint(UnitSystem::us) == "read to within ± 5 °F unless you say otherwise");
    CHECK(hint(UnitSystem::metric) == "read to within ± 2.78 °C unless you say otherwise");
}

TEST_CASE("Any finding can be asked for at any time, with its check and what else the check gets") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const StepCard card = question_card(pump, bench.job(), find(pump.findings, "prime"));
    CHECK(card.heading == "Watch the prime");
    CHECK(card.steps.size() == 2);
    REQUIRE(card.questions.size() == 2);
    CHECK(card.questions[0].finding == "prime");
    CHECK(card.questions[1].finding == "air_in_flow");
    const StepCard plain = question_card(pump, bench.job(), find(pump.findings, "flow"));
    CHECK(plain.kind == Kind::question);
    CHECK(plain.questions.size() == 1);
}

TEST_CASE("A measurement near a limit names both readings it may be") {
    const Knowledge pump = pump_knowledge();
    const Index drip = find(pump.findings, "seal_drip");
    const Unit per_minute = *pump.findings[drip].unit;
    CHECK(answer_text(pump, drip, Answer{quantity_in(40, per_minute)}) ==
          "40 drops/min ± 2 drops/min (More than 20 drops a minute)");
    CHECK(answer_text(pump, drip, Answer{quantity_in(3.5, per_minute)}) ==
          "3.5 drops/min ± 2 drops/min (3 to 20 drops a minute or Less than 3 drops a minute)");
}

TEST_CASE("A cause that cannot be on this rig has no line, on a rig that can have it it has one") {
    const Knowledge pump = pump_knowledge();
    const auto lists_fuse = [&](const char* drive) {
        Bench bench(pump);
        bench.tell(ComplaintsSet{{"no_water"}}).tell(RigSet{"drive", drive});
        const JobPage page = bench.page();
        return std::any_of(page.causes.begin(), page.causes.end(),
                           [](const CauseLine& line) { return line.id == "fuse_blown"; });
    };
    CHECK(lists_fuse("electric"));
    CHECK_FALSE(lists_fuse("hand"));
}

TEST_CASE("A cause that a rule clears stands after those still in the running and says why") {
    const Knowledge pump =
        pump_knowledge({{"", "rules.yaml", "- rule_out: fuse_blown", "- rule_out: hose_kinked"}});
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}}).tell(RigSet{"drive", "hand"});
    const JobPage page = bench.page();
    const CauseLine& last = page.causes.back();
    CHECK(last.id == "hose_kinked");
    CHECK(last.percent == "0 %");
    CHECK(last.state == "ruled out: a hand pump has no fuse.");
    CHECK(page.not_listed.find("Something not on this list: ") == 0);
}

TEST_CASE("A stop comes with its sentence") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(RigSet{"drive", "electric"}).answer("seal_drip", "fast");
    CHECK(bench.page().stops ==
          std::vector<std::string>{
              "Wet motor: The pump is not to be run until the motor is dry and its seal renewed."});
}

TEST_CASE("A circumstance not given now is waited for, not forgotten") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(NeedMarked{"well_open", false});
    const JobPage page = bench.page();
    CHECK_FALSE(page.needs[1].chosen);
    CHECK(page.events.back().text == "Well cover can be lifted: not available now");
}

TEST_CASE("An answer changed is the only one that counts, and the old one stays in the events") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}}).answer("prime", "holds");
    const double before = cause(bench.page(), "foot_valve_leaking").probability;
    bench.answer("prime", "runs_back");
    const JobPage page = bench.page();
    CHECK(answer_line(page, "prime").answer == "It runs back at once");
    CHECK(cause(page, "foot_valve_leaking").probability > 2 * before);
    CHECK(page.events[2].text == "Prime after stopping: It stays");
    bench.undo();
    CHECK(cause(bench.page(), "foot_valve_leaking").probability == before);
    CHECK_FALSE(bench.page().events[3].counts);
    CHECK(bench.page().events[4].text == "Taken back: Prime after stopping: It runs back at once");
}

TEST_CASE("Can't tell moves no cause and is not asked again") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(ComplaintsSet{{"no_water"}}).tell(RigSet{"drive", "electric"});
    for (int i = 0; i < 20; ++i) {
        const JobPage page = bench.page();
        if (page.card.questions.empty()) break;
        const std::string asked = page.card.questions[0].finding;
        CHECK_FALSE(answered(page, asked));
        bench.answer(asked, "?");
        for (const CauseLine& line : bench.page().causes) {
            CHECK(line.probability == Approx(cause(page, line.id).probability).margin(1e-12));
        }
    }
}

TEST_CASE("A lid closed at any step opens to the same page") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const std::vector<Event> events = {ComplaintsSet{{"weak_water"}},
                                       RigSet{"drive", "electric"},
                                       HistorySet{"in_use"},
                                       Answered{"bucket_time", "40 s"},
                                       Answered{"bucket_volume", "2 1/2 gal ± 0.2 gal"},
                                       Answered{"prime", "?"},
                                       NeedMarked{"well_open", false},
                                       Noted{"back on Monday"},
                                       Answered{"seal_drip", "21 drop/min"},
                                       Undone{6},
                                       Tried{"clean_nozzle", "better"},
                                       Tried{"renew_shaft_seal", "cured"},
                                       HandedBack{"shaft_seal_worn", false, ""}};
    for (const Event& event : events) {
        bench.tell(event);
        CHECK(whole_page(make_job_page(pump, bench.reloaded())) == whole_page(bench.page()));
        CHECK(internal_id_in(texts_of(bench.page())) == "");
    }
}

TEST_CASE("A job made with another state of the knowledge says so") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    const Knowledge changed =
        pump_knowledge({{"a name", "checks.yaml", "name: Fill a bucket", "name: Fill the bucket"}});
    const JobPage page = make_job_page(changed, bench.reloaded());
    CHECK(page.other_knowledge.find("This job was started with another state of the knowledge") == 0);
}

TEST_CASE("Answers that contradict each other are said without internal names") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    bench.tell(RigSet{"drive", "hand"}).tell(ComplaintsSet{{"no_water", "weak_water"}});
    for (const Finding& finding : pump.findings) {
        if (!finding.readings.empty()) bench.answer(finding.id, finding.readings.front().id);
        CHECK(internal_id_in(texts_of(bench.page())) == "");
    }
}
