// Two drives on one tie bar: toe, which ram ends first, and what trimming does to them. No published values
// were found for tied drives: held against closed forms, finite differences and the bar's own length.
#include "app/rig/steered_drives.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/boat.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {

constexpr double degree = std::numbers::pi / 180;

SteeringArm arm_at(double x, const Eigen::Vector3d& pin) {
    return {pin + Eigen::Vector3d(x, 0, 0), {x, 0, 0}, {0, 0, 1}, {x, 0.05, -0.1}, {1, 0, 0}};
}

// Arms that lean 5 deg apart, as set for a little toe-out in a turn.
TieBarInSpace leaning_arms() {
    TieBarInSpace tie;
    tie.one = arm_at(0, 0.2 * Eigen::Vector3d(-std::sin(5 * degree), -std::cos(5 * degree), 0));
    tie.two = arm_at(0.8, 0.2 * Eigen::Vector3d(std::sin(5 * degree), -std::cos(5 * degree), 0));
    tie.bar = bar_for_toe(tie, 0);
    return tie;
}

Boat twin_boat(int rams) {
    Boat boat;
    boat.drives = 2;
    boat.rams = rams;
    return boat;
}

}  // namespace

TEST_CASE("In one plane the tie bar in space is the plane tie bar") {
    const TieBarInSpace space = leaning_arms();
    const TieBar plane{0.8, 0.2, -95 * degree, 0.2, -85 * degree, space.bar};
    CHECK(space.bar == Approx(bar_for_toe(plane, 0)));
    CHECK(bar_for_toe(space, 1 * degree) == Approx(bar_for_toe(plane, 1 * degree)));
    for (double steer = -35; steer <= 35; steer += 7) {
        const auto in_space = tied_steer(space, steer * degree, {});
        const auto in_plane = tied_steer(plane, steer * degree);
        REQUIRE_OK(in_space);
        REQUIRE_OK(in_plane);
        CHECK(in_space.value() == Approx(in_plane.value()).margin(1e-9));
    }
}

TEST_CASE(
    "However both drives are trimmed, the pins stay the bar's length apart, and the bar works both ways") {
    const TieBarInSpace tie = leaning_arms();
    for (double steer = -30; steer <= 30; steer += 10) {
        for (const BothTrims& trims : {BothTrims{0, 0}, BothTrims{0.2, 0.2}, BothTrims{-0.1, 0.25}}) {
            INFO("steer " << steer << ", trims " << trims.one << " " << trims.two);
            const auto second = tied_steer(tie, steer * degree, trims);
            REQUIRE_OK(second);
            const double apart =
                (pin_at(tie.one, steer * degree, trims.one) - pin_at(tie.two, second.value(), trims.two))
                    .norm();
            CHECK(apart == Approx(tie.bar));
            CHECK(std::abs(second.value() - steer * degree) < 12 * degree);
            const auto back = leading_steer(tie, second.value(), trims);
            REQUIRE_OK(back);
            CHECK(back.value() == Approx(steer * degree).margin(1e-9));
            // The ratio by finite differences.
            const auto more = tied_steer(tie, steer * degree + 1e-6, trims);
            REQUIRE_OK(more);
            CHECK(tied_ratio(tie, steer * degree, second.value(), trims) ==
                  Approx((more.value() - second.value()) / 1e-6).epsilon(1e-5));
        }
    }
}

TEST_CASE("Leaning arms toe out in a turn by what Ackermann's construction asks of inner and outer") {
    // Arms that lean apart turn the inner drive further; alike both ways.
    const TieBarInSpace tie = leaning_arms();
    const auto starboard = tied_steer(tie, 25 * degree, {});
    const auto port = tied_steer(tie, -25 * degree, {});
    REQUIRE_OK(starboard);
    REQUIRE_OK(port);
    CHECK(std::abs(starboard.value() - 25 * degree) > 0.5 * degree);
    // Mirrored: when two stands where one stood, one stands where two stood.
    const auto mirrored = tied_steer(tie, -starboard.value(), {});
    REQUIRE_OK(mirrored);
    CHECK(mirrored.value() == Approx(-25 * degree));
}

TEST_CASE("A bar too long by a length turns the second drive by that length over the arm") {
    for (const int rams : {1, 2}) {
        auto drives = steered_drives(twin_boat(rams));
        REQUIRE_OK(drives);
        CHECK(second_steer(drives.value(), 0.3, 0) == Approx(0.3));
        drives.value().tie->bar += 0.001;
        CHECK(std::abs(second_steer(drives.value(), 0, 0)) == Approx(0.001 / 0.2).epsilon(0.01));
    }
}

TEST_CASE("A ram on the second drive counts by the angle of the first, and its arm is the slope of that") {
    auto found = steered_drives(twin_boat(2));
    REQUIRE_OK(found);
    SteeredDrives drives = found.value();
    drives.tie->bar += 0.004;
    constexpr double step = 1e-6;
    for (double steer = -0.45; steer <= 0.46; steer += 0.15) {
        for (const std::size_t ram : {std::size_t{0}, std::size_t{1}}) {
            const double slope =
                (rod_out(drives, ram, steer + step, 0.1) - rod_out(drives, ram, steer - step, 0.1)) /
                (2 * step);
            CHECK(moment_arm(drives, ram, steer, 0.1) == Approx(slope).epsilon(1e-5));
        }
    }
}

TEST_CASE("With a bar too long the second drive's ram ends first one way, where its rod is spent") {
    auto found = steered_drives(twin_boat(2));
    REQUIRE_OK(found);
    SteeredDrives drives = found.value();
    const auto sound = drive_locks(drives, 0);
    drives.tie->bar += 0.01;
    const auto locks = drive_locks(drives, 0);
    REQUIRE_OK(sound);
    REQUIRE_OK(locks);
    CHECK((locks.value().lowest_by == 1) != (locks.value().highest_by == 1));
    const bool low = locks.value().lowest_by == 1;
    const double at = low ? locks.value().lowest : locks.value().highest;
    const double out = rod_out(drives, 1, at, 0);
    CHECK(std::min(out, drives.rams[1].travel.stroke - out) == Approx(0).margin(1e-9));
    CHECK(std::abs(at) < std::abs(low ? sound.value().lowest : sound.value().highest));
    drives.tie->bar = 1.5;
    CHECK_FALSE(drive_locks(drives, 0).ok());
}

TEST_CASE(
    "One ram keeps its rod travel when the drive is trimmed, two mirrored rams keep the drive straight") {
    Boat boat;
    boat.rams = 1;
    auto one = steered_drives(boat);
    REQUIRE_OK(one);
    one.value().rams[0].linkage.pin.z() += 0.03;
    const auto steer = steer_after_trim(one.value(), 0, 0, 0.2);
    REQUIRE_OK(steer);
    CHECK(std::abs(steer.value()) > 0.1 * degree);
    CHECK(rod_out(one.value(), 0, steer.value(), 0.2) == Approx(rod_out(one.value(), 0, 0, 0)));
    // First order: minus rod per trim over moment arm.
    const auto little = steer_after_trim(one.value(), 0, 0, 1e-6);
    REQUIRE_OK(little);
    const MountedRam& ram = one.value().rams[0];
    CHECK(little.value() / 1e-6 == Approx(-rod_per_trim(ram, 0, 0) / moment_arm(ram, 0, 0)).epsilon(1e-4));

    boat.rams = 2;
    auto two = steered_drives(boat);
    REQUIRE_OK(two);
    for (MountedRam& each : two.value().rams) each.linkage.pin.z() += 0.03;
    const auto straight = steer_after_trim(two.value(), 0, 0, 0.2);
    REQUIRE_OK(straight);
    CHECK(straight.value() == Approx(0).margin(1e-9));
    two.value().rams[1].linkage.pin.z() -= 0.03;
    const auto off = steer_after_trim(two.value(), 0, 0, 0.2);
    REQUIRE_OK(off);
    // Both rams share the error of one: half of what it does alone, to first order.
    CHECK(off.value() / steer.value() == Approx(0.5).epsilon(0.2));
}
