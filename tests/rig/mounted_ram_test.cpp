// The mounts beside a stern drive's: an outboard's centre-mounted cylinder, a rudder's tiller; the locks over
// a whole trim range, and the warning before dead centre. No published values were found for these mounts:
// held against closed forms, finite differences and a search by hand.
#include "app/rig/mounted_ram.hpp"

#include <cmath>
#include <numbers>

#include "support.hpp"

using namespace hardover::rig;

namespace {

constexpr double degree = std::numbers::pi / 180;
constexpr double tiller = 0.19;

// Cylinder across the boat on the tilt tube, tiller 190 mm forward of the steering axis; 180 mm of stroke.
MountedRam centre_mounted() {
    MountedRam ram;
    ram.linkage = {{{0, tiller, 0}, {0, 0, 0}, {0, 0, 1}, {0, tiller, 0}, {1, 0, 0}}, {0, tiller, 0}};
    ram.travel = {0.4, 0.18};
    ram.slides_along = {-1, 0, 0};
    return ram;
}

// Ram beside a drive, a little slanting, its trim axis under the steering axis' foot.
MountedRam beside_the_drive() {
    MountedRam ram;
    ram.linkage = {{{-0.2, -0.05, 0.06}, {0, 0, 0}, {0, 0.1, 1}, {0, 0.05, 0}, {1, 0, 0}},
                   {-0.24, 0.42, 0.1}};
    ram.travel = {0.375, 0.2};
    return ram;
}

}  // namespace

TEST_CASE("A centre-mounted cylinder travels by the tiller's length times the sine of the angle") {
    const MountedRam ram = centre_mounted();
    for (double steer = -40; steer <= 40; steer += 8) {
        for (const double trim : {-5.0, 0.0, 30.0, 65.0}) {
            INFO("steer " << steer << ", trim " << trim);
            // The arc of a pin, projected on the rod; trimming turns it about that rod.
            CHECK(rod_out(ram, steer * degree, trim * degree) ==
                  Approx(0.09 + tiller * std::sin(steer * degree)));
            CHECK(moment_arm(ram, steer * degree, trim * degree) ==
                  Approx(tiller * std::cos(steer * degree)));
            const auto back = steer_at_rod_out(ram, rod_out(ram, steer * degree, 0), trim * degree);
            REQUIRE_OK(back);
            CHECK(back.value() == Approx(steer * degree).margin(1e-9));
        }
    }
    const auto locks = lock_angles(ram, 20 * degree);
    REQUIRE_OK(locks);
    CHECK(locks.value().open == Approx(std::asin(0.09 / tiller)));
    CHECK(locks.value().closed == Approx(-std::asin(0.09 / tiller)));
    CHECK(locks.value().least_arm == Approx(std::sqrt(tiller * tiller - 0.09 * 0.09)));
    CHECK_FALSE(steer_at_rod_out(ram, 0.4, 0).ok());
}

TEST_CASE("A centre-mounted cylinder whose stroke is the tiller's swing ends over-centre") {
    MountedRam ram = centre_mounted();
    CHECK(over_centre_warning(ram, 0, 60 * degree).empty());
    ram.travel.stroke = 2 * tiller * std::sin(75 * degree);  // arm at the lock: cos(75 deg), 26 %
    CHECK(over_centre_warning(ram, 0, 0).find("26 %") != std::string::npos);
    ram.travel.stroke = 2 * tiller * std::sin(83 * degree);  // 12 %: refused, dead centre
    CHECK(over_centre_warning(ram, 0, 0).find("dead centre") != std::string::npos);
    ram.travel.stroke = 2.1 * tiller;
    CHECK(over_centre_warning(ram, 0, 0).find("cannot be reached") != std::string::npos);
}

TEST_CASE("An inboard ram at a tiller is the planar linkage at any trim that is none") {
    // Law of cosines, as in the published window example (LNK-001).
    MountedRam ram;
    ram.linkage = {{{0, -0.15, 0}, {0, 0, 0}, {0, 0, 1}, {0, 0, 0}, {1, 0, 0}}, {-0.5, -0.2, 0}};
    ram.travel = {0.4, 0.2};
    const double anchor = std::hypot(0.5, 0.2);
    // From the anchor's direction to the tiller's, anticlockwise.
    const double ahead = std::atan2(-0.15, 0) - std::atan2(-0.2, -0.5);
    const PlanarLinkage planar{anchor, 0.15, ahead};
    for (double steer = -35; steer <= 35; steer += 7) {
        CHECK(rod_out(ram, steer * degree, 0) == Approx(ram_length(planar, steer * degree) - 0.4));
        CHECK(moment_arm(ram, steer * degree, 0) == Approx(moment_arm(planar, steer * degree)));
    }
}

TEST_CASE("Moment arm and rod per trim are the slopes of the rod's travel, of every mount") {
    constexpr double step = 1e-6;
    MountedRam slanting = centre_mounted();  // a rod that is not in line with the tilt tube
    slanting.slides_along = Eigen::Vector3d(-1, 0.08, -0.05).normalized();
    slanting.linkage.trim_point = {0, 0.1, -0.08};
    for (const MountedRam& ram : {beside_the_drive(), slanting}) {
        for (double s = -0.5; s <= 0.5; s += 0.25) {
            for (const double t : {-0.1, 0.0, 0.3}) {
                CHECK(moment_arm(ram, s, t) ==
                      Approx((rod_out(ram, s + step, t) - rod_out(ram, s - step, t)) / (2 * step))
                          .margin(1e-8));
                CHECK(rod_per_trim(ram, s, t) ==
                      Approx((rod_out(ram, s, t + step) - rod_out(ram, s, t - step)) / (2 * step))
                          .margin(1e-8));
            }
        }
    }
}

TEST_CASE("Moving the anchor out moves the rod out as far, and the steer angle by the told sensitivity") {
    for (const MountedRam& ram : {beside_the_drive(), centre_mounted()}) {
        MountedRam moved = ram;
        shift_anchor(moved, 0.01);
        CHECK(rod_out(moved, 0, 0) == Approx(rod_out(ram, 0, 0) + 0.01));
        const double out = rod_out(ram, 0.2, 0.1);
        const auto sensitivity = mount_sensitivity(ram, 0.2, 0.1);
        REQUIRE_OK(sensitivity);
        for (int axis = 0; axis < 3; ++axis) {
            // Finite difference: the angle at the same rod travel after 10 micrometres.
            MountedRam off = ram;
            off.linkage.anchor[axis] += 1e-5;
            const auto steer = steer_at_rod_out(off, out, 0.1);
            REQUIRE_OK(steer);
            CHECK((steer.value() - 0.2) / 1e-5 == Approx(sensitivity.value()[axis]).margin(2e-3));
        }
    }
}

TEST_CASE("The locks over a trim range are the tightest of those at each trim") {
    const std::vector<MountedRam> rams{beside_the_drive()};
    const auto range = locks_over_trim(rams, -5 * degree, 18 * degree);
    REQUIRE_OK(range);
    double lowest = -10, highest = 10, asymmetry = 0;
    for (double trim = -5; trim <= 18; ++trim) {
        const auto locks = drive_locks(rams, trim * degree);
        REQUIRE_OK(locks);
        lowest = std::max(lowest, locks.value().lowest);
        highest = std::min(highest, locks.value().highest);
        asymmetry = std::max(asymmetry, std::abs(locks.value().lowest + locks.value().highest));
    }
    CHECK(range.value().lowest == Approx(lowest));
    CHECK(range.value().highest == Approx(highest));
    CHECK(range.value().asymmetry == Approx(asymmetry));
    const auto there = drive_locks(rams, range.value().highest_at);
    REQUIRE_OK(there);
    CHECK(there.value().highest == Approx(highest));
    CHECK_FALSE(locks_over_trim(rams, 0.2, 0.1).ok());
    const auto too_far = locks_over_trim(rams, 0, 150 * degree);
    REQUIRE_FALSE(too_far.ok());
    CHECK(too_far.error().where.find("ram 1 at a trim of") != std::string::npos);
}
