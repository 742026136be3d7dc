// What stands in the files of the garden pump stands in the knowledge: order, shares, limits, layers, names.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

// The first result of a formula or condition with one name known.
Lookup only(const std::string& name, const Value& value) {
    return [=](const std::string& asked) { return asked == name ? value : Value{Unknown{}}; };
}

const Finding& finding(const Knowledge& pump, const std::string& id) {
    const Index index = find(pump.findings, id);
    REQUIRE(index != none);
    return pump.findings[index];
}

}  // namespace

TEST_CASE("A garden pump reads as well as a boat, without a fault") {
    const Knowledge pump = pump_knowledge();
    CHECK(pump.causes.size() == 8);
    CHECK(pump.findings.size() == 13);
    CHECK(pump.remedies.size() == 8);
    CHECK(pump.rules.size() == 7);
    CHECK(as_text(check_sense(pump)) == "");
}

TEST_CASE("Entries stand in the order of file name and line, whatever order the files are given in") {
    std::vector<KnowledgeFile> files = garden_pump();
    std::reverse(files.begin(), files.end());
    const KnowledgeRead read = read_knowledge(files, Functions{});
    REQUIRE(read.knowledge);
    const Knowledge pump = pump_knowledge();
    CHECK(read.knowledge->fingerprint == pump.fingerprint);
    CHECK(pump.causes.front().id == "foot_valve_leaking");
    CHECK(pump.causes.back().id == "shaft_seal_worn");
    CHECK(pump.causes[1].place.file == "causes.yaml");
    CHECK(pump.causes[1].place.line == 16);
    CHECK(pump.causes[1].place.column == 3);
}

TEST_CASE("What a cause shows is read in words and numbers, and the sound reading has what is left") {
    const Knowledge pump = pump_knowledge();
    const Cause& valve = pump.causes[find(pump.causes, "foot_valve_leaking")];
    REQUIRE(valve.shows.size() == 3);
    CHECK(pump.findings[valve.shows[0].finding].id == "flow");
    REQUIRE(valve.shows[0].how_often.size() == 3);
    CHECK(valve.shows[0].how_often[0] == 0.75);  // usually
    CHECK(valve.shows[0].how_often[1] == 0.25);  // sometimes
    CHECK(valve.shows[0].how_often[2] == 0);
    CHECK(valve.shows[1].how_often[1] == 0.2);
    CHECK(valve.shows[1].how_often[2] == Approx(0.05));
    CHECK(valve.odds == std::vector<double>{120, 260});
    CHECK(pump.remedies[valve.remedy].id == "renew_foot_valve");
    CHECK(pump.checks[valve.proof].id == "watch_prime");
}

TEST_CASE("The stray setting is shared out evenly over the bad readings") {
    const Knowledge pump = pump_knowledge();
    CHECK(finding(pump, "flow").stray == std::vector<double>{0.01, 0.01, 0.98});
    CHECK(finding(pump, "fuse").stray == std::vector<double>{0.02, 0.98});
    CHECK(finding(pump, "bucket_time").stray.empty());
    const Finding& prime = finding(pump, "prime");  // says for itself: {sinks: 0.1}
    CHECK(prime.stray[0] == 0.01);
    CHECK(prime.stray[1] == 0.1);
    CHECK(prime.stray[2] == Approx(0.89));
}

TEST_CASE("Limits, units and spreads of a measured finding are read in SI") {
    const Knowledge pump = pump_knowledge();
    const Finding& vacuum = finding(pump, "suction_vacuum");
    const double psi = 6894.757293168;  // Pa, NIST SP 811, appendix B.8
    REQUIRE(vacuum.unit);
    CHECK(vacuum.limits_are_lower_ends);
    CHECK(vacuum.readings[0].limit->value == Approx(9 * psi));
    CHECK(vacuum.readings[1].limit->value == Approx(6 * psi));
    CHECK_FALSE(vacuum.readings[2].limit);
    CHECK(vacuum.spread == Approx(0.5 * psi));
    const Finding& share = finding(pump, "flow_share");
    CHECK_FALSE(share.limits_are_lower_ends);
    REQUIRE(share.from);
    CHECK(pump.worksheets[share.from->worksheet].results[share.from->result].id == "share");
}

TEST_CASE("A check gets the findings that name it, in their order") {
    const Knowledge pump = pump_knowledge();
    const Check& bucket = pump.checks[find(pump.checks, "fill_bucket")];
    std::vector<std::string> got;
    for (const Index index : bucket.gets) got.push_back(pump.findings[index].id);
    CHECK(got == std::vector<std::string>{"bucket_time", "bucket_volume", "flow_share"});
}

TEST_CASE("Settings are read, times in minutes") {
    const Knowledge pump = pump_knowledge();
    CHECK(pump.settings.call_for_help == 120);  // written as 2 h
    CHECK(pump.settings.try_out == 5);
    CHECK(pump.settings.shop_rate == 60);
    CHECK(pump.setting_entries.size() == 7);
}

TEST_CASE("A rule comes after the rules whose facts it uses") {
    const Knowledge pump = pump_knowledge();
    CHECK(pump.rules.front().id == "r_water_runs_back");  // the first as written that waits for nothing
    CHECK(pump.rules.back().id == "r_open_hose_points_at_suction");  // written first, waits for two facts
    CHECK(pump.rules.front().layer == 0);
    CHECK(pump.rules.back().layer == 1);
    const Rule& wet = pump.rules[find(pump.rules, "r_wet_motor")];
    CHECK(wet.then[0].kind == Action::Kind::stop);
    CHECK(wet.then[1].by == 6);
}

TEST_CASE("Layers grow along a chain of facts") {
    const Knowledge pump =
        pump_knowledge({{"", "rules.yaml", "when: hose_lie is kinked or nozzle_off is much_more",
                         "when: fact.suction_side"}});
    CHECK(pump.rules[find(pump.rules, "r_water_runs_back")].layer == 0);
    CHECK(pump.rules[find(pump.rules, "r_hose_throttles")].layer == 1);
    CHECK(pump.rules[find(pump.rules, "r_open_hose_points_at_suction")].layer == 2);
}

TEST_CASE("Worksheet inputs know where they come from, and formulas are worked out") {
    const Knowledge pump = pump_knowledge();
    const Worksheet& sheet = pump.worksheets[find(pump.worksheets, "bucket_flow")];
    REQUIRE(sheet.inputs.size() == 4);
    CHECK(pump.findings[sheet.inputs[0].finding].id == "bucket_volume");
    CHECK(pump.rig_fields[sheet.inputs[3].rig_field].id == "lift");
    CHECK(sheet.inputs[1].spread == 1);
    const Unit foot = find_unit("ft").value();
    const Truth high = sheet.holds_when[1].condition.condition(only("lift", quantity_in(31, foot)));
    CHECK(high == Truth::no);
    CHECK(sheet.holds_when[1].condition.condition(only("lift", quantity_in(10, foot))) == Truth::yes);
}

TEST_CASE("A condition sees readings, choices, complaints and facts by their names") {
    const Knowledge pump = pump_knowledge();
    const std::unique_ptr<Scope> outside = scope_of(pump);
    REQUIRE(outside->kind_of("rig.drive"));
    CHECK(outside->kind_of("rig.drive")->words == std::vector<std::string>{"electric", "hand"});
    CHECK(outside->kind_of("history")->words == std::vector<std::string>{"just_installed", "in_use"});
    CHECK(outside->kind_of("complaint")->several);
    CHECK(outside->kind_of("fact.suction_side")->is_truth);
    CHECK(outside->kind_of("bucket_flow.share")->is_quantity);
    CHECK(outside->kind_of("seal_drip")->is_quantity);
    CHECK(outside->kind_of("seal_drip")->words.size() == 3);
    CHECK(outside->kind_of("volume") == nullptr);
    const std::unique_ptr<Scope> inside = scope_of(pump, find(pump.worksheets, "bucket_flow"));
    CHECK(inside->names() ==
          std::vector<std::string>{"volume", "time", "rated", "lift", "flow", "expected", "share"});
}

TEST_CASE("The fingerprint changes with any letter of any file, and not with the folder") {
    const std::string as_shipped = pump_knowledge().fingerprint;
    CHECK(as_shipped.size() == 16);
    CHECK(pump_knowledge({{"", "setup.yaml", "A garden pump,", "A Garden pump,"}}).fingerprint != as_shipped);
    const KnowledgeRead read = read_knowledge_folder(source_path("tests/reading/garden_pump"), Functions{});
    REQUIRE(read.knowledge);
    CHECK(read.knowledge->fingerprint == as_shipped);
    CHECK(read.knowledge->folder == source_path("tests/reading/garden_pump"));
}

TEST_CASE("A source may be one or several") {
    const Knowledge pump =
        pump_knowledge({{"", "causes.yaml", "  remedy: renew_foot_valve\n  source: invented\n",
                         "  remedy: renew_foot_valve\n  source: [from_memory, invented]\n"}});
    REQUIRE(pump.causes[0].sources.size() == 2);
    CHECK(pump.sources[pump.causes[0].sources[0]].id == "from_memory");
}
