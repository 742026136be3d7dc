// Worksheet inputs that are choices: their words, where they come from, and what is refused.
#include "reading/reading_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

std::string faults_with_input(const std::string& input) {
    return faults_after({"", "checks.yaml", "  results:\n", "    " + input + "\n  results:\n"});
}

}  // namespace

TEST_CASE("An input from a choice of the rig has that field's words") {
    const KnowledgeRead read = read_changed({{"", "checks.yaml", "  results:\n",
                                              "    drive: {name: Drive, from: rig.drive, example: hand}\n"
                                              "  results:\n"}});
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    const Knowledge& pump = *read.knowledge;
    const Worksheet& sheet = pump.worksheets[find(pump.worksheets, "bucket_flow")];
    const WorksheetInput& drive = sheet.inputs.back();
    REQUIRE(drive.rig_field != none);
    CHECK(drive.choices.size() == pump.rig_fields[drive.rig_field].choices.size());
    CHECK(drive.example_choice == "hand");
    CHECK_FALSE(drive.example.has_value());
    const Result<Value> typed = read_input_value(drive, " Hand ");
    REQUIRE_OK(typed);
    CHECK(std::get<Choice>(typed.value()).possible == std::vector<std::string>{"hand"});
    const Result<Value> wrong = read_input_value(drive, "hnd");
    REQUIRE_FALSE(wrong.ok());
    CHECK(wrong.error().what == "'hnd' is no choice of 'drive'");
    CHECK(wrong.error().cure == "did you mean 'hand'?");
}

TEST_CASE("Formulas and advice test an input of choices with is") {
    const KnowledgeRead read = read_changed(
        {{"", "checks.yaml", "  results:\n",
          "    hose: {name: Hose, choices: {wide: Wide one, narrow: Narrow one}, example: wide}\n"
          "  results:\n"
          "    factor: {name: Factor, unit: count, formula: \"choose(hose is wide, 1, 2)\"}\n"}});
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    CHECK(faults_after({"", "checks.yaml", "  results:\n",
                        "    hose: {name: Hose, choices: {wide: Wide one, narrow: Narrow one}}\n"
                        "  results:\n"
                        "    factor: {name: Factor, unit: count, formula: \"choose(hose is wid, 1, 2)\"}\n"})
              .find("'hose' is never 'wid' (did you mean 'wide'?)") != std::string::npos);
}

TEST_CASE("Ill choices are refused where they stand") {
    CHECK(faults_with_input("hose: {name: Hose}").find("input 'hose' has no 'unit'") != std::string::npos);
    CHECK(faults_with_input("hose: {name: Hose, choices: {wide: Wide one}}")
              .find("'choices' needs at least two") != std::string::npos);
    CHECK(faults_with_input("hose: {name: Hose, unit: in, choices: {wide: Wide, narrow: Narrow}}")
              .find("input 'hose' has both 'choices' and 'unit'") != std::string::npos);
    CHECK(faults_with_input("hose: {name: Hose, choices: {wide: Wide, narrow: Narrow}, spread: 1 in}")
              .find("a choice has no spread") != std::string::npos);
    CHECK(faults_with_input("hose: {name: Hose, choices: {wide: Wide, narrow: Narrow}, example: round}")
              .find("'round' is no choice of input 'hose'") != std::string::npos);
    CHECK(faults_with_input("high: {name: Lift, from: rig.lift}")
              .find("'rig.lift' is measured, so the input needs a 'unit' (write unit: ft)") !=
          std::string::npos);
    CHECK(faults_with_input("drive: {name: Drive, from: rig.drive, choices: {a: A, b: B}}")
              .find("'rig.drive' brings its own choices") != std::string::npos);
}
