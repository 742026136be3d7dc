// Which cautions stand before a check of the shipped knowledge on the boat at hand: all of them, but for the
// engine's where the engine stands still.
#include "rules/reasoning/check_cautions.hpp"

#include <algorithm>
#include <set>
#include <string>

#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const std::set<std::string> of_the_engine = {"engine_running", "no_cooling_water", "carbon_monoxide",
                                             "belt_guard"};

const char* hand_pump = "rig: {helm: manual_pump, assist: none}\n";
const char* electric_pump = "rig: {helm: manual_pump, assist: electric_pump}\n";
const char* engine_pump = "rig: {helm: manual_pump, assist: engine_pump}\n";
const char* cable_valve = "rig: {helm: cable_valve}\n";

std::set<std::string> names(const std::vector<Index>& cautions) {
    std::set<std::string> ids;
    for (const Index i : cautions) ids.insert(shipped().cautions[static_cast<std::size_t>(i)].id);
    return ids;
}

std::set<std::string> cautions(const std::string& check, const std::string& rig) {
    const CaseRead read = read_case({"boat", rig + "history: in_service\ncomplaints: [wander]\n"}, shipped());
    for (const Fault& fault : read.faults) UNSCOPED_INFO(fault.text());
    REQUIRE(read.found.has_value());
    static const PreparedKnowledge prepared(shipped());
    const Index index = find(shipped().checks, check);
    REQUIRE(index != none);
    return names(cautions_of_check(prepared, read.found->facts, index));
}

}  // namespace

TEST_CASE("A sponge test warns of the engine only where a pump hangs on it") {
    // Common practice, no source: a hand pump and an electric one are tried with the engine stopped.
    for (const char* rig : {hand_pump, electric_pump}) {
        INFO(rig);
        CHECK(cautions("sponge_test", rig) ==
              std::set<std::string>{"propeller", "pinch_ram", "gauge_dead_head"});
    }
    for (const char* rig : {engine_pump, cable_valve}) {
        INFO(rig);
        CHECK(cautions("sponge_test", rig).contains("engine_running"));
        CHECK(cautions("sponge_test", rig).contains("carbon_monoxide"));
    }
}

TEST_CASE("A run on open water warns of the engine on every boat") {
    for (const char* rig : {hand_pump, electric_pump, engine_pump, cable_valve}) {
        INFO(rig);
        CHECK(cautions("trim_run", rig).contains("engine_running"));
        CHECK(cautions("trim_run", rig).contains("carbon_monoxide"));
    }
}

TEST_CASE("What is looked at with the engine off keeps its warning of the belt") {
    for (const char* rig : {hand_pump, cable_valve}) {
        INFO(rig);
        CHECK(cautions("check_belt", rig).contains("belt_guard"));
    }
}

TEST_CASE("A look that needs the engine for a part of it alone warns of it where that part does") {
    CHECK(cautions("look_in_reservoir", cable_valve).contains("engine_running"));
    CHECK_FALSE(cautions("look_in_reservoir", hand_pump).contains("engine_running"));
}

TEST_CASE("No check of any boat loses a caution but the engine's, and with an engine pump none at all") {
    for (const char* rig : {hand_pump, electric_pump, engine_pump, cable_valve}) {
        for (const Check& check : shipped().checks) {
            INFO(check.id << " on " << rig);
            const std::set<std::string> here = cautions(check.id, rig);
            const bool engine_driven = rig == engine_pump || rig == cable_valve;
            for (const std::string& carried : names(check.cautions)) {
                if (engine_driven || !of_the_engine.contains(carried)) CHECK(here.contains(carried));
            }
        }
    }
}
