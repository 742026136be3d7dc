// What proves a cause of the shipped knowledge, and what only speaks for it.
#include <algorithm>
#include <string>

#include "rules/reasoning/assessment.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

Assessment assessed(const std::string& text) {
    const CaseRead read = read_case({"boat", text}, shipped());
    for (const Fault& fault : read.faults) UNSCOPED_INFO(fault.text());
    REQUIRE(read.found.has_value());
    return assess(shipped(), read.found->facts);
}

const RankedCause& ranked(const Assessment& assessment, const std::string& cause) {
    const Index index = find(shipped().causes, cause);
    const auto found = std::find_if(assessment.ranking.begin(), assessment.ranking.end(),
                                    [&](const RankedCause& each) { return each.cause == index; });
    REQUIRE(found != assessment.ranking.end());
    return *found;
}

const std::string heavy_both_ways =
    "rig: {helm: cable_valve, lies: ashore_water}\nhistory: in_service\ncomplaints: [hard_both_ways]\n";

// Whether some boat can have either, as far as its mount and its helm say.
bool on_one_boat(Index a, Index b) {
    const RigField& mounts = shipped().rig_fields[find(shipped().rig_fields, "mount")];
    const RigField& helms = shipped().rig_fields[find(shipped().rig_fields, "helm")];
    for (const Word& mount : mounts.choices) {
        for (const Word& helm : helms.choices) {
            const Assessment there = assessed("rig: {mount: " + mount.id + ", helm: " + helm.id +
                                              "}\nhistory: in_service\ncomplaints: [wander]\n");
            const auto possible = [&](Index cause) {
                return ranked(there, shipped().causes[static_cast<std::size_t>(cause)].id).probability > 0;
            };
            if (possible(a) && possible(b)) return true;
        }
    }
    return false;
}

}  // namespace

TEST_CASE("A low gauge at the stop proves neither pump nor relief: belt, valve and level bring it too") {
    // US Army TM 9-2320-289-34, power steering: the tester comes between the low gauge and the pump's
    // renewal.
    for (const char* low : {"pressure_to_figure: low", "pressure_at_stop: 400 psi"}) {
        INFO(low);
        const Assessment gauged = assessed(
            "rig: {helm: cable_valve, relief_pressure: 1000 psi}\n"
            "history: in_service\ncomplaints: [hard_both_ways]\nanswers: {" +
            std::string(low) + "}\n");
        CHECK(std::none_of(gauged.ranking.begin(), gauged.ranking.end(),
                           [](const RankedCause& each) { return each.proved; }));
        for (const char* cause : {"pump_worn", "relief_low", "belt_slipping"}) {
            INFO(cause);
            CHECK(ranked(gauged, cause).probability > 0.02);
        }
    }
}

TEST_CASE(
    "On the tester falling flow proves the pump, and flow that holds below a short pressure the relief") {
    // US Army TM 9-2320-289-34: a worn pump loses 1 gal/min or more under load; readings against the shut
    // tester outside the maker's are the pump's control valve.
    const auto tested = [](const std::string& readings) {
        return assessed(heavy_both_ways + "answers: {pressure_to_figure: low, " + readings + "}\n");
    };
    const Assessment falls = tested("pump_flow: falls, pump_alone: short");
    CHECK(ranked(falls, "pump_worn").proved);
    CHECK_FALSE(ranked(falls, "relief_low").proved);
    CHECK(falls.ranking.front().cause == find(shipped().causes, "pump_worn"));
    const Assessment holds = tested("pump_flow: right, pump_alone: short");
    CHECK(ranked(holds, "relief_low").proved);
    CHECK_FALSE(ranked(holds, "pump_worn").proved);
    CHECK(holds.ranking.front().cause == find(shipped().causes, "relief_low"));
}

TEST_CASE("No reading proves two causes of one boat that are put right by different work") {
    const std::vector<Cause>& causes = shipped().causes;
    for (std::size_t a = 0; a < causes.size(); ++a) {
        for (std::size_t b = a + 1; b < causes.size(); ++b) {
            if (causes[a].proved_when.empty() || causes[a].remedy == causes[b].remedy) continue;
            if (causes[a].proved_when.text() != causes[b].proved_when.text()) continue;
            INFO(causes[a].id << " and " << causes[b].id << ": " << causes[a].proved_when.text());
            CHECK_FALSE(on_one_boat(static_cast<Index>(a), static_cast<Index>(b)));
        }
    }
}
