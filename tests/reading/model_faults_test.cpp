// What findings and causes say of the numeric model: read where its names and units are right, refused at
// their place where they are not. The model here is an invented one of a garden pump.
#include "reading/reading_support.hpp"

using namespace hardover_tests;
using namespace hardover;

namespace {

Functions pump_model() {
    Functions functions;
    functions.parameters = {{"hose.bore", find_unit("in").value()},
                            {"valve.leak", find_unit("mL/min").value()}};
    functions.gauges = {{"vacuum", find_unit("psi").value()}, {"outflow", find_unit("gal/min").value()}};
    return functions;
}

KnowledgeRead read_with(const std::vector<Change>& changes) {
    std::vector<KnowledgeFile> files = garden_pump();
    for (const Change& change : changes) apply(change, files);
    return read_knowledge(files, pump_model());
}

const Change on_the_rig(const std::string& text) {
    return {"", "causes.yaml", "  proof: watch_prime\n",
            "  on_the_rig: " + text + "\n  proof: watch_prime\n"};
}

const Change felt(const std::string& text) {
    return {"", "findings.yaml", "  minutes: 1\n  part: delivery\n",
            "  felt: " + text + "\n  minutes: 1\n  part: delivery\n"};
}

std::string faults_of(const Change& change) {
    const KnowledgeRead read = read_with({change});
    CHECK_FALSE(read.knowledge.has_value());
    return as_text(read.faults);
}

}  // namespace

TEST_CASE("A cause names sizes of the numeric model, with how much they vary") {
    const KnowledgeRead read =
        read_with({on_the_rig("{valve.leak: 40 mL/min ± 20 mL/min, hose.bore: 1/2 in}")});
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    const auto& changes = read.knowledge->causes[0].on_the_rig;
    REQUIRE(changes.size() == 2);
    CHECK(changes[0].parameter == "valve.leak");
    CHECK(changes[0].value.value == Approx(40e-6 / 60));
    CHECK(changes[0].value.spread == Approx(20e-6 / 60));
    CHECK(changes[1].value.value == Approx(0.0127));
}

TEST_CASE("A felt finding has its thresholds, of one gauge or of several") {
    const KnowledgeRead read = read_with(
        {felt("{gauge: outflow, nothing: {below: 1 gal/min}, weak: {gauge: vacuum, above: 5 psi}}")});
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    const auto& limits = read.knowledge->findings[0].felt;
    REQUIRE(limits.size() == 2);
    REQUIRE(limits[0].has_value());
    CHECK(limits[0]->gauge == "outflow");
    CHECK_FALSE(limits[0]->is_above);
    REQUIRE(limits[1].has_value());
    CHECK(limits[1]->gauge == "vacuum");
    CHECK(limits[1]->is_above);
}

TEST_CASE("A measured finding names its gauge") {
    const KnowledgeRead read =
        read_with({{"", "findings.yaml", "  unit: psi\n", "  unit: psi\n  gauge: vacuum\n"}});
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    CHECK(read.knowledge->findings[find(read.knowledge->findings, "suction_vacuum")].gauge == "vacuum");
}

TEST_CASE("An unknown parameter or gauge is met with the nearest, a wrong unit with the right one") {
    CHECK(faults_of(on_the_rig("{valve.leek: 40 mL/min}")) ==
          "causes.yaml:12:16: unknown parameter 'valve.leek' (did you mean 'valve.leak'?)\n");
    CHECK(faults_of(on_the_rig("{valve.leak: 40 mL}")) ==
          "causes.yaml:12:28: '40 mL' is a volume, expected a flow such as 4.5 mL/min (write it like 4.5 "
          "mL/min)\n");
    CHECK(faults_of(felt("{gauge: outflo, nothing: {below: 1 gal/min}}")) ==
          "findings.yaml:7:17: unknown gauge 'outflo' (did you mean 'outflow'?)\n");
    CHECK(faults_of({"", "findings.yaml", "  unit: psi\n", "  unit: psi\n  gauge: outflow\n"}) ==
          "findings.yaml:56:10: gauge 'outflow' is in gal/min, but the finding is in psi\n");
}

TEST_CASE("A felt reading needs a gauge, one limit, and must be one of the finding's bad readings") {
    CHECK(faults_of(felt("{nothing: {below: 1 gal/min}}")) ==
          "findings.yaml:7:10: felt reading 'nothing' names no gauge\n");
    CHECK(faults_of(felt("{gauge: outflow, nothing: {}}")) ==
          "findings.yaml:7:26: felt reading 'nothing' needs either 'above' or 'below'\n");
    CHECK(faults_of(felt("{gauge: outflow, strong: {above: 1 gal/min}}")) ==
          "findings.yaml:7:26: 'strong' is the sound reading, it has what is left (leave it out)\n");
    CHECK(faults_of(felt("{gauge: outflow, week: {above: 1 gal/min}}")) ==
          "findings.yaml:7:26: unknown reading 'week' of finding 'flow' (did you mean 'weak'?)\n");
    CHECK(faults_of(felt("{gauge: outflow}")) == "findings.yaml:7:9: 'felt' gives no reading\n");
}

TEST_CASE("A measured finding takes no felt limits, a felt one no gauge of its own") {
    CHECK(faults_of({"", "findings.yaml", "  unit: psi\n",
                     "  unit: psi\n  felt: {gauge: vacuum, high: {above: 9 psi}}\n"}) ==
          "findings.yaml:56:9: 'felt' is for a finding with readings and without 'unit' (a measured finding "
          "has "
          "its limits in its readings and needs only 'gauge')\n");
    CHECK(faults_of({"", "findings.yaml", "  minutes: 1\n  part: delivery\n",
                     "  gauge: outflow\n  minutes: 1\n  part: delivery\n"}) ==
          "findings.yaml:7:10: 'gauge' is for a finding that is measured and not worked out (give limits in "
          "the "
          "gauge's unit under 'felt')\n");
}

TEST_CASE("A difference needs something to differ from, a known finding and a reason") {
    const Change alone = {"", "causes.yaml", "  proof: watch_prime\n",
                          "  differs: {flow: Why.}\n  proof: watch_prime\n"};
    CHECK(faults_of(alone) ==
          "causes.yaml:12:12: 'differs' needs 'on_the_rig': there is nothing to differ from\n");
    CHECK(faults_of(on_the_rig("{hose.bore: 1 in}\n  differs: {flew: Why.}")) ==
          "causes.yaml:13:13: unknown finding 'flew' (did you mean 'flow'?)\n");
}

TEST_CASE("Without a numeric model nothing can refer to one") {
    CHECK(faults_after(on_the_rig("{hose.bore: 1 in}")) ==
          "causes.yaml:12:16: unknown parameter 'hose.bore' (there is no numeric model here)\n");
}
