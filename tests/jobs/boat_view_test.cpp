// The boat page: gauges of faults beside the sound boat's, what is held to what, and places on the drawing.
#include "app/jobs/boat_view.hpp"

#include <catch2/catch.hpp>
#include <chrono>
#include <cmath>

#include "app/jobs/rig_boat.hpp"
#include "shipped.hpp"

using namespace hardover;
using namespace hardover_tests;

namespace {

const PreparedKnowledge& prepared() {
    static const PreparedKnowledge all(shipped());
    return all;
}

// The facts that choices of the rig give.
Facts rig_of(const std::vector<std::pair<std::string, std::string>>& choices, double drives = 1,
             double rams = 2) {
    Facts facts = facts_of_boat(shipped(), rig::Boat{});
    const auto set = [&](const std::string& field, const RigValue& value) {
        const Index index = find(shipped().rig_fields, field);
        REQUIRE(index != none);
        facts.rig[index] = value;
    };
    for (const auto& [field, choice] : choices) set(field, choice);
    set("drives", Quantity{drives, {}, 0});
    set("rams", Quantity{rams, {}, 0});
    return facts;
}

struct Seen {
    Facts facts;
    SurveyedBoat boat;
    BoatPage page;
};

Seen look(const Facts& facts, const std::vector<FaultIn>& faults, const BoatSetting& setting = {}) {
    SurveyedBoat boat = survey_boat(shipped(), facts, faults);
    BoatPage page = make_boat_page(prepared(), facts, boat, setting);
    return {facts, std::move(boat), std::move(page)};
}

const BoatGauge& gauge(const BoatPage& page, const std::string& id) {
    for (const GaugeGroup& group : page.groups)
        for (const BoatGauge& gauge : group.gauges)
            if (gauge.id == id) return gauge;
    FAIL("no gauge " << id);
    return page.groups.front().gauges.front();
}

bool holds(const std::vector<std::string>& list, const std::string& item) {
    return std::find(list.begin(), list.end(), item) != list.end();
}

}  // namespace

TEST_CASE("A sound boat has gauges with units and no second column") {
    const Seen seen = look(rig_of({}), {}, {.steer = 0.2, .way = rig::Way::to_starboard});
    CHECK(seen.page.trouble.empty());
    REQUIRE(seen.page.sketch.has_value());
    CHECK(seen.page.title == "11° to starboard, trim level, boat at rest");
    CHECK(seen.page.doing == "Turning to starboard");
    CHECK(gauge(seen.page, "turns_port").sound.find("turns") != std::string::npos);
    CHECK(gauge(seen.page, "line_starboard").sound.find("psi") != std::string::npos);
    for (const GaugeGroup& group : seen.page.groups) {
        for (const BoatGauge& gauge : group.gauges) {
            INFO(gauge.id);
            CHECK(gauge.faulty.empty());
            CHECK_FALSE(gauge.differs);
        }
    }
}

TEST_CASE("Air in the oil gives more sponge than the sound boat, in words") {
    const Seen seen = look(rig_of({}), {{"air_in_oil", 1}});
    const BoatGauge& sponge = gauge(seen.page, "rim_sponge");
    CHECK(sponge.differs);
    CHECK(sponge.difference.find("more") != std::string::npos);
    CHECK(seen.boat.faulty_readings.at("rim_sponge") > seen.boat.sound_readings.at("rim_sponge"));
    CHECK(gauge(seen.page, "lock_angle_port").difference == "the same");
    const Seen little = look(rig_of({}), {{"air_in_oil", 0.5}});
    CHECK(little.boat.faulty_readings.at("rim_sponge") < seen.boat.faulty_readings.at("rim_sponge"));
    CHECK(little.page.faults.front().strength == "a little of it");
}

TEST_CASE("Crossed hoses stop the boat, show on the gauges and are drawn crossed") {
    const Seen seen = look(rig_of({}), {{"hoses_crossed", 1}}, {.way = rig::Way::to_port});
    CHECK(gauge(seen.page, "pull").faulty == "it does not move");
    CHECK(gauge(seen.page, "hoses_crossed").differs);
    CHECK(gauge(seen.page, "turns_port").faulty == "cannot be turned");
    REQUIRE(seen.page.sketch);
    const drawing::Part* line = drawing::find_part(seen.page.sketch->above, "line_port");
    REQUIRE(line != nullptr);
    CHECK(line->words.find("wrong port of the starboard ram") != std::string::npos);
}

TEST_CASE("What only the numeric boat counts is told by the finding that is felt there") {
    const Seen seen = look(rig_of({}), {{"reservoir_low", 1}});
    const BoatGauge& level = gauge(seen.page, "reservoir_level");
    CHECK(level.name == "Level in the reservoir");
    CHECK(level.sound == "Between the marks");
    CHECK(level.faulty == "Below the low mark");
}

TEST_CASE("No gauge is called by the figures of its own scale") {
    std::size_t gauges = 0;
    for (const Cause& cause : shipped().causes) {
        if (cause.on_the_rig.empty()) continue;
        const SurveyedBoat boat = survey_boat(shipped(), rig_of({}), {{cause.id, 1}});
        if (!boat.faulty) continue;
        for (const GaugeGroup& group : make_boat_page(prepared(), rig_of({}), boat, {}).groups) {
            for (const BoatGauge& gauge : group.gauges) {
                INFO(cause.id << ": " << gauge.id << ", " << gauge.name);
                ++gauges;
                CHECK(std::isalpha(static_cast<unsigned char>(gauge.name.front())));
            }
        }
    }
    CHECK(gauges > 100);
}

TEST_CASE("Several faults in one boat add up") {
    const Seen air = look(rig_of({}), {{"air_in_oil", 1}});
    const Seen both = look(rig_of({}), {{"air_in_oil", 1}, {"pivot_stiff", 1}});
    REQUIRE(find(shipped().causes, "pivot_stiff") != none);
    CHECK(both.page.faults.size() == 2);
    CHECK(both.boat.faulty_readings.at("rim_force_port") >
          1.2 * air.boat.faulty_readings.at("rim_force_port"));
    CHECK(both.boat.faulty_readings.at("rim_sponge") > 1.2 * both.boat.sound_readings.at("rim_sponge"));
}

TEST_CASE("Angle, trim and speed are held to what the rig can do") {
    const Seen seen = look(rig_of({}), {}, {.steer = 2, .trim = 3, .speed = 100});
    CHECK(seen.page.setting.steer == Approx(seen.page.most_steer));
    CHECK(seen.page.setting.trim == Approx(0.26));
    CHECK(seen.page.setting.speed == Approx(seen.page.most_speed));
    CHECK(seen.page.sketch.has_value());
    const Seen rudder = look(rig_of({{"mount", "inboard_tiller"}}), {}, {.trim = 3});
    CHECK(rudder.page.setting.trim == 0);
    CHECK(rudder.page.trim_locks.empty());
}

TEST_CASE("At speed the line that holds the turn has the pressure") {
    const Seen rest = look(rig_of({}), {}, {.steer = 0.4, .way = rig::Way::to_starboard});
    const Seen fast = look(rig_of({}), {}, {.steer = 0.4, .speed = 12, .way = rig::Way::to_starboard});
    const auto pull = [](const Seen& seen) {
        return seen.boat.sound
            ->pull({seen.page.setting.steer, seen.page.setting.speed, seen.page.setting.way})
            .value();
    };
    CHECK(pull(fast).lines.starboard > 2 * pull(rest).lines.starboard);
    CHECK(pull(fast).force > pull(rest).force);
}

TEST_CASE("A rig that cannot be gives one clear sentence and no drawing") {
    Facts facts = rig_of({});
    facts.rig[find(shipped().rig_fields, "ram_stroke")] = Quantity{0.01, Dimension{1, 0, 0, 0, 0}, 0};
    const Seen seen = look(facts, {{"air_in_oil", 1}});
    CHECK_FALSE(seen.page.sketch.has_value());
    CHECK(seen.page.trouble.find("stroke longer than twice the reserve") != std::string::npos);
    CHECK(seen.page.title == "Cannot be rigged");
}

TEST_CASE("Every cause that can be put in gives a page, or says why not, on every kind of rig") {
    int changed = 0, all = 0;
    for (const char* mount : {"sterndrive_external", "outboard_centre", "inboard_tiller"}) {
        for (const char* helm : {"manual_pump", "cable_valve"}) {
            const Facts facts = rig_of({{"mount", mount}, {"helm", helm}}, 2);
            for (const PossibleFault& fault : possible_faults(prepared(), facts)) {
                INFO(mount << ", " << helm << ", " << fault.id);
                const Seen seen = look(facts, {{fault.id, 1}}, {.steer = 0.3, .way = rig::Way::to_starboard});
                CHECK((seen.page.sketch.has_value() || !seen.page.trouble.empty()));
                CHECK_FALSE(fault.part.empty());
                ++all;
                for (const GaugeGroup& group : seen.page.groups)
                    for (const BoatGauge& gauge : group.gauges)
                        if (gauge.differs) {
                            ++changed;
                            goto next;
                        }
            next:;
            }
        }
    }
    CHECK(all > 150);
    CHECK(changed > 0.9 * all);  // a bolt that has only lost torque shows on no gauge but its own
}

TEST_CASE("Places lead from a part to findings and causes, and back") {
    const Seen seen = look(rig_of({}), {});
    REQUIRE(seen.page.sketch);
    const drawing::Drawing& above = seen.page.sketch->above;
    int findings = 0, causes = 0;
    for (const drawing::Part& part : above.parts) {
        const PartPlace place = place_of_part(prepared(), seen.facts, above, part.id);
        INFO(part.id);
        CHECK_FALSE(place.place.empty());
        for (const PlaceEntry& cause : place.causes)
            CHECK(holds(parts_of_cause(shipped(), above, cause.id), part.id));
        for (const PlaceEntry& finding : place.findings)
            CHECK(holds(parts_of_finding(shipped(), above, finding.id), part.id));
        findings += static_cast<int>(place.findings.size());
        causes += static_cast<int>(place.causes.size());
    }
    CHECK(findings > 60);
    CHECK(causes > 40);
    CHECK(place_of_part(prepared(), seen.facts, above, "no_such_part").causes.empty());
}

TEST_CASE("A cause of one side is at the part of that side") {
    const Seen seen = look(rig_of({}), {{"hose_kinked", 1}});
    REQUIRE(seen.page.sketch);
    const Index cause = find(shipped().causes, "hose_kinked");
    REQUIRE(cause != none);
    const std::string& parameter =
        shipped().causes[static_cast<std::size_t>(cause)].on_the_rig.front().parameter;
    const bool port =
        parameter.find("port") != std::string::npos && parameter.find("starboard") == std::string::npos;
    const std::string side = port ? "line_port" : "line_starboard";
    CHECK(parts_of_cause(shipped(), seen.page.sketch->above, "hose_kinked") ==
          std::vector<std::string>{side});
    CHECK(seen.page.faults.front().parts == std::vector<std::string>{side});
}

TEST_CASE("A page is made within a frame while the wheel is dragged") {
    const Facts facts = rig_of({});
    const SurveyedBoat boat = survey_boat(shipped(), facts, {{"air_in_oil", 1}});
    BoatSetting setting{.way = rig::Way::to_starboard};
    make_boat_page(prepared(), facts, boat, setting);
    const auto start = std::chrono::steady_clock::now();
    constexpr int pages = 100;
    for (int i = 0; i < pages; ++i) {
        setting.steer = 0.5 * std::sin(i * 0.1);
        CHECK(make_boat_page(prepared(), facts, boat, setting).sketch.has_value());
    }
    const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - start;
    CHECK(took.count() / pages < 16);  // a frame at 60 in a second, on a busy machine
}
