// The survey of rigs other than one stern drive: tied drives, outboards, rudders, second helm, autopilot and
// assist. Boats are invented. What a gauge should read is worked out by a closed form where there is one.
#include <cmath>
#include <numbers>

#include "app/rig/survey.hpp"
#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover::rig;
using hardover::read_quantity;

namespace {

constexpr double inch = 0.0254;
constexpr double degree = std::numbers::pi / 180;

Boat manual_boat(Boat::Mount mount, int drives, int rams) {
    Boat boat;
    boat.mount = mount;
    boat.drives = drives;
    boat.rams = rams;
    boat.balanced = mount == Boat::Mount::outboard_centre;
    // As much oil a turn for each ram as for two on the plain boat.
    boat.helm_displacement *= rams / 2.0;
    boat.hard_turn *= rams / 2.0;
    return boat;
}

Readings with(const Boat& boat, const char* name = "", const char* value = "") {
    Faults faults;
    if (*name != 0) REQUIRE_OK(set_parameter(faults, name, read_quantity(value).value()));
    const auto readings = survey(boat, faults);
    REQUIRE_OK(readings);
    for (const auto& [gauge, read] : readings.value()) {
        INFO(gauge);
        CHECK(std::isfinite(read));
    }
    return readings.value();
}

const Boat outboard = manual_boat(Boat::Mount::outboard_centre, 1, 1);
const Boat rudder = manual_boat(Boat::Mount::inboard_tiller, 1, 1);
const Boat twins = manual_boat(Boat::Mount::sterndrive_external, 2, 2);

}  // namespace

TEST_CASE("A sound rig of any mount and number of drives swings to both stops and reads sound") {
    for (const Boat::Mount mount :
         {Boat::Mount::sterndrive_external, Boat::Mount::outboard_centre, Boat::Mount::inboard_tiller}) {
        for (const int drives : {1, 2}) {
            for (const int rams : {1, 2}) {
                if (mount == Boat::Mount::outboard_centre && rams > drives) continue;
                INFO("mount " << static_cast<int>(mount) << ", drives " << drives << ", rams " << rams);
                const Boat boat = manual_boat(mount, drives, rams);
                Readings read = with(boat);
                CHECK(read["lock_angle_port"] == Approx(boat.stop_angle));
                CHECK(read["lock_angle_starboard"] == Approx(boat.stop_angle));
                CHECK(read["ram_mark_port"] == Approx(boat.stroke / 2));
                CHECK(read["ram_reserve"] == Approx(boat.ram_reserve).epsilon(1e-3));
                CHECK(read["effort_inequality"] < 1.6);
                CHECK(read["wag"] < 0.3 * degree);
                CHECK(read.count("toe_error") == (drives == 2 ? 1 : 0));
                CHECK(read.count("trim_steer") == (mount == Boat::Mount::inboard_tiller ? 0 : 1));
                CHECK(read.count("ram_mark_starboard") == (rams == 2 ? 1 : 0));
                CHECK(read["toe_error"] == Approx(0).margin(1e-9));
                CHECK(read["toe_at_lock"] == Approx(0).margin(1e-9));
            }
        }
    }
}

TEST_CASE("Two rams that push the same way on tied outboards turn as easily as two opposed ones") {
    Readings read = with(manual_boat(Boat::Mount::outboard_centre, 2, 2));
    // Balanced cylinders: the same oil both ways.
    CHECK(read["turns_port"] == Approx(read["turns_starboard"]).epsilon(0.01));
    CHECK(read["fight_ratio"] == Approx(1).epsilon(0.01));
}

TEST_CASE("A tie bar too long sets the second drive off by its excess over the arm") {
    Readings read = with(twins, "tie_bar.length", "1/4 in");
    const double off = 0.25 * inch / twins.tie_arm;
    CHECK(read["toe_error"] == Approx(off).epsilon(0.02));
    CHECK(read["toe_at_lock"] == Approx(off).epsilon(0.3));
    // The drive that stands ahead of the other meets its stop first: one lock comes early by as much.
    const double least = std::min(read["lock_angle_port"], read["lock_angle_starboard"]);
    CHECK(twins.stop_angle - least == Approx(off).epsilon(0.3));
    CHECK(std::abs(read["ram_mark_starboard"] - read["ram_mark_port"]) > 0.2 * inch);
}

TEST_CASE("Slack in the tie bar lets the second drive wag by itself") {
    Readings sound = with(twins);
    Readings slack = with(twins, "tie_bar.play", "1/4 in");
    CHECK(slack["second_drive_play"] == Approx(0.25 * inch / twins.tie_arm));
    CHECK(slack["wag"] - sound["wag"] == Approx(0.25 * inch / twins.tie_arm));
    CHECK(slack["free_play"] == sound["free_play"]);
}

TEST_CASE("A tiller that slipped on its stock takes from one lock what it gives to the other ram end") {
    Readings read = with(rudder, "tiller.slip", "6 deg");
    CHECK(read["tiller_slip"] == Approx(6 * degree));
    CHECK(std::abs(read["lock_angle_port"] - read["lock_angle_starboard"]) > 2 * degree);
    CHECK(read["ram_reserve"] < 0);
    CHECK(read["tiller_play"] == 0);
    Readings slack = with(rudder, "tiller.play", "1/4 in");
    CHECK(slack["joint_play"] == Approx(0.25 * inch));
    CHECK(slack["free_play"] > 5 * with(rudder)["free_play"]);
    // A drive has no tiller to slip.
    CHECK(with(twins, "tiller.slip", "6 deg")["lock_angle_port"] == with(twins)["lock_angle_port"]);
}

TEST_CASE("A wing plate too high makes one ram steer the drive while it is trimmed") {
    const Boat one = manual_boat(Boat::Mount::sterndrive_external, 1, 1);
    Readings sound = with(one), high = with(one, "wing_plate.height_port", "1 in");
    CHECK(sound["trim_steer"] < 0.5 * degree);
    // The pin goes fore and aft by its height times the trim; that over the moment arm, a little less than
    // the pin's distance to the side.
    const double arm = (one.stroke / 2 - one.ram_reserve) / one.stop_angle;
    const double expected = inch * (one.trim_up - one.trim_down) / arm;
    CHECK(high["trim_steer"] == Approx(expected).margin(sound["trim_steer"] + 0.1 * expected));
    CHECK(high["lock_angle_port"] == Approx(sound["lock_angle_port"]).epsilon(0.02));
    // Two rams share it.
    const Boat two = manual_boat(Boat::Mount::sterndrive_external, 1, 2);
    CHECK(with(two, "wing_plate.height_port", "1 in")["trim_steer"] == Approx(expected / 2).epsilon(0.2));
    CHECK(with(outboard, "wing_plate.height_port", "1 in")["trim_steer"] == with(outboard)["trim_steer"]);
}

TEST_CASE("A bracket out of place across an outboard shifts its rod mark by as much") {
    Readings read = with(outboard, "bracket.offset_port", "1/2 in");
    CHECK(read["ram_mark_port"] == Approx(outboard.stroke / 2 + 0.5 * inch));
    CHECK(read["lock_angle_starboard"] < outboard.stop_angle);
    Readings back = with(outboard, "rod_end.offset_port", "1/2 in");
    CHECK(back["ram_mark_port"] == Approx(outboard.stroke / 2 - 0.5 * inch));
}

TEST_CASE(
    "A second helm that leaks, and an autopilot that lets oil by, are felt only where they are fitted") {
    Boat boat = twins;
    const Readings plain = with(boat);
    CHECK(with(boat, "second_helm.leak_port", "300 mL/min") == plain);
    CHECK(with(boat, "autopilot.bypass", "300 mL/min") == plain);
    boat.helms = 2;
    boat.autopilot = true;
    Readings helm = with(boat, "second_helm.leak_port", "300 mL/min");
    CHECK(helm["drift_rate"] > inch / 16 / 60);
    CHECK(helm["wheel_creep"] > 4 * Readings(plain)["wheel_creep"]);
    Readings bypass = with(boat, "autopilot.bypass", "300 mL/min");
    CHECK(bypass["drift_rate"] > inch / 16 / 60);
    CHECK(bypass["open_port_flow"] == 0);
}

TEST_CASE("An assist takes its share of the pull, and a dead one leaves the hand alone with the load") {
    Boat boat = twins;
    Readings unassisted = with(boat);
    boat.assist = Boat::Assist::electric_pump;
    Readings sound = with(boat), dead = with(boat, "assist.strength", "0");
    const double friction = boat.helm_friction / boat.wheel_radius;
    CHECK(sound["rim_force_port"] - friction ==
          Approx((1 - boat.assist_help) * (unassisted["rim_force_port"] - friction)).epsilon(0.01));
    CHECK(dead["rim_force_port"] == Approx(unassisted["rim_force_port"]).epsilon(1e-6));
    CHECK(sound["engine_share"] < 0.75);
    CHECK(dead["engine_share"] == Approx(1));
    CHECK(dead["effort_ratio"] > 1.5);
}

TEST_CASE("A worn assist gives less help but no more turns and no creep, a worn helm the other way about") {
    Boat boat = twins;
    boat.assist = Boat::Assist::electric_pump;
    // As much slips by at the working pressure as does work, so half of the help is left.
    const double flow = boat.pump_displacement * boat.pump_idle;
    const std::string as_much = std::to_string(flow * 6e7) + " mL/min";
    Readings sound = with(boat), assist = with(boat, "pump.wear", as_much.c_str());
    const double friction = boat.helm_friction / boat.wheel_radius;
    const double alone = (sound["rim_force_port"] - friction) / (1 - boat.assist_help);
    CHECK(assist["rim_force_port"] - friction == Approx(alone * (1 - boat.assist_help / 2)).epsilon(0.01));
    for (const char* gauge : {"turns_port", "wheel_creep", "isolated_creep", "drift_rate"}) {
        INFO(gauge);
        CHECK(assist[gauge] == Approx(sound[gauge]).epsilon(0.01));
    }
    Readings helm = with(boat, "helm.wear", "4000 mL/min");
    CHECK(helm["turns_port"] > 1.05 * sound["turns_port"]);
    CHECK(helm["isolated_creep"] > 2 * sound["isolated_creep"]);
    CHECK(helm["engine_share"] == Approx(sound["engine_share"]).epsilon(0.05));
}
