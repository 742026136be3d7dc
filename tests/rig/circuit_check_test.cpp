// Circuits that cannot be: each is refused in words that name the element or node.
#include <cmath>
#include <limits>

#include "app/rig/circuit.hpp"
#include "support.hpp"

using namespace hardover::rig::circuit;

namespace {

constexpr double bar = 1e5;

// A pump, a hose and a ram that returns to the tank; sound as it stands.
std::vector<Element> sound() {
    return {
        Reservoir{"tank", "t"},
        Pump{.name = "pump",
             .inlet = "t",
             .outlet = "p",
             .displacement = 8e-6,
             .speed = 10,
             .torque_limit = 50},
        ReliefValve{"relief", "p", "t", 70 * bar, 0},
        Hose{"out", "p", "a", 2, 8e-3},
        Hose{"back", "b", "t", 2, 8e-3},
        Load{.name = "drive"},
        Ram{.name = "ram", .side_a = "a", .side_b = "b", .load = "drive", .area_a = 4e-4, .area_b = 3e-4}};
}

const hardover::rig::FlowingOil oil{870, 32e-6};

// The refusal of the sound circuit with one element added.
hardover::Error refusal(const Element& added, hardover::rig::FlowingOil in = oil) {
    std::vector<Element> elements = sound();
    elements.push_back(added);
    const auto result = solve({in, elements});
    REQUIRE_FALSE(result.ok());
    CHECK_FALSE(result.error().cure.empty());
    return result.error();
}

void without(std::size_t index, const std::string& where, const std::string& what) {
    std::vector<Element> elements = sound();
    elements.erase(elements.begin() + static_cast<std::ptrdiff_t>(index));
    const auto result = solve({oil, elements});
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().where == where);
    CHECK(result.error().what.find(what) != std::string::npos);
}

}  // namespace

TEST_CASE("A sound circuit is not refused") {
    REQUIRE_OK(solve({oil, sound()}));
}

TEST_CASE("A size that cannot be is named with its element") {
    CHECK(refusal(Hose{"short", "p", "t", -1, 8e-3}).where == "hose 'short'");
    CHECK(refusal(Hose{"short", "p", "t", -1, 8e-3}).what == "length is -1");
    CHECK(refusal(Hose{"thin", "p", "t", 1, -0.008}).what == "bore is -0.008");
    CHECK(refusal(ReliefValve{"r2", "p", "t", 0, 0}).what == "cracking pressure is 0");
    CHECK(refusal(CheckValve{.name = "c", .from = "p", .to = "t", .leak = -1}).what == "leak is -1");
    CHECK(refusal(Leak{"l", "p", "", std::nan("")}).what == "conductance is nan");
    CHECK(refusal(Restriction{"r", "p", "t", std::numeric_limits<double>::infinity(), 0}).where ==
          "restriction 'r'");
    CHECK(refusal(TrappedAir{"air", "p", -1}).where == "trapped air 'air'");
    const Element wide = ControlValve{.name = "v",
                                      .supply = "p",
                                      .tank = "t",
                                      .port_a = "a",
                                      .port_b = "b",
                                      .position = 1.5,
                                      .loss_coefficient = 1e12};
    CHECK(refusal(wide).what == "position is 1.5");
    CHECK(refusal(wide).cure == "-1 to 1");
    const Element weightless =
        Ram{.name = "r", .side_a = "a", .side_b = "b", .load = "drive", .area_a = 0, .area_b = 1e-4};
    CHECK(refusal(weightless).where == "ram 'r'");
    const Element beyond = Ram{.name = "r",
                               .side_a = "a",
                               .side_b = "b",
                               .load = "drive",
                               .area_a = 1e-4,
                               .area_b = 1e-4,
                               .position = 2,
                               .least = 0,
                               .most = 1};
    CHECK(refusal(beyond).what == "its position is beyond its stops");
}

TEST_CASE("Oil without density or viscosity is refused") {
    CHECK(refusal(TrappedAir{"air", "p", 0}, {0, 32e-6}).where == "oil");
    CHECK(refusal(TrappedAir{"air", "p", 0}, {870, -1}).where == "oil");
}

TEST_CASE("An element without a name, a name given twice and an end on no node are refused") {
    CHECK(refusal(Hose{"", "p", "t", 1, 8e-3}).what == "an element without a name");
    CHECK(refusal(Hose{"out", "p", "t", 1, 8e-3}).what == "a second element of that name");
    CHECK(refusal(Hose{"loose", "p", "", 1, 8e-3}).what == "to is joined to no node");
    CHECK(refusal(Hose{"loop", "p", "p", 1, 8e-3}).what == "two of its ends are on node 'p'");
    // The halves of a lock valve are reported under names of their own.
    std::vector<Element> elements = sound();
    elements.push_back(Hose{"lock a", "p", "t", 1, 8e-3});
    elements.push_back(LockValve{
        .name = "lock", .helm_a = "p", .ram_a = "a", .helm_b = "t", .ram_b = "b", .resistance = 1e9});
    const auto result = solve({oil, elements});
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().where == "lock valve 'lock'");
}

TEST_CASE("A node that ends nowhere, one that floats and a circuit without reservoir are named") {
    CHECK(refusal(Hose{"spur", "p", "q", 1, 8e-3}).where == "node 'q'");
    CHECK(refusal(Hose{"spur", "p", "q", 1, 8e-3}).what == "ends nowhere: only hose 'spur' is joined to it");
    std::vector<Element> elements = sound();
    elements.push_back(Hose{"ring 1", "x", "y", 1, 8e-3});
    elements.push_back(Hose{"ring 2", "y", "x", 1, 8e-3});
    const auto result = solve({oil, elements});
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().where == "node 'x'");
    CHECK(result.error().what.find("floating") == 0);
    without(0, "circuit", "no reservoir");
    CHECK(refusal(Reservoir{"second", "t"}).what == "two reservoirs on one node");
}

TEST_CASE("Rams and loads that do not know each other are named") {
    without(5, "ram 'ram'", "moves no known load: 'drive'");
    CHECK(refusal(Load{.name = "rudder"}).where == "load 'rudder'");
}

TEST_CASE("A load that nothing slows down is named instead of flying off") {
    const auto result =
        solve({oil,
               {Reservoir{"tank", "t"}, Reservoir{"other", "u"}, Load{.name = "drive", .force = 100},
                Ram{.name = "ram",
                    .side_a = "t",
                    .side_b = "u",
                    .load = "drive",
                    .area_a = 4e-4,
                    .area_b = 3e-4}}});
    REQUIRE_FALSE(result.ok());
    CHECK(result.error().where == "load 'drive'");
    CHECK(result.error().what == "nothing limits its speed");
}

TEST_CASE("Sizes beyond all reason end in an error or in finite numbers, never in a number that is none") {
    for (const double odd : {1e-300, 1e-30, 1e30, 1e300}) {
        for (const Element& element :
             {Element{Hose{"h", "p", "t", odd, 8e-3}}, Element{Hose{"h", "p", "t", 1, odd}},
              Element{Leak{"l", "p", "", odd}}, Element{Restriction{"r", "p", "t", odd, odd}},
              Element{ReliefValve{"v", "p", "t", odd, odd}}}) {
            std::vector<Element> elements = sound();
            elements.push_back(element);
            const auto result = solve({oil, elements});
            if (!result.ok()) {
                CHECK_FALSE(result.error().where.empty());
                continue;
            }
            for (const auto& [node, pressure] : result.value().pressures) CHECK(std::isfinite(pressure));
            for (const auto& [name, flow] : result.value().flows) CHECK(std::isfinite(flow));
        }
    }
}
