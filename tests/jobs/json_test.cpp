// The JSON of an assessment, of a worksheet and of the counts, as front ends and other programs read it.
#include "app/jobs/json.hpp"

#include <fstream>

#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;
using nlohmann::ordered_json;

namespace {

std::vector<std::string> keys(const ordered_json& object) {
    std::vector<std::string> names;
    for (const auto& item : object.items()) names.push_back(item.key());
    return names;
}

Assessment pump_assessment(const Knowledge& pump) {
    Facts facts;
    facts.complaints = {find(pump.complaints, "no_water")};
    facts.rig[find(pump.rig_fields, "drive")] = std::string("electric");
    facts.answers[find(pump.findings, "motor_sound")] = Answer{0};
    facts.answers[find(pump.findings, "suction_vacuum")] =
        Answer{quantity_in(10, *pump.findings[find(pump.findings, "suction_vacuum")].unit)};
    return assess(pump, facts);
}

}  // namespace

TEST_CASE("The assessment has the documented keys in order") {
    const Knowledge pump = pump_knowledge();
    const ordered_json json = assessment_json(pump, pump_assessment(pump));
    CHECK(keys(json) == std::vector<std::string>{"ranking", "not_listed", "several", "next", "cautions",
                                                 "deferrals", "worksheets", "stops", "barred", "assumptions",
                                                 "rules", "bound", "conflict"});
    CHECK(keys(json["next"]) == std::vector<std::string>{"kind", "id", "text", "minutes", "minutes_after",
                                                         "ahead_of", "again", "narrows"});
    REQUIRE(json["ranking"].size() == pump.causes.size());
    CHECK(keys(json["ranking"][0]) ==
          std::vector<std::string>{"cause", "name", "probability", "for", "against", "state"});
}

TEST_CASE("The ranking falls, its weights are on their side, and its numbers are the assessment's") {
    const Knowledge pump = pump_knowledge();
    const Assessment assessment = pump_assessment(pump);
    const ordered_json json = assessment_json(pump, assessment);
    CHECK(json["ranking"][0]["cause"] == "fuse_blown");
    CHECK(json["ranking"][0]["name"] == "Fuse blown");
    double last = 1;
    for (std::size_t i = 0; i < json["ranking"].size(); ++i) {
        const ordered_json& line = json["ranking"][i];
        CHECK(line["probability"].get<double>() == assessment.ranking[i].probability);
        CHECK(line["probability"].get<double>() <= last);
        last = line["probability"].get<double>();
        for (const auto& weight : line["for"]) CHECK(weight["decibans"].get<double>() > 0);
        for (const auto& weight : line["against"]) CHECK(weight["decibans"].get<double>() < 0);
        const std::size_t zero = static_cast<std::size_t>(
            std::count_if(assessment.ranking[i].weights.begin(), assessment.ranking[i].weights.end(),
                          [](const Weight& w) { return w.decibans == 0; }));
        CHECK(line["for"].size() + line["against"].size() + zero == assessment.ranking[i].weights.size());
    }
    const ordered_json& first = json["ranking"][0]["for"][0];
    CHECK(first["id"] == "motor_sound");
    CHECK(first["text"] == "Sound of the motor: Nothing at all");
    for (const auto& line : json["ranking"]) {
        if (line["cause"] != "strainer_blocked") continue;
        CHECK(line["for"][0]["text"] == "Vacuum at the pump: More than 9 psi");
    }
    CHECK(json["rules"][0]["id"] == "r_dead_motor");
    CHECK(json["cautions"][0]["avoid"] == "Pull the plug and keep it in sight before any cover is opened.");
    CHECK(json["deferrals"].size() == 2);
}

TEST_CASE("A worksheet gives numbers in its units, or null where one is missing") {
    const Knowledge pump = pump_knowledge();
    Facts facts;
    const Index volume = find(pump.findings, "bucket_volume");
    facts.answers[volume] = Answer{quantity_in(2.5, *pump.findings[volume].unit)};
    ordered_json sheet = sheet_json(pump, assess(pump, facts).worksheets.at(0));
    CHECK(keys(sheet) ==
          std::vector<std::string>{"id", "name", "inputs", "results", "advice", "refused", "source"});
    CHECK(sheet["inputs"]["volume"]["value"].get<double>() == Approx(2.5));
    CHECK(sheet["inputs"]["volume"]["unit"] == "gal");
    CHECK(sheet["inputs"]["volume"]["assumed"] == false);
    CHECK(sheet["inputs"]["lift"]["assumed"] == true);
    CHECK(sheet["inputs"]["time"]["value"].is_null());
    CHECK(sheet["results"]["flow"]["value"].is_null());

    const Index time = find(pump.findings, "bucket_time");
    facts.answers[time] = Answer{quantity_in(60, *pump.findings[time].unit)};
    sheet = sheet_json(pump, assess(pump, facts).worksheets.at(0));
    CHECK(sheet["results"]["flow"]["value"].get<double>() == Approx(2.5));
    CHECK(sheet["results"]["flow"]["text"].get<std::string>().find("2.5 gal/min") == 0);
    CHECK(sheet["advice"].size() == 1);
    CHECK(sheet["refused"] == "");
    CHECK(sheet["source"] == "Source: invented for teaching");
}

TEST_CASE("The counts are those of the knowledge") {
    const Knowledge pump = pump_knowledge();
    const ordered_json counts = figures_json(pump);
    CHECK(counts["causes"] == 8);
    CHECK(counts["findings"] == 13);
    CHECK(counts["complaints"] == 2);
    CHECK(counts["rules"] == 7);
    CHECK(counts["worksheets"] == 1);
}

TEST_CASE("A job's assessment is JSON at every step, whatever the next step is") {
    const Knowledge pump = pump_knowledge();
    Bench bench(pump);
    std::set<std::string> kinds;
    const std::vector<Event> events = {ComplaintsSet{{"no_water"}}, RigSet{"drive", "electric"},
                                       Answered{"motor_sound", "silent"}, Answered{"fuse", "blown"},
                                       Tried{"renew_fuse", "cured"}};
    for (const Event& event : events) {
        bench.tell(event);
        const ordered_json json = assessment_json(pump, bench.job().assessment);
        const std::string kind = json["next"]["kind"];
        kinds.insert(kind);
        CHECK(json["next"]["id"].get<std::string>().empty() == (kind == "done" || kind == "stop_asking"));
        CHECK(ordered_json::parse(json.dump()) == json);
    }
    CHECK(kinds.count("remedy") == 1);
    CHECK(kinds.count("done") == 1);
}
