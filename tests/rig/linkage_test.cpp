// The linkage: lengths, moment arms and locks against each other and against what geometry demands.
#include "app/rig/linkage.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/mounted_ram.hpp"
#include "app/rig/tie_bar.hpp"
#include "support.hpp"

using namespace hardover::rig;

namespace {

constexpr double degree = std::numbers::pi / 180;

// The drive of the computed check values LNK-050 to LNK-073, with its steering axis leaning as on a real
// drive.
Linkage leaning_drive() {
    return {{{0.06, 0.17, 0.03}, {0, 0, 0}, {0.1, 0.02, 1}, {-0.08, 0, -0.1}, {0, 1, 0}},
            {-0.15, 0.36, 0.05}};
}

// Ram athwart a drive, anchor straight abeam of the pin: arm 180 mm aft, ram 280 mm long straight ahead.
Linkage athwart_drive() {
    return {{{-0.18, 0, 0}, {0, 0, 0}, {0, 0, 1}, {0, 0, -0.1}, {0, 1, 0}}, {-0.18, 0.28, 0}};
}

// Its mirror image to the other side.
Linkage mirrored(Linkage linkage) {
    linkage.anchor.y() = -linkage.anchor.y();
    return linkage;
}

constexpr RamTravel travel{0.19, 0.18};  // 190 mm closed, 180 mm stroke: straight ahead at half stroke

}  // namespace

TEST_CASE("The moment arm is the slope of the ram's length over the steering angle") {
    constexpr double step = 1e-6;
    const Linkage linkage = leaning_drive();
    for (double steer = -35; steer <= 35; steer += 7) {
        for (const double trim : {-5.0, 0.0, 12.0, 25.0}) {
            const double a = steer * degree;
            const double t = trim * degree;
            INFO("steer " << steer << ", trim " << trim);
            const double slope =
                (ram_length(linkage, a + step, t) - ram_length(linkage, a - step, t)) / (2 * step);
            CHECK(moment_arm(linkage, a, t) == Approx(slope).margin(1e-8));
            const double trim_slope =
                (ram_length(linkage, a, t + step) - ram_length(linkage, a, t - step)) / (2 * step);
            CHECK(length_per_trim(linkage, a, t) == Approx(trim_slope).margin(1e-8));
        }
    }
    const PlanarLinkage planar{0.3, 0.18, 80 * degree};
    for (double a = -0.6; a <= 0.6; a += 0.1) {
        const double slope = (ram_length(planar, a + step) - ram_length(planar, a - step)) / (2 * step);
        CHECK(moment_arm(planar, a) == Approx(slope).margin(1e-8));
        const double bend = (moment_arm(planar, a + step) - moment_arm(planar, a - step)) / (2 * step);
        CHECK(moment_arm_slope(planar, a) == Approx(bend).margin(1e-7));
    }
}

TEST_CASE("A drive with everything in one plane and no trim is the planar linkage") {
    const PlanarLinkage planar{0.3, 0.18, 80 * degree};
    const Eigen::Vector3d pin(0.18 * std::cos(80 * degree), 0.18 * std::sin(80 * degree), 0);
    const Linkage spatial{{pin, {0, 0, 0}, {0, 0, 1}, {0, 0, 0}, {0, 1, 0}}, {0.3, 0, 0}};
    for (double a = -0.6; a <= 0.6; a += 0.1) {
        CHECK(ram_length(spatial, a, 0) == Approx(ram_length(planar, a)));
        CHECK(moment_arm(spatial, a, 0) == Approx(moment_arm(planar, a)));
    }
    CHECK(arm_radius(spatial) == Approx(0.18));
}

TEST_CASE("The steering angle found from a ram length gives that length back") {
    const Linkage linkage = leaning_drive();
    for (double steer = -40; steer <= 30; steer += 5) {
        for (const double trim : {-5.0, 0.0, 15.0}) {
            INFO("steer " << steer << ", trim " << trim);
            const double length = ram_length(linkage, steer * degree, trim * degree);
            const auto found = steer_at_length(linkage, length, trim * degree);
            REQUIRE_OK(found);
            CHECK(found.value() == Approx(steer * degree).margin(1e-9));
        }
    }
    const auto angle = angle_at_length(0.3, 0.18, ram_length(PlanarLinkage{0.3, 0.18, 1.2}, 0));
    REQUIRE_OK(angle);
    CHECK(angle.value() == Approx(1.2));
}

TEST_CASE("A length that no triangle has is refused with the lengths that would do") {
    const auto too_long = angle_at_length(0.3, 0.18, 0.5);
    REQUIRE_FALSE(too_long.ok());
    CHECK(too_long.error().text().find("500 mm") != std::string::npos);
    CHECK(too_long.error().cure == "a length between 120 mm and 480 mm");
    CHECK_FALSE(angle_at_length(0.3, 0.18, 0.1).ok());
    CHECK_FALSE(steer_at_length(athwart_drive(), 0.6, 0).ok());
}

TEST_CASE("At each lock the ram is bottomed, and the ram in the middle does not mean equal angles") {
    const auto locks = lock_angles(MountedRam{athwart_drive(), travel}, 0);
    REQUIRE_OK(locks);
    CHECK(ram_length(athwart_drive(), locks.value().closed, 0) == Approx(0.19));
    CHECK(ram_length(athwart_drive(), locks.value().open, 0) == Approx(0.37));
    CHECK((locks.value().closed > 0) != (locks.value().open > 0));
    CHECK(std::abs(locks.value().closed + locks.value().open) > 0.5 * degree);
    // The smallest moment arm over the whole sweep, looked for step by step.
    const auto [low, high] = std::minmax(locks.value().closed, locks.value().open);
    double least = 1;
    for (int step = 0; step <= 1000; ++step) {
        const double at = low + (high - low) * step / 1000;
        least = std::min(least, std::abs(moment_arm(athwart_drive(), at, 0)));
    }
    CHECK(locks.value().least_arm == Approx(least));
}

TEST_CASE("Locks near dead centre and rams that do not fit are refused") {
    // 360 mm of stroke on an arm of 180 mm reaches past what the arm can turn.
    const auto past = lock_angles(MountedRam{athwart_drive(), {0.11, 0.36}}, 0);
    REQUIRE_FALSE(past.ok());
    const auto near = lock_angles(MountedRam{athwart_drive(), {0.1535, 0.302}}, 0);
    REQUIRE_FALSE(near.ok());
    CHECK(near.error().what.find("dead centre") != std::string::npos);
    const auto short_ram = lock_angles(MountedRam{athwart_drive(), {0.30, 0.18}}, 0);
    REQUIRE_FALSE(short_ram.ok());
    CHECK(short_ram.error().what.find("280 mm") != std::string::npos);
    CHECK_FALSE(lock_angles(MountedRam{athwart_drive(), {0.19, 0}}, 0).ok());
    Linkage dead = athwart_drive();
    dead.anchor = {-0.5, 0, 0};  // anchor, pin and axis in one line
    CHECK_FALSE(steer_at_length(dead, 0.32, 0).ok());
    CHECK(std::isnan(steer_per_trim(dead, 0, 0)));
    CHECK_FALSE(mount_sensitivity(MountedRam{dead, travel}, 0, 0).ok());
}

TEST_CASE("With two rams the one that bottoms first sets the lock and the other keeps stroke unused") {
    const MountedRam one{athwart_drive(), travel};
    const MountedRam two{mirrored(athwart_drive()), travel};
    const auto single = drive_locks({one}, 0);
    REQUIRE_OK(single);
    CHECK(single.value().unused_stroke.front() == Approx(0).margin(1e-9));

    const auto both = drive_locks({one, two}, 0);
    REQUIRE_OK(both);
    // A mirrored pair has equal locks, each set by the ram that gets there first.
    CHECK(both.value().highest == Approx(-both.value().lowest));
    CHECK(both.value().highest_by != both.value().lowest_by);
    CHECK(both.value().unused_stroke[0] == Approx(both.value().unused_stroke[1]));
    CHECK(both.value().unused_stroke[0] > 1e-3);
    CHECK(both.value().highest <= single.value().highest + 1e-12);
    CHECK(both.value().lowest >= single.value().lowest - 1e-12);

    CHECK_FALSE(drive_locks({}, 0).ok());
    const auto bad = drive_locks({one, {two.linkage, {0.3, 0.18}}}, 0);
    REQUIRE_FALSE(bad.ok());
    CHECK(bad.error().where == "ram 2");
}

TEST_CASE("The effect of a misplaced anchor is what moving the anchor does") {
    const Linkage linkage = leaning_drive();
    const double steer = 12 * degree;
    const double trim = 4 * degree;
    const double length = ram_length(linkage, steer, trim);
    const auto sensitivity = mount_sensitivity(MountedRam{linkage, travel}, steer, trim);
    REQUIRE_OK(sensitivity);
    constexpr double shift = 1e-6;
    for (int axis = 0; axis < 3; ++axis) {
        Linkage moved = linkage;
        moved.anchor[axis] += shift;
        const auto found = steer_at_length(moved, length, trim);
        REQUIRE_OK(found);
        CHECK(sensitivity.value()[axis] == Approx((found.value() - steer) / shift).margin(1e-3));
    }
}

TEST_CASE("Trim with a locked ram steers the drive by as much as the sensitivity says") {
    const Linkage linkage = leaning_drive();
    const double length = ram_length(linkage, 0.1, 0.05);
    constexpr double step = 1e-6;
    const auto after = steer_at_length(linkage, length, 0.05 + step);
    REQUIRE_OK(after);
    CHECK(steer_per_trim(linkage, 0.1, 0.05) == Approx((after.value() - 0.1) / step).epsilon(1e-4));
}

TEST_CASE("Moving the anchor by the shift found makes both locks equal") {
    const Eigen::Vector3d abeam(0, 2, 0);
    const auto shift = anchor_shift_for_equal_locks(MountedRam{athwart_drive(), travel}, abeam, 0.05, 0);
    REQUIRE_OK(shift);
    CHECK(std::abs(shift.value()) > 1e-4);
    Linkage moved = athwart_drive();
    moved.anchor.y() += shift.value();
    const auto locks = lock_angles(MountedRam{moved, travel}, 0);
    REQUIRE_OK(locks);
    CHECK(locks.value().closed == Approx(-locks.value().open));
    CHECK_FALSE(anchor_shift_for_equal_locks(MountedRam{athwart_drive(), travel}, abeam, 1e-5, 0).ok());
    CHECK_FALSE(anchor_shift_for_equal_locks(MountedRam{athwart_drive(), travel}, {0, 0, 0}, 0.05, 0).ok());
}

TEST_CASE("A tie bar as long as the axes are apart keeps equal drives parallel") {
    TieBar tie{0.8, 0.2, -90 * degree, 0.2, -90 * degree, 0.8};
    for (double steer = -35; steer <= 35; steer += 7) {
        const auto second = tied_steer(tie, steer * degree);
        REQUIRE_OK(second);
        CHECK(second.value() == Approx(steer * degree).margin(1e-9));
    }
    // A longer bar turns drive two further; the bar for a toe gives that toe.
    tie.bar = bar_for_toe(tie, 1 * degree);
    CHECK(tie.bar > 0.8);
    const auto toed = tied_steer(tie, 0);
    REQUIRE_OK(toed);
    CHECK(toed.value() == Approx(1 * degree));
    tie.bar = 1.5;
    CHECK_FALSE(tied_steer(tie, 0).ok());
}

TEST_CASE("Toe follows from the spans between the shafts") {
    // 10 mm closer forward over 1 m: each drive leans atan(5/1000).
    CHECK(toe_from_spans(0.79, 0.80, 1.0) == Approx(2 * std::atan(0.005)));
    CHECK(toe_from_spans(0.80, 0.80, 1.0) == 0);
    CHECK(toe_from_spans(0.80, 0.79, 1.0) < 0);
    CHECK(std::isnan(toe_from_spans(0.80, 0.79, 0)));
}
