// The plain boat: its linkage fits its stops, and sampled boats are boats one could meet.
// All boats are invented; sizes are of the order of a small craft's.
#include "app/rig/boat.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/chance.hpp"
#include "app/rig/oil.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {
constexpr double degree = std::numbers::pi / 180;
constexpr int boats = 200;
}  // namespace

TEST_CASE("Rams reach both of the drive's stops with the reserve they were given") {
    for (int seed = 1; seed <= boats; ++seed) {
        const Boat boat = sample_boat(seed);
        const auto rams = steered_drives(boat);
        REQUIRE_OK(rams);
        REQUIRE(static_cast<int>(rams.value().rams.size()) == boat.rams);
        double least = boat.stroke;
        for (const MountedRam& ram : rams.value().rams) {
            CHECK(rod_out(ram, 0, 0) == Approx(boat.stroke / 2));
            for (const double stop : {-boat.stop_angle, boat.stop_angle}) {
                const double shown = rod_out(ram, stop, 0);
                least = std::min({least, shown, boat.stroke - shown});
            }
        }
        CHECK(least == Approx(boat.ram_reserve).epsilon(1e-3));
    }
}

TEST_CASE("The port ram pushes the drive to starboard and the starboard ram pulls it there") {
    Boat boat;
    boat.rams = 2;
    const auto rams = steered_drives(boat);
    REQUIRE_OK(rams);
    CHECK(moment_arm(rams.value().rams[0], 0, 0) > 0);
    CHECK(moment_arm(rams.value().rams[1], 0, 0) < 0);
    CHECK(rod_out(rams.value().rams[0], 10 * degree, 0) > rod_out(rams.value().rams[0], 0, 0));
}

TEST_CASE("A boat whose rams cannot be mounted is refused") {
    Boat boat;
    SECTION("reserve longer than half the stroke") {
        boat.ram_reserve = boat.stroke / 2;
    }
    SECTION("no ram") {
        boat.rams = 0;
    }
    SECTION("three rams") {
        boat.rams = 3;
    }
    SECTION("three drives") {
        boat.drives = 3;
    }
    SECTION("drives nearer than their arms") {
        boat.drives = 2;
        boat.drive_spacing = 0.3;
    }
    SECTION("a single-rod cylinder across an outboard") {
        boat.mount = Boat::Mount::outboard_centre;
        boat.rams = 1;
    }
    SECTION("a trim range that does not hold level trim") {
        boat.trim_down = 0.1;
    }
    SECTION("a drive that hardly swings") {
        boat.stop_angle = 1 * degree;
    }
    SECTION("no stroke") {
        boat.stroke = 0;
    }
    SECTION("a size that is no number") {
        boat.stroke = std::nan("");
    }
    CHECK_FALSE(steered_drives(boat).ok());
}

TEST_CASE("The same seed samples the same boat, and seeds cover all kinds of rig") {
    int manual = 0, one_ram = 0, balanced = 0, outboards = 0, tillers = 0, twins = 0, tied = 0;
    for (int seed = 1; seed <= boats; ++seed) {
        const Boat boat = sample_boat(seed);
        CHECK(boat.bore == sample_boat(seed).bore);
        CHECK(boat.rod < boat.bore);
        manual += boat.helm == Boat::Helm::manual_pump;
        one_ram += boat.rams == 1;
        balanced += boat.balanced;
        outboards += boat.mount == Boat::Mount::outboard_centre;
        tillers += boat.mount == Boat::Mount::inboard_tiller;
        twins += boat.drives == 2;
        tied += boat.drives == 2 && boat.tied;
    }
    for (const int kind : {outboards, tillers, twins - tied}) CHECK(kind > 0);
    for (const int kind : {manual, one_ram, balanced, twins}) {
        CHECK(kind > boats / 10);
        CHECK(kind < boats * 9 / 10);
    }
}

// Common practice, no source: what a yard meets on boats of this size.
TEST_CASE("No sampled boat is built as no yard would build it") {
    for (int seed = 1; seed <= 600; ++seed) {
        INFO("seed " << seed);
        const Boat boat = sample_boat(seed);
        const bool outboard = boat.mount == Boat::Mount::outboard_centre;
        const bool stern_drive = boat.mount == Boat::Mount::sterndrive_external;
        if (boat.drives == 2 && boat.rams == 1) CHECK(boat.tied);
        if (outboard) CHECK(boat.balanced);
        if (outboard) CHECK(boat.rams <= boat.drives);
        if (outboard) CHECK(boat.assist != Boat::Assist::engine_pump);
        if (stern_drive) CHECK_FALSE(boat.balanced);
        if (boat.helm == Boat::Helm::manual_pump) continue;
        CHECK(stern_drive);
        CHECK(boat.assist == Boat::Assist::none);  // the valve is the assist
        CHECK(boat.helms == 1);
        CHECK_FALSE(boat.autopilot);
    }
}

TEST_CASE("The boat's oil is as thick at 40 C as its data sheet says, and in frost no thicker than at 0 C") {
    const Boat boat;
    CHECK(oil_viscosity_of(boat, 313.15) == Approx(boat.oil_at_40));
    CHECK(oil_viscosity_of(boat, 373.15) == Approx(boat.oil_at_100));
    CHECK(oil_viscosity_of(boat, 250) == oil_viscosity_of(boat, coldest_on_the_line));
}

TEST_CASE("Drawn numbers have mean 0 and standard deviation 1") {
    Chance chance(7);
    double sum = 0, squares = 0;
    constexpr int count = 20000;
    for (int i = 0; i < count; ++i) {
        const double number = chance.normal();
        sum += number;
        squares += number * number;
    }
    // Five standard errors of mean and variance.
    CHECK(std::abs(sum / count) < 5 / std::sqrt(count));
    CHECK(std::abs(squares / count - 1) < 5 * std::sqrt(2.0 / count));
}
