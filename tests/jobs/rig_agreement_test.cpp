// The table of causes and findings held against the numeric boat, on a small knowledge base written for it.
#include "app/jobs/rig_agreement.hpp"

#include "app/jobs/rig_boat.hpp"
#include "jobs_support.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const char* frame = R"(
- scale: how_often
  words: {always: 0.97, usually: 0.75, often: 0.5, sometimes: 0.25, seldom: 0.08, never: 0}
  source: memory
- source: memory
  title: From memory
  kind: from_memory
- history: any
  name: Any
  share: 1
  source: memory
- rig_field: helm
  name: Helm
  ask: Which helm?
  choices: {cable_valve: Valve, manual_pump: Pump}
  source: memory
- finding: slack
  name: Slack
  ask: How much slack?
  unit: in
  spread: 1/8 in
  readings:
    large: {text: Much, above: 1 in}
    little: {text: Little}
  check: look
  gauge: free_play
  stray: {large: 0}
  source: memory
- finding: tab
  name: Tab
  ask: How is the tab?
  readings: {wrong: Wrong, right: Right}
  check: look
  felt: {gauge: trim_tab_angle, wrong: {above: 3 deg}}
  stray: {wrong: 0}
  source: memory
- finding: creep
  name: Creep
  ask: Does the wheel creep?
  readings: {creeps: Creeps, holds: Holds}
  check: look
  possible_when: rig.helm is manual_pump
  felt: {gauge: wheel_creep, creeps: {above: 0.25 turns/min}}
  stray: {creeps: 0}
  source: memory
- check: look
  name: Look
  why: To see.
  steps: [Look.]
  tools: [none]
  minutes: 1
  source: memory
- remedy: mend
  name: Mend
  steps: [Mend.]
  tools: [none]
  minutes: 1
  parts: []
  figures: []
  after: [Try.]
  source: memory
)";

KnowledgeRead read_with(const std::string& cause) {
    const std::string text =
        std::string(frame) +
        "- cause: helm_loose\n  name: Helm loose\n  about: Loose.\n"
        "  odds: {any: 100}\n" +
        cause + "  proof: look\n  proved_when: slack is large\n  remedy: mend\n  source: memory\n";
    return read_knowledge({{"small.yaml", text}}, rig::rig_functions());
}

Agreement compared(const std::string& cause) {
    const KnowledgeRead read = read_with(cause);
    INFO(as_text(read.faults));
    REQUIRE(read.knowledge.has_value());
    const auto agreement = compare_with_rig(*read.knowledge, {.boats = 12});
    REQUIRE_OK(agreement);
    return agreement.value();
}

}  // namespace

TEST_CASE("A table that says what the boats show has no disagreement") {
    const Agreement agreement =
        compared("  shows: {slack: {large: always}}\n  on_the_rig: {helm.play: 3 in ± 1/2 in}\n");
    CHECK(agreement.causes == 1);
    CHECK(agreement.surveys == 12);
    CHECK(agreement.pairs == 3);
    CHECK(agreement.disagreements.empty());
}

TEST_CASE("A finding the boats show and the table leaves out is a disagreement, and so the other way round") {
    const Agreement agreement = compared(
        "  shows: {slack: {large: seldom}, tab: {wrong: usually}}\n  on_the_rig: {helm.play: 3 in}\n");
    REQUIRE(agreement.disagreements.size() == 2);
    CHECK(agreement.unexplained() == 2);
    CHECK(agreement.disagreements[0].table == Approx(0.08));
    CHECK(agreement.disagreements[0].boats == 1);
    CHECK(agreement.disagreements[1].table == Approx(0.75));
    CHECK(agreement.disagreements[1].boats == 0);
}

TEST_CASE("One step of the scale is agreed") {
    CHECK(compared("  shows: {slack: {large: usually}}\n  on_the_rig: {helm.play: 3 in}\n")
              .disagreements.empty());
}

TEST_CASE("A reason explains its own finding and no other, one that explains nothing is listed") {
    const std::string differs = "  differs: {tab: Nobody looks., creep: Idle words.}\n";
    const Agreement agreement = compared(
        "  shows: {slack: {large: seldom}, tab: {wrong: usually}}\n  on_the_rig: {helm.play: 3 in}\n" +
        differs);
    CHECK(agreement.disagreements.size() == 2);
    CHECK(agreement.unexplained() == 1);
    CHECK(agreement.disagreements[1].reason == "Nobody looks.");
    REQUIRE(agreement.idle.size() == 1);
    CHECK(agreement.idle[0].finding == 2);
}

TEST_CASE("Findings are told only on boats that can have them, causes only on boats they are possible on") {
    const Agreement all = compared("  shows: {slack: {large: always}}\n  on_the_rig: {helm.play: 3 in}\n");
    const Agreement power = compared(
        "  shows: {slack: {large: always}}\n  possible_when: rig.helm is cable_valve\n"
        "  on_the_rig: {helm.play: 3 in}\n");
    CHECK(all.pairs == 3);
    CHECK(power.pairs == 2);  // no wheel creeps on a cable valve
    CHECK(power.surveys == 12);
}

TEST_CASE("The comparison is the same every time") {
    const std::string cause = "  shows: {slack: {large: seldom}}\n  on_the_rig: {helm.play: 1 in ± 1 in}\n";
    const Agreement once = compared(cause), again = compared(cause);
    REQUIRE(once.disagreements.size() == 1);
    CHECK(once.disagreements[0].boats == again.disagreements[0].boats);
    CHECK(once.disagreements[0].boats > 0.1);
    CHECK(once.disagreements[0].boats < 0.9);
}

TEST_CASE("Shares stand on the scale between its words in proportion") {
    const std::vector<double> words{0, 0.08, 0.25, 0.5, 0.75, 0.97};
    CHECK(scale_position(words, 0) == 0);
    CHECK(scale_position(words, 0.04) == Approx(0.5));
    CHECK(scale_position(words, 0.5) == Approx(3));
    CHECK(scale_position(words, 0.625) == Approx(3.5));
    CHECK(scale_position(words, 1) == 5);
}

TEST_CASE("A boat told as a rig and built from it again has the same sizes") {
    const Knowledge& knowledge = shipped();
    for (int seed = 1; seed <= 20; ++seed) {
        const rig::Boat boat = rig::sample_boat(seed);
        const rig::Boat again = boat_of_rig(knowledge, facts_of_boat(knowledge, boat), rig::Boat{});
        CHECK(again.helm == boat.helm);
        CHECK(again.rams == boat.rams);
        CHECK(again.balanced == boat.balanced);
        CHECK(again.bore == boat.bore);
        CHECK(again.stroke == boat.stroke);
        CHECK(again.relief_pressure == boat.relief_pressure);
        if (boat.helm == rig::Boat::Helm::manual_pump) {
            CHECK(again.helm_displacement == Approx(boat.helm_displacement));
        }
    }
}

TEST_CASE("The shipped table agrees with the numeric boat, or says why not") {
    const auto agreement = compare_with_rig(shipped(), {});
    REQUIRE_OK(agreement);
    for (const Disagreement& d : agreement.value().disagreements) {
        if (!d.reason.empty()) continue;
        UNSCOPED_INFO(shipped().causes[d.cause].id << ", " << shipped().findings[d.finding].id << ": table "
                                                   << d.table << ", boats " << d.boats);
    }
    CHECK(agreement.value().unexplained() == 0);
    CHECK(agreement.value().causes >= 25);
    CHECK(agreement.value().unsettled * 50 <= agreement.value().surveys);
}
