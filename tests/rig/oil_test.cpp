// Oil, its stiffness, leaks and bleeding: what must hold for every oil, and what is refused.
#include "app/rig/oil.hpp"

#include <cmath>
#include <limits>
#include <numbers>

#include "app/rig/bleed.hpp"
#include "app/rig/leak.hpp"
#include "app/rig/stiffness.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {
constexpr double cst = 1e-6;  // m^2/s
}

TEST_CASE("Oil gets thinner all the way as it warms, through both its data sheet points") {
    const auto line = walther_line({313.15, 32 * cst}, {373.15, 5.4 * cst});
    REQUIRE_OK(line);
    CHECK(viscosity_at(line.value(), 313.15) == Approx(32 * cst));
    CHECK(viscosity_at(line.value(), 373.15) == Approx(5.4 * cst));
    double before = std::numeric_limits<double>::infinity();
    for (double temperature = 240; temperature <= 470; temperature += 1) {
        const double now = viscosity_at(line.value(), temperature);
        INFO(temperature << " K");
        CHECK(now < before);
        CHECK(now > 0);
        before = now;
    }
    // Thin oil: the line is still met where the term below 2 cSt counts.
    const auto thin = walther_line({313.15, 5 * cst}, {373.15, 1.5 * cst});
    REQUIRE_OK(thin);
    CHECK(viscosity_at(thin.value(), 373.15) == Approx(1.5 * cst));
}

TEST_CASE("A viscosity line through impossible points is refused with advice") {
    CHECK_FALSE(walther_line({313.15, 32 * cst}, {313.15, 5.4 * cst}).ok());
    CHECK_FALSE(walther_line({313.15, 0.1 * cst}, {373.15, 0.05 * cst}).ok());
    const auto swapped = walther_line({313.15, 5.4 * cst}, {373.15, 32 * cst});
    REQUIRE_FALSE(swapped.ok());
    CHECK(swapped.error().cure == "exchange the two viscosities");
}

TEST_CASE("Viscosity for a worksheet is not guessed in the cold or from a bad data sheet") {
    // ASTM D341 by an independent program: 335.9996204 cSt at 0 C for 32 and 5.4 cSt.
    CHECK(oil_viscosity(32 * cst, 5.4 * cst, 273.15) == Approx(335.9996204 * cst));
    CHECK(std::isnan(oil_viscosity(32 * cst, 5.4 * cst, 253.15)));
    CHECK(std::isnan(oil_viscosity(32 * cst, 5.4 * cst, 440)));
    CHECK(std::isnan(oil_viscosity(5.4 * cst, 32 * cst, 300)));
}

TEST_CASE("The viscosity index falls as the oil at 40 C gets thicker, without steps") {
    for (double y = 2.1; y < 80; y *= 1.1) {
        double before = std::numeric_limits<double>::infinity();
        for (double ratio = 3; ratio < 12; ratio += 0.5) {
            const double now = viscosity_index(ratio * y * cst, y * cst);
            INFO("at 100 C " << y << " cSt, at 40 C " << ratio * y);
            CHECK(now < before);
            before = now;
        }
    }
    // The standard's equations meet at the ends of their ranges.
    for (const double end :
         {3.8, 4.4, 5.0, 6.4, 7.0, 7.7, 9.0, 12.0, 15.0, 18.0, 22.0, 28.0, 40.0, 55.0, 70.0}) {
        INFO("at " << end << " cSt");
        const double u = 6 * end * cst;
        CHECK(viscosity_index(u, (end - 1e-7) * cst) ==
              Approx(viscosity_index(u, (end + 1e-7) * cst)).margin(0.4));
    }
    CHECK(std::isnan(viscosity_index(8 * cst, 1.9 * cst)));
    CHECK(std::isnan(viscosity_index(5 * cst, 6 * cst)));
}

TEST_CASE("Saybolt seconds come back from the viscosity they gave") {
    for (double seconds = 33; seconds < 600; seconds += 7) {
        CHECK(saybolt_of_viscosity(viscosity_of_saybolt(seconds)) == Approx(seconds));
    }
    CHECK(std::isnan(viscosity_of_saybolt(30)));
    CHECK(std::isnan(saybolt_of_viscosity(0.5 * cst)));
}

TEST_CASE("An oil of 31 cSt is a VG 32, one of 39 cSt is between grades") {
    // ISO 3448: VG 32 is 28.8 to 35.2 mm^2/s at 40 C.
    REQUIRE(grade_of(31 * cst) != nullptr);
    CHECK(grade_of(31 * cst)->name == "VG 32");
    CHECK(grade_of(28.9 * cst)->name == "VG 32");
    CHECK(grade_of(35.1 * cst)->name == "VG 32");
    CHECK(grade_of(39 * cst) == nullptr);
    CHECK(grade_of(100 * cst) == nullptr);
}

TEST_CASE("Warmed oil swells and comes back to its volume") {
    const double warm = expanded_volume(1e-3, 870, 288.15, 333.15);
    CHECK(warm > 1e-3);
    CHECK(expanded_volume(warm, 870, 333.15, 288.15) == Approx(1e-3));
    CHECK(density_at(870, 288.15) == Approx(870));
    // Mass stays: density times volume.
    CHECK(density_at(870, 333.15) * warm == Approx(870 * 1e-3));
    CHECK(std::isnan(expansion_at_15(0)));
    CHECK(std::isnan(volume_correction(870, -1)));
}

TEST_CASE("Air makes oil soft at low pressure and matters less as the pressure rises") {
    const BubblyOil oil{1.4e9, 0.02, 1};
    double before = 0;
    for (double pressure = 0; pressure <= 10e6; pressure += 0.5e6) {
        const double now = bulk_modulus_with_air(oil, pressure);
        CHECK(now > before);
        CHECK(now < 1.4e9);
        before = now;
    }
    CHECK(bulk_modulus_with_air({1.4e9, 0, 1}, 1e6) == Approx(1.4e9));
    CHECK(std::isnan(bulk_modulus_with_air(oil, -atmosphere)));
    CHECK(std::isnan(bulk_modulus_with_air({1.4e9, -0.1, 1}, 1e6)));
}

TEST_CASE("The air that a lost wheel angle speaks of is the air that loses it") {
    const double displacement = 28e-6 / (2 * std::numbers::pi);
    const double lost = wheel_lost_to_air(10e-6, 20e5, displacement);
    CHECK(air_from_lost_wheel(lost, 20e5, displacement) == Approx(10e-6));
    CHECK(std::isnan(air_from_lost_wheel(lost, 0, displacement)));
    CHECK(std::isnan(wheel_lost_to_air(10e-6, 20e5, 0)));
}

TEST_CASE("Gas pressed and let go comes back to its volume, shut-in oil that warms gains some 11 bar per K") {
    CHECK(gas_pressure(1e5, 2e-3, 1e-3, 1.4) == Approx(1e5 * std::pow(2, 1.4)));
    CHECK(gas_volume(gas_volume(1e-3, 1e5, 7e5, 1.4), 7e5, 1e5, 1.4) == Approx(1e-3));
    // Mineral oil, 1.5e9 Pa and 7.2e-4 1/K (API MPMS 11.1 at 870 kg/m^3).
    CHECK(thermal_pressure_rise(1.5e9, expansion_at_15(870), 1) == Approx(10.8e5).epsilon(0.01));
    CHECK(hose_swelling(2e-13, 4, 5e6) == Approx(4e-6));
    CHECK(std::isnan(hose_swelling(-1, 4, 5e6)));
    CHECK(std::isnan(accumulator_volume({1e-3, 1e6, 2e6, 3e6, 1})));
}

TEST_CASE("Two leak tests tell worn clearance from a damaged seat") {
    const AnnularGap gap{0.04, 10e-6, 0.02, 0.3};
    const double once = annular_leak(gap, 2e6, 0.03);
    CHECK(leak_exponent(once, 2e6, annular_leak(gap, 4e6, 0.03), 4e6) == Approx(1));
    CHECK(leak_exponent(1, 2e6, std::sqrt(2.0), 4e6) == Approx(0.5));
    CHECK(std::isnan(leak_exponent(1, 2e6, 1.2, 2e6)));
    // Twice the radial clearance leaks eight times as much.
    CHECK(annular_leak({0.04, 20e-6, 0.02, 0.3}, 2e6, 0.03) == Approx(8 * once));
    CHECK(std::isnan(annular_leak({0.04, 10e-6, 0.02, 1.2}, 2e6, 0.03)));
}

TEST_CASE("Creep, slip and drops are the same leak seen in different places") {
    CHECK(leak_of_creep(-1e-3, 9.4e-4) == Approx(9.4e-7));
    CHECK(leak_of_slip(0.1, 4.5e-6) == Approx(4.5e-7));
    CHECK(leak_of_drops(1, usual_drop) * 60 == Approx(3e-6));
    CHECK(std::isnan(time_to_lose(1e-3, 0)));
    CHECK(std::isnan(leak_of_drops(-1, usual_drop)));
}

TEST_CASE("A hose that holds more than a stroke never bleeds itself") {
    CHECK(bleed_cycles(200e-6, 150e-6) == 1);
    CHECK(bleed_cycles(150e-6, 150e-6) == 1);
    CHECK(std::isinf(bleed_cycles(150e-6, 151e-6)));
    CHECK(std::isnan(bleed_cycles(0, 151e-6)));
}

TEST_CASE("Flushing leaves the part of old oil that the line volumes were meant to leave") {
    for (const double part : {0.9, 0.6, 0.5, 0.1, 0.05}) {
        CHECK(old_oil_left(line_volumes_to_flush(part)) == Approx(part));
    }
    // Old oil left falls by what arrives as old: the slope of one is the other less one.
    for (double volumes = 0.1; volumes < 4; volumes += 0.3) {
        constexpr double step = 1e-6;
        const double slope = (old_oil_left(volumes + step) - old_oil_left(volumes - step)) / (2 * step);
        CHECK(slope == Approx(new_oil_arriving(volumes) - 1).margin(1e-6));
    }
    CHECK(std::isnan(old_oil_left(-1)));
    CHECK(std::isnan(line_volumes_to_flush(0)));
    CHECK(bubble_climb(0.01) == Approx(0.11).epsilon(0.01));
}
