// The survey: a sound boat reads sound, each fault moves the gauges it should and leaves alone what it should
// not touch, and gauges that come to a formula give what the formula gives.
#include "app/rig/survey.hpp"

#include <cmath>
#include <numbers>

#include "app/rig/cylinder.hpp"
#include "app/rig/stiffness.hpp"
#include "rules/quantity/quantity.hpp"
#include "support.hpp"

using namespace hardover::rig;
using hardover::read_quantity;

namespace {

constexpr int boats = 40;
constexpr double inch = 0.0254;
constexpr double degree = std::numbers::pi / 180;
constexpr double turn = 2 * std::numbers::pi;
constexpr double psi = 6894.757;
constexpr double mL_per_min = 1e-6 / 60;

Readings surveyed(const Boat& boat, const Faults& faults) {
    const auto readings = survey(boat, faults);
    REQUIRE_OK(readings);
    for (const auto& [gauge, value] : readings.value()) {
        INFO(gauge);
        CHECK(std::isfinite(value));
    }
    return readings.value();
}

Boat of_kind(Boat::Helm helm, int rams, bool balanced = false) {
    for (int seed = 1;; ++seed) {
        Boat boat = sample_boat(seed);
        const bool plain = boat.mount == Boat::Mount::sterndrive_external && boat.drives == 1 &&
                           boat.assist == Boat::Assist::none;
        if (plain && boat.helm == helm && boat.rams == rams && boat.balanced == balanced) return boat;
    }
}

const Boat hand_pump = of_kind(Boat::Helm::manual_pump, 2);
const Boat power_assist = of_kind(Boat::Helm::cable_valve, 2);

Readings with(const Boat& boat, const char* name, const char* value) {
    Faults faults;
    REQUIRE_OK(set_parameter(faults, name, read_quantity(value).value()));
    return surveyed(boat, faults);
}

}  // namespace

TEST_CASE("Sound boats of all kinds read sound") {
    for (int seed = 1; seed <= boats; ++seed) {
        INFO("boat " << seed);
        const Boat boat = sample_boat(seed);
        Readings read = surveyed(boat, {});
        CHECK(read["lock_angle_port"] == Approx(boat.stop_angle));
        CHECK(read["lock_angle_starboard"] == Approx(boat.stop_angle));
        CHECK(read["ram_reserve"] > inch / 8);
        CHECK(read["ram_mark_port"] == Approx(boat.stroke / 2));
        CHECK(read["diagonal_port"] == Approx(read["diagonal_starboard"]));
        CHECK(read["effort_ratio"] == Approx(1));
        CHECK(read["effort_inequality"] < 1.6);
        CHECK(read["stiff_before_stop"] < 0.5 * degree);
        CHECK(read["rim_sponge"] < 0.75 * inch);
        CHECK(read["free_play"] < 1 * inch);
        CHECK(read["wag"] < 0.2 * degree);
        CHECK(read["drift_rate"] < inch / 8 / 60);
        CHECK(read["line_flow_ratio"] == Approx(1));
        if (boat.helm == Boat::Helm::manual_pump) {
            CHECK(read["wheel_creep"] < 0.25 * turn / 60);
        } else {
            CHECK(read["pressure_at_stop"] > 0.9 * boat.relief_pressure);
            CHECK(read["pressure_ratio"] > 0.85);
            CHECK(read["engine_share"] < 0.6);
        }
    }
}

TEST_CASE("Every gauge read is one that is named, and every named gauge is read on some boat") {
    Readings hand = surveyed(hand_pump, {}), power = surveyed(power_assist, {});
    Boat twin_rudders = hand_pump;
    twin_rudders.mount = Boat::Mount::inboard_tiller;
    twin_rudders.drives = 2;
    const Readings twin = surveyed(twin_rudders, {});
    std::size_t named = 0;
    for (const Gauge& gauge : gauges()) {
        INFO(gauge.name);
        REQUIRE_OK(hardover::find_unit(gauge.unit));
        CHECK(hand.count(gauge.name) + power.count(gauge.name) + twin.count(gauge.name) > 0);
        named += hand.count(gauge.name);
    }
    CHECK(named == hand.size());
}

TEST_CASE("The same boat and faults give the same bits") {
    const Readings once = with(hand_pump, "circuit.trapped_air", "12 mL");
    CHECK(once == with(hand_pump, "circuit.trapped_air", "12 mL"));
}

TEST_CASE("Turns counted are the swept volume over the helm's displacement") {
    // Two opposed single-rod rams sweep both areas; the same from lock to lock both ways. Textbook geometry:
    // A. Esposito, Fluid Power with Applications, ch. 6.
    Readings read = surveyed(hand_pump, {});
    const double travel = (ram_area(hand_pump.bore, 0) + ram_area(hand_pump.bore, hand_pump.rod)) *
                          (hand_pump.stroke - 2 * hand_pump.ram_reserve) / hand_pump.helm_displacement * turn;
    CHECK(read["turns_port"] == Approx(travel).epsilon(0.03));
    CHECK(read["turns_starboard"] == Approx(travel).epsilon(0.03));
}

TEST_CASE("A single-rod ram on a hand pump takes more turns to push its rod out than to draw it in") {
    const Boat boat = of_kind(Boat::Helm::manual_pump, 1);
    Readings read = surveyed(boat, {});
    const double areas = ram_area(boat.bore, 0) / ram_area(boat.bore, boat.rod);
    CHECK(read["turns_starboard"] / read["turns_port"] == Approx(areas).epsilon(0.01));
}

TEST_CASE("Trapped air springs back at the rim by what Boyle's law squeezes out of it") {
    Readings sound = surveyed(hand_pump, {});
    Readings air = with(hand_pump, "circuit.trapped_air", "10 mL");
    const double torque = hand_pump.hand_push * hand_pump.wheel_radius - hand_pump.helm_friction;
    // The check valve in the helm keeps its cracking pressure back.
    const double pressure = torque * turn / hand_pump.helm_displacement - 0.5e5;
    const double lost = wheel_lost_to_air(5e-6, pressure, hand_pump.helm_displacement / turn);
    CHECK(air["rim_sponge"] - sound["rim_sponge"] == Approx(lost * hand_pump.wheel_radius).epsilon(0.05));
    CHECK(air["wag"] > 2 * sound["wag"]);
    CHECK(air["drift_rate"] == sound["drift_rate"]);
}

TEST_CASE("A leaking piston seal lets the wheel creep at the stop and the drive drift") {
    Readings sound = surveyed(hand_pump, {});
    Readings leak = with(hand_pump, "ram.leak_port", "200 mL/min");
    CHECK(leak["wheel_creep"] > 10 * sound["wheel_creep"]);
    CHECK(leak["drift_rate"] > inch / 16 / 60);
    CHECK(leak["turns_port"] > sound["turns_port"]);
    // Flow through the open port: the leak at the pressure of the stop.
    const double torque = hand_pump.hand_push * hand_pump.wheel_radius - hand_pump.helm_friction;
    const double pressure = torque * turn / hand_pump.helm_displacement - 0.5e5;
    CHECK(leak["open_port_flow"] == Approx(200 * mL_per_min * pressure / (1000 * psi)).epsilon(0.05));
    CHECK(leak["rim_sponge"] == Approx(sound["rim_sponge"]).epsilon(0.1));
}

TEST_CASE("A leak back to the reservoir lets the drive go one way with the wheel held") {
    CHECK(with(hand_pump, "helm.leak_port", "300 mL/min")["drift_rate"] > inch / 16 / 60);
    CHECK(with(hand_pump, "helm.leak_starboard", "300 mL/min")["isolated_creep"] > 0.25 * turn / 60);
}

TEST_CASE("A worn helm pump takes more turns and creeps, but its check valves hold the drive") {
    Readings sound = surveyed(hand_pump, {});
    Readings worn = with(hand_pump, "helm.wear", "2500 mL/min");
    CHECK(worn["turns_port"] > 1.1 * sound["turns_port"]);
    CHECK(worn["wheel_creep"] > 0.25 * turn / 60);
    CHECK(worn["drift_rate"] < inch / 8 / 60);
}

TEST_CASE("A second ram with its hoses swapped locks the wheel, and comes free with one pin out") {
    for (const Boat& boat : {hand_pump, power_assist}) {
        Readings swapped = with(boat, "rams.swapped", "1");
        CHECK(swapped["effort_ratio"] > 1.5);
        CHECK(swapped["fight_ratio"] > 1.3);
        CHECK(swapped["hoses_crossed"] == 1);
    }
}

TEST_CASE(
    "A bracket off half travel shows its offset at the mark, and the ram ends before the drive's stop") {
    Readings sound = surveyed(hand_pump, {});
    Readings off = with(hand_pump, "bracket.offset_port", "1 in");
    CHECK(off["ram_mark_port"] - sound["ram_mark_port"] == Approx(1 * inch));
    CHECK(off["ram_mark_starboard"] == sound["ram_mark_starboard"]);
    CHECK(off["ram_reserve"] < 0);
    CHECK(off["lock_angle_starboard"] < sound["lock_angle_starboard"] - 2 * degree);
    CHECK(off["lock_angle_port"] == sound["lock_angle_port"]);
    CHECK(off["stiff_before_stop"] > 1 * degree);
    CHECK(off["rim_force_port"] == Approx(sound["rim_force_port"]).epsilon(0.05));
}

TEST_CASE("A rod end screwed out hides as much rod") {
    const double sound = surveyed(hand_pump, {})["ram_mark_starboard"];
    CHECK(sound - with(hand_pump, "rod_end.offset_starboard", "1/2 in")["ram_mark_starboard"] ==
          Approx(inch / 2));
}

TEST_CASE("A crooked mark makes the diagonals unequal by the rule of the cosine") {
    Readings crooked = with(hand_pump, "drive.mark_offset", "3 deg");
    const double half = hand_pump.marks_apart / 2, aft = hand_pump.mark_distance;
    const double x = aft * std::sin(3 * degree), y = aft * std::cos(3 * degree);
    CHECK(crooked["diagonal_port"] == Approx(std::sqrt((x + half) * (x + half) + y * y)));
    CHECK(crooked["diagonal_starboard"] == Approx(std::sqrt((x - half) * (x - half) + y * y)));
    CHECK(std::abs(crooked["ram_mark_port"] - crooked["ram_mark_starboard"]) > inch / 4);
}

TEST_CASE("What fouls or is too short ends the swing on its side only") {
    Readings fouls = with(hand_pump, "foul.before_stop_starboard", "4 deg");
    CHECK(fouls["lock_angle_starboard"] == Approx(hand_pump.stop_angle - 4 * degree));
    CHECK(fouls["lock_angle_port"] == Approx(hand_pump.stop_angle));
    CHECK(fouls["clearance_at_lock"] < 0);
    Readings tight = with(hand_pump, "hose.short_port", "3 in");
    CHECK(tight["hose_slack_at_lock"] < 0);
    CHECK(tight["lock_angle_port"] < hand_pump.stop_angle - 2 * degree);
}

TEST_CASE("A hose that kinks at the lock is not felt straight ahead") {
    Readings sound = surveyed(hand_pump, {});
    Readings kinked = with(hand_pump, "hose.kink_starboard", "0.12");
    CHECK(kinked["rim_force_starboard"] == sound["rim_force_starboard"]);
    CHECK(kinked["stiff_before_stop"] > 1 * degree);
}

TEST_CASE("A passage blocked on the feed of one side is heavy that way only") {
    Readings blocked = with(hand_pump, "passage.feed_starboard", "0.12");
    CHECK(blocked["rim_force_starboard"] > 1.6 * blocked["rim_force_port"]);
    CHECK(blocked["line_flow_ratio"] < 0.2);
}

TEST_CASE("Slack at a pin is felt at the rim, and half of it with a second ram that is tight") {
    const double whole = 0.1 * inch;
    for (const int rams : {1, 2}) {
        const Boat boat = of_kind(Boat::Helm::manual_pump, rams);
        Readings slack = with(boat, "pin.play", "0.1 in");
        CHECK(slack["joint_play"] == Approx(whole / rams));
        CHECK(slack["wag"] > surveyed(boat, {})["wag"]);
    }
}

TEST_CASE("Slack of helm and cable is felt at the rim but does not let a hand pump's drive wag") {
    Readings sound = surveyed(hand_pump, {});
    Readings loose = with(hand_pump, "helm.play", "2 in");
    CHECK(loose["free_play"] - sound["free_play"] == Approx(2 * inch));
    CHECK(loose["wag"] == sound["wag"]);
    CHECK(with(power_assist, "cable.play", "0.1 in")["free_play"] > 1 * inch);
}

TEST_CASE("A low relief and a slipping belt cost pressure at both stops alike") {
    Readings relief = with(power_assist, "relief.factor", "0.5");
    CHECK(relief["pressure_at_stop"] == Approx(0.5 * power_assist.relief_pressure).epsilon(0.15));
    CHECK(relief["pressure_ratio"] == Approx(1));
    // A belt that carries less torque: pressure is 2 pi torque over displacement.
    Readings belt = with(power_assist, "belt.grip", "0.3");
    CHECK(belt["pressure_at_stop"] ==
          Approx(0.3 * power_assist.belt_reserve * power_assist.relief_pressure).epsilon(0.01));
    CHECK(belt["pressure_ratio"] == Approx(1));
}

TEST_CASE("A cable that moves the valve too little one way loses pressure that way") {
    Readings shortened = with(power_assist, "valve.travel_port", "0.1");
    CHECK(shortened["pressure_ratio"] < 0.85);
    CHECK(shortened["valve_travel_difference"] == Approx(0.9));
}

TEST_CASE("With the engine stopped all the work is the hand's") {
    Readings sound = surveyed(power_assist, {});
    CHECK(sound["engine_share"] < 0.6);
    Readings dry = with(power_assist, "reservoir.level", "-1");
    CHECK(dry["engine_share"] > sound["engine_share"]);
    CHECK(dry["pressure_at_stop"] < 0.1 * sound["pressure_at_stop"]);
}

TEST_CASE("A blocked strainer pulls the pump's inlet down") {
    CHECK(with(power_assist, "strainer.bore_factor", "0.4")["suction_pressure"] < -5 * psi);
}

TEST_CASE("Thick oil weighs on a hand pump most of all in the cold") {
    Readings sound = surveyed(hand_pump, {});
    Readings thick = with(hand_pump, "oil.viscosity_factor", "5");
    CHECK(thick["effort_ratio"] > 1.05);
    CHECK(thick["cold_ratio"] > sound["cold_ratio"]);
}

TEST_CASE("Soft hoses feel like air but show no bubbles") {
    Readings soft = with(hand_pump, "hose.swelling", "40");
    CHECK(soft["rim_sponge"] > 2 * surveyed(hand_pump, {})["rim_sponge"]);
    CHECK(soft["air_flushed"] == 0);
}

TEST_CASE("A stiff swivel is heavy on a hand pump, and a bent rod binds at one place") {
    CHECK(with(hand_pump, "drive.friction", "200 lbf*ft")["effort_ratio"] > 1.5);
    Faults bent;
    bent.ram_bind_force = 1100;
    bent.bind_from = 8 * degree;
    bent.bind_to = 18 * degree;
    Readings read = surveyed(hand_pump, bent);
    CHECK(read["bind_ratio"] > 1.3);
    CHECK(read["effort_ratio"] == Approx(1));
}

TEST_CASE("A weep shows at its place and in the sum, and empties the reservoir with the hours") {
    Readings weep = with(hand_pump, "weep.rod", "6 drop/min");
    CHECK(weep["drip_rod"] == weep["drip_rate"]);
    CHECK(weep["drip_seat"] == 0);
    CHECK(weep["drip_rate"] == Approx(6 * 0.05 * mL_per_min));  // a drop is 0.05 mL by convention
    CHECK(weep["reservoir_level"] < surveyed(hand_pump, {})["reservoir_level"]);
}

TEST_CASE("A fault so large that no ram fits is refused and not read") {
    Faults faults;
    faults.bracket_offset.port = hand_pump.stroke;
    CHECK_FALSE(survey(hand_pump, faults).ok());
}
