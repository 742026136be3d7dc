// The safety stops of the shipped knowledge: each is ordered on the answer that tells of the danger, with the
// job still at its next step, and not without it.
#include <algorithm>
#include <set>

#include "rules/reasoning/assessment.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

struct Danger {
    const char* stop;
    const char* told;  // what a case file says before the danger is known
    const char* then;  // the answers that tell of it
};

const char* stern_drive = "rig: {helm: manual_pump, rams: '2'}\nhistory: in_service\n";
const char* outboards =
    "rig: {helm: manual_pump, mount: outboard_centre, drives: '2', tie_bar: tied, rams: '1', "
    "ram_kind: balanced}\nhistory: in_service\n";
const char* assisted = "rig: {helm: cable_valve, rams: '2'}\nhistory: in_service\n";
const char* rudder =
    "rig: {helm: manual_pump, mount: inboard_tiller, rams: '1', ram_kind: balanced}\nhistory: in_service\n";

const std::vector<Danger> dangers = {
    {"steering_lost", stern_drive, "wheel_dead: both_ways"},
    {"steering_lost", stern_drive, "wheel_locks: locks, lock_ways: both_ways"},
    {"steering_lost", stern_drive, "reservoir_level: empty"},
    {"steering_lost", rudder, "tiller_key: sheared"},
    {"cracked_part", stern_drive, "bracket_crack: cracked"},
    {"cracked_part", stern_drive, "rod_straight: bent"},
    {"cracked_part", outboards, "tie_bar_straight: bent"},
    {"cracked_part", outboards, "support_rod_crack: cracked"},
    {"cracked_part", stern_drive, "part_cracked: cracked"},
    {"hose_worn_through", stern_drive, "hose_skin: worn_through"},
    {"rams_fighting", stern_drive, "hose_ports: crossed"},
    {"turns_wrong_way", stern_drive, "turning_sense: wrong_way"},
    {"oil_overheated", assisted, "oil_heat: 200 F"},
    {"oil_jet", stern_drive, "jet_or_mist: jet"},
    {"bilge_oil", stern_drive, "oil_in_bilge: oil, level_falling: falls"},
    {"under_raised_drive", stern_drive, "fluid_is: other_oil"},
    {"soft_transom", stern_drive, "core_state: soft, bracket_moves: moves"},
};

Assessment assessed(const std::string& text, const Knowledge& knowledge = shipped()) {
    const CaseRead read = read_case({"danger", text}, knowledge);
    for (const Fault& fault : read.faults) UNSCOPED_INFO(fault.text());
    REQUIRE(read.found.has_value());
    return assess(knowledge, read.found->facts);
}

bool orders(const Assessment& assessment, const std::string& stop) {
    return std::any_of(assessment.stops.begin(), assessment.stops.end(),
                       [&](Index i) { return shipped().stops[static_cast<std::size_t>(i)].id == stop; });
}

// A complaint that most boats with this danger would bring is enough for the job to have a next step.
const char* complaint = "complaints: [wander]\n";

}  // namespace

TEST_CASE("Each danger orders its stop as soon as it is told, before the next step is done") {
    for (const Danger& danger : dangers) {
        INFO(danger.stop << " on " << danger.then);
        const std::string before = std::string(danger.told) + complaint;
        CHECK_FALSE(orders(assessed(before), danger.stop));
        const Assessment after = assessed(before + "answers: {" + danger.then + "}\n");
        CHECK(orders(after, danger.stop));
        CHECK(after.next.kind != NextStep::Kind::done);
    }
}

TEST_CASE("No stop lets a boat out on open water, or an engine run that it forbids") {
    // Common practice, no source: a boat whose steering may be lost is not tried under way.
    const Index sea_trial = find(shipped().needs, "sea_trial");
    const Index engine = find(shipped().needs, "engine_running");
    for (const Danger& danger : dangers) {
        INFO(danger.stop << " on " << danger.then);
        const Assessment after =
            assessed(std::string(danger.told) + complaint + "answers: {" + danger.then + "}\n");
        CHECK(after.barred.contains(sea_trial));
        CHECK(after.barred.contains(engine) == (std::string(danger.stop) == "oil_jet"));
    }
    CHECK(assessed("rig: {helm: cable_valve, lies: ashore_dry}\nhistory: in_service\ncomplaints: [wander]\n")
              .barred.contains(engine));
}

TEST_CASE("A jet of oil or a hose worn through keeps the steering lines free of pressure") {
    // Common practice, no source: what may burst is not pressed again to see where it is wet.
    const Index pressure = find(shipped().needs, "lines_under_pressure");
    for (const Danger& danger : dangers) {
        INFO(danger.stop << " on " << danger.then);
        const Assessment after =
            assessed(std::string(danger.told) + complaint + "answers: {" + danger.then + "}\n");
        const std::string stop = danger.stop;
        CHECK(after.barred.contains(pressure) == (stop == "oil_jet" || stop == "hose_worn_through"));
    }
    const Check& wipe = shipped().checks[static_cast<std::size_t>(find(shipped().checks, "wipe_and_watch"))];
    CHECK(std::find(wipe.needs.begin(), wipe.needs.end(), pressure) != wipe.needs.end());
}

TEST_CASE("A power assist driven by the engine is not run ashore without cooling water") {
    const Index assist = find(shipped().needs, "assist_running");
    const std::string job = "history: in_service\ncomplaints: [wander]\n";
    CHECK(assessed("rig: {helm: cable_valve, lies: ashore_dry}\n" + job).barred.contains(assist));
    CHECK(assessed("rig: {helm: manual_pump, assist: engine_pump, lies: ashore_dry}\n" + job)
              .barred.contains(assist));
    CHECK_FALSE(
        assessed("rig: {helm: manual_pump, assist: none, lies: ashore_dry}\n" + job).barred.contains(assist));
    CHECK_FALSE(assessed("rig: {helm: cable_valve, lies: ashore_water}\n" + job).barred.contains(assist));
}

TEST_CASE("With no engine to run there is no assist off its belt and no run on open water") {
    // Common practice, no source: the belt's pump stands with the engine, an electric one does not.
    const Index assist = find(shipped().needs, "assist_running");
    const Index sea_trial = find(shipped().needs, "sea_trial");
    const std::string job = "history: in_service\ncomplaints: [wander]\nnot_available: [engine_running]\n";
    for (const char* engine_driven : {"helm: cable_valve", "helm: manual_pump, assist: engine_pump"}) {
        INFO(engine_driven);
        const Assessment there = assessed("rig: {" + std::string(engine_driven) + ", lies: afloat}\n" + job);
        CHECK(there.barred.contains(assist));
        CHECK(there.barred.contains(sea_trial));
    }
    for (const char* by_itself : {"none", "electric_pump"}) {
        INFO(by_itself);
        const Assessment there = assessed("rig: {helm: manual_pump, assist: " + std::string(by_itself) +
                                          ", lies: afloat}\n" + job);
        CHECK_FALSE(there.barred.contains(assist));
        CHECK(there.barred.contains(sea_trial));
    }
}

TEST_CASE("What takes a circumstance that is not to be had is not to be had either, through any number") {
    Knowledge knowledge = shipped();
    const auto need = [&](const char* id) { return find(knowledge.needs, id); };
    // Invented: the gauge hangs on the assist, so through it on the engine.
    knowledge.needs[static_cast<std::size_t>(need("pressure_gauge"))].takes = {need("assist_running")};
    const auto barred = [&](const std::string& rig) {
        const std::string text = "rig: {" + rig +
                                 "}\nhistory: in_service\ncomplaints: [wander]\n"
                                 "not_available: [engine_running]\n";
        return assessed(text, knowledge).barred.contains(need("pressure_gauge"));
    };
    CHECK(barred("helm: cable_valve"));
    CHECK_FALSE(barred("helm: manual_pump, assist: none"));
}

TEST_CASE("A dead wheel on a cable is looked for at the cable's end first") {
    // Common practice, no source: the look takes minutes and ends the search.
    const Assessment dead = assessed(
        "rig: {helm: cable_valve, lies: ashore_dry}\nhistory: in_service\ncomplaints: [nothing_moves]\n");
    const bool looks = dead.next.kind == NextStep::Kind::check || dead.next.kind == NextStep::Kind::prove;
    CHECK(looks);
    CHECK(dead.next.index == find(shipped().checks, "watch_cable_end"));
}

TEST_CASE("The run at three trims waits for open water, and is not offered to a boat ashore") {
    const Check& run = shipped().checks[static_cast<std::size_t>(find(shipped().checks, "trim_run"))];
    const Index sea_trial = find(shipped().needs, "sea_trial");
    CHECK(std::find(run.needs.begin(), run.needs.end(), sea_trial) != run.needs.end());
    const std::string job = "history: in_service\ncomplaints: [wander]\n";
    CHECK(assessed("rig: {helm: manual_pump, lies: ashore_water}\n" + job).barred.contains(sea_trial));
    CHECK_FALSE(assessed("rig: {helm: manual_pump, lies: afloat}\n" + job).barred.contains(sea_trial));
    CHECK_FALSE(assessed("rig: {helm: manual_pump}\n" + job).barred.contains(sea_trial));
}

TEST_CASE("An engine-driven pump ashore without cooling water orders its stop before any question") {
    const std::string job = "history: in_service\ncomplaints: [hard_both_ways]\n";
    CHECK(orders(assessed("rig: {helm: cable_valve, lies: ashore_dry}\n" + job), "engine_without_water"));
    CHECK_FALSE(orders(assessed("rig: {helm: cable_valve, lies: afloat}\n" + job), "engine_without_water"));
}

TEST_CASE("A boat that cannot be steered orders the stop on its complaint alone") {
    for (const char* said : {"nothing_moves", "turns_wrong_way"}) {
        INFO(said);
        CHECK_FALSE(assessed(std::string(stern_drive) + "complaints: [" + said + "]\n").stops.empty());
    }
}

TEST_CASE("No shipped stop is left without a danger here that orders it") {
    std::set<std::string> shown = {"engine_without_water"};
    for (const Danger& danger : dangers) shown.insert(danger.stop);
    for (const Stop& stop : shipped().stops) {
        INFO(stop.id);
        CHECK(shown.contains(stop.id));
    }
}
