// Room about a ram: distances against points drawn at random (Monte Carlo) and against cases one can do in
// the head; the least room in a range against every angle drawn at random.
#include "app/rig/clearance.hpp"

#include <cmath>

#include "app/rig/chance.hpp"
#include "support.hpp"

using namespace hardover::rig;
using Eigen::Vector3d;

namespace {

MountedRam beside_the_drive() {
    MountedRam ram;
    ram.linkage = {{{-0.2, -0.05, 0.06}, {0, 0, 0}, {0, 0.1, 1}, {0, 0.05, 0}, {1, 0, 0}},
                   {-0.24, 0.42, 0.1}};
    ram.travel = {0.375, 0.2};
    return ram;
}

Vector3d anywhere(Chance& chance) {
    return {chance.between(-1, 1), chance.between(-1, 1), chance.between(-1, 1)};
}

const SteerAndTrim whole_range{-0.5, 0.5, -0.1, 0.3};

}  // namespace

TEST_CASE("Two bars apart: side by side, crossing over, end to end, and bars that are points") {
    CHECK(segment_distance({0, 0, 0}, {1, 0, 0}, {0.2, 0.3, 0}, {0.8, 0.3, 0}) == Approx(0.3));
    CHECK(segment_distance({-1, 0, 0}, {1, 0, 0}, {0, -1, 0.25}, {0, 1, 0.25}) == Approx(0.25));
    CHECK(segment_distance({0, 0, 0}, {1, 0, 0}, {1.5, 0, 0}, {2, 0, 0}) == Approx(0.5));
    CHECK(segment_distance({0, 0, 0}, {0, 0, 0}, {3, 4, 0}, {3, 4, 0}) == Approx(5));
    CHECK(segment_distance({-1, 0, 0}, {1, 0, 0}, {0, -1, 0}, {0, 1, 0}) == Approx(0).margin(1e-12));
}

TEST_CASE("No two points of two bars, or of a bar and a box, lie nearer than the distance told") {
    Chance chance(11);
    for (int pair = 0; pair < 40; ++pair) {
        const Vector3d a1 = anywhere(chance), a2 = anywhere(chance);
        const Vector3d b1 = anywhere(chance), b2 = anywhere(chance);
        const double bars = segment_distance(a1, a2, b1, b2);
        const KeepOutBox box{b1.cwiseMin(b2), b1.cwiseMax(b2)};
        const double boxed = box_distance(a1, a2, box);
        double near_bar = 10, near_box = 10;
        for (int i = 0; i < 4000; ++i) {
            const Vector3d on_a = a1 + chance.between(0, 1) * (a2 - a1);
            near_bar = std::min(near_bar, (on_a - b1 - chance.between(0, 1) * (b2 - b1)).norm());
            near_box = std::min(near_box, (on_a - on_a.cwiseMax(box.low).cwiseMin(box.high)).norm());
        }
        CHECK(bars <= near_bar + 1e-12);
        CHECK(near_bar - bars < 0.08);  // 4000 pairs come that near
        CHECK(boxed <= near_box + 1e-8);
        CHECK(near_box - boxed < 0.01);
    }
}

TEST_CASE("A ram's room from a swim platform counts its own thickness") {
    MountedRam ram = beside_the_drive();
    ram.linkage.pin.z() = ram.linkage.anchor.z() = 0.1;
    const KeepOutBox platform{{-1, -1, 0.25}, {1, 1, 0.3}};
    CHECK(clearance(ram, 0.03, platform, 0, 0) == Approx(0.12));
    CHECK(clearance(ram, 0.16, platform, 0, 0) == Approx(-0.01));
    const KeepOutBar trim_cylinder{{{-0.24, 0.42, 0.3}, false}, {{-0.2, -0.05, 0.3}, false}, 0.02};
    CHECK(clearance(ram, 0.03, trim_cylinder, 0, 0) == Approx(0.15));
}

TEST_CASE("What stands on the drive goes along with it") {
    const MountedRam ram = beside_the_drive();
    // A lug 50 mm outside the pin, on the drive: as near at every angle, but for the ram's turning about its
    // pin.
    const Vector3d lug = ram.linkage.pin + Vector3d(0, -0.05, 0);
    const KeepOutBar rides{{lug, true}, {lug, true}, 0.01};
    const KeepOutBar stands{{lug, false}, {lug, false}, 0.01};
    for (const double steer : {-0.4, 0.0, 0.4}) {
        CHECK(clearance(ram, 0.01, rides, steer, 0.2) > 0.02);
        CHECK(clearance(ram, 0.01, rides, steer, 0.2) <= Approx(0.03));
    }
    CHECK(clearance(ram, 0.01, stands, 0.4, 0.2) != Approx(clearance(ram, 0.01, rides, 0.4, 0.2)));
}

TEST_CASE("No angle of steer and trim leaves less room than the least that is told") {
    const MountedRam ram = beside_the_drive();
    MountedRam across;
    across.linkage = {{{0, 0.19, 0}, {0, 0, 0}, {0, 0, 1}, {0, 0.19, 0}, {1, 0, 0}}, {0, 0.19, 0}};
    across.travel = {0.4, 0.18};
    across.slides_along = {-1, 0, 0};
    const KeepOut keep_outs[] = {
        KeepOutBox{{-0.5, -0.3, 0.2}, {-0.15, 0.1, 0.25}},
        KeepOutBar{{{-0.1, 0.3, 0}, false}, {{-0.1, -0.1, 0.05}, true}, 0.02},
        KeepOutBar{{{0.5, 0.1, 0.1}, false}, {{0.5, 0.3, -0.1}, false}, 0.02},
    };
    Chance chance(5);
    for (const MountedRam& each : {ram, across}) {
        for (const KeepOut& keep_out : keep_outs) {
            const auto least = least_clearance(each, 0.02, keep_out, whole_range);
            REQUIRE_OK(least);
            CHECK(least.value().room ==
                  Approx(clearance(each, 0.02, keep_out, least.value().steer, least.value().trim)));
            double drawn = 10;
            for (int i = 0; i < 5000; ++i)
                drawn = std::min(drawn, clearance(each, 0.02, keep_out, chance.between(-0.5, 0.5),
                                                  chance.between(-0.1, 0.3)));
            CHECK(least.value().room <= drawn + 1e-4);
            CHECK(drawn - least.value().room < 0.01);
        }
    }
}

TEST_CASE("A range that runs backwards and shapes without size are refused") {
    const KeepOutBox box{{0, 0, 0}, {1, 1, 1}};
    CHECK_FALSE(least_clearance(beside_the_drive(), 0.02, box, {0.5, -0.5, 0, 0}).ok());
    CHECK_FALSE(least_clearance(beside_the_drive(), 0, box, whole_range).ok());
    CHECK_FALSE(
        least_clearance(beside_the_drive(), 0.02, KeepOutBox{{1, 0, 0}, {0, 1, 1}}, whole_range).ok());
}
